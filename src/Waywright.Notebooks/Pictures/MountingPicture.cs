namespace Waywright.Notebooks;

/// <summary>
/// A rail's top free above and mounted below, on one scale, with what each screw pulls as an arrow and the screws numbered in tightening order; below that the mounted top again, enlarged
/// by a stated factor, so that what a free end does is seen.
/// </summary>
internal static class MountingPicture
{
    private const int Most = 110;
    private const double ArrowOfReach = 0.8;
    private const double LeastArrow = 0.04;
    private const double OrderRow = -0.86;

    private static readonly int[] Factors = [100, 50, 20, 10, 5, 2];

    public static Picture Of(MountedShape shape)
    {
        var freeLine = StraightnessFigures.Of(shape.Free).MinimumZone.Line;
        var free = Points(shape.Free.PositionsMm, shape.Free.HeightsUm, freeLine);
        var mounted = Points(shape.Mounted.PositionsMm, shape.Mounted.HeightsUm, shape.Zone);
        var under = Points(shape.BentBase.PositionsMm, shape.BentBase.HeightsUm, shape.Zone);
        var length = shape.Screws.LengthMm;
        var x = Axis.Covering("position from the dot", "mm", [0, length], 6).Reaching(-0.03 * length, 1.03 * length, new Interval(0, length));
        var half = shape.Figure?.HighUm / 2;
        var reach = 1.15 * free.Concat(mounted).Concat(under).Select(p => Math.Abs(p.Y)).Append(half ?? 0).Append(1).Max();
        var y = Axis.Covering("height", "µm", [-reach, reach], 4) with { Sign = "+ up" };
        var order = shape.Screws.TighteningRounds[0].ToList();
        var screws = new TickLayer("screws", Role.Context, FixedList<double>.Copy(shape.Screws.ScrewsMm));
        var numbers = new MarkerLayer("screws, numbered as they are tightened", Role.Contact, Symbol.Triangle,
            FixedList<Point>.Copy(shape.Screws.ScrewsMm.Select(at => new Point(at, OrderRow * y.High))),
            FixedList<string>.Copy(shape.Screws.Holes.Select(h => Shown.Count(order.IndexOf(h) + 1))), Size: 8);
        var panels = new List<Panel>
        {
            new("free", $"STRt {Shown.Um(shape.FreeUm)} µm", FixedList<Layer>.Copy([new DotLayer("stations", Role.Ink, free, 4) { Joined = true }, screws])),
            new("mounted, on the same scale", $"STRt {Markup.Micro(MountedShapeView.Kept(shape))}", FixedList<Layer>.Copy(
                [.. Zone(half, length), new LineLayer("base", Role.Context, under, Dash.Dashed), new LineLayer("mounted top", Role.Fitted, mounted), .. Forces(shape, y), numbers])),
        };
        if (Array.Find(Factors, f => f * mounted.Concat(under).Select(p => Math.Abs(p.Y)).Append(half ?? 0).Max() <= 0.9 * y.High) is > 0 and var factor)
            panels.Add(new($"mounted, heights drawn {Shown.Count(factor)} times as large", Gap(shape), FixedList<Layer>.Copy([.. Zone(half * factor, length), new LineLayer("base", Role.Context, Raised(under, factor), Dash.Dashed), new LineLayer("mounted top", Role.Fitted, Raised(mounted, factor)), screws])));
        return new Picture($"Free and mounted: {ShapeModesView.NameOf(shape.Free)}", $"{Shown.Um(shape.FreeUm)} um free, {Shown.Um(shape.ResidualUm)} um mounted.", x, y, panels) { Columns = 1, PlotHeight = 140 };
    }

    public static string Caption(MountedShape shape)
        => $"{ShapeModesView.NameOf(shape.Free)} free (above) and as predicted once screwed down in {shape.Screws.Name} (below), on one scale: {Shown.Um(shape.FreeUm)} µm become {Markup.Micro(MountedShapeView.Kept(shape))}{(shape.Base is null ? ", relative to the base" : "")}. Arrows are what each screw pulls, at most {MountedShapeView.Newton(shape.PullsN.Max())} N{(shape.ClampLimitN is { } limit ? $", beside the limit of {MountedShapeView.Newton(limit)} N" : "")}.{(shape.Figure is null ? "" : " The band is as high as what may be left at 95 %.")}";

    // As high as the residual may be at 95 %, about the middle of the mounted zone.
    private static IEnumerable<Layer> Zone(double? half, double length)
        => half is not { } up ? [] : [new BandLayer("may be left, at 95 %", Role.Zone, FixedList<double>.Copy([0, length]), FixedList<Interval>.Copy([Interval.Around(0, up), Interval.Around(0, up)]))];

    // An arrow down is a screw that pulls, an arrow up a place that the base pushes; the limit, or the largest force without one, is as long as half the panel.
    private static IEnumerable<Layer> Forces(MountedShape shape, Axis y)
    {
        var full = shape.ClampLimitN ?? Math.Max(1e-9, shape.PullsN.Max(Math.Abs));
        var tall = ArrowOfReach * y.High;
        var (down, up) = (new List<Point>(), new List<Point>());
        for (var i = 0; i < shape.PullsN.Count; i++)
        {
            var pull = Math.Clamp(shape.PullsN[i] / full, -1.4, 1.6);
            if (Math.Abs(pull) < LeastArrow)
                continue;
            var at = shape.Screws.ScrewsMm[i];
            var tip = shape.HeightUm(at) - shape.Zone.HeightUm(at) + (Math.Sign(pull) * 0.04 * y.High);
            var role = shape.PullsN[i] > shape.ClampLimitN ? Role.Limit : Role.Ink;
            yield return new LineLayer("", role, FixedList<Point>.Copy([new Point(at, tip), new Point(at, tip + (pull * tall))]));
            (pull > 0 ? down : up).Add(new Point(at, tip + (Math.Sign(pull) * 0.03 * y.High)));
        }

        if (down.Count > 0)
            yield return new MarkerLayer("screw pulls", Role.Ink, Symbol.TriangleDown, FixedList<Point>.Copy(down), Size: 9);
        if (up.Count > 0)
            yield return new MarkerLayer("base pushes", Role.Ink, Symbol.Triangle, FixedList<Point>.Copy(up), Size: 9);
        if (shape.ClampLimitN is { } limit)
            yield return new RuleLayer("", Role.Limit, tall, $"a pull as long as this is the limit, {MountedShapeView.Newton(limit)} N");
    }

    // No longer than a phone is wide.
    private static string Gap(MountedShape shape)
        => $"widest gap to the base {Shown.Um(shape.WidestGapUm)} µm at {Shown.Mm(Math.Round(shape.WidestGapAtMm))} mm";

    private static FixedList<Point> Raised(FixedList<Point> points, double factor) => FixedList<Point>.Copy(points.Select(p => new Point(p.X, factor * p.Y)));

    private static FixedList<Point> Points(IReadOnlyList<double> x, IReadOnlyList<double> z, ReferenceLine line)
    {
        var step = Math.Max(1, x.Count / Most);
        return FixedList<Point>.Copy(Enumerable.Range(0, x.Count).Where(i => i % step == 0 || i == x.Count - 1).Select(i => new Point(x[i], z[i] - line.HeightUm(x[i]))));
    }
}
