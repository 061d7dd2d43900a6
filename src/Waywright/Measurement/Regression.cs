using System;
using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>
/// Least squares of y = b0 + b1 x1 + ... by Householder's QR on columns that are centred and scaled to length 1 (Golub and Van Loan, Matrix Computations, 5.3), refined.
/// Errors of y independent, of one unknown standard deviation. Checked by NIST StRD Longley, Wampler1 to 3, Pontius and Norris.
/// </summary>
internal sealed record Regression
{
    // Solving once more for what is left, which is calculated with twice the digits, takes most of the rounding out.
    private const int Refinements = 2;

    private Regression(FixedList<double> coefficients, FixedList<double> uncertainties, double deviation, int degreesOfFreedom, double? rSquared)
        => (Coefficients, Uncertainties, ResidualDeviation, DegreesOfFreedom, RSquared) = (coefficients, uncertainties, deviation, degreesOfFreedom, rSquared);

    /// <summary>b0, b1, ...</summary>
    public IReadOnlyList<double> Coefficients { get; }

    /// <summary>Their standard uncertainties.</summary>
    public IReadOnlyList<double> Uncertainties { get; }

    public double ResidualDeviation { get; }

    public int DegreesOfFreedom { get; }

    /// <summary>Null where all y are equal.</summary>
    public double? RSquared { get; }

    /// <param name="columns">x1, x2, ..., each with one value for each y.</param>
    /// <param name="y">More values than coefficients.</param>
    /// <exception cref="ArgumentException">Lengths differ, too few values, one not finite, or a column that follows from the others.</exception>
    public static Regression Of(IReadOnlyList<IReadOnlyList<double>> columns, IReadOnlyList<double> y)
    {
        var (n, p) = (y.Count, columns.Count);
        if (columns.Any(c => c.Count != n) || n < p + 2)
            throw new ArgumentException($"{p} columns need {p + 2} or more values, as many in each column as in y.", nameof(columns));
        if (columns.Any(c => !c.All(double.IsFinite)) || !y.All(double.IsFinite))
            throw new ArgumentException("A value is not finite.", nameof(columns));
        var means = new double[p];
        var scales = new double[p];
        var scaled = new double[p][];
        for (var k = 0; k < p; k++)
        {
            (scaled[k], means[k]) = Centred(columns[k]);
            scales[k] = Length(scaled[k]);
            if (scales[k] == 0)
                throw new ArgumentException($"Column {k + 1} is constant.", nameof(columns));
            for (var i = 0; i < n; i++)
                scaled[k][i] /= scales[k];
        }

        var factor = Householder.Of(scaled);
        var coefficients = new double[p + 1];
        var rest = y.ToArray();
        for (var step = 0; step <= Refinements; step++)
        {
            var (centred, mean) = Centred(rest);
            var slopes = factor.Solve(centred);
            coefficients[0] += mean;
            for (var k = 0; k < p; k++)
            {
                coefficients[k + 1] += slopes[k] / scales[k];
                coefficients[0] -= slopes[k] / scales[k] * means[k];
            }

            rest = Residuals(columns, y, coefficients);
        }

        var deviation = Length(rest) / Math.Sqrt(n - p - 1);
        var total = Length(Centred(y).Values);
        return new(
            FixedList<double>.Own(coefficients),
            FixedList<double>.Own(UncertaintiesOf(factor.InverseOfTriangle(), means, scales, deviation, n)),
            deviation,
            n - p - 1,
            total > 0 ? 1 - (Length(rest) / total * (Length(rest) / total)) : null);
    }

    /// <summary>y = b0 + b1 x + ... + bd x^d.</summary>
    /// <exception cref="ArgumentException">As for the other.</exception>
    public static Regression Polynomial(IReadOnlyList<double> x, IReadOnlyList<double> y, int degree)
        => Of([.. Enumerable.Range(1, degree).Select(d => FixedList<double>.Copy(x.Select(v => Enumerable.Repeat(v, d).Aggregate(1.0, (a, b) => a * b))))], y);

    private static (double[] Values, double Mean) Centred(IReadOnlyList<double> values)
    {
        var first = values[0];
        var mean = values.Sum(v => v - first) / values.Count;
        return ([.. values.Select(v => v - first - mean)], first + mean);
    }

    private static double[] UncertaintiesOf(double[][] inverse, double[] means, double[] scales, double deviation, int n)
    {
        var p = means.Length;
        var uncertainties = new double[p + 1];
        var atOrigin = new double[p];
        for (var k = 0; k < p; k++)
        {
            uncertainties[k + 1] = deviation / scales[k] * Length(inverse[k]);
            for (var j = 0; j < p; j++)
                atOrigin[j] += inverse[k][j] * means[k] / scales[k];
        }

        uncertainties[0] = deviation * Math.Sqrt((1.0 / n) + Householder.Product(atOrigin, atOrigin));
        return uncertainties;
    }

    // y - b0 - b1 x1 - ..., each product and sum with its rounding error carried along (Ogita, Rump and Oishi, SIAM Journal on Scientific Computing 26 (2005) 1955-1988).
    private static double[] Residuals(IReadOnlyList<IReadOnlyList<double>> columns, IReadOnlyList<double> y, double[] coefficients)
    {
        var residuals = new double[y.Count];
        for (var i = 0; i < residuals.Length; i++)
        {
            var (sum, errors) = (y[i], 0.0);
            for (var k = 0; k < coefficients.Length; k++)
            {
                var x = k == 0 ? 1 : columns[k - 1][i];
                var product = -coefficients[k] * x;
                errors += Math.FusedMultiplyAdd(-coefficients[k], x, -product);
                var next = sum + product;
                var part = next - sum;
                errors += (sum - (next - part)) + (product - part);
                sum = next;
            }

            residuals[i] = sum + errors;
        }

        return residuals;
    }

    private static double Length(double[] values) => Math.Sqrt(Householder.Product(values, values));
}
