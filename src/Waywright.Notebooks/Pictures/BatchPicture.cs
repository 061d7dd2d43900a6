namespace Waywright.Notebooks;

/// <summary>A batch as small pictures on one scale, sorted by what to do next; each shows what decided: a side as swept, a top as its screws are predicted to hold it.</summary>
internal static class BatchPicture
{
    /// <summary>More rails than this are not drawn: the table has them.</summary>
    public const int Most = 24;

    public static Picture? Of(GradedBatch graded)
    {
        var shown = graded.Rails.Take(Most).Select(r => (Rail: r, Face: Deciding(r))).Where(r => r.Face is not null).Select(r => (r.Rail, Level: new LevelProfile(r.Face!, Limiting(r.Rail)?.Predicted))).ToArray();
        if (shown.Length == 0)
            return null;
        // One scale for the rails that are kept; what is far worse leaves it and is marked with its size.
        var kept = shown.Where(r => r.Rail.Grade != GradedBatch.Return).Select(r => Math.Max(r.Level.HalfZone, (LimitUm(graded.Rules, r.Rail) ?? 0) / 2)).DefaultIfEmpty(shown.Max(r => r.Level.HalfZone)).Max();
        var y = Axis.Covering("height", "µm", [-1.1 * kept, 1.1 * kept], 4) with { Sign = "+ towards the dial" };
        var (first, last) = (shown.Min(r => r.Level.First), shown.Max(r => r.Level.Last));
        var x = Axis.Covering("position from the dot", "mm", [Math.Min(0, first), last], 3).Reaching(first - (0.03 * (last - first)), last + (0.06 * (last - first)), new Interval(Math.Min(0, first), last));
        return new Picture("The batch, sorted by what to do next", string.Join(" ", graded.Counts.Select(c => $"{c.Key}: {Shown.Count(c.Value)}.")), x, y, shown.Select(r => PanelOf(graded.Rules, r.Rail, r.Level, last + (0.03 * (last - first)), y)));
    }

    public static string Caption(GradedBatch graded)
        => $"Each rail by what decided, all on one scale, drawn level with its zone (band): {(graded.Rails.Take(Most).Any(r => Limiting(r)?.Predicted is not null) ? "a side as swept, a top not as it lies free but as its screws are predicted to hold it" : "a face as swept")}. The dashed bracket is the limit that decided. {(graded.Rails.Count > Most ? $"The first {Shown.Count(Most)} of {Shown.Count(graded.Rails.Count)} rails." : "")}".TrimEnd();

    private static Panel PanelOf(GradeRules rules, GradedRail rail, LevelProfile level, double right, Axis y)
    {
        var limiting = Limiting(rail);
        var layers = new List<Layer> { level.Zone };
        if (limiting?.WindowMm is { } window && level.LocalZone(window) is { } stretch)
            layers.Add(stretch);
        layers.Add(new DotLayer("stations", Role.Ink, level.Stations, 4) { Joined = true });
        var limit = LimitUm(rules, rail);
        if (limit is { } most && y.Holds(most / 2))
            layers.Add(new BracketLayer("limit", Role.Limit, right, new Interval(-most / 2, most / 2), "", Dash.Dashed));
        var figure = rail.DragPlaces.FirstOrDefault(p => p.Cause is DragCause.Rail or DragCause.Undecided) is { } place && rail.Reason.Contains(place.Where, StringComparison.Ordinal) ? $"{(place.Cause == DragCause.Rail ? "Binds" : "May bind")} at {place.Where}."
            : limiting is null ? "" : limiting.Feature == RailFeature.Drag ? $"Drag spread {GradedBatchView.Percent(limiting.Value)} %, limit {Shown.Limit(limiting.Limit)}." : $"{Shown.First(limiting.Feature)} {Shown.Um(limiting.Figure?.EstimateUm ?? limiting.Value, level.Face.Sweep.Setup)} µm, limit {Shown.Limit(limit)}.";
        return new Panel($"{rail.Rail} {level.Face.Sweep.FaceName}{(limiting?.Predicted is null ? "" : ", mounted")}", $"{Shown.First(GradedBatchView.Action(rail.Grade))}. {figure}", FixedList<Layer>.Copy(layers)) { Sign = SignOf(rail.Grade) };
    }

    private static FeatureValue? Limiting(GradedRail rail) => rail.Features.FirstOrDefault(f => f.Feature == rail.LimitingFeature);

    // Of straightness; drag has none in um.
    private static double? LimitUm(GradeRules rules, GradedRail rail) => Limiting(rail) is not { Feature: not RailFeature.Drag } limiting ? null
        : rail.Grade == GradedBatch.Return && limiting.Feature == RailFeature.Side ? rules.ReturnSideUm : limiting.Limit;

    private static PooledSweep? Deciding(GradedRail rail) => rail.LimitingFeature is RailFeature.TopMounted or RailFeature.TopLocal or RailFeature.TopFree ? rail.Top : rail.Side ?? rail.Top;

    private static (Symbol, Role) SignOf(string grade) => grade switch
    {
        GradedBatch.Return => (Symbol.Triangle, Role.Limit),
        GradedBatch.MeasureAgain => (Symbol.Diamond, Role.Undecided),
        "gantry" => (Symbol.Circle, Role.Contact),
        "z" => (Symbol.Square, Role.Zone),
        _ => (Symbol.Ring, Role.Ink),
    };
}
