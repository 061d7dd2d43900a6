namespace Waywright.Notebooks;

/// <summary>A face turned so that its minimum zone lies level and centred on zero: the tilt of the bench says nothing about the rail.</summary>
internal sealed class LevelProfile
{
    private readonly ReferenceLine _line;
    private readonly Profile _profile;
    private readonly MinimumZone _zone;

    /// <param name="face">A combined sweep.</param>
    /// <param name="predicted">Its heights as screws will hold them, to look at in their place.</param>
    public LevelProfile(PooledSweep face, Profile? predicted = null)
    {
        (Face, _profile) = (face, predicted ?? face.Profile);
        _zone = predicted is null ? face.Straightness.MinimumZone : StraightnessFigures.Of(predicted).MinimumZone;
        _line = _zone.Line;
        X = _profile.PositionsMm;
        Stations = Of(X, _profile.HeightsUm);
        Readings = predicted is not null ? FixedList<Point>.Empty : FixedList<Point>.Copy(face.Passes.SelectMany(p => Of(p.Pass.PositionsMm, p.HeightsUm)));
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

    public MarkerLayer Contacts => new("contacts", Role.Contact, Symbol.Diamond, FixedList<Point>.Copy(_zone.Contacts.Select(PlaceOf).Distinct()));

    /// <summary>The contacts, each with the share of simulations in which it is one, outside the zone and beside its station; without shares where they would run into each other.</summary>
    /// <param name="shares">For each station.</param>
    /// <param name="apart">mm that two shares need between them.</param>
    public IEnumerable<MarkerLayer> ContactsWith(IReadOnlyList<double> shares, double apart)
    {
        foreach (var edge in _zone.Contacts.GroupBy(c => c.Side))
        {
            var touching = edge.DistinctBy(c => c.PositionMm).OrderBy(c => c.PositionMm).ToArray();
            var clear = touching.Zip(touching.Skip(1)).All(p => p.Second.PositionMm - p.First.PositionMm >= apart);
            foreach (var contact in touching)
                yield return Contact(contact, clear ? $"{Shown.Percent(shares[contact.Station])} %" : "");
        }
    }

    /// <summary>Another reference line over the whole face, seen from the level zone.</summary>
    public FixedList<Point> Line(ReferenceLine line) => Of([First, Last], [line.HeightUm(First), line.HeightUm(Last)]);

    /// <summary>The narrowest zone of the worst stretch of the local straightness; null when there is none.</summary>
    public BandLayer? LocalZone(double windowMm)
    {
        if (_profile.Local(windowMm) is not { } local)
            return null;
        var within = Enumerable.Range(0, X.Count).Where(i => X[i] >= local.FromMm && X[i] <= local.ToMm).ToArray();
        var part = StraightnessFigures.Of(new Profile(within.Select(i => X[i]).ToArray(), within.Select(i => _profile.HeightsUm[i]).ToArray())).MinimumZone.Line;
        double[] ends = [local.FromMm, local.ToMm];
        return new BandLayer($"worst {Shown.Mm(windowMm)} mm", Role.Undecided, FixedList<double>.Copy(ends), FixedList<Interval>.Copy(ends.Select(x => Interval.Around(part.HeightUm(x) - _line.HeightUm(x), part.STRtUm / 2))));
    }

    private MarkerLayer Contact(ZoneContact contact, string share)
    {
        // Readings stand above and below their station, and the brackets to the right of the last.
        var left = contact.PositionMm > First + (0.7 * (Last - First));
        var beside = contact.Side == ZoneSide.Upper ? (left ? Beside.AboveLeft : Beside.AboveRight) : left ? Beside.BelowLeft : Beside.BelowRight;
        return new MarkerLayer("contacts (share of simulations)", Role.Contact, Symbol.Diamond, FixedList<Point>.Copy([PlaceOf(contact)]), FixedList<string>.Copy([share]), beside);
    }

    private Point PlaceOf(ZoneContact contact) => new(contact.PositionMm, contact.Side == ZoneSide.Upper ? HalfZone : -HalfZone);

    private FixedList<Point> Of(IReadOnlyList<double> x, IReadOnlyList<double> z) => FixedList<Point>.Copy(x.Zip(z, (at, height) => new Point(at, height - _line.HeightUm(at))));
}
