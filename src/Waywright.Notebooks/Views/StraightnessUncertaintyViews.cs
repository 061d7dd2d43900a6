using System.Globalization;

namespace Waywright.Notebooks;

/// <summary>The figures of a profile with estimate, interval and noise floor.</summary>
internal sealed class StraightnessUncertaintyView : View<StraightnessUncertainty>
{
    private const int MostStations = 24;

    private const string Lines = "reference line";
    private const string ContactNote = "Share of simulations in which the station touches the zone. A place with a small share is there by chance: don't look for a fault in it.";

    /// <summary>STRt about each reference line.</summary>
    public static IReadOnlyList<IntervalRow> Rows(StraightnessUncertainty sure)
        => [.. new[] { ReferenceLineKind.MinimumZone, ReferenceLineKind.LeastSquares, ReferenceLineKind.EndPoints }.Select(k => new IntervalRow(StraightnessFiguresView.Name(k), sure.Of(k)))];

    public static TextTable Table(StraightnessUncertainty sure, Setup? setup = null) => IntervalPicture.Data("STRt about", Rows(sure), setup);

    /// <summary>How sure the contacts are, folded.</summary>
    public static string Contacted(StraightnessUncertainty sure)
        => Markup.Details("How sure the contacts are", $"<p>{Markup.Encode(ContactNote)}</p>{Markup.Table(Contacts(sure), "Share of simulations in which a station touches the zone")}");

    public static IEnumerable<Figure> Of(StraightnessUncertainty sure, string id)
    {
        var name = NameOf(sure);
        var method = string.Create(CultureInfo.InvariantCulture, $"simulated errors, {sure.Trials} trials, seed {sure.Seed}, {ShapeModesView.FilterOf(sure.Profile)}");
        foreach (var (label, figure, _) in Rows(sure))
            yield return UncertaintyText.Kept($"{id}/{label.Replace(' ', '-')}-estimate", $"{name}: STRt about the {UncertaintyText.LineOf(figure.Line)}, estimate", figure, $"STRt, {UncertaintyText.LineOf(figure.Line)}, {method}");
        yield return new Figure($"{id}/noise-floor", $"{name}: STRt about the minimum zone that a perfectly straight rail stays below in 95 of 100 sweeps", sure.Of(ReferenceLineKind.MinimumZone).NoiseFloorUm, null, "um", method: method, relativeTolerance: 1e-9, absoluteTolerance: 1e-9);
    }

    protected override string Verdict(StraightnessUncertainty result) => UncertaintyText.Verdict(NameOf(result), result.Of(ReferenceLineKind.MinimumZone));

    protected override string Text(StraightnessUncertainty result)
    {
        var budget = result.Budget;
        return $"{Verdict(result)}\n{UncertaintyText.Next(result.Of(ReferenceLineKind.MinimumZone), budget)} {Meant(result)}\n{Table(result)}\n{BudgetPicture.Data("STRt", budget)}\n{string.Join('\n', UncertaintyText.Assumptions(result))}";
    }

    protected override string Html(StraightnessUncertainty result)
    {
        var (rows, budget) = (Rows(result), result.Budget);
        return Markup.View(
            Verdict(result),
            $"<p>{Markup.Words($"{UncertaintyText.Next(result.Of(ReferenceLineKind.MinimumZone), budget)} {Meant(result)}")}</p>",
            FigureHtml.Of(IntervalPicture.Of($"{NameOf(result)}: straightness with its interval", Lines, rows), IntervalPicture.Caption(rows)),
            Markup.Table(Table(result), "STRt about each reference line, with its 95 % interval"),
            FigureHtml.Of(BudgetPicture.Of("STRt", budget), BudgetPicture.Caption(budget), BudgetPicture.Data("STRt", budget)),
            Markup.Details("Height above, depth below, root mean square", Markup.Table(Others(result), "STRp, STRv and STRq about each reference line")),
            Contacted(result),
            Markup.Details("What it rests on", Markup.List(UncertaintyText.Assumptions(result))));
    }

    protected override IEnumerable<Figure> Figures(StraightnessUncertainty result, string id) => Of(result, id);

    private static string NameOf(StraightnessUncertainty sure) => sure.Profile.Name.Length == 0 ? "Profile" : Shown.First(sure.Profile.Name);

    private static string Meant(StraightnessUncertainty sure) => $"The figure is STRt about the minimum zone, from {Shown.Count(sure.Profile.Count)} stations.";

    private static TextTable Others(StraightnessUncertainty sure)
        => IntervalPicture.Data("figure", [.. sure.Figures.Where(f => f.Parameter != StraightnessParameter.STRt).OrderByDescending(f => f.Line).Select(f => new IntervalRow(UncertaintyText.Name(f), f))]);

    private static TextTable Contacts(StraightnessUncertainty sure)
    {
        var table = new TextTable("#position mm", "#touches the zone in %");
        var most = sure.ContactShares.Select((share, i) => (share, i)).OrderByDescending(c => c.share).Take(MostStations).Where(c => c.share >= 0.005);
        foreach (var (share, i) in most.OrderBy(c => c.i))
            table.Add(Shown.Mm(sure.Profile.PositionsMm[i]), Shown.Percent(share));
        return table;
    }
}

/// <summary>One figure of straightness with estimate, interval and noise floor.</summary>
internal sealed class UncertainFigureView : View<UncertainFigure>
{
    protected override string Verdict(UncertainFigure result) => UncertaintyText.Verdict(UncertaintyText.Name(result), result);

    protected override string Text(UncertainFigure result) => $"{Verdict(result)}\n{IntervalPicture.Data("figure", Row(result))}";

    protected override string Html(UncertainFigure result)
    {
        IReadOnlyList<IntervalRow> drawn = [new(result.Parameter.ToString(), result)];
        return Markup.View(
            Verdict(result),
            FigureHtml.Of(IntervalPicture.Of(UncertaintyText.Name(result), "figure", drawn), IntervalPicture.Caption(drawn)),
            Markup.Table(IntervalPicture.Data("figure", Row(result)), "The figure with its 95 % interval"),
            Markup.Details("What it rests on", Markup.List("Simulated errors of the heights; docs/methods.md derives estimate, interval and noise floor.")));
    }

    protected override IEnumerable<Figure> Figures(UncertainFigure result, string id) => [UncertaintyText.Kept(id, $"{UncertaintyText.Name(result)}, estimate", result, "simulated errors")];

    private static IReadOnlyList<IntervalRow> Row(UncertainFigure figure) => [new(UncertaintyText.Name(figure), figure)];
}
