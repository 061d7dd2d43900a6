namespace Waywright.Simulations;

/// <summary>A rail of known shape that is swept free and screwed down: what its mounted residual is, and what a sweep says of it.</summary>
/// <param name="Shape">The rail, invented.</param>
/// <param name="Screws">Where it is screwed down.</param>
/// <param name="PatternName">What the table calls that.</param>
/// <param name="NoiseUm">Standard deviation of a station's height, um.</param>
/// <param name="Yields">Whether the base is only as stiff as the rail, else it is rigid.</param>
internal sealed record MountedScene(MountedShapeOf Shape, ScrewPattern Screws, string PatternName, double NoiseUm, bool Yields)
{
    public const double LengthMm = 320;
    private const double StiffnessNm2 = 42.4;

    public static readonly ScrewPattern Every = ScrewPattern.Every(LengthMm, 25, 10);

    /// <summary>Midway between the holes and near both ends.</summary>
    public static readonly double[] Stations = [4, .. Enumerable.Range(0, 12).Select(i => 22.5 + (25.0 * i)), 316];

    private static readonly double[] GuideBow = Array.ConvertAll(Stations, x => 0.5 * 4 * x * (LengthMm - x) / (LengthMm * LengthMm));

    private double? Base => Yields ? StiffnessNm2 : null;

    /// <summary>The whole shape, every millimetre, with the base's push.</summary>
    public MountedShape Truth()
    {
        double[] x = [.. Enumerable.Range(0, (int)LengthMm + 1).Select(i => (double)i)];
        return MountedShape.Of(new Profile(x, Array.ConvertAll(x, at => Shape.HeightUm(at))), Screws, StiffnessNm2, baseStiffnessNm2: Base);
    }

    public UncertainFigure Sweep(ulong seed, int trials)
    {
        var draws = new Draws(seed);
        var bow = draws.Next();
        var read = new Profile(Stations, [.. Stations.Select((x, i) => Shape.HeightUm(x) + (NoiseUm * ((bow * GuideBow[i]) + draws.Next())))]);
        var errors = new ProfileErrors([.. Stations.Select(_ => NoiseUm)], double.PositiveInfinity, [new ErrorShape("guide", Array.ConvertAll(GuideBow, b => NoiseUm * b), double.PositiveInfinity, false, AveragesOut.Nothing, "")]);
        var given = new MountingCase(read, Screws, StiffnessNm2, null, Base, null);
        return MountedFigure.Of(given, MountedShape.Of(given).ResidualUm, errors, trials);
    }

    /// <summary>By how many times what errors read through the screws' map they moved the pressed residual, at stations, holes and ends.</summary>
    public double Moved(ulong seed)
    {
        var draws = new Draws(seed);
        var map = new MountedMap(Stations, Screws);
        var free = map.Mounted(Array.ConvertAll(Stations, x => Shape.HeightUm(x)));
        var error = map.Mounted(Array.ConvertAll(Stations, _ => NoiseUm * draws.Next()));
        return Math.Abs(Pressed(map, [.. free.Zip(error, (z, e) => z + e)]) - Pressed(map, free)) / Zone(map, error);
    }

    private double Pressed(MountedMap map, double[] held)
    {
        var contact = new ContactSearch(map.Places, [.. Screws.ScrewsMm.Select(x => Array.BinarySearch(map.Places, x))], held);
        contact.Solve(withBase: true);
        return Zone(map, contact.Open.ToArray());
    }

    private static double Zone(MountedMap map, double[] heights) => StraightnessFigures.Of(new Profile(map.Places, heights)).MinimumZone.Line.STRtUm;
}

/// <summary>Heights of a rail's top, um, at mm from the dot.</summary>
internal sealed record MountedShapeOf(string Name, Func<double, double> HeightUm)
{
    private const double L = MountedScene.LengthMm;

    public static readonly MountedShapeOf[] All =
    [
        new("straight", _ => 0),
        new("crowned 90 um", x => 90 * 4 * x * (L - x) / (L * L)),
        new("hollow 40 um", x => -40 * 4 * x * (L - x) / (L * L)),
        new("S of 20 um", x => 20 * Math.Sin(2 * Math.PI * x / L)),
        new("waves of 200 mm", x => 12 * Math.Sin((2 * Math.PI * x / 200) + 0.4)),
        new("waves of 90 mm", x => 6 * Math.Sin((2 * Math.PI * x / 90) + 1)),
        new("waves of 60 mm", x => 5 * Math.Sin(2 * Math.PI * x / 60)),
        new("bump", x => 8 * Math.Exp(-Math.Pow((x - 141) / 22, 2))),
    ];
}
