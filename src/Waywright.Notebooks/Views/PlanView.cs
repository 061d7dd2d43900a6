using System.Globalization;

namespace Waywright.Notebooks;

/// <summary>Whether a set-up can decide a limit, and what would if it can't.</summary>
internal sealed class PlanView : View<MeasuringPlan>
{
    protected override string Verdict(MeasuringPlan result) => result.Verdict;

    protected override string Text(MeasuringPlan result)
        => $"{result.Verdict}\n{result.Next}\n\n{Table(result)}\n\n{Budget(result)}\n\n{string.Join('\n', result.Assumptions)}";

    protected override string Html(MeasuringPlan result)
        => Markup.View(
            result.Verdict,
            $"<p>{Markup.Words(result.Next)}</p>",
            Markup.Table(Table(result), "What the set-up can tell"),
            Markup.Details("What it is uncertain by", Markup.Table(Budget(result), "Inputs, largest first")),
            Markup.Details("What it rests on", Markup.List(result.Assumptions)));

    protected override IEnumerable<Figure> Figures(MeasuringPlan result, string id)
    {
        yield return new Figure($"{id}/decidable", "the limit can be decided", null, result.IsDecidable ? "yes" : "no", "1", method: Method);
        yield return Um($"{id}/noise-floor", "95 % point of a straight rail", result.NoiseFloorUm);
        yield return Um($"{id}/straight-reading", "mean reading of a straight rail", result.StraightReadingUm);
        if (result.SmallestDecidableLimitUm is { } smallest)
            yield return Um($"{id}/smallest-limit", "smallest decidable limit", smallest);
        if (result.ChanceHalfLimitAccepted is { } chance)
            yield return new Figure($"{id}/chance", "chance that a rail at half the limit is accepted", chance, null, "1", method: Method, relativeTolerance: 1e-9, absoluteTolerance: 1e-9);
    }

    private const string Method = "simulated sweeps, STRt, minimum zone";

    private static Figure Um(string id, string name, double um) => new(id, name, um, null, "um", method: Method, relativeTolerance: 1e-9, absoluteTolerance: 1e-9);

    private static TextTable Table(MeasuringPlan plan)
        => new TextTable("figure", "#value", "unit")
            .Add("limit", Shown.Limit(plan.LimitUm), "um")
            .Add("smallest decidable limit", Two(plan.SmallestDecidableLimitUm), "um")
            .Add("a straight rail reads, on average", Two(plan.StraightReadingUm), "um")
            .Add("and no more than this in 95 of 100 sweeps", Two(plan.NoiseFloorUm), "um")
            .Add("chance that a rail at half the limit is accepted", plan.ChanceHalfLimitAccepted is { } chance ? (100 * chance).ToString("0", CultureInfo.InvariantCulture) : Shown.None, "%")
            .Add("passes needed", plan.PassesNeeded is { } passes ? Shown.Count(passes) : Shown.None, "")
            .Add("guide straight to, at most", Two(plan.LargestGuideUm), "um");

    private static TextTable Budget(MeasuringPlan plan)
    {
        var table = new TextTable("input", "#standard uncertainty um", "averages out by", "~what makes it smaller");
        foreach (var line in plan.Budget)
            table.Add(line.Name, Two(line.StandardUncertainty), line.AveragesOut switch { AveragesOut.Repeating => "repeating", AveragesOut.Relaying => "laying anew", _ => "nothing" }, line.Remedy);
        return table;
    }

    private static string Two(double? um) => um is { } value ? Shown.ToSpread(value, value) : Shown.None;
}
