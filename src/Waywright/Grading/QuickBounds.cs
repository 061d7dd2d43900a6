using System;

namespace Waywright;

/// <summary>
/// The guaranteed interval of a figure without trials of its own. T is a seminorm, so T(e) &lt;= u T(unit errors of the stations) + sum of |draw| T(shape), trial by trial;
/// where stations differ in u the largest stands for all, which makes no quantile smaller (Anderson 1955, from memory). Wider than the bounds that a figure is told
/// with, so what it proves they prove, and only what it leaves open is simulated.
/// </summary>
internal sealed class QuickBounds
{
    private readonly double[] _noise;
    private readonly double[] _between;
    private readonly double _observed;
    private readonly double _roughness;

    /// <param name="layout">Where it was read.</param>
    /// <param name="profile">The heights of the figure.</param>
    /// <param name="errors">Of these.</param>
    /// <param name="windowMm">Of the worst stretch; null for the whole length.</param>
    /// <param name="observed">The figure as read, um.</param>
    /// <param name="shelf">What rails share.</param>
    public QuickBounds(StationLayout layout, Profile profile, HeightErrors errors, double? windowMm, double observed, TrialShelf shelf)
    {
        _observed = observed;
        var figure = layout.FigureOf(windowMm, profile);
        var unit = layout.UnitNoise(windowMm, profile, errors);
        var largest = 0.0;
        foreach (var u in errors.Station)
            largest = Math.Max(largest, u);
        _noise = new double[unit.Length];
        for (var t = 0; t < _noise.Length; t++)
            _noise[t] = largest * unit[t];
        for (var k = 0; k < errors.Shapes.Count; k++)
        {
            var residuals = layout.Stations.Residuals(errors.Shapes[k].Heights);
            var size = figure.At(residuals, residuals).Value;
            if (size == 0)
                continue;
            var draws = shelf.DrawsOf(errors.Shapes[k], k);
            for (var t = 0; t < _noise.Length; t++)
                _noise[t] += size * draws[t];
        }

        RadixSort.Sort(_noise);
        _roughness = errors.Roughness;
        _between = _roughness > 0 ? layout.UnitBetween(windowMm, profile) : [];
    }

    public double FloorUm => FigureWork.Quantile(_noise, 0.95);

    /// <summary>Whether the figure is proven to be within a limit.</summary>
    public bool IsWithin(double limitUm, double confidence) => confidence >= FewerDegrees.LeastConfidence && FloorUm <= limitUm && _observed + Off(confidence) <= limitUm;

    /// <summary>Whether it is proven to be beyond one.</summary>
    public bool IsBeyond(double limitUm, double confidence) => confidence >= FewerDegrees.LeastConfidence && FloorUm <= limitUm && _observed - Off(confidence) > limitUm;

    private double Off(double confidence)
        => FigureWork.Quantile(_noise, confidence) + (_between.Length == 0 ? 0 : _roughness * FigureWork.Quantile(_between, confidence));
}
