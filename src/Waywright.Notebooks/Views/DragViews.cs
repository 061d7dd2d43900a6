using System.Globalization;

namespace Waywright.Notebooks;

/// <summary>The drag of carriages along rails.</summary>
internal sealed class DragLogView : View<DragLog>
{
    private const int Most = 40;

    private static readonly string[] Assumptions =
    [
        "A run is one carriage pulled along one rail without a stop. Its first reading, and those after it while they fall and are high, are the start-up and in no other figure.",
        "A place is where a run is more than 3 x 1.4826 x MAD and more than 25 % above its median. It binds only if it stays with the rail in both directions and with two carriages.",
        "Spread: P95 - P5 of the forces in % of their mean, both directions together.",
        "Figures belong to rail, carriage and grease together; how far the gauge may be off is not in them. Notes are the builder's words and enter no figure.",
    ];

    protected override string Verdict(DragLog result)
    {
        if (result.Places is [{ Cause: not DragCause.NotRepeated } worst, ..])
            return $"{worst.Next[..^1]} ({Why(worst)}).{More(result.Places.Count(p => p.Cause == worst.Cause) - 1)}";
        if (result.Carriages.Where(c => c.SpreadPercent is not null).MaxBy(c => c.SpreadPercent) is not { } widest)
            return "Pull the carriages with a gauge: the log has notes and no forces.";
        var spread = $"the drag of carriage {widest.Carriage} on rail {widest.Rail} spreads over {Percent(widest)} % of its mean";
        var limits = Limits(result.Rules);
        if (limits.Length == 0)
            return $"Go on with these rails: no place binds, and {spread}, the widest; no grade limits it.";
        var (best, lowest) = (limits[0], limits[^1]);
        if (widest.SteadyFor == result.Rules.Grades[0].Grade)
            return $"Go on with these rails: no place binds, and {spread}, the widest; {Limit(best.Percent)} % is the limit for {Named(best.Grade)}.";
        return widest.SteadyFor is { } grade
            ? $"Use rail {widest.Rail} for {Named(grade)}, or clean and grease it and run it again: {spread}, over the {Limit(best.Percent)} % for {Named(best.Grade)}; no place binds."
            : $"Clean and grease rail {widest.Rail} and carriage {widest.Carriage} and run them again: {spread}, over the {Limit(lowest.Percent)} % for {Named(lowest.Grade)}; no place binds.";
    }

    protected override string Text(DragLog result)
    {
        var places = result.Places.Count == 0 ? "" : $"\n\n{PlaceTable(result)}";
        var notes = Notes(result).ToArray();
        return $"{Verdict(result)}\n\n{Table(result)}{places}{(notes.Length == 0 ? "" : $"\n\nNotes\n{string.Join('\n', notes)}")}\n\n{How(result)}";
    }

    protected override string Html(DragLog result)
        => Markup.View(
            Verdict(result),
            DragPicture.Of(result) is { } picture ? FigureHtml.Of(picture, DragPicture.Caption) : "",
            Markup.Table(Table(result), "Drag of each carriage on each rail"),
            result.Places.Count == 0 ? "" : Markup.Table(PlaceTable(result), "Places of higher drag"),
            Notes(result).Any() ? Markup.Details("What the hand felt", $"<ul>{string.Concat(Notes(result).Select(n => $"<li>{Markup.Encode(n)}</li>"))}</ul>") : "",
            Markup.Details("What it rests on", Markup.List([How(result), .. Assumptions, Told(result.Rules)])));

    protected override IEnumerable<Figure> Figures(DragLog result, string id)
    {
        foreach (var drag in result.Carriages.Where(c => c.MeanN is not null))
        {
            var (name, title) = ($"{id}/{GradedRailView.IdOf(drag.Rail)}/{GradedRailView.IdOf(drag.Carriage)}", $"{drag.Rail} with carriage {drag.Carriage}");
            yield return new Figure($"{name}/mean", $"{title}: mean drag", drag.MeanN, null, "N", method: "mean of all readings after the start-ups", relativeTolerance: 1e-9);
            yield return new Figure($"{name}/spread", $"{title}: spread of the drag", drag.SpreadPercent, null, "%", method: "P95 - P5 in % of the mean", relativeTolerance: 1e-9);
        }

        foreach (var rail in result.Carriages.Select(c => c.Rail).Distinct())
        {
            yield return new Figure($"{id}/{GradedRailView.IdOf(rail)}/binding-places", $"{rail}: places that bind", result.Places.Count(p => p.Rail == rail && p.Cause == DragCause.Rail), null, "1",
                method: "places that stay with the rail in both directions and with two carriages");
        }
    }

    private static TextTable Table(DragLog log)
    {
        var table = new TextTable("rail", "carriage", "#mean N", "#forward N", "#back N", "#spread %", "steady enough for", "#start-up N", "#readings");
        foreach (var c in log.Carriages.Take(Most))
        {
            table.Add(c.Rail, c.Carriage, Newton(c.MeanN), Newton(c.ForwardMeanN), Newton(c.BackMeanN), c.SpreadPercent is null ? Shown.None : Percent(c),
                c.SpreadPercent is null ? Shown.None : c.SteadyFor is { } grade ? Named(grade) : "none", Newton(c.StartUpN), Shown.Count(c.Readings));
        }

        return table;
    }

    private static TextTable PlaceTable(DragLog log)
    {
        var table = new TextTable("rail", "#from mm", "#to mm", "#peak / median", "goes with", "seen", "~next");
        foreach (var p in log.Places.Take(Most))
            table.Add(p.Rail, Mm(p.FromMm), Mm(p.ToMm), p.PeakRatio.ToString("0.0", CultureInfo.InvariantCulture), Cause(p.Cause), p.Seen, p.Next);
        return table;
    }

    private static (string Grade, double Percent)[] Limits(GradeRules rules)
        => [.. rules.Grades.Where(g => g.LimitOf(RailFeature.Drag) is not null).Select(g => (g.Grade, g.LimitOf(RailFeature.Drag)!.Value))];

    private static string Told(GradeRules rules)
        => Limits(rules) is { Length: > 0 } limits ? $"Limits on the spread: {string.Join(", ", limits.Select(l => $"{Named(l.Grade)} {Limit(l.Percent)} %"))}{(ReferenceEquals(rules, GradeRules.Starting) ? " (common practice, no source)" : "")}." : "No grade limits the spread.";

    private static string Named(string grade) => grade == "z" ? "Z" : grade;

    private static string Cause(DragCause cause) => cause switch
    {
        DragCause.Rail => "the rail: it binds",
        DragCause.Carriage => "the carriage",
        DragCause.Direction => "the direction",
        DragCause.NotRepeated => "nothing: not repeated",
        _ => "undecided",
    };

    private static string Why(DragPlace place) => place.Cause switch
    {
        DragCause.Rail => $"the place stays with the rail: {place.Seen}",
        DragCause.Carriage => $"{place.Seen}, and free with another carriage",
        _ => $"seen with {place.Seen}",
    };

    private static string More(int count) => count == 0 ? "" : $" {Shown.Count(count)} more such {(count == 1 ? "place is" : "places are")} in the table.";

    private static string How(DragLog log)
    {
        var hidden = Math.Max(log.Carriages.Count, log.Places.Count) > Most ? $" Tables end after {Shown.Count(Most)} rows." : "";
        return $"Read as: {log.ReadAs}.{hidden}";
    }

    private static IEnumerable<string> Notes(DragLog log) => log.Carriages.SelectMany(c => c.Notes.Select(n => $"{c.Rail}, carriage {c.Carriage}, {n}")).Take(Most);

    private static string Percent(CarriageDrag drag) => drag.SpreadPercent!.Value.ToString("0", CultureInfo.InvariantCulture);

    private static string Limit(double percent) => percent.ToString("0.#", CultureInfo.InvariantCulture);

    private static string Newton(double? force) => force is { } n ? n.ToString("0.00", CultureInfo.InvariantCulture) : Shown.None;

    private static string Mm(double mm) => mm.ToString("0.#", CultureInfo.InvariantCulture);
}
