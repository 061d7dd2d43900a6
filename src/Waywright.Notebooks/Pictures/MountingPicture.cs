namespace Waywright.Notebooks;

/// <summary>A rail's top free above and mounted below, on one scale, with its screws numbered in tightening order.</summary>
internal static class MountingPicture
{
    private const int Most = 200;

    public static Picture Of(MountedShape shape)
    {
        var freeLine = StraightnessFigures.Of(shape.Free).MinimumZone.Line;
        var free = Points(shape.Free.PositionsMm, shape.Free.HeightsUm, freeLine);
        var mounted = Points(shape.Mounted.PositionsMm, shape.Mounted.HeightsUm, shape.Zone);
        var under = Points(shape.BentBase.PositionsMm, shape.BentBase.HeightsUm, shape.Zone);
        var x = Axis.Covering("position from the dot", "mm", [0, shape.Screws.LengthMm], 6).Reaching(-0.03 * shape.Screws.LengthMm, 1.03 * shape.Screws.LengthMm, new Interval(0, shape.Screws.LengthMm));
        var reach = 1.15 * free.Concat(mounted).Concat(under).Select(p => Math.Abs(p.Y)).Append(1).Max();
        var y = Axis.Covering("height", "µm", [-reach, reach], 4) with { Sign = "+ up" };
        var order = shape.Screws.TighteningRounds[0].ToList();
        var marks = new MarkerLayer("screws, numbered as they are tightened", Role.Contact, Symbol.Triangle,
            FixedList<Point>.Copy(shape.Screws.ScrewsMm.Select(at => new Point(at, shape.HeightUm(at) - shape.Zone.HeightUm(at)))),
            FixedList<string>.Copy(shape.Screws.Holes.Select(h => Shown.Count(order.IndexOf(h) + 1))));
        return new Picture($"Free and mounted: {ShapeModesView.NameOf(shape.Free)}", $"{Shown.Um(shape.FreeUm)} um free, {Shown.Um(shape.ResidualUm)} um mounted.", x, y,
            new Panel("free", $"STRt {Shown.Um(shape.FreeUm)} µm", FixedList<Layer>.Copy([new DotLayer("stations", Role.Ink, free, 4) { Joined = true }, new TickLayer("screws", Role.Context, FixedList<double>.Copy(shape.Screws.ScrewsMm))])),
            new Panel("mounted", $"STRt {Shown.Um(shape.ResidualUm)} µm", FixedList<Layer>.Copy([new LineLayer("base", Role.Context, under, Dash.Dashed), new LineLayer("mounted top", Role.Fitted, mounted), marks])))
        { Columns = 1 };
    }

    public static string Caption(MountedShape shape)
        => $"{ShapeModesView.NameOf(shape.Free)} free (above) and as predicted once screwed down in {shape.Screws.Name} (below), on one scale: {Shown.Um(shape.FreeUm)} µm become {Shown.Um(shape.ResidualUm)} µm{(shape.Base is null ? ", relative to the base" : "")}.";

    private static FixedList<Point> Points(IReadOnlyList<double> x, IReadOnlyList<double> z, ReferenceLine line)
    {
        var step = Math.Max(1, x.Count / Most);
        return FixedList<Point>.Copy(Enumerable.Range(0, x.Count).Where(i => i % step == 0 || i == x.Count - 1).Select(i => new Point(x[i], z[i] - line.HeightUm(x[i]))));
    }
}
