namespace Waywright.Notebooks;

/// <summary>One face of a rail: single readings, combined stations, lines, zone, contacts, and STRt beside its limit at the right.</summary>
internal static class RailPicture
{
    /// <param name="face">The combined face.</param>
    /// <param name="limitUm">A limit on its STRt, um; null for none.</param>
    /// <param name="local">Whether the worst 100 mm are marked.</param>
    public static Picture Of(PooledSweep face, double? limitUm = null, bool local = false)
    {
        var level = new LevelProfile(face);
        var (x, y) = Axes(level, limitUm);
        var right = x.High - x.Low;
        var layers = new List<Layer> { level.Zone };
        if (local && level.LocalZone(GradeRules.LocalWindowMm) is { } stretch)
            layers.Add(stretch);
        if (face.Passes.Count > 1)
            layers.Add(new DotLayer("single readings", Role.Faint, level.Readings, 4));
        layers.Add(new LineLayer("end points", Role.Context, level.Line(face.Straightness.EndPoints), Dash.Dotted));
        layers.Add(new LineLayer("least squares", Role.Fitted, level.Line(face.Straightness.LeastSquares), Dash.Dashed));
        layers.Add(new DotLayer("stations", Role.Ink, level.Stations) { Joined = true });
        layers.Add(level.Contacts);
        layers.Add(new BracketLayer("", Role.Ink, level.Last + (0.055 * right), new Interval(-level.HalfZone, level.HalfZone), $"STRt {Shown.Um(2 * level.HalfZone, face.Sweep.Setup)} µm", Beside: Beside.Right));
        if (limitUm is { } limit)
            layers.Add(new BracketLayer("limit", Role.Limit, level.Last + (0.03 * right), new Interval(-limit / 2, limit / 2), "", Dash.Dashed));
        var strt = Shown.Um(2 * level.HalfZone, face.Sweep.Setup);
        return new Picture($"{Shown.First(face.Sweep.Name)}: profile with its minimum zone", $"{Shown.First(face.Sweep.Name)} over {Shown.Count(level.X.Count)} stations; STRt {strt} µm about the minimum zone{(limitUm is { } l ? $", limit {Shown.Limit(l)} µm" : "")}.", x, y,
            new Panel(layers));
    }

    /// <summary>What the picture shows, in a sentence.</summary>
    public static string Caption(PooledSweep face)
        => $"{Shown.First(face.Sweep.Name)} lies within {Shown.Um(face.Straightness.MinimumZone.Line.STRtUm, face.Sweep.Setup)} µm. Drawn level with its zone. {StraightnessFiguresView.Contacts(face.Straightness.MinimumZone)}";

    /// <summary>The stations as a table.</summary>
    public static TextTable Data(PooledSweep face)
    {
        var table = new TextTable("#position mm", "#combined height um", "#from zone's middle um");
        for (var i = 0; i < face.Profile.Count; i++)
        {
            var (x, z) = (face.Profile.PositionsMm[i], face.Profile.HeightsUm[i]);
            table.Add(Shown.Mm(x), Shown.Um(z), Shown.Um(z - face.Straightness.MinimumZone.Line.HeightUm(x)));
        }

        return table;
    }

    private static (Axis X, Axis Y) Axes(LevelProfile level, double? limitUm)
    {
        var reach = level.Stations.Concat(level.Readings).Select(p => Math.Abs(p.Y)).Append(level.HalfZone).Append((limitUm ?? 0) / 2).Max() * 1.08;
        var y = Axis.Covering("height", "µm", [-reach, reach]) with { Sign = "+ towards the dial" };
        var span = level.Last - level.First;
        var x = Axis.Covering("position from the dot", "mm", [Math.Min(0, level.First), level.Last], 6).Reaching(level.First - (0.03 * span), level.Last + (0.24 * span), new Interval(Math.Min(0, level.First), level.Last));
        return (x, y);
    }
}
