using System;

namespace Waywright;

/// <summary>QR of a tall matrix by Householder's reflections (Golub and Van Loan, Matrix Computations, 5.2): least squares without squaring the condition of the matrix.</summary>
internal sealed class Householder
{
    // A column of length 1 whose rest, after the columns before it, is shorter than this says nothing that they have not said.
    private const double Dependent = 1e-13;

    private readonly double[][] _vectors;
    private readonly double[][] _triangle;

    private Householder(double[][] vectors, double[][] triangle) => (_vectors, _triangle) = (vectors, triangle);

    /// <param name="columns">Columns of length 1, longer than they are many; they are overwritten.</param>
    /// <exception cref="ArgumentException">A column follows from those before it.</exception>
    public static Householder Of(double[][] columns)
    {
        var vectors = new double[columns.Length][];
        var triangle = new double[columns.Length][];
        for (var k = 0; k < columns.Length; k++)
        {
            triangle[k] = columns[k][..(k + 1)];
            vectors[k] = columns[k][k..];
            var length = Math.Sqrt(Product(vectors[k], vectors[k]));
            if (length < Dependent)
                throw new ArgumentException($"Column {k + 1} follows from the columns before it.", nameof(columns));
            triangle[k][k] = vectors[k][0] > 0 ? -length : length;
            vectors[k][0] -= triangle[k][k];
            for (var j = k + 1; j < columns.Length; j++)
                Reflect(vectors[k], columns[j].AsSpan(k));
        }

        return new(vectors, triangle);
    }

    /// <summary>The coefficients that leave the least squares.</summary>
    /// <param name="right">One value for each row; overwritten.</param>
    public double[] Solve(double[] right)
    {
        for (var k = 0; k < _vectors.Length; k++)
            Reflect(_vectors[k], right.AsSpan(k));
        return SolveTriangle(right[.._vectors.Length]);
    }

    /// <summary>Rows of the inverse of R: R^-1 R^-T is the covariance of the coefficients for a variance of 1.</summary>
    public double[][] InverseOfTriangle()
    {
        var p = _triangle.Length;
        var rows = new double[p][];
        for (var k = 0; k < p; k++)
            rows[k] = new double[p];
        for (var j = 0; j < p; j++)
        {
            var unit = new double[p];
            unit[j] = 1;
            SolveTriangle(unit);
            for (var k = 0; k < p; k++)
                rows[k][j] = unit[k];
        }

        return rows;
    }

    public static double Product(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        var sum = 0.0;
        for (var i = 0; i < a.Length; i++)
            sum += a[i] * b[i];
        return sum;
    }

    private double[] SolveTriangle(double[] right)
    {
        for (var k = right.Length - 1; k >= 0; k--)
        {
            right[k] /= _triangle[k][k];
            for (var i = 0; i < k; i++)
                right[i] -= _triangle[k][i] * right[k];
        }

        return right;
    }

    private static void Reflect(ReadOnlySpan<double> vector, Span<double> target)
    {
        var factor = 2 * Product(vector, target) / Product(vector, vector);
        for (var i = 0; i < vector.Length; i++)
            target[i] -= factor * vector[i];
    }
}
