using System.Globalization;
using Waywright.Placement;

namespace Waywright.Notebooks;

/// <summary>What goes where.</summary>
internal sealed class PlacementView : View<RailPlacement>
{
    private const int MostNamed = 8;
    private const int MostRows = 50;
    private const int MostLines = 150;

    protected override string Verdict(RailPlacement result)
    {
        var shown = result.Placed.Take(MostNamed).Select(p => $"{p.Rail} for {Place(result, p)}, dot at the {p.DotAt}");
        var more = result.Placed.Count > MostNamed ? $"; {Shown.Count(result.Placed.Count - MostNamed)} more are in the table" : "";
        var use = result.Placed.Count == 0 ? "No rail can be placed" : $"Use {string.Join("; ", shown)}{more}";
        return result.IsFilled ? $"{use}." : $"{use}. {Shown.First(result.Unfilled[0].Needs)}";
    }

    protected override string Text(RailPlacement result)
        => $"{Verdict(result)}\n{Table(result, result.Placed, MostLines)}\n{string.Join('\n', [.. result.Unfilled.Skip(1).Select(u => Shown.First(u.Needs)), .. Basis(result, MostLines)])}";

    protected override string Html(RailPlacement result)
        => Markup.View(
            Verdict(result),
            MachinePicture.Of(result) is { } plan ? FigureHtml.Of(plan, MachinePicture.Caption(result)) : "",
            result.Unfilled.Count > 1 ? Markup.List(result.Unfilled.Skip(1).Select(u => Shown.First(u.Needs))) : "",
            Markup.Table(Table(result, result.Placed, MostRows), "Rails by machine and position"),
            result.RunnerUp.Count == 0 ? "" : Markup.Details(RunnerUp(result), Markup.Table(Table(result, [.. result.RunnerUp.Except(result.Placed)], MostRows), "Runner-up: places that differ")),
            Markup.Details("What it rests on", Markup.List(Basis(result, MostRows))));

    protected override IEnumerable<Figure> Figures(RailPlacement result, string id)
    {
        foreach (var placed in result.Placed)
        {
            var place = $"{id}/machine-{Shown.Count(placed.Machine)}/{GradedRailView.IdOf(placed.Position)}";
            yield return new Figure($"{place}/rail", $"{Place(result, placed)}: rail", null, placed.Rail, "1", method: "least weighted residual and mismatch");
            yield return new Figure($"{place}/dot", $"{Place(result, placed)}: end with the dot", null, placed.DotAt, "1", method: "least weighted residual and mismatch");
        }

        foreach (var unfilled in result.Unfilled)
            yield return new Figure($"{id}/unfilled/{GradedRailView.IdOf(unfilled.Position)}", $"{unfilled.Position}: rails missing", unfilled.Missing, null, "1", method: "bipartite matching");
        yield return new Figure($"{id}/cost", "Weighted residuals and mismatches", result.CostUm, null, "um", method: result.IsProven ? "least of all placements" : "best found", relativeTolerance: 1e-9, absoluteTolerance: 1e-3);
    }

    private static string Place(RailPlacement placement, PlacedRail placed) => placement.Plan.Machines == 1 ? placed.Position : $"{placed.Position} of machine {Shown.Count(placed.Machine)}";

    private static TextTable Table(RailPlacement placement, IReadOnlyList<PlacedRail> rails, int most)
    {
        var table = new TextTable("position", "rail", "dot at the", "which way round", "~why");
        foreach (var p in rails.Take(most))
            table.Add(Place(placement, p), p.Rail, p.DotAt, p.IsTurned ? "turned end for end" : "as swept", p.Why);
        return table;
    }

    private static string RunnerUp(RailPlacement result)
    {
        var (used, other) = (result.Placed.Select(p => p.Rail).ToHashSet(), result.RunnerUp.Select(p => p.Rail).ToHashSet());
        var (joins, leaves) = (other.Where(r => !used.Contains(r)).Order(StringComparer.Ordinal).ToArray(), used.Where(r => !other.Contains(r)).Order(StringComparer.Ordinal).ToArray());
        return $"Runner-up: {string.Join(", ", joins.Take(MostNamed))}{(joins.Length > MostNamed ? " and more" : "")} instead of {string.Join(", ", leaves.Take(MostNamed))}{(leaves.Length > MostNamed ? " and more" : "")}, {Um(result.RunnerUpCostUm!.Value - result.CostUm)} um more{(result.IsRunnerUpProven ? "" : " (not proven to be the next best)")}";
    }

    private static IEnumerable<string> Basis(RailPlacement result, int most)
    {
        if (result.Placed.Count > 0)
        {
            yield return result.IsProven
                ? $"Weighted residuals and mismatches add up to {Um(result.CostUm)} um; it is proven that no other placement has less. Of equal ones the first in the order of names was taken."
                : $"Weighted residuals and mismatches add up to {Um(result.CostUm)} um; no placement has less than {Um(result.BoundUm)} um, so at most {(100 * result.Gap).ToString("0.##", CultureInfo.InvariantCulture)} % could be gained. More effort may close the gap.";
            if (result.RunnerUp.Count > 0)
                yield return RunnerUp(result) + ".";
            else
                yield return result.Spare.Count == 0 ? "Every rail is used, so there is no other set of rails." : "No placement with another set of rails was found.";
            if (result.Placed.Any(p => p.MismatchUm is not null))
                yield return "A pair's mismatch is the range of the difference of both shapes about its least-squares line, as read: the noise of both sweeps is in it. Turned end for end, a top is f(L - x) and a side -f(L - x).";
            yield return "As swept means: the end with the dot at the near end of the place. Where the way round changes nothing, the rail stays as swept; holes at the ends change places when a rail is turned.";
            if (result.Placed.Count > most)
                yield return $"{Shown.Count(result.Placed.Count - most)} more places are not listed.";
        }

        if (result.Stock is null)
            yield return "Widths and lengths were not compared: no list of rails was given.";
        else if (result.Batch.Rails.Where(r => result.Stock.Find(r.Rail) is null).Select(r => r.Rail).Order(StringComparer.Ordinal).ToArray() is { Length: > 0 } unlisted)
            yield return $"Not in {result.Stock.Source}, so not placed: {string.Join(", ", unlisted.Take(most))}{(unlisted.Length > most ? " and more" : "")}.";
        if (result.Spare.Count > 0)
            yield return $"Left over: {string.Join(", ", result.Spare.Take(most))}{(result.Spare.Count > most ? " and more" : "")}.";
    }

    private static string Um(double um) => um.ToString("0.0", CultureInfo.InvariantCulture);
}

/// <summary>The positions of a machine.</summary>
internal sealed class MachinePlanView : View<MachinePlan>
{
    protected override string Verdict(MachinePlan result)
        => $"{Shown.Count(result.RailCount)} {(result.RailCount == 1 ? "rail is" : "rails are")} wanted{(result.Machines == 1 ? "" : $" for {Shown.Count(result.Machines)} machines")}: {string.Join(", ", result.Positions.Select(p => p.Count == 1 ? p.Name : $"{p.Name} ({Shown.Count(p.Count)})"))}.";

    protected override string Text(MachinePlan result) => $"{Verdict(result)}\n{Table(result)}";

    protected override string Html(MachinePlan result) => Markup.View(Verdict(result), Markup.Table(Table(result), "Positions of one machine"));

    private static TextTable Table(MachinePlan plan)
    {
        var table = new TextTable("position", "#count", "#width mm", "#length mm", "!grade", "face", "#weight", "pair", "near end", "far end");
        foreach (var p in plan.Positions)
        {
            table.Add(p.Name, Shown.Count(p.Count), Shown.Mm(p.WidthMm), Shown.Mm(p.LengthMm), p.Grade, p.Face == RailFace.Side ? "side" : "top", Shown.Mm(p.Weight), p.Pair ?? Shown.None, p.NearEnd, p.FarEnd);
        }

        return table;
    }
}
