using System;
using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>
/// The mounted top as a linear map of the heights at the stations of the free one, z = f - r S f, f the natural spline through the stations, S the one through
/// the screws; looked at where stations, holes and ends are. The base's push between screws is not in it.
/// </summary>
internal sealed class MountedMap
{
    // Closer places tell the same.
    public const double ClosestMm = 0.01;

    private readonly double _share;
    private readonly double[] _screws;
    private readonly double[][] _modes;

    /// <param name="positions">Stations of the free top, mm from the dot, rising.</param>
    /// <param name="screws">The screws.</param>
    /// <param name="share">The rail's share of the way, 1 on a rigid base.</param>
    public MountedMap(double[] positions, ScrewPattern screws, double share = 1)
    {
        (_share, _screws) = (share, [.. screws.ScrewsMm]);
        Roughness = new StationRoughness(positions);
        Places = PlacesOf(Roughness.Knots, screws);
        var unit = new double[positions.Length];
        Columns = new double[positions.Length][];
        for (var i = 0; i < unit.Length; i++)
        {
            unit[i] = 1;
            Columns[i] = Mounted(unit);
            unit[i] = 0;
        }

        _modes = Array.ConvertAll(Roughness.Modes(Places), Pressed);
    }

    /// <summary>Stations, holes and ends, mm, rising.</summary>
    public double[] Places { get; }

    /// <summary>For each station what a height of 1 there does to the mounted top.</summary>
    public double[][] Columns { get; }

    public StationRoughness Roughness { get; }

    /// <summary>What the face between stations may do to the mounted top, for roughness 1.</summary>
    public IReadOnlyList<ErrorShape> UnitBetween => [.. _modes.Select(m => Between(m, 1))];

    /// <summary>The mounted top at the places.</summary>
    public double[] Mounted(ReadOnlySpan<double> heights)
    {
        var free = new double[Places.Length];
        new NaturalSpline(Roughness.Knots, Roughness.AtKnots(heights), new double[2 * Roughness.Knots.Length]).Along(Places, free);
        return Pressed(free);
    }

    /// <summary>What its heights are uncertain by: the stations' errors through the map, and that the face between stations is not known.</summary>
    public HeightErrors Errors(ReadOnlySpan<double> heights, ProfileErrors errors)
    {
        var sigma = Roughness.Sigma(heights, errors);
        var shapes = errors.Shapes.Select(s => new ErrorShape(s.Input, Mounted(s.Heights), s.DegreesOfFreedom, s.IsRectangular, s.AveragesOut, s.Remedy));
        return HeightErrors.Mapped(errors, Columns, FixedList<ErrorShape>.Copy(shapes), sigma > 0 ? FixedList<ErrorShape>.Copy(_modes.Select(m => Between(m, sigma))) : [], sigma);
    }

    private ErrorShape Between(double[] mode, double sigma)
        => new(ErrorBudget.Between, Array.ConvertAll(mode, h => h * sigma), Roughness.DegreesOfFreedom, IsRectangular: false, AveragesOut.Nothing,
            "read more stations between those you have, clear of the counterbores");

    // z - r S z.
    private double[] Pressed(double[] free)
    {
        var (held, pressed) = (new double[_screws.Length], new double[Places.Length]);
        for (var i = 0; i < held.Length; i++)
            held[i] = free[Array.BinarySearch(Places, _screws[i])];
        new NaturalSpline(_screws, held, new double[2 * held.Length]).Along(Places, pressed);
        for (var i = 0; i < pressed.Length; i++)
            pressed[i] = free[i] - (_share * pressed[i]);
        return pressed;
    }

    private static double[] PlacesOf(double[] stations, ScrewPattern screws)
    {
        var places = new List<double>(screws.HolesMm);
        foreach (var place in stations.Append(0).Append(screws.LengthMm))
        {
            if (!places.Any(p => Math.Abs(p - place) < ClosestMm))
                places.Add(place);
        }

        return [.. places.Order()];
    }
}
