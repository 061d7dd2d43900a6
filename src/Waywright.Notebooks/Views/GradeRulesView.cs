namespace Waywright.Notebooks;

/// <summary>The limits.</summary>
internal sealed class GradeRulesView : View<GradeRules>
{
    private const string Starting = "Starting limits: common practice, no source. No published limit for an unmounted miniature rail was found; set your own.";
    private const string Own = "Limits that you set. No published limit for an unmounted miniature rail was found to hold them against.";

    /// <summary>Where the limits come from.</summary>
    public static string Note(GradeRules rules) => IsStarting(rules) ? Starting : Own;

    public static TextTable Table(GradeRules rules)
    {
        var features = rules.Grades.SelectMany(g => g.Limits.Select(l => l.Feature)).Append(RailFeature.Side).Distinct().ToArray();
        var table = new TextTable(["!grade", .. features.Select(f => $"#{f} {RailFeature.UnitOf(f)}")]);
        foreach (var rule in rules.Grades)
            table.Add([rule.Grade, .. features.Select(f => Shown.Limit(rule.LimitOf(f)))]);
        table.Add([GradedBatch.Return, .. features.Select(f => f == RailFeature.Side ? $"> {Shown.Limit(rules.ReturnSideUm)}" : f == RailFeature.Drag ? "a place that binds" : Shown.None)]);
        return table;
    }

    protected override string Verdict(GradeRules result) => $"Grades, best first: {string.Join(", ", result.Grades.Select(g => g.Grade))}; return above {Shown.Limit(result.ReturnSideUm)} um at the side.";

    protected override string Text(GradeRules result) => $"{Verdict(result)}\n{Table(result)}\n{Note(result)}";

    protected override string Html(GradeRules result) => Markup.View(Verdict(result), Markup.Table(Table(result), "Limits of each grade"), Markup.List(Note(result)));

    private static bool IsStarting(GradeRules rules)
        => rules.ReturnSideUm == GradeRules.Starting.ReturnSideUm && rules.Grades.Count == GradeRules.Starting.Grades.Count
            && rules.Grades.Zip(GradeRules.Starting.Grades).All(g => g.First.Grade == g.Second.Grade && g.First.Limits.SequenceEqual(g.Second.Limits));
}
