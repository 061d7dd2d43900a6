namespace Waywright.Simulations;

/// <summary>One scene swept many times, each sweep judged by the library.</summary>
internal sealed class Point(Scene scene)
{
    private const int Trials = 1000;

    public static readonly (ReferenceLineKind Line, StraightnessParameter Parameter)[] Kinds =
        [.. from line in Enum.GetValues<ReferenceLineKind>() from parameter in Enum.GetValues<StraightnessParameter>() select (line, parameter)];

    private readonly Covered[] _covered = [.. Kinds.Select(k => new Covered(Truth(scene, k.Line, k.Parameter)))];

    public Scene Scene { get; } = scene;

    public Covered Zone => Of(ReferenceLineKind.MinimumZone, StraightnessParameter.STRt);

    public Covered Of(ReferenceLineKind line, StraightnessParameter parameter) => _covered[Array.IndexOf(Kinds, (line, parameter))];

    /// <summary>The figure that its 95 % interval held least often.</summary>
    public (string Name, double Percent) Least
    {
        get
        {
            var least = Array.IndexOf(_covered, _covered.MinBy(c => c.Interval)!);
            return ($"{Kinds[least].Parameter} {Name(Kinds[least].Line)}", _covered[least].Interval);
        }
    }

    public void Sweep(int rails) => Parallel.For(Zone.Rails, Zone.Rails + rails, i =>
    {
        var (profile, errors) = Scene.Sweep((ulong)i + 1);
        var sure = StraightnessUncertainty.Of(profile, errors, Trials, (ulong)i);
        for (var k = 0; k < Kinds.Length; k++)
            _covered[k].Add(sure.Of(Kinds[k].Line, Kinds[k].Parameter), Kinds[k] == (ReferenceLineKind.MinimumZone, StraightnessParameter.STRt) ? Plain(profile, errors, (ulong)i) : null);
    });

    public static string Name(ReferenceLineKind line) => line switch
    {
        ReferenceLineKind.EndPoints => "end points",
        ReferenceLineKind.LeastSquares => "least squares",
        _ => "minimum zone",
    };

    // Noise is added to heights that hold noise already: what the design says not to do.
    private static (double Low, double High) Plain(Profile profile, ProfileErrors errors, ulong seed)
    {
        var stations = new PreparedStations(profile.Positions);
        var trials = ErrorTrials.Draw(stations, errors, Trials, seed, default);
        var figure = new ZoneFigure(stations);
        var z = stations.Residuals(profile.Heights);
        var sum = new double[z.Length];
        var widths = new double[Trials];
        for (var t = 0; t < Trials; t++)
        {
            var e = trials.All(t);
            for (var i = 0; i < sum.Length; i++)
                sum[i] = z[i] + e[i];
            widths[t] = figure.At(sum, z).Value;
        }

        Array.Sort(widths);
        return (widths[(int)(0.025 * Trials)], widths[(int)(0.975 * Trials)]);
    }

    private static double Truth(Scene scene, ReferenceLineKind kind, StraightnessParameter parameter)
    {
        var figures = StraightnessFigures.Of(new Profile(scene.Positions, scene.Truth));
        var line = kind switch
        {
            ReferenceLineKind.EndPoints => figures.EndPoints,
            ReferenceLineKind.LeastSquares => figures.LeastSquares,
            _ => figures.MinimumZone.Line,
        };
        return parameter switch
        {
            StraightnessParameter.STRt => line.STRtUm,
            StraightnessParameter.STRp => line.STRpUm,
            StraightnessParameter.STRv => line.STRvUm,
            _ => line.STRqUm,
        };
    }
}
