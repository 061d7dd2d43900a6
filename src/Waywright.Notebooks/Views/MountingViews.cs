using System.Globalization;

namespace Waywright.Notebooks;

/// <summary>Where the screws go and in which order they are tightened.</summary>
internal sealed class ScrewPatternView : View<ScrewPattern>
{
    private const string Care = "Caution: tighten by hand with the torque that the screw's and the rail's makers name; a screw that is forced strips the thread of an extrusion.";

    public static string Order(ScrewPattern pattern) => string.Join(", ", pattern.TighteningRounds[0].Select(Shown.Count));

    /// <summary>Which holes stay empty and what the ends then do.</summary>
    public static string Ends(ScrewPattern pattern)
    {
        var left = pattern.LeftOver;
        var over = left.Count == 0 ? "No hole is left over" : $"Left over: {(left.Count == 1 ? "hole" : "holes")} {string.Join(", ", left.Select(Shown.Count))}";
        return $"{over}; {Length(pattern.DotEndFreeMm)} mm stand free at the dot, {Length(pattern.FarEndFreeMm)} mm at the far end, the widest gap is {Length(pattern.WidestGapMm)} mm.";
    }

    protected override string Verdict(ScrewPattern result)
        => $"Put {Shown.Count(result.Holes.Count)} screws into {result.Name} ({Shown.Count(result.HolesMm.Count)} holes) and tighten them in the order {Order(result)}: once until the heads sit, then to the full torque.";

    protected override string Text(ScrewPattern result) => $"{Verdict(result)}\n{Ends(result)}\n{Table(result)}\n{Care}";

    protected override string Html(ScrewPattern result)
        => Markup.View(
            Verdict(result),
            Still(TighteningPicture.Of(result), TighteningPicture.Caption(result)),
            $"<p>{Markup.Words(Ends(result))}</p>",
            Markup.Note(Care),
            Markup.Details("Where each hole is", Markup.Table(Table(result), "Screws along the rail")),
            Markup.Details("What it rests on", Markup.List("Holes are numbered from 1 at the dot. From the middle outwards, from side to side, in two rounds: common practice, no source.")));

    protected override IEnumerable<Figure> Figures(ScrewPattern result, string id)
    {
        yield return new Figure($"{id}/holes", "Holes with a screw", null, string.Join(' ', result.Holes.Select(Shown.Count)), "1", method: result.Name);
        yield return new Figure($"{id}/order", "Tightening order", null, string.Join(' ', result.TighteningRounds[0].Select(Shown.Count)), "1", method: "centre outwards, alternating, two rounds");
    }

    private static TextTable Table(ScrewPattern pattern)
    {
        var table = new TextTable("#hole", "#from the dot mm", "#tighten as no.");
        var order = pattern.TighteningRounds[0].ToList();
        for (var i = 0; i < pattern.HolesMm.Count; i++)
            table.Add(Shown.Count(i + 1), Length(pattern.HolesMm[i]), order.IndexOf(i + 1) is >= 0 and var turn ? Shown.Count(turn + 1) : Shown.None);
        return table;
    }

    // A drawing of things, not a chart: nothing in it comes alive.
    private static string Still(string svg, string caption) => $"<figure class=\"ww-drawing\" style=\"margin:1em 0\">{svg}{FigureHtml.Caption(caption)}</figure>";

    private static string Length(double mm) => mm.ToString("0.#", CultureInfo.InvariantCulture);
}

/// <summary>A rail's top as it will be once screwed down.</summary>
internal sealed class MountedShapeView : View<MountedShape>
{
    private const double BaseYields = 0.05;

    protected override string Verdict(MountedShape result)
    {
        var left = $"{ShapeModesView.NameOf(result.Free)} is predicted to keep {Kept(result, $" of {Shown.Um(result.FreeUm)}")}{(result.Base is null ? ", relative to the base" : "")}";
        return result.OverloadedHoles.Count == 0
            ? $"Screw it down in {result.Screws.Name}: {left}."
            : $"Use more screws or another rail: the {(result.OverloadedHoles.Count == 1 ? "screw in hole" : "screws in holes")} {string.Join(", ", result.OverloadedHoles.Select(Shown.Count))} would have to pull up to {Newton(result.PullsN.Max())} N, the limit is {Newton(result.ClampLimitN ?? 0)} N; if they held, {left}.";
    }

    /// <summary><c>1.1 um, at most 2.9 um at 95 %</c>; the residual as read where no errors were given.</summary>
    internal static string Kept(MountedShape shape, string of = "")
        => shape.Figure is { } figure ? $"{Shown.Um(figure.EstimateUm)} um{of}, at most {Shown.Um(figure.HighUm)} um at 95 %" : $"{Shown.Um(shape.ResidualUm)} um{of}";

    protected override string Text(MountedShape result) => $"{Verdict(result)}\n{Table(result)}\n{Ends(result)}\n{string.Join('\n', Notes(result))}";

    protected override string Html(MountedShape result)
        => Markup.View(
            Verdict(result),
            FigureHtml.Of(MountingPicture.Of(result), MountingPicture.Caption(result)),
            $"<p>{Markup.Words(Ends(result))}</p>",
            Markup.Table(Table(result), "What each screw does"),
            Markup.Details("What it rests on", Markup.List(Notes(result))));

    protected override IEnumerable<Figure> Figures(MountedShape result, string id) => Of(result, id);

    internal static IEnumerable<Figure> Of(MountedShape result, string id)
    {
        var name = ShapeModesView.NameOf(result.Free);
        var about = result.Base is null ? "relative to the base" : "with the base's shape";
        Figure Um(string part, string what, double value, string method) => new($"{id}/{part}", $"{name}: {what}", value, null, "um", method: method, relativeTolerance: 1e-9, absoluteTolerance: 1e-6);
        const string method = "STRt, minimum zone, natural spline through screws and contacts";
        yield return result.Figure is { } figure
            ? UncertaintyText.Kept($"{id}/mounted-residual", $"{name}: predicted mounted residual, {about}", figure, $"{method}; bounds by simulation")
            : Um("mounted-residual", $"predicted mounted residual, {about}", result.ResidualUm, method);
        yield return Um("free", "free shape", result.FreeUm, "STRt, minimum zone, natural spline through the stations");
        yield return Um("widest-gap", "widest gap to the base", result.WidestGapUm, "mounted shape less base");
        yield return new Figure($"{id}/largest-pull", $"{name}: largest pull of a screw", result.PullsN.Max(), null, "N", method: "jumps of shear", relativeTolerance: 1e-6, absoluteTolerance: 1e-6);
    }

    internal static string Newton(double force) => (Math.Abs(force) < 0.05 ? 0 : force).ToString(Math.Abs(force) < 9.95 ? "0.0" : "0", CultureInfo.InvariantCulture);

    private static string Ends(MountedShape result)
        => $"{ScrewPatternView.Ends(result.Screws)} The end at the dot stands {Shown.Um(result.DotEndGapUm)} um off the base, the far end {Shown.Um(result.FarEndGapUm)}; the widest gap is {Shown.Um(result.WidestGapUm)} um at {result.WidestGapAtMm.ToString("0", CultureInfo.InvariantCulture)} mm.";

    private static TextTable Table(MountedShape result)
    {
        var table = new TextTable("#hole", "#from the dot mm", "#pull N", "~what it does");
        for (var i = 0; i < result.Screws.Holes.Count; i++)
        {
            var pull = result.PullsN[i];
            table.Add(Shown.Count(result.Screws.Holes[i]), result.Screws.ScrewsMm[i].ToString("0.#", CultureInfo.InvariantCulture), Newton(pull),
                pull > result.ClampLimitN ? "pulls more than the limit" : pull > 0 ? "pulls the rail down" : "keeps its place; the base pushes up");
        }

        return table;
    }

    private static IEnumerable<string> Notes(MountedShape result)
    {
        yield return "z = f - r S (f - g): f the free top, g the base, S the natural cubic spline through screws and contacts, r the rail's share of the way; screws are points. Sweep the rail again once it is mounted.";
        yield return result.Base is null ? "The base was not swept: its own shape comes on top of these figures." : $"The base alone is {Shown.Um(result.BaseUm)} um once the rail is on it.";
        yield return result.BaseStiffnessNm2 is null ? "The base is taken as rigid: give its bending stiffness where the rail has more than 1/20 of it."
            : string.Create(CultureInfo.InvariantCulture, $"The rail has {result.StiffnessRatio:0.000} of the base's bending stiffness{(result.StiffnessRatio >= BaseYields ? ": the base bends with it" : "")}.");
        if (result.ContactsMm.Count > 0)
            yield return $"Between or beyond the screws the base pushes the rail up at {Shown.Count(result.ContactsMm.Count)} places of the grid, from {result.ContactsMm[0].ToString("0", CultureInfo.InvariantCulture)} to {result.ContactsMm[^1].ToString("0", CultureInfo.InvariantCulture)} mm.";
        yield return "A pull is that of the screw less what the base pushes within 3 mm of it (about a head's radius: common practice, no source); preload and the load on the carriage are not in it.";
        yield return "Free heights between stations are a natural cubic spline, straight beyond the outer ones: a wave shorter than two stations is not in it.";
        yield return result.Figure is not { } figure ? "The uncertainty of the sweep is not in these figures."
            : $"The residual lies between {Shown.Um(figure.LowUm)} and {Shown.Um(figure.HighUm)} um at 95 %: errors of the free sweep, and how the top may run between its stations, pressed down with the same screws{(result.ContactsMm.Count > 0 ? " and the base's push" : "")} (docs/coverage-mounted.md). Pulls and gaps are those of the top as read.";
    }
}

/// <summary>How few screws will do.</summary>
internal sealed class ScrewChoiceView : View<ScrewChoice>
{
    private const string Note = "Tried: evenly spread counts, every other hole, and the best of dropping one screw after another. Where the sweep's uncertainty was given, the fewest are those that it leaves within the limit at 95 %; it is looked at where the residual as read is within. Shape only: the load that the screws carry is the makers' to say.";

    protected override string Verdict(ScrewChoice result)
    {
        if (result.Chosen is { } chosen)
            return $"Use {Shown.Count(chosen.Screws.Holes.Count)} screws, in holes {string.Join(", ", chosen.Screws.Holes.Select(Shown.Count))}: predicted to keep {MountedShapeView.Kept(chosen)}, limit {Shown.Limit(result.LimitUm)}{(chosen.Base is null ? ", relative to the base" : "")}{(chosen.Figure is not null && !result.IsProven ? "; that it stays within the limit is not proven, so sweep it again once it is mounted" : "")}.";
        var best = result.BestOfEachCount.MinBy(s => (s.OverloadedHoles.Count, s.ResidualUm))!;
        return $"Use another rail{(best.Base is null ? "" : " or a better base")}: no screws tried bring it within {Shown.Limit(result.LimitUm)} um; {Shown.Count(best.Screws.Holes.Count)} screws would leave {Shown.Um(best.ResidualUm)} um{(best.OverloadedHoles.Count > 0 ? ", some pulling more than the limit" : "")}.";
    }

    protected override string Text(ScrewChoice result) => $"{Verdict(result)}\n{Table(result)}\n{Note}";

    protected override string Html(ScrewChoice result)
        => Markup.View(
            Verdict(result),
            result.Chosen is { } chosen ? FigureHtml.Of(MountingPicture.Of(chosen), MountingPicture.Caption(chosen)) : "",
            Markup.Table(Table(result), "The best found for each number of screws"),
            Markup.Details("What it rests on", Markup.List(Note)));

    protected override IEnumerable<Figure> Figures(ScrewChoice result, string id)
        => result.Chosen is { } chosen
            ? MountedShapeView.Of(chosen, id).Prepend(new Figure($"{id}/screws", "Fewest screws found", chosen.Screws.Holes.Count, null, "1", method: "regular patterns and dropping one after another"))
            : [new Figure($"{id}/screws", "Fewest screws found", null, "none within the limit", "1", method: "regular patterns and dropping one after another")];

    private static TextTable Table(ScrewChoice result)
    {
        var table = new TextTable("#screws", "#residual um", "#at most, 95 %", "#largest pull N", "holes");
        foreach (var shape in result.BestOfEachCount)
            table.Add(Shown.Count(shape.Screws.Holes.Count), Shown.Um(shape.ResidualUm), Shown.Um(shape.Figure?.HighUm), MountedShapeView.Newton(shape.PullsN.Max()), string.Join(' ', shape.Screws.Holes.Select(Shown.Count)));
        return table;
    }
}

/// <summary>What the side of a mounted rail can be counted on to be.</summary>
internal sealed class SideMountingView : View<SideMounting>
{
    private const string Note = "Screws don't pull sideways: they keep by friction what was set while they were tightened. Set: natural spline onto the edge at the screws. Kept: force at each screw within mu F / 2 (mu 0.15: common practice, no source).";

    protected override string Verdict(SideMounting result)
    {
        var name = ShapeModesView.NameOf(result.Free);
        if (result.SetTo is not { } edge)
            return $"Push it to a straightedge before tightening if it has to be straighter: as laid, {name} keeps its {Shown.Um(result.FreeUm)} um, and tightening doesn't change that.";
        if (result.IsHeld)
            return $"Set it to {edge} at each screw and tighten it there: {name} is predicted to keep {Shown.Um(result.ResidualUm)} um of {Shown.Um(result.FreeUm)}{(result.Edge is null ? $", relative to {edge}" : "")}.";
        var reasons = new[]
        {
            result.UnreachedHoles.Count > 0 ? $"the clearance of {Shown.Um(result.ClearanceUm)} um is too small at {Holes(result.UnreachedHoles)}" : null,
            result.SlippingHoles.Count > 0 ? $"friction holds {MountedShapeView.Newton(result.HoldingN)} N and not what bends it at {Holes(result.SlippingHoles)}" : null,
        };
        return $"Don't count on {edge}: {string.Join(", and ", reasons.OfType<string>())}; {name} may be {Shown.Um(result.ResidualUm)} um, as when laid free.";
    }

    protected override string Text(SideMounting result) => $"{Verdict(result)}\n{(result.ShiftsUm.Count > 0 ? Table(result) + "\n" : "")}{Note}";

    protected override string Html(SideMounting result)
        => Markup.View(Verdict(result), result.ShiftsUm.Count > 0 ? Markup.Table(Table(result), "Shift and force at each screw") : "", Markup.Details("What it rests on", Markup.List(Note)));

    protected override IEnumerable<Figure> Figures(SideMounting result, string id)
    {
        var name = ShapeModesView.NameOf(result.Free);
        yield return new Figure($"{id}/side-residual", $"{name}: side as mounted", result.ResidualUm, null, "um", method: result.IsHeld ? "STRt, minimum zone, natural spline onto the edge at the screws" : "STRt, minimum zone, free shape", relativeTolerance: 1e-9, absoluteTolerance: 1e-6);
        yield return new Figure($"{id}/held", $"{name}: setting of the side", null, result.SetTo is null ? "as laid" : result.IsHeld ? "held" : "not to be counted on", "1", method: "clearance and friction at each screw");
    }

    private static string Holes(IReadOnlyList<int> holes) => $"{(holes.Count == 1 ? "hole" : "holes")} {string.Join(", ", holes.Select(Shown.Count))}";

    private static TextTable Table(SideMounting result)
    {
        var table = new TextTable("#hole", "#shift um", "#clearance um", "#force N", "#friction holds N");
        for (var i = 0; i < result.ShiftsUm.Count; i++)
            table.Add(Shown.Count(result.Screws.Holes[i]), Shown.Um(result.ShiftsUm[i]), Shown.Um(result.ClearanceUm), MountedShapeView.Newton(result.ForcesN[i]), MountedShapeView.Newton(result.HoldingN));
        return table;
    }
}
