using System.Globalization;

namespace Waywright.Notebooks;

/// <summary>A batch with what to do next for each rail.</summary>
internal sealed class GradedBatchView : View<GradedBatch>
{
    protected override string Verdict(GradedBatch result)
    {
        var parts = result.Rails.GroupBy(r => r.Grade).Select(g => $"{Action(g.Key)} {string.Join(", ", g.Select(r => r.Rail))}");
        return Shown.First(string.Join("; ", parts)) + ".";
    }

    protected override string Text(GradedBatch result)
        => $"{Verdict(result)}\n\n{Table(result, reasons: false)}\n\n{string.Join('\n', result.Rails.Select(r => $"{r.Rail}: {r.Grade}. {r.Reason} {r.Next}"))}\n\n{GradedBatch.Caveat}";

    protected override string Html(GradedBatch result)
        => Markup.View(
            Verdict(result),
            Markup.Counts(result.Counts),
            BatchPicture.Of(result) is { } picture ? FigureHtml.Of(picture, BatchPicture.Caption(result)) : "",
            Markup.Table(Table(result, reasons: true), "Rails by what to do next"),
            Markup.Details("Limits", Markup.Table(GradeRulesView.Table(result.Rules), "Limits of each grade") + Markup.List(GradeRulesView.Note)),
            Markup.Details("What it rests on", Markup.List([GradedBatch.Caveat, .. StraightnessFiguresView.Assumptions])));

    protected override IEnumerable<Figure> Figures(GradedBatch result, string id)
        => result.Rails.OrderBy(r => r.Rail, StringComparer.Ordinal).SelectMany(r => GradedRailView.Of(r, $"{id}/{GradedRailView.IdOf(r.Rail)}"));

    /// <summary>What a person does with rails of a grade.</summary>
    internal static string Action(string grade) => grade switch
    {
        GradedBatch.Return => "send back",
        GradedBatch.MeasureAgain => "measure again",
        "z" => "use for Z",
        _ => $"use for {grade}",
    };

    private static TextTable Table(GradedBatch batch, bool reasons)
    {
        string[] figures = ["rail", "!grade", "#side um", "#side local um", "#top local um", "#top free um"];
        var table = new TextTable(reasons ? [.. figures, "~why", "~next"] : [.. figures, "~next"]);
        foreach (var rail in batch.Rails)
        {
            string[] cells =
            [
                rail.Rail, rail.Grade, Shown.Um(rail.ValueOf(RailFeature.Side), rail.Side?.Sweep.Setup), Shown.Um(rail.ValueOf(RailFeature.SideLocal), rail.Side?.Sweep.Setup),
                Shown.Um(rail.ValueOf(RailFeature.TopLocal), rail.Top?.Sweep.Setup), Shown.Um(rail.Top?.Straightness.MinimumZone.Line.STRtUm, rail.Top?.Sweep.Setup),
            ];
            table.Add(reasons ? [.. cells, rail.Reason, rail.Next] : [.. cells, rail.Next]);
        }

        return table;
    }
}

/// <summary>One rail.</summary>
internal sealed class GradedRailView : View<GradedRail>
{
    protected override string Verdict(GradedRail result) => $"{result.Rail}: {result.Grade}. {result.Reason}";

    protected override string Text(GradedRail result) => $"{Verdict(result)}\n{Table(result)}\n{result.Next}";

    protected override string Html(GradedRail result)
        => Markup.View(
            Verdict(result),
            $"<p>{Markup.Words(result.Next)}</p>",
            FaceOf(result, result.Side, RailFeature.Side, RailFeature.SideLocal),
            FaceOf(result, result.Top, null, RailFeature.TopLocal),
            Markup.Table(Table(result), "Each figure beside its limit"),
            Markup.Details("What it rests on", Markup.List([GradedBatch.Caveat, .. StraightnessFiguresView.Assumptions])));

    protected override IEnumerable<Figure> Figures(GradedRail result, string id) => Of(result, id);

    internal static IEnumerable<Figure> Of(GradedRail rail, string id)
    {
        yield return new Figure($"{id}/grade", $"{rail.Rail}: grade", null, rail.Grade, "1", method: "comparison with the limits");
        foreach (var feature in rail.Features.Where(f => f.ValueUm is not null))
            yield return new Figure($"{id}/{feature.Feature.Replace(' ', '-')}", $"{rail.Rail}: {feature.Feature}", feature.ValueUm, null, "um", method: "STRt, minimum zone, no filter", relativeTolerance: 1e-9, absoluteTolerance: 1e-9);
    }

    /// <summary>A rail's name as part of an id: lower case, what is no letter or digit becomes a dash.</summary>
    internal static string IdOf(string rail) => string.Concat(rail.ToLowerInvariant().Select(c => char.IsAsciiLetterOrDigit(c) ? c.ToString() : string.Create(CultureInfo.InvariantCulture, $"-{(int)c:x}")));

    private static string FaceOf(GradedRail rail, PooledSweep? face, string? whole, string local)
        => face is null ? "" : FigureHtml.Of(RailPicture.Of(face, rail.Features.FirstOrDefault(f => f.Feature == whole)?.Limit, rail.LimitingFeature == local), RailPicture.Caption(face), RailPicture.Data(face));

    private static TextTable Table(GradedRail rail)
    {
        var table = new TextTable("feature", "#um", "#limit um");
        foreach (var feature in rail.Features)
            table.Add(feature.Feature, Shown.Um(feature.ValueUm), Shown.Limit(feature.Limit));
        return table;
    }
}

/// <summary>The limits.</summary>
internal sealed class GradeRulesView : View<GradeRules>
{
    public const string Note = "Starting limits: common practice, no source. No published limit for an unmounted miniature rail was found; set your own.";

    public static TextTable Table(GradeRules rules)
    {
        var features = rules.Grades.SelectMany(g => g.Limits.Select(l => l.Feature)).Distinct().ToArray();
        var table = new TextTable(["!grade", .. features.Select(f => $"#{f} um")]);
        foreach (var rule in rules.Grades)
            table.Add([rule.Grade, .. features.Select(f => Shown.Limit(rule.LimitOf(f)))]);
        table.Add([GradedBatch.Return, .. features.Select(f => f == RailFeature.Side ? $"> {Shown.Limit(rules.ReturnSideUm)}" : Shown.None)]);
        return table;
    }

    protected override string Verdict(GradeRules result) => $"Grades, best first: {string.Join(", ", result.Grades.Select(g => g.Grade))}; return above {Shown.Limit(result.ReturnSideUm)} um at the side.";

    protected override string Text(GradeRules result) => $"{Verdict(result)}\n{Table(result)}\n{Note}";

    protected override string Html(GradeRules result) => Markup.View(Verdict(result), Markup.Table(Table(result), "Limits of each grade"), Markup.List(Note));
}
