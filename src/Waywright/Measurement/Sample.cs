using System;
using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>What a series of readings says by itself: mean, scatter, whether neighbours hang together, and which readings don't belong.</summary>
internal sealed record Sample
{
    /// <summary>1 / (quantile 3/4 of the normal distribution): makes the median absolute deviation estimate a standard deviation.</summary>
    private const double MadToDeviation = 1.4826;

    private readonly FixedList<double> _values;

    /// <exception cref="ArgumentException">Fewer than two values, or one that is not finite.</exception>
    public Sample(IEnumerable<double> values)
    {
        _values = FixedList<double>.Copy(values);
        if (_values.Count < 2 || !_values.All(double.IsFinite))
            throw new ArgumentException("At least two values are needed, all finite.", nameof(values));
        (Mean, StandardDeviation) = MonteCarloResult.Moments(_values.AsSpan());
        Median = MedianOf(_values);
        MedianAbsoluteDeviation = MedianOf(_values.Select(v => Math.Abs(v - Median)));
    }

    public double Mean { get; }

    /// <summary>With n - 1.</summary>
    public double StandardDeviation { get; }

    public double Median { get; }

    /// <summary>Median of the distances to the median, not scaled.</summary>
    public double MedianAbsoluteDeviation { get; }

    /// <summary>Lag-1 autocorrelation, sum (x_i - m)(x_i+1 - m) / sum (x_i - m)2, as in NIST StRD; null for equal values.</summary>
    public double? Autocorrelation
    {
        get
        {
            double products = 0, squares = 0, before = 0;
            // Distances of distances: the mean itself may not be a double.
            var first = _values[0];
            var mean = _values.Sum(v => v - first) / _values.Count;
            for (var i = 0; i < _values.Count; i++)
            {
                var distance = _values[i] - first - mean;
                products += i > 0 ? distance * before : 0;
                squares += distance * distance;
                before = distance;
            }

            return squares > 0 ? products / squares : null;
        }
    }

    /// <summary>
    /// Hampel's identifier: places of values further than k x 1.4826 x MAD from the median (Davies and Gather, Journal of the American Statistical Association 88 (1993) 782-792).
    /// k = 3 flags 0.3 % of a large Gaussian sample without outliers, more of a small one.
    /// </summary>
    /// <param name="k">Above 0.</param>
    /// <param name="leastDeviation">The deviation is taken as at least this, such as the rounding of the readings, where more than half of them are equal and MAD is 0; with 0 nothing is then flagged.</param>
    public IReadOnlyList<int> Outliers(double k = 3, double leastDeviation = 0)
    {
        if (!(k > 0))
            throw new ArgumentOutOfRangeException(nameof(k), k, "A number above 0 is needed.");
        var limit = k * Math.Max(MadToDeviation * MedianAbsoluteDeviation, leastDeviation);
        return limit > 0 ? FixedList<int>.Copy(Enumerable.Range(0, _values.Count).Where(i => Math.Abs(_values[i] - Median) > limit)) : FixedList<int>.Empty;
    }

    private static double MedianOf(IEnumerable<double> values)
    {
        var ordered = values.Order().ToArray();
        return (ordered[(ordered.Length - 1) / 2] + ordered[ordered.Length / 2]) / 2;
    }
}
