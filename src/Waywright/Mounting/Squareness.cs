using System;
using System.Collections.Generic;
using System.Linq;
using MathNet.Numerics;
using MathNet.Numerics.LinearAlgebra;

namespace Waywright;

/// <summary>
/// Whether a frame ABCD is square, from its four sides and both diagonals: the quadrilateral is fitted by least squares, six lengths for five unknowns, so one of them is a
/// check. Equal diagonals alone don't prove a right angle, a trapezium has them too; and a tape's zero error, the same in both diagonals, hardly turns the angle.
/// </summary>
/// <remarks>For a parallelogram the corner is off by <c>(d2² - d1²) / (4 a b)</c> rad (law of cosines, d1 from the corner), which the fit meets.</remarks>
public sealed record Squareness
{
    private const int Turns = 30;

    private Squareness(Uncertain offRad, double checkChance, IReadOnlyList<double> leftMm, double sideMm)
        => (OffRad, CheckChance, LeftMm, SideMm) = (offRad, checkChance, leftMm, sideMm);

    /// <summary>How far the corner at A is from a right angle, rad; positive where it is wider than 90 degrees.</summary>
    public Uncertain OffRad { get; }

    /// <summary>Chance that lengths of these uncertainties disagree as much: small where a length was read or written wrong.</summary>
    public double CheckChance { get; }

    /// <summary>Measured less fitted, mm: AB, BC, CD, DA, AC, BD.</summary>
    public IReadOnlyList<double> LeftMm { get; }

    /// <summary>The side DA, mm, that the angle is shown on.</summary>
    public double SideMm { get; }

    /// <summary>By how much D is out of square along AB, mm.</summary>
    public Uncertain OffMm => OffRad * SideMm;

    /// <summary>Whether the corner is proven to be out of square at 95 %.</summary>
    public bool IsOut => Math.Abs(OffRad.Value) > OffRad.Expanded().U;

    /// <summary>Whether the lengths agree with each other within their uncertainties at 99 %.</summary>
    public bool IsClosed => CheckChance > 0.01;

    /// <summary>Fits the quadrilateral.</summary>
    /// <param name="ab">Side AB, mm.</param>
    /// <param name="bc">Side BC, mm.</param>
    /// <param name="cd">Side CD, mm.</param>
    /// <param name="da">Side DA, mm.</param>
    /// <param name="ac">Diagonal AC, mm.</param>
    /// <param name="bd">Diagonal BD, mm.</param>
    /// <exception cref="ArgumentException">A length is not above 0 or has no uncertainty, or sides and diagonals can't close: some three of them break the triangle inequality.</exception>
    public static Squareness Of(Uncertain ab, Uncertain bc, Uncertain cd, Uncertain da, Uncertain ac, Uncertain bd)
    {
        Uncertain[] lengths = [ab, bc, cd, da, ac, bd];
        Check(lengths);
        var weights = lengths.Select(l => 1 / l.StandardUncertainty).ToArray();
        var measured = lengths.Select(l => l.Value).ToArray();
        var place = Start(measured);
        var jacobian = Matrix<double>.Build.Dense(6, 5);
        var left = new double[6];
        for (var turn = 0; turn < Turns; turn++)
        {
            Linearise(place, measured, jacobian, left);
            var step = Weighted(jacobian, weights).QR().Solve(Vector<double>.Build.DenseOfEnumerable(left.Select((r, i) => r * weights[i])));
            for (var k = 0; k < 5; k++)
                place[k] += step[k];
            if (step.AbsoluteMaximum() < 1e-12 * measured[0])
                break;
        }

        Linearise(place, measured, jacobian, left);
        // Angle of D seen from A: its sensitivities to the lengths are those of the fit.
        var (dx, dy) = (place[3], place[4]);
        var square = (dx * dx) + (dy * dy);
        var gradient = Vector<double>.Build.DenseOfArray([0, 0, 0, -dy / square, dx / square]);
        var weighted = Weighted(jacobian, weights);
        var normal = weighted.TransposeThisAndMultiply(weighted);
        var sensitivities = (weighted * normal.Solve(gradient)).Select((s, i) => s * weights[i]).ToArray();
        var off = Math.Atan2(dy, dx) - (Math.PI / 2);
        var squares = left.Select((r, i) => r * weights[i] * r * weights[i]).Sum();
        return new Squareness(Uncertain.Of(off, lengths, sensitivities), SpecialFunctions.Erfc(Math.Sqrt(squares / 2)), FixedList<double>.Own(left), da.Value);
    }

    private static void Check(Uncertain[] lengths)
    {
        if (lengths.Any(l => l is null || !(l.Value > 0)))
            throw new ArgumentException("Every side and diagonal needs a length above 0 mm.", nameof(lengths));
        if (lengths.Any(l => !(l.StandardUncertainty > 0)))
            throw new ArgumentException("Every length needs an uncertainty: no tape is exact.", nameof(lengths));
        (int, int, int, string)[] triangles = [(0, 1, 4, "AB, BC and AC"), (2, 3, 4, "CD, DA and AC"), (0, 3, 5, "AB, DA and BD"), (1, 2, 5, "BC, CD and BD")];
        foreach (var (a, b, c, name) in triangles)
        {
            var (x, y, z) = (lengths[a].Value, lengths[b].Value, lengths[c].Value);
            if (x + y <= z || y + z <= x || z + x <= y)
                throw new ArgumentException(FormattableString.Invariant($"{name} can't close: {x}, {y} and {z} mm make no triangle. Measure them again."), nameof(lengths));
        }
    }

    // A at 0, B on the x axis, C and D by the triangles over AB.
    private static double[] Start(double[] l)
    {
        var (cx, cy) = Third(l[0], l[4], l[1]);
        var (dx, dy) = Third(l[0], l[3], l[5]);
        return [l[0], cx, cy, dx, dy];
    }

    // The point at that distance from A and from B.
    private static (double X, double Y) Third(double ab, double fromA, double fromB)
    {
        var x = ((ab * ab) + (fromA * fromA) - (fromB * fromB)) / (2 * ab);
        return (x, Math.Sqrt((fromA * fromA) - (x * x)));
    }

    private static Matrix<double> Weighted(Matrix<double> jacobian, double[] weights) => Matrix<double>.Build.Dense(6, 5, (i, k) => jacobian[i, k] * weights[i]);

    // Unknowns: x of B, C, D. Lengths: AB, BC, CD, DA, AC, BD.
    private static void Linearise(double[] place, double[] measured, Matrix<double> jacobian, double[] left)
    {
        var (b, cx, cy, dx, dy) = (place[0], place[1], place[2], place[3], place[4]);
        jacobian.Clear();
        Row(0, b, 0, [(0, 1, 0)]);
        Row(1, cx - b, cy, [(0, -1, 0), (1, 1, 0), (2, 0, 1)]);
        Row(2, dx - cx, dy - cy, [(1, -1, 0), (2, 0, -1), (3, 1, 0), (4, 0, 1)]);
        Row(3, dx, dy, [(3, 1, 0), (4, 0, 1)]);
        Row(4, cx, cy, [(1, 1, 0), (2, 0, 1)]);
        Row(5, dx - b, dy, [(0, -1, 0), (3, 1, 0), (4, 0, 1)]);

        void Row(int i, double x, double y, ReadOnlySpan<(int Unknown, double AlongX, double AlongY)> parts)
        {
            var length = Math.Sqrt((x * x) + (y * y));
            left[i] = measured[i] - length;
            foreach (var (unknown, alongX, alongY) in parts)
                jacobian[i, unknown] += ((x * alongX) + (y * alongY)) / length;
        }
    }
}
