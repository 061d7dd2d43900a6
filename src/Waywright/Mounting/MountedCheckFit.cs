using System;
using System.Collections.Generic;
using System.Linq;
using MathNet.Numerics;
using MathNet.Numerics.LinearAlgebra;

namespace Waywright;

/// <summary>A difference with a free straight line, by generalised least squares: L L' = V, everything multiplied by L^-1, then ordinary least squares.</summary>
internal sealed class MountedCheckFit
{
    private readonly Matrix<double> _root;
    private readonly Matrix<double> _axes;
    private readonly Vector<double> _white;

    public MountedCheckFit(IReadOnlyList<double> positions, double[] difference, Matrix<double> covariance)
    {
        _root = covariance.Cholesky().Factor;
        var (middle, half) = ((positions[0] + positions[^1]) / 2, (positions[^1] - positions[0]) / 2);
        var line = Matrix<double>.Build.Dense(difference.Length, 2, (i, k) => k == 0 ? 1 : (positions[i] - middle) / half);
        // Orthonormal: what a line may take is what lies along these two.
        _axes = _root.Solve(line).QR(MathNet.Numerics.LinearAlgebra.Factorization.QRMethod.Thin).Q;
        _white = Without(_root.Solve(Vector<double>.Build.Dense(difference)));
        Left = (_root * _white).ToArray();
        ChiSquared = _white.DotProduct(_white);
        var along = _root * _axes;
        Uncertainties = [.. Enumerable.Range(0, difference.Length).Select(i => Math.Sqrt(Math.Max(covariance[i, i] - along.Row(i).DotProduct(along.Row(i)), 1e-12 * covariance[i, i])))];
    }

    /// <summary>What the line leaves.</summary>
    public double[] Left { get; }

    /// <summary>Standard uncertainty of each of these.</summary>
    public double[] Uncertainties { get; }

    public double ChiSquared { get; }

    /// <summary>Chance of a chi-squared as large, or of Fisher's F where V is known from few repeats.</summary>
    /// <param name="degreesOfFreedom">Of V.</param>
    /// <param name="taken">Of chi-squared by a shape that was fitted as well, and how many unknowns it has.</param>
    public double Chance(double degreesOfFreedom, (double ChiSquared, int Unknowns) taken = default)
    {
        var (left, n) = (ChiSquared - taken.ChiSquared, Left.Length - 2 - taken.Unknowns);
        return left <= 0 ? 1
            : double.IsInfinity(degreesOfFreedom) ? SpecialFunctions.GammaUpperRegularized(n / 2.0, left / 2)
            : SpecialFunctions.BetaRegularized(degreesOfFreedom / 2, n / 2.0, degreesOfFreedom / (degreesOfFreedom + left));
    }

    /// <summary>How much of a shape is in the difference, by least squares beside the line, and by how much chi-squared falls with it; null where the line takes all of it.</summary>
    public (double Size, double Uncertainty, double Fall)? Share(double[] shape)
    {
        var raw = _root.Solve(Vector<double>.Build.Dense(shape));
        var white = Without(raw);
        var square = white.DotProduct(white);
        if (!(square > 1e-9 * raw.DotProduct(raw)))
            return null;
        var along = white.DotProduct(_white);
        return (along / square, 1 / Math.Sqrt(square), along * along / square);
    }

    private Vector<double> Without(Vector<double> white) => white - (_axes * _axes.TransposeThisAndMultiply(white));
}
