using System;
using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>What each input of a profile's errors does to a figure.</summary>
internal static class ErrorBudget
{
    public const string Stations = "scatter from station to station";
    public const string Between = "face between the stations";

    public static IReadOnlyList<UncertaintyComponent> Of(HeightFigure figure, HeightErrors errors)
    {
        var lines = errors.Shapes.GroupBy(s => Family(s.Input)).Select(group =>
        {
            var widest = group.Select(s => figure.Stations.Residuals(s.Heights)).ToArray();
            var first = group.First();
            return new UncertaintyComponent(group.Key, figure.WidestOfShapes(widest), group.Min(s => s.DegreesOfFreedom), first.AveragesOut, first.Remedy);
        });
        var scatter = new UncertaintyComponent(
            Stations, errors.WidestOfStations(figure), errors.StationDegreesOfFreedom, AveragesOut.Repeating, "take more passes, some of them after lifting the rail and laying it again");
        if (errors.Between is [var between, ..])
        {
            var shapes = errors.Between.Select(s => figure.Stations.Residuals(s.Heights)).ToArray();
            lines = lines.Append(new UncertaintyComponent(Between, figure.WidestOfShapes(shapes), between.DegreesOfFreedom, between.AveragesOut, between.Remedy));
        }

        return FixedList<UncertaintyComponent>.Copy(lines.Append(scatter).OrderByDescending(c => c.StandardUncertainty));
    }

    // A guide bends in several shapes and a dial errs in several waves: each is one line to a reader.
    private static string Family(string input)
        => input.LastIndexOf(": ", StringComparison.Ordinal) is > 0 and var at && (input.StartsWith("guide ", StringComparison.Ordinal) || input.StartsWith("dial ", StringComparison.Ordinal)) ? input[..at] : input;
}
