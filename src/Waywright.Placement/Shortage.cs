using System.Globalization;

namespace Waywright.Placement;

/// <summary>Says what a position lacks, and what would fill it.</summary>
internal static class Shortage
{
    private const int MostNamed = 6;

    /// <param name="position">The position.</param>
    /// <param name="missing">How many rails it lacks.</param>
    /// <param name="fitting">How many rails fit it.</param>
    /// <param name="takenBy">Positions that hold them.</param>
    /// <param name="spare">Rails of any grade that are not placed.</param>
    /// <param name="rules">The limits.</param>
    /// <param name="options">How sizes are compared.</param>
    /// <param name="stock">Where sizes come from; null when they were not given.</param>
    public static UnfilledPosition Of(MachinePosition position, int missing, int fitting, IEnumerable<string> takenBy, IEnumerable<Candidate> spare, GradeRules rules, PlacementOptions options, RailStock? stock)
    {
        var ofSize = spare.Where(c => c.HasSize(position, options) && c.Graded.Grade != GradedBatch.Return).ToArray();
        var size = string.Create(CultureInfo.InvariantCulture, $"{position.WidthMm:0.###} x {position.LengthMm:0.###} mm");
        var better = position.Grade == rules.Grades[0].Grade ? "" : " or better";
        var rails = missing == 1 ? "one more" : string.Create(CultureInfo.InvariantCulture, $"{missing} more");
        var fits = fitting switch
        {
            0 => "none of the rails fits it",
            1 => $"the one that fits is placed at {Names(takenBy)}",
            _ => string.Create(CultureInfo.InvariantCulture, $"the {fitting} that fit are placed at {Names(takenBy)}"),
        };
        var remedies = ofSize.Select(c => Remedy(c, position, rules, stock)).OrderBy(r => r.Excess).ThenBy(r => r.Name, StringComparer.Ordinal).Take(missing).Select(r => r.Text).ToArray();
        var remedy = remedies.Length == 0 ? "no rail left over has that size" : string.Join("; ", remedies);
        return new UnfilledPosition(position.Name, missing, $"{position.Name} needs {rails} {size} {(missing == 1 ? "rail" : "rails")} of {position.Grade}{better}: {fits}; {remedy}.");
    }

    private static (double Excess, string Name, string Text) Remedy(Candidate rail, MachinePosition position, GradeRules rules, RailStock? stock)
    {
        var rule = rules.Grades.First(g => g.Grade == position.Grade);
        if (stock is not null && rail.Size is null)
            return (0, rail.Name, $"{rail.Name} may do once its size is in {stock.Source}");
        if (rail.GradeIndex <= rules.Grades.TakeWhile(g => !ReferenceEquals(g, rule)).Count())
            return (0, rail.Name, $"{rail.Name} would do if its {(position.Face == RailFace.Side ? "side" : "top")} were swept over the middle half of the place at least");
        var over = rail.Graded.Features
            .Select(f => (Value: f, Limit: rule.LimitOf(f.Feature), Upper: f.Figure?.UpperBoundUm(rules.AcceptLevel) ?? f.Value))
            .Where(f => f.Limit is not null && f.Upper > f.Limit)
            .ToArray();
        // Barred for another reason than its figures: the grading said what to do.
        // Straight enough: one more run of a carriage may do, before any rail whose figures are over.
        if (over.Length == 0 && rail.Graded.DragPlaces.Any(p => p.Cause == DragCause.Undecided))
            return (1, rail.Name, $"{rail.Name} may do after this: {Lower(rail.Graded.Next)}");
        if (over.Length == 0 || rail.Graded is not { Side: not null, Top: not null })
            return (double.PositiveInfinity, rail.Name, $"{rail.Name} may do after this: {Lower(rail.Graded.Next)}");
        var limits = over.Select(f => string.Create(CultureInfo.InvariantCulture, $"its {Face(f.Value.Feature)} were {(f.Value.Figure is null ? "" : "proven ")}within {f.Limit:0.#} {f.Value.Unit}{Window(f.Value.Feature)} ({f.Upper:0.#} now)"));
        return (over.Max(f => f.Upper!.Value / f.Limit!.Value), rail.Name, $"{rail.Name} would do if {string.Join(" and ", limits)}");
    }

    private static string Face(string feature) => feature == RailFeature.Drag ? "drag's spread" : feature.Split(' ')[0];

    private static string Window(string feature) => feature switch
    {
        RailFeature.SideLocal => string.Create(CultureInfo.InvariantCulture, $" over {GradeRules.LocalWindowMm} mm"),
        RailFeature.TopLocal => " over two pitches",
        RailFeature.Drag => " of its mean",
        RailFeature.TopMounted => " once screwed down",
        _ => "",
    };

    private static string Names(IEnumerable<string> names)
    {
        var all = names.ToArray();
        var shown = string.Join(", ", all.Take(MostNamed));
        return all.Length <= MostNamed ? shown : string.Create(CultureInfo.InvariantCulture, $"{shown} and {all.Length - MostNamed} more positions");
    }

    private static string Lower(string sentence) => sentence.Length == 0 ? "grade it again" : char.ToLowerInvariant(sentence[0]) + sentence[1..].TrimEnd('.');
}
