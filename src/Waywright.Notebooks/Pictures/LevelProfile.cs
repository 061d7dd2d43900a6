namespace Waywright.Notebooks;

/// <summary>A face turned so that its minimum zone lies level and centred on zero: the tilt of the bench says nothing about the rail.</summary>
internal sealed class LevelProfile
{
    private readonly ReferenceLine _line;

    public LevelProfile(PooledSweep face)
    {
        Face = face;
        _line = face.Straightness.MinimumZone.Line;
        X = face.Profile.PositionsMm;
        Stations = Of(X, face.Profile.HeightsUm);
        Readings = FixedList<Point>.Copy(face.Passes.SelectMany(p => Of(p.Pass.PositionsMm, p.HeightsUm)));
        HalfZone = _line.STRtUm / 2;
    }

    public PooledSweep Face { get; }

    public IReadOnlyList<double> X { get; }

    public double First => X[0];

    public double Last => X[^1];

    public FixedList<Point> Stations { get; }

    public FixedList<Point> Readings { get; }

    public double HalfZone { get; }

    public BandLayer Zone => new("minimum zone", Role.Zone, FixedList<double>.Copy([First, Last]), FixedList<Interval>.Copy([new(-HalfZone, HalfZone), new(-HalfZone, HalfZone)]));

    public MarkerLayer Contacts => new("contacts", Role.Contact, Symbol.Diamond, FixedList<Point>.Copy(Face.Straightness.MinimumZone.Contacts.Select(c => new Point(c.PositionMm, c.Side == ZoneSide.Upper ? HalfZone : -HalfZone)).Distinct()));

    /// <summary>Another reference line over the whole face, seen from the level zone.</summary>
    public FixedList<Point> Line(ReferenceLine line) => Of([First, Last], [line.HeightUm(First), line.HeightUm(Last)]);

    /// <summary>The narrowest zone of the worst stretch of the local straightness; null when there is none.</summary>
    public BandLayer? LocalZone(double windowMm)
    {
        if (Face.Profile.Local(windowMm) is not { } local)
            return null;
        var within = Enumerable.Range(0, X.Count).Where(i => X[i] >= local.FromMm && X[i] <= local.ToMm).ToArray();
        var part = StraightnessFigures.Of(new Profile(within.Select(i => X[i]).ToArray(), within.Select(i => Face.Profile.HeightsUm[i]).ToArray())).MinimumZone.Line;
        double[] ends = [local.FromMm, local.ToMm];
        return new BandLayer("worst 100 mm", Role.Undecided, FixedList<double>.Copy(ends), FixedList<Interval>.Copy(ends.Select(x => Interval.Around(part.HeightUm(x) - _line.HeightUm(x), part.STRtUm / 2))));
    }

    private FixedList<Point> Of(IReadOnlyList<double> x, IReadOnlyList<double> z) => FixedList<Point>.Copy(x.Zip(z, (at, height) => new Point(at, height - _line.HeightUm(at))));
}
