using System;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Double;
using MathNet.Numerics.LinearAlgebra.Factorization;

namespace Waywright;

/// <summary>Least squares of long columns by their normal equations: the columns here are well apart, and a trace of the diagonal keeps two that fall together solvable.</summary>
internal sealed class LeastSquares
{
    private const double Trace = 1e-12;

    private readonly Cholesky<double> _factor;

    public LeastSquares(double[][] columns)
    {
        Columns = columns;
        var gram = new DenseMatrix(columns.Length);
        for (var i = 0; i < columns.Length; i++)
        {
            for (var j = 0; j <= i; j++)
                gram[i, j] = gram[j, i] = Products.Sum(columns[i], columns[j]);
            gram[i, i] = (gram[i, i] * (1 + Trace)) + double.Epsilon;
            if (gram[i, i] < 1e-200)
                gram[i, i] = 1;
        }

        _factor = gram.Cholesky();
    }

    public double[][] Columns { get; }

    /// <summary>The coefficients that come nearest to y.</summary>
    public double[] Solve(ReadOnlySpan<double> y)
    {
        var right = new double[Columns.Length];
        for (var i = 0; i < right.Length; i++)
            right[i] = Products.Sum(Columns[i], y);
        return _factor.Solve(new DenseVector(right)).ToArray();
    }

    /// <summary>y less its nearest combination of the columns.</summary>
    public double[] Rest(ReadOnlySpan<double> y, ReadOnlySpan<double> coefficients)
    {
        var rest = y.ToArray();
        for (var i = 0; i < Columns.Length; i++)
            Products.Add(rest, -coefficients[i], Columns[i]);
        return rest;
    }

    /// <summary>For each of other columns its coefficients in these columns, and the inner products of what these leave of them.</summary>
    public (Matrix<double> Shares, Matrix<double> Left) Project(double[][] others)
    {
        var mixed = new DenseMatrix(Columns.Length, others.Length);
        var left = new DenseMatrix(others.Length);
        for (var j = 0; j < others.Length; j++)
        {
            for (var i = 0; i < Columns.Length; i++)
                mixed[i, j] = Products.Sum(Columns[i], others[j]);
            for (var i = 0; i <= j; i++)
                left[i, j] = left[j, i] = Products.Sum(others[i], others[j]);
        }

        var shares = _factor.Solve(mixed);
        return (shares, left - mixed.TransposeThisAndMultiply(shares));
    }
}
