namespace Waywright.Simulations;

/// <summary>One point of the grid: a rail, how it is swept, and by what it is disturbed.</summary>
/// <param name="Stations">Number of stations along 320 mm.</param>
/// <param name="Shape">The rail.</param>
/// <param name="NoiseUm">Standard deviation of a single reading, um.</param>
/// <param name="Passes">Passes; the scatter is known from their repeats, or stated where there is one.</param>
/// <param name="BowUm">Standard deviation of a bow that all passes share, um; 0 for none.</param>
/// <param name="DialUm">Limit over a tenth of a turn of the dial's own error, um; 0 for none.</param>
internal sealed record Scene(int Stations, Shape Shape, double NoiseUm, int Passes = 1, double BowUm = 0, double DialUm = 0)
{
    private const double Length = 320;
    private const double HatUm = 20;
    private const double TiltUm = 60;

    public string Disturbed => (BowUm, DialUm) switch
    {
        (0, 0) => "-",
        (_, 0) => $"bow {BowUm:0.#}",
        (0, _) => $"dial {DialUm:0.#}",
        _ => $"bow {BowUm:0.#}, dial {DialUm:0.#}",
    };

    public double[] Positions { get; } = [.. Enumerable.Range(0, Stations).Select(i => 4 + ((Length - 8) * i / (Stations - 1)))];

    public double[] Truth => Shape.At(Positions, Length);

    /// <summary>One sweep of the rail: the combined heights and what the kit would say they are uncertain by.</summary>
    public (Profile Profile, ProfileErrors Errors) Sweep(ulong seed)
    {
        var draws = new Draws(seed);
        var truth = Truth;
        var bow = Shape.Bow(1).At(Positions, Length);
        var shared = draws.Next() * BowUm;
        var tilt = TiltUm * (draws.Next() > 0 ? 1 : -1);
        var dial = new DialError(draws, DialUm);
        var passes = new SweepPass[Passes];
        for (var k = 0; k < Passes; k++)
        {
            var (offset, slope) = (10 * draws.Next(), 3 * draws.Next());
            var readings = new double[Stations];
            for (var i = 0; i < Stations; i++)
            {
                var u = Positions[i] / Length;
                var height = truth[i] + (shared * bow[i]) + offset + ((slope + tilt) * u);
                readings[i] = height + dial.At(height) + (NoiseUm * draws.Next());
            }

            passes[k] = new SweepPass($"{k + 1}", "forward", "A", Positions, readings);
        }

        var pooled = new Sweep("R", RailFace.Side, null, null, passes, "simulation").Pool();
        var known = Passes > 1;
        var scatter = known ? pooled.RepeatabilityUm!.Value : NoiseUm;
        var shapes = new List<ErrorShape>();
        if (BowUm > 0)
            shapes.Add(new ErrorShape("bow", [.. bow.Select(b => b * BowUm)], double.PositiveInfinity, false, AveragesOut.Relaying, ""));
        if (DialUm > 0)
            shapes.AddRange(dial.Shapes([.. Enumerable.Range(0, Stations).Select(i => passes.Average(p => p.ReadingsUm[i]))]));
        var station = Enumerable.Repeat(scatter / Math.Sqrt(Passes), Stations).ToArray();
        return (pooled.Profile, new ProfileErrors(station, known ? pooled.DegreesOfFreedom : double.PositiveInfinity, shapes));
    }

    /// <summary>An error that belongs to the reading: straight lines between independent values every 20 um.</summary>
    private sealed class DialError(Draws draws, double limitUm)
    {
        private readonly double _sigma = limitUm / Math.Sqrt(3);
        private readonly Dictionary<int, double> _knots = [];

        public double At(double reading)
        {
            if (_sigma == 0)
                return 0;
            var at = reading / HatUm;
            var below = (int)Math.Floor(at);
            return Knot(below) + ((at - below) * (Knot(below + 1) - Knot(below)));
        }

        public IEnumerable<ErrorShape> Shapes(double[] readings)
        {
            var (first, last) = ((int)Math.Floor(readings.Min() / HatUm), (int)Math.Floor(readings.Max() / HatUm) + 1);
            for (var knot = first; knot <= last; knot++)
            {
                var hat = readings.Select(r => _sigma * Math.Max(0, 1 - Math.Abs((r / HatUm) - knot))).ToArray();
                yield return new ErrorShape($"dial at {knot}", hat, double.PositiveInfinity, false, AveragesOut.Relaying, "");
            }
        }

        private double Knot(int index) => _knots.TryGetValue(index, out var value) ? value : _knots[index] = _sigma * draws.Next();
    }
}
