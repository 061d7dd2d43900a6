using System.Collections.Generic;
using System.Globalization;
using System.Linq;

namespace Waywright;

/// <summary>How grades are said.</summary>
internal static class GradeWords
{
    /// <summary>The grade's id is lower case; the axis is Z.</summary>
    public static string NameOf(string grade) => grade == "z" ? "Z" : grade;

    public static string Um(double um) => string.Create(CultureInfo.InvariantCulture, $"{um:0.#} um");

    /// <summary>A limit with its unit.</summary>
    public static string Limit(MeasuredFeature feature, double limit) => string.Create(CultureInfo.InvariantCulture, $"{limit:0.#} {RailFeature.UnitOf(feature.Feature)}");

    /// <summary><c>Side 14.2 um (12.1 to 16.3 at 95 %)</c>, or without the interval where there is none.</summary>
    public static string Value(MeasuredFeature feature)
    {
        if (feature.Feature == RailFeature.Drag)
            return string.Create(CultureInfo.InvariantCulture, $"Drag spread {feature.Read!.Value:0} % ({feature.With})");
        var name = char.ToUpperInvariant(feature.Feature[0]) + feature.Feature[1..];
        // A dial of 0.01 mm shows no tenths of a micrometre.
        var format = feature.Face?.Sweep.Setup is { DivisionUm: >= 10 } ? "0" : "0.0";
        string Plain(double um) => um.ToString(format, CultureInfo.InvariantCulture);
        return feature.Figure is { } figure
            ? $"{name} {Plain(figure.EstimateUm)} um ({Plain(figure.LowUm)} to {Plain(figure.HighUm)} at 95 %)"
            : $"{name} {Um(feature.Read!.Value)}";
    }

    public static string Basis(IReadOnlyList<GradedRail> rails, GradeRules rules, DragLog? drag)
        => $"{Straightness(rails, rules)} {Drag(rails, drag)}";

    private static string Straightness(IReadOnlyList<GradedRail> rails, GradeRules rules)
    {
        var features = rails.SelectMany(r => r.Features).Where(f => f.Value is not null && f.Feature != RailFeature.Drag).ToArray();
        var bounded = features.Count(f => f.IsBounded);
        if (bounded == 0)
            return "No set-up was given: figures were compared with their limits as read, and how far they may be off is not in it.";
        var told = string.Create(CultureInfo.InvariantCulture,
            $"A grade is given where the upper bounds of all its features, at {100 * rules.AcceptLevel:0.#} %, are within their limits; a return where the lower bound of the side, at {100 * rules.ClaimLevel:0.#} %, is beyond {rules.ReturnSideUm:0.#} um.");
        return bounded == features.Length ? told : told + " Faces without a set-up were compared as read.";
    }

    private static string Drag(IReadOnlyList<GradedRail> rails, DragLog? drag)
    {
        if (drag is null)
            return "Drag was not measured, so no grade says that a rail runs freely.";
        var without = rails.Where(r => r.Drag.All(d => d.Readings == 0)).Select(r => r.Rail).Order(System.StringComparer.Ordinal).ToArray();
        var unknown = drag.Carriages.Select(c => c.Rail).Distinct().Except(rails.Select(g => g.Rail)).ToArray();
        var told = $"A rail also goes back where a place of it binds in both directions with a second carriage. The drag is that of {drag.Source}, as read: how far the gauge may be off is not in it.";
        if (without.Length > 0)
            told += $" Not measured for {string.Join(", ", without)}.";
        return unknown.Length == 0 ? told : $"{told} Not among the sweeps, so not graded: {string.Join(", ", unknown)}.";
    }
}
