namespace Waywright.Notebooks;

/// <summary>Tensions over the travel, and the way of a belt around its pulleys.</summary>
internal static class DrivePicture
{
    private const int Steps = 20;
    private const int Corners = 72;

    public static Picture Travel(BeltDrive drive)
    {
        var (length, shortest) = (1000 * drive.BeltLength.Si.Value, 1000 * drive.ShortestSide.Si.Value);
        var (f, rest) = (drive.EffectiveForce.Si.Value, drive.Pretension.Si.Value);
        double[] side = [.. Enumerable.Range(0, Steps + 1).Select(i => shortest + ((length - (2 * shortest)) * i / Steps))];
        double[] tight = [.. side.Select(l => rest + (f * (length - l) / length))];
        double[] slack = [.. side.Select(l => rest - (f * l / length))];
        var x = Axis.Covering("pulling side, from carriage to motor pulley", "mm", [0, length]);
        var y = Axis.Covering("tension", "N", [0, .. tight, .. slack, .. drive.AllowableN is { } a && a < 3 * tight.Max() ? [a] : Array.Empty<double>()]);
        var layers = new List<Layer>
        {
            new RuleLayer("at rest", Role.Context, rest, $"set to {drive.Pretension.ToShortString()}", Dash.Dotted),
            new LineLayer("tight side", Role.Fitted, Point.Of(side, tight)),
            new LineLayer("slack side", Role.Fitted, Point.Of(side, slack), Dash.Dashed),
        };
        if (drive.AllowableN is { } allowed && y.Holds(allowed))
            layers.Add(new RuleLayer("allowed", Role.Limit, allowed, $"allowed {allowed:0.#} N"));
        return new Picture("Tension over the travel at the peak force", drive.Verdict, x, y, new Panel(layers)) { PlotHeight = 200 };
    }

    public static Picture Way(BeltPath path)
    {
        var circles = path.Pulleys.Select(p => Enumerable.Range(0, Corners + 1).Select(i => new Point(p.XMm + (p.CordRadiusMm * Math.Cos(2 * Math.PI * i / Corners)), p.YMm + (p.CordRadiusMm * Math.Sin(2 * Math.PI * i / Corners)))).ToArray()).ToArray();
        var x = Axis.Covering("x", "mm", circles.SelectMany(c => c).Select(p => p.X));
        var y = Axis.Covering("y", "mm", circles.SelectMany(c => c).Select(p => p.Y), 3);
        var layers = new List<Layer>();
        for (var i = 0; i < circles.Length; i++)
        {
            var p = path.Pulleys[i];
            layers.Add(new LineLayer(p.IsOutside ? "touches from outside" : "within the belt", Role.Ink, FixedList<Point>.Copy(circles[i]), p.IsOutside ? Dash.Dashed : Dash.Solid, 1.5));
            layers.Add(new TextLayer(new Point(p.XMm, p.YMm), $"{i + 1}", Beside.Above));
            layers.Add(new LineLayer("belt", Role.Fitted, FixedList<Point>.Copy(Span(path, i)), Width: 2.5));
        }

        return new Picture("The belt's way", path.Verdict, x, y, new Panel(layers)) { PlotHeight = (int)Math.Clamp(680 * y.Range / x.Range, 90, 420) };
    }

    private static Point[] Span(BeltPath path, int i)
    {
        var (a, b) = (path.Pulleys[i], path.Pulleys[(i + 1) % path.Pulleys.Count]);
        var (ra, rb) = (a.IsOutside ? -a.CordRadiusMm : a.CordRadiusMm, b.IsOutside ? -b.CordRadiusMm : b.CordRadiusMm);
        var heading = Math.Atan2(b.YMm - a.YMm, b.XMm - a.XMm) + Math.Asin((ra - rb) / double.Hypot(b.XMm - a.XMm, b.YMm - a.YMm));
        var (sin, cos) = Math.SinCos(heading);
        return [new Point(a.XMm + (ra * sin), a.YMm - (ra * cos)), new Point(b.XMm + (rb * sin), b.YMm - (rb * cos))];
    }
}
