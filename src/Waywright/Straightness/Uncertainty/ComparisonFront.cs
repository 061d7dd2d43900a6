using System;

namespace Waywright;

/// <summary>
/// Of all comparisons behind a figure those that can give the largest v . z + k s for some k: the largest value for each size of s. A size is rounded up, by at
/// most one part in <see cref="Sizes"/> of the largest, so what comes out is never too small.
/// </summary>
internal sealed class ComparisonFront
{
    private const int Sizes = 200;

    private readonly double[] _values = new double[Sizes + 1];
    private readonly double _stationSquare;
    private readonly double _least;
    private readonly double _step;

    /// <param name="stationUm">Largest standard uncertainty of a station.</param>
    /// <param name="widestUm">No s is larger.</param>
    /// <param name="leastValue">Smaller values are of no interest.</param>
    public ComparisonFront(double stationUm, double widestUm, double leastValue)
    {
        (_stationSquare, _least, _step) = (stationUm * stationUm, leastValue, widestUm / Sizes);
        Array.Fill(_values, double.NegativeInfinity);
    }

    /// <summary>Whether a comparison of this value is of interest.</summary>
    public bool Wants(double value) => value >= _least;

    /// <param name="value">v . z.</param>
    /// <param name="weightSquares">Sum of the squared weights.</param>
    /// <param name="shapeSquares">Sum over the shapes of (v . h)².</param>
    public void Add(double value, double weightSquares, double shapeSquares)
    {
        var size = Math.Min(Sizes, (int)Math.Ceiling(Math.Sqrt((_stationSquare * weightSquares) + shapeSquares) / _step));
        _values[size] = Math.Max(_values[size], value);
    }

    /// <summary>Largest v . z + factor s; null where nothing was added.</summary>
    public double? Highest(double factor)
    {
        var highest = double.NegativeInfinity;
        for (var size = 0; size <= Sizes; size++)
            highest = Math.Max(highest, _values[size] + (factor * size * _step));
        return double.IsNegativeInfinity(highest) ? null : highest;
    }
}
