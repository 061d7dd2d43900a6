namespace Waywright.Notebooks;

/// <summary>A mounted top as swept with its prediction, and below it what they differ by, within what chance explains.</summary>
internal static class MountedCheckPicture
{
    private const int Most = 150;

    public static Picture Of(MountedCheck check)
    {
        var line = StraightnessFigures.Of(check.AsPredicted).MinimumZone.Line;
        var at = check.Swept.PositionsMm;
        var swept = FixedList<Point>.Copy(at.Zip(check.Swept.HeightsUm, (x, z) => new Point(x, z - line.HeightUm(x))));
        var predicted = Predicted(check, line);
        var difference = FixedList<Point>.Copy(at.Zip(check.Difference.HeightsUm, (x, z) => new Point(x, z)));
        var chance = FixedList<Interval>.Copy(check.UncertaintyUm.Select(u => new Interval(-check.StationLimit * u, check.StationLimit * u)));
        var departing = FixedList<Point>.Copy(difference.Where(p => check.DepartingMm.Contains(p.X)));
        var length = check.Predicted.Screws.LengthMm;
        var x = Axis.Covering("position from the dot", "mm", [0, length], 6).Reaching(-0.03 * length, 1.03 * length, new Interval(0, length));
        var y = Axis.Covering("height", "µm", swept.Concat(predicted).Concat(difference).Select(p => p.Y).Concat(chance.SelectMany(c => new[] { c.Low, c.High })), 5) with { Sign = "+ up" };
        var screws = new TickLayer("screws", Role.Context, FixedList<double>.Copy(check.Predicted.Screws.ScrewsMm));
        var lower = new List<Layer>
        {
            new BandLayer("what chance explains", Role.Zone, FixedList<double>.Copy(at), chance),
            new DotLayer("swept less predicted", Role.Ink, difference, 5) { Joined = true },
        };
        if (departing.Count > 0)
            lower.Add(new MarkerLayer("departs", Role.Limit, Symbol.Ring, departing, Size: 14));
        if (!check.Holds)
            lower.Add(new TextLayer(new Point(check.LargestAtMm, check.LargestUm), $"{Shown.Um(check.LargestUm)} µm", check.LargestAtMm > length / 2 ? Beside.Left : Beside.Right));
        lower.Add(screws);
        return new Picture("Swept after mounting and predicted", check.Holds ? "The sweep is what was predicted." : $"The sweep departs from the prediction by {Shown.Um(check.LargestUm)} um at {Shown.Mm(check.LargestAtMm)} mm.", x, y,
            new Panel("mounted top", $"STRt {Shown.Um(check.SweptUm)} µm as swept, {Shown.Um(check.Predicted.ResidualUm)} µm predicted", FixedList<Layer>.Copy([new LineLayer("predicted", Role.Fitted, predicted, Dash.Dashed), new DotLayer("swept", Role.Ink, swept, 5), screws])),
            new Panel("difference", $"Chance of as much by accident: {Shown.Percent(check.Chance)} %", FixedList<Layer>.Copy(lower)))
        { Columns = 1, PlotHeight = 150 };
    }

    public static string Caption(MountedCheck check)
        => check.Holds
            ? "The mounted top as swept (dots) lies on its prediction (dashed) as closely as both sweeps allow; height and tilt of the sweep are free."
            : $"The mounted top as swept (dots) departs from its prediction (dashed) most at {Shown.Mm(check.LargestAtMm)} mm, by {Shown.Um(check.LargestUm)} µm; rings are beyond what chance explains.";

    // The prediction over the whole rail, by the line that lays it on the sweep.
    private static FixedList<Point> Predicted(MountedCheck check, ReferenceLine line)
    {
        var shape = check.Predicted;
        var (first, last) = (check.AsPredicted.PositionsMm[0], check.AsPredicted.PositionsMm[^1]);
        var (low, high) = (check.AsPredicted.HeightsUm[0] - shape.HeightUm(first), check.AsPredicted.HeightsUm[^1] - shape.HeightUm(last));
        var step = Math.Max(1, shape.Mounted.Count / Most);
        return FixedList<Point>.Copy(Enumerable.Range(0, shape.Mounted.Count).Where(i => i % step == 0 || i == shape.Mounted.Count - 1).Select(i =>
        {
            var x = shape.Mounted.PositionsMm[i];
            return new Point(x, shape.Mounted.HeightsUm[i] + low + ((high - low) * (x - first) / (last - first)) - line.HeightUm(x));
        }));
    }
}
