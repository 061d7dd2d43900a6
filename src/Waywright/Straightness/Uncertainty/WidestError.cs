using System;
using System.Linq;

namespace Waywright;

/// <summary>
/// The most that a single comparison of heights behind a figure can be uncertain by. The true figure is one of them, so its error is no wider than this:
/// s² = (largest station uncertainty)² x (widest comparison of unit errors)² + (widest comparison over the shapes)².
/// </summary>
/// <param name="OfStations">The part that repeating makes smaller.</param>
/// <param name="OfShapes">The part of the shapes.</param>
/// <param name="DegreesOfFreedom">By Welch and Satterthwaite.</param>
internal readonly record struct WidestError(double OfStations, double OfShapes, double DegreesOfFreedom)
{
    /// <summary>Both parts together, s.</summary>
    public double Um => Math.Sqrt((OfStations * OfStations) + (OfShapes * OfShapes));

    public static WidestError Of(HeightFigure figure, HeightErrors errors)
    {
        var noise = errors.WidestOfStations(figure);
        var shapes = errors.Shapes.Select(s => figure.Stations.Residuals(s.Heights)).ToArray();
        var shared = shapes.Length == 0 ? 0 : figure.WidestOfShapes(shapes);
        var square = (noise * noise) + (shared * shared);
        // Each shape alone at its widest understates the degrees of freedom a little: the safe side.
        var fourth = Fourth(noise) / errors.StationDegreesOfFreedom;
        for (var i = 0; i < shapes.Length; i++)
        {
            if (double.IsFinite(errors.Shapes[i].DegreesOfFreedom))
                fourth += Fourth(figure.WidestOfShapes([shapes[i]])) / errors.Shapes[i].DegreesOfFreedom;
        }

        return new WidestError(noise, shared, fourth > 0 ? Math.Max(1, square * square / fourth) : double.PositiveInfinity);
    }

    private static double Fourth(double value) => value * value * value * value;
}
