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
        => $"{Verdict(result)}\n\n{Table(result, reasons: false)}\n\n{string.Join('\n', result.Rails.Select(r => $"{r.Rail}: {r.Grade}. {r.Reason} {r.Next}"))}\n\n{(LimitMargins.Narrow(result.Margins) is { } narrow ? narrow + "\n" : "")}{result.Basis}";

    protected override string Html(GradedBatch result)
        => Markup.View(
            Verdict(result),
            Markup.Counts(result.Counts),
            BatchPicture.Of(result) is { } picture ? FigureHtml.Of(picture, BatchPicture.Caption(result)) : "",
            Markup.Table(Table(result, reasons: true), "Rails by what to do next"),
            Intervals(result),
            LimitMargins.Narrow(result.Margins) is { } narrow ? Markup.Note(narrow) : "",
            Markup.Details("Limits, and what the set-ups can tell", Markup.Table(GradeRulesView.Table(result.Rules), "Limits of each grade") + LimitMargins.Html(result.Margins) + Markup.List(GradeRulesView.Note(result.Rules))),
            Markup.Details("What it rests on", Markup.List([result.Basis, .. StraightnessFiguresView.Assumptions])));

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

    // The feature that decided, of each rail: how far its interval is from the limit.
    private static string Intervals(GradedBatch batch)
    {
        var rows = batch.Rails
            .Select(r => (Rail: r, Feature: r.Features.FirstOrDefault(f => f.Feature == r.LimitingFeature)))
            .Where(r => r.Feature?.Figure is not null)
            .Select(r => new IntervalRow($"{r.Rail.Rail} {r.Feature!.Feature}", r.Feature.Figure!, r.Feature.Limit))
            .Take(BatchPicture.Most)
            .ToArray();
        return rows.Length == 0 ? "" : FigureHtml.Of(IntervalPicture.Of("How sure each decision is", "rail and feature that decided", rows), IntervalPicture.Caption(rows), IntervalPicture.Data("rail and feature", rows));
    }

    // For a page: what to do, why, and the estimates alone, as the intervals stand in the picture below.
    private static TextTable Table(GradedBatch batch, bool reasons)
    {
        string[] figures = ["#side um", "#side local um", "#top mounted um", "#top free um", .. batch.Drag is null ? (string[])[] : ["#drag spread %"]];
        var table = new TextTable(reasons ? ["rail", "!grade", "~next", "~why", .. figures] : ["rail", "!grade", .. figures, "~next"]);
        foreach (var rail in batch.Rails)
        {
            string[] cells =
            [
                Value(rail, RailFeature.Side, rail.Side, reasons), Value(rail, RailFeature.SideLocal, rail.Side, reasons), Value(rail, RailFeature.TopMounted, rail.Top, reasons),
                Value(rail, RailFeature.TopFree, rail.Top, reasons), .. batch.Drag is null ? (string[])[] : [Percent(rail.ValueOf(RailFeature.Drag))],
            ];
            table.Add(reasons ? [rail.Rail, rail.Grade, rail.Next, rail.Reason, .. cells] : [rail.Rail, rail.Grade, .. cells, rail.Next]);
        }

        return table;
    }

    internal static string Percent(double? percent) => percent is { } value ? value.ToString("0", CultureInfo.InvariantCulture) : Shown.None;

    // Estimate, with its 95 % interval where there is room; as read without a set-up.
    private static string Value(GradedRail rail, string feature, PooledSweep? face, bool brief)
        => rail.Features.FirstOrDefault(f => f.Feature == feature)?.Figure is not { } figure ? Shown.Um(rail.ValueOf(feature), face?.Sweep.Setup)
            : brief ? Shown.Um(figure.EstimateUm, face?.Sweep.Setup)
            : Shown.Estimate(figure, face?.Sweep.Setup);
}

/// <summary>One rail.</summary>
internal sealed class GradedRailView : View<GradedRail>
{
    private const int MostNotes = 20;

    protected override string Verdict(GradedRail result) => $"{result.Rail}: {result.Grade}. {result.Reason}";

    protected override string Text(GradedRail result) => $"{Verdict(result)}\n{Table(result)}\n{string.Join('\n', [result.Next, .. Notes(result)])}";

    protected override string Html(GradedRail result)
        => Markup.View(
            Verdict(result),
            $"<p>{Markup.Words(result.Next)}</p>",
            FaceOf(result, result.Side, RailFeature.Side, RailFeature.SideLocal),
            FaceOf(result, result.Top, RailFeature.TopFree, null),
            DragPicture.Of(result) is { } drag ? FigureHtml.Of(drag, DragPicture.Caption) : "",
            Markup.Table(Table(result), "Each figure beside its limit"),
            Notes(result).Any() ? Markup.Details("What the hand felt", $"<ul>{string.Concat(Notes(result).Select(n => $"<li>{Markup.Encode(n)}</li>"))}</ul>") : "",
            Markup.Details("What it rests on", Markup.List([Sure(result), .. StraightnessFiguresView.Assumptions])));

    protected override IEnumerable<Figure> Figures(GradedRail result, string id) => Of(result, id);

    internal static IEnumerable<Figure> Of(GradedRail rail, string id)
    {
        yield return new Figure($"{id}/grade", $"{rail.Rail}: grade", null, rail.Grade, "1", method: rail.Features.Any(f => f.Figure is not null) ? "95 % bounds against the limits" : "comparison with the limits as read");
        foreach (var feature in rail.Features.Where(f => f.Value is not null))
        {
            var (name, title) = ($"{id}/{feature.Feature.Replace(' ', '-')}", $"{rail.Rail}: {feature.Feature}");
            if (feature.Feature == RailFeature.Drag)
                yield return new Figure(name, $"{title}, spread", feature.Value, null, "%", method: "P95 - P5 in % of the mean, of the carriage that runs worst, as read", relativeTolerance: 1e-9);
            else
                yield return feature.Figure is { } figure
                    ? new Figure(name, title, figure.EstimateUm, null, "um", standardUncertainty: figure.StandardUncertaintyUm, low: figure.LowUm, high: figure.HighUm, method: "STRt, minimum zone, no filter, less what noise adds; bounds by simulation", relativeTolerance: 1e-9, absoluteTolerance: 1e-9)
                    : new Figure(name, title, feature.Value, null, "um", method: "STRt, minimum zone, no filter, as read", relativeTolerance: 1e-9, absoluteTolerance: 1e-9);
        }
    }

    /// <summary>A rail's name as part of an id: lower case, what is no letter or digit becomes a dash.</summary>
    internal static string IdOf(string rail) => string.Concat(rail.ToLowerInvariant().Select(c => char.IsAsciiLetterOrDigit(c) ? c.ToString() : string.Create(CultureInfo.InvariantCulture, $"-{(int)c:x}")));

    // The builder's words stand beside the figures and are in none of them.
    private static IEnumerable<string> Notes(GradedRail rail) => rail.Drag.SelectMany(d => d.Notes.Select(n => $"Felt by hand with carriage {d.Carriage}, {n}")).Take(MostNotes);

    private static string Sure(GradedRail rail)
        => rail.Confidence is { } level ? $"The answer holds up to a confidence of {(100 * level).ToString("0.#", CultureInfo.InvariantCulture)} %."
            : rail.Features.Any(f => f.Figure is not null) ? "Nothing was proven of it, so no confidence is given."
            : "No set-up was given: figures were compared with their limits as read, and how far they may be off is not in it.";

    private static string FaceOf(GradedRail rail, PooledSweep? face, string? whole, string? local)
        => face is null ? "" : FigureHtml.Of(RailPicture.Of(face, rail.Features.FirstOrDefault(f => f.Feature == whole)?.Limit, rail.LimitingFeature == local), RailPicture.Caption(face), RailPicture.Data(face));

    private static TextTable Table(GradedRail rail)
    {
        if (rail.Features.All(f => f.Figure is null))
        {
            var plain = new TextTable("feature", "#value", "#limit", "unit");
            foreach (var feature in rail.Features)
                plain.Add(feature.Feature, feature.Feature == RailFeature.Drag ? GradedBatchView.Percent(feature.Value) : Shown.Um(feature.Value), Shown.Limit(feature.Limit), feature.Unit);
            return plain;
        }

        var table = new TextTable("feature", "#estimate (95 %)", "#limit", "unit", "#read as", "#noise floor");
        foreach (var feature in rail.Features)
        {
            var setup = (RailFeature.FaceOf(feature.Feature) == "top" ? rail.Top : rail.Side)?.Sweep.Setup;
            var read = feature.Feature == RailFeature.Drag ? GradedBatchView.Percent(feature.Value) : Shown.Um(feature.Value, setup);
            table.Add(feature.Feature, feature.Figure is { } figure ? Shown.Estimate(figure, setup) : read, Shown.Limit(feature.Limit), feature.Unit, read,
                feature.Figure is { } floor ? Shown.Um(floor.NoiseFloorUm, setup) : Shown.None);
        }

        return table;
    }
}
