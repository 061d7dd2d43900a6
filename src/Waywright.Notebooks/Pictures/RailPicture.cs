namespace Waywright.Notebooks;

/// <summary>One face of a rail: single readings, combined stations, lines, zone, contacts, and STRt beside its limit at the right.</summary>
internal static class RailPicture
{
    /// <param name="face">The combined face.</param>
    /// <param name="limitUm">A limit on its STRt, um; null for none.</param>
    /// <param name="local">Whether the worst 100 mm are marked.</param>
    /// <param name="sure">How sure its figures are: adds the interval of STRt, the noise floor and the contacts' shares.</param>
    public static Picture Of(PooledSweep face, double? limitUm = null, bool local = false, StraightnessUncertainty? sure = null)
    {
        var level = new LevelProfile(face);
        var zone = sure?.Of(ReferenceLineKind.MinimumZone);
        var (x, y) = Axes(level, limitUm, zone);
        var layers = new List<Layer> { level.Zone };
        if (local && level.LocalZone(GradeRules.LocalWindowMm) is { } stretch)
            layers.Add(stretch);
        if (face.Passes.Count > 1)
            layers.Add(new DotLayer("single readings", Role.Faint, level.Readings, 4));
        layers.Add(new LineLayer("end points", Role.Context, level.Line(face.Straightness.EndPoints), Dash.Dotted));
        layers.Add(new LineLayer("least squares", Role.Fitted, level.Line(face.Straightness.LeastSquares), Dash.Dashed));
        layers.Add(new DotLayer("stations", Role.Ink, level.Stations) { Joined = true });
        layers.AddRange(sure is null ? [level.Contacts] : level.ContactsWith(sure.ContactShares, 0.075 * x.Range));
        layers.AddRange(Scales(face, level, limitUm, zone, x.Range));
        return new Picture($"{Shown.First(face.Sweep.Name)}: profile with its minimum zone", Told(face, limitUm, zone), x, y, new Panel(layers));
    }

    /// <summary>What the picture shows, in a sentence.</summary>
    public static string Caption(PooledSweep face, UncertainFigure? zone = null)
    {
        var name = Shown.First(face.Sweep.Name);
        var contacts = StraightnessFiguresView.Contacts(face.Straightness.MinimumZone);
        var read = Shown.Um(face.Straightness.MinimumZone.Line.STRtUm, face.Sweep.Setup);
        if (zone is null)
            return $"{name} lies within {read} µm. Drawn level with its zone. {contacts}";
        var found = zone.IsDistinguishable ? $"{name} lies within {UncertaintyText.Short(zone)} µm, as read within {read} µm." : $"{name} lies within {read} µm as read, and noise alone may read as much.";
        return $"{found} The bracket at the left is the noise floor: a perfectly straight rail would read up to {UncertaintyText.Two(zone.NoiseFloorUm)} µm here. Drawn level with its zone. {contacts}";
    }

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

    // What stands beside the profile on its scale of heights: STRt, its limit, its interval, and what noise alone reads.
    private static IEnumerable<Layer> Scales(PooledSweep face, LevelProfile level, double? limitUm, UncertainFigure? zone, double width)
    {
        yield return new BracketLayer("", Role.Ink, level.Last + (0.055 * width), new Interval(-level.HalfZone, level.HalfZone), zone is null ? $"STRt {Shown.Um(2 * level.HalfZone, face.Sweep.Setup)} µm" : "", Beside: Beside.Right);
        if (limitUm is { } limit)
            yield return new BracketLayer("limit", Role.Limit, level.Last + (0.03 * width), new Interval(-limit / 2, limit / 2), "", Dash.Dashed);
        if (zone is null)
            yield break;
        var (at, estimate, ends) = (level.Last + (0.08 * width), zone.EstimateUm / 2, new Interval(zone.LowUm / 2, zone.HighUm / 2));
        if (zone.IsDistinguishable)
            yield return new DotLayer("STRt, 95 % interval", Role.Ink, Point.Of([at, at], [estimate, -estimate]), 6) { Up = FixedList<Interval>.Copy([ends, new Interval(-ends.High, -ends.Low)]) };
        var told = zone.IsDistinguishable ? UncertaintyText.Short(zone) : $"{UncertaintyText.Short(zone)},\nmay be straight";
        yield return new TextLayer(new Point(level.Last + (0.09 * width), 0), $"STRt, µm\nread as {Shown.Um(2 * level.HalfZone, face.Sweep.Setup)}\n{told}", Beside.Right);
        var floor = zone.NoiseFloorUm / 2;
        yield return new BracketLayer("noise floor", Role.Context, level.First - (0.03 * width), new Interval(-floor, floor), "", OpensRight: true);
    }

    private static string Told(PooledSweep face, double? limitUm, UncertainFigure? zone)
    {
        var strt = Shown.Um(face.Straightness.MinimumZone.Line.STRtUm, face.Sweep.Setup);
        var sure = zone is null ? "" : $", {UncertaintyText.Short(zone)} µm with 95 %";
        return $"{Shown.First(face.Sweep.Name)} over {Shown.Count(face.Profile.Count)} stations; STRt {strt} µm about the minimum zone{sure}{(limitUm is { } l ? $", limit {Shown.Limit(l)} µm" : "")}.";
    }

    private static (Axis X, Axis Y) Axes(LevelProfile level, double? limitUm, UncertainFigure? zone)
    {
        var heights = level.Stations.Concat(level.Readings).Select(p => Math.Abs(p.Y)).Append((limitUm ?? 0) / 2);
        // Shares stand outside the zone's edges.
        heights = zone is null ? heights.Append(level.HalfZone) : heights.Append(1.2 * level.HalfZone).Append(zone.NoiseFloorUm / 2);
        var reach = heights.Max() * 1.08;
        var y = Axis.Covering("height", "µm", [-reach, reach]) with { Sign = "+ towards the dial" };
        var span = level.Last - level.First;
        var x = Axis.Covering("position from the dot", "mm", [Math.Min(0, level.First), level.Last], zone is null ? 6 : 4)
            .Reaching(level.First - ((zone is null ? 0.03 : 0.06) * span), level.Last + ((zone is null ? 0.24 : 0.38) * span), new Interval(Math.Min(0, level.First), level.Last));
        return (x, y);
    }
}
