using System;

namespace Waywright;

/// <summary>
/// Gaussian regression of first order over given stations: the filtered height at x is that of the straight line through the stations around it which
/// is best by least squares weighted with s(ξ - x), so it is a weighted sum of the heights. Row k holds the weights at station k.
/// </summary>
internal sealed class GaussianWeights
{
    /// <summary>alpha = sqrt(ln 2 / π), which lets half of a wave as long as the cut-off through (ISO 16610-21).</summary>
    public const double Alpha = 0.46971863934982566;

    // s falls to 1e-24 of its height here.
    private const double Reach = 2;

    private readonly int[] _first;
    private readonly double[][] _rows;

    private GaussianWeights(int[] first, double[][] rows) => (_first, _rows) = (first, rows);

    /// <param name="positions">In rising order, several within any cut-off.</param>
    /// <param name="cutoff">In the unit of the positions.</param>
    public static GaussianWeights Of(ReadOnlySpan<double> positions, double cutoff)
    {
        var first = new int[positions.Length];
        var rows = new double[positions.Length][];
        var (from, to) = (0, 0);
        for (var k = 0; k < positions.Length; k++)
        {
            while (positions[k] - positions[from] > Reach * cutoff)
                from++;
            while (to < positions.Length && positions[to] - positions[k] <= Reach * cutoff)
                to++;
            (first[k], rows[k]) = (from, Row(positions[from..to], positions[k], cutoff));
        }

        return new GaussianWeights(first, rows);
    }

    /// <summary>The filtered heights.</summary>
    public double[] Apply(ReadOnlySpan<double> heights)
    {
        var filtered = new double[_rows.Length];
        for (var k = 0; k < filtered.Length; k++)
        {
            var sum = 0.0;
            // From the station's own height, so that equal heights stay equal to the last digit.
            for (var i = 0; i < _rows[k].Length; i++)
                sum += _rows[k][i] * (heights[_first[k] + i] - heights[k]);
            filtered[k] = heights[k] + sum;
        }

        return filtered;
    }

    /// <summary>What one station's height does to all filtered ones.</summary>
    public double[] Column(int station)
    {
        var column = new double[_rows.Length];
        for (var k = 0; k < column.Length; k++)
        {
            var i = station - _first[k];
            column[k] = i >= 0 && i < _rows[k].Length ? _rows[k][i] : 0;
        }

        return column;
    }

    private static double[] Row(ReadOnlySpan<double> positions, double at, double cutoff)
    {
        var weights = new double[positions.Length];
        double sum0 = 0, sum1 = 0, sum2 = 0;
        for (var i = 0; i < weights.Length; i++)
        {
            var d = (positions[i] - at) / (Alpha * cutoff);
            weights[i] = Math.Exp(-Math.PI * d * d);
            sum0 += weights[i];
            sum1 += weights[i] * d;
            sum2 += weights[i] * d * d;
        }

        // The line's height at x = `at` from its normal equations: Σ a = 1 and Σ a d = 0, so a straight line is its own filtered line.
        var determinant = (sum0 * sum2) - (sum1 * sum1);
        for (var i = 0; i < weights.Length; i++)
            weights[i] *= (sum2 - (sum1 * (positions[i] - at) / (Alpha * cutoff))) / determinant;
        return weights;
    }
}
