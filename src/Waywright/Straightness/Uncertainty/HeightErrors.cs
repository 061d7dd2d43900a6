using System;
using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>
/// What the heights that a figure is taken of are uncertain by: independent draws, each of which moves one height or, where the heights follow others linearly, a column of them;
/// and shapes that move all of them.
/// </summary>
internal sealed class HeightErrors
{
    private readonly FixedList<double> _station;
    private readonly double[][]? _columns;

    private HeightErrors(ProfileErrors stated, IReadOnlyList<ErrorShape> shapes, double[][]? columns, IReadOnlyList<ErrorShape> between)
        => (Stated, Shapes, _columns, Between, _station) = (stated, shapes, columns, between, FixedList<double>.Copy(stated.StationUm));

    /// <summary>What was stated of the heights that were read.</summary>
    public ProfileErrors Stated { get; }

    public double StationDegreesOfFreedom => Stated.StationDegreesOfFreedom;

    /// <summary>Of the heights that the figure is taken of.</summary>
    public IReadOnlyList<ErrorShape> Shapes { get; }

    /// <summary>What the heights may be off that were not read but follow from others: it is missing in what was read, where errors are added to it.</summary>
    public IReadOnlyList<ErrorShape> Between { get; }

    /// <summary>The scale of that.</summary>
    public double Roughness { get; private init; }

    /// <summary>Standard deviation of each independent draw.</summary>
    public ReadOnlySpan<double> Station => _station.AsSpan();

    public static implicit operator HeightErrors(ProfileErrors errors) => new(errors, errors.Shapes, null, []);

    /// <summary>Of heights that follow those that were read linearly.</summary>
    /// <param name="stated">Of the heights that were read.</param>
    /// <param name="columns">For each height that was read what a change of 1 does to all heights.</param>
    /// <param name="shapes">Already of the heights that the figure is taken of.</param>
    /// <param name="between">What the map can't know.</param>
    /// <param name="roughness">The scale of that.</param>
    public static HeightErrors Mapped(ProfileErrors stated, double[][] columns, IReadOnlyList<ErrorShape> shapes, IReadOnlyList<ErrorShape> between, double roughness)
        => new(stated, shapes, columns, between) { Roughness = roughness };

    /// <summary>What lies between as errors of their own.</summary>
    public HeightErrors OfBetween() => OfShapes(Between);

    /// <summary>Errors that are shapes alone.</summary>
    public static HeightErrors OfShapes(IReadOnlyList<ErrorShape> shapes) => new(new ProfileErrors([.. new double[shapes[0].HeightsUm.Count]], double.PositiveInfinity, shapes), shapes, null, []);

    /// <summary>The independent draws alone, each of unit size and well known.</summary>
    public HeightErrors Unit() => new(new ProfileErrors([.. Enumerable.Repeat(1.0, _station.Count)], double.PositiveInfinity, []), [], _columns, []);

    /// <summary>Adds the same draw of a station to the heights of one trial.</summary>
    public void Add(int station, double draw, Span<double> heights)
    {
        if (_columns is null)
        {
            heights[station] = draw;
            return;
        }

        var column = _columns[station];
        for (var i = 0; i < column.Length; i++)
            heights[i] += column[i] * draw;
    }

    /// <summary>The most that independent draws can do to one comparison, as a standard deviation, or a little more.</summary>
    public double WidestOfStations(HeightFigure figure) => _columns is null ? _station.Max() * figure.WidestOfStations() : figure.WidestOfShapes(Columns(figure));

    /// <summary>For a front of comparisons: the largest deviation of a draw that moves one height, and all else that moves them.</summary>
    public (double StationUm, double[][] Shapes) Parts(HeightFigure figure)
    {
        var shapes = Shapes.Select(s => figure.Stations.Residuals(s.Heights));
        return _columns is null ? (_station.Max(), [.. shapes]) : (0, [.. Columns(figure), .. shapes]);
    }

    /// <summary>Covariance of all heights with one comparison, of the independent draws alone.</summary>
    /// <param name="weights">Of the comparison.</param>
    public double[] SpreadAlong(double[] weights)
    {
        if (_columns is null)
            return [.. weights.Select((w, i) => _station[i] * _station[i] * w)];
        var spread = new double[weights.Length];
        for (var i = 0; i < _columns.Length; i++)
        {
            var column = _columns[i];
            var along = 0.0;
            for (var k = 0; k < weights.Length; k++)
                along += column[k] * weights[k];
            along *= _station[i] * _station[i];
            for (var k = 0; k < weights.Length; k++)
                spread[k] += along * column[k];
        }

        return spread;
    }

    private double[][] Columns(HeightFigure figure)
        => [.. _columns!.Select((c, i) => figure.Stations.Residuals(Array.ConvertAll(c, h => h * _station[i])))];
}
