namespace Waywright.Tests;

public class SweepErrorsTests
{
    private static readonly double[] Flat = new double[Simulated.Stations.Length];

    [Fact]
    public void A_sweep_without_a_set_up_has_no_uncertainty() => Assert.Null(Simulated.Sweep(null, RailFace.Side, ("", "forward", Flat)).Pool().Errors);

    [Fact]
    public void A_single_pass_has_the_rounding_of_its_readings_or_the_instruments_repeatability()
    {
        Assert.All(Errors("", "half").StationUm, u => Assert.Equal(5 / Math.Sqrt(12), u, 12));
        Assert.Equal(double.PositiveInfinity, Errors("", "half").StationDegreesOfFreedom);
        Assert.All(Errors(",\"repeatability_um\":2", "half").StationUm, u => Assert.Equal(2, u, 12));
        Assert.All(Errors(",\"repeatability_um\":2", "whole").StationUm, u => Assert.Equal(10 / Math.Sqrt(12), u, 12));

        static ProfileErrors Errors(string instrument, string readTo)
            => Simulated.Sweep(Simulated.Setup(instrument, readTo: readTo, division: 10), RailFace.Side, ("", "forward", Flat)).Pool().Errors!;
    }

    [Theory]
    [InlineData("AAAAA", 5)]
    [InlineData("ABCDE", 1)]
    [InlineData("AABBC", 5.0 / 3)]
    public void Equal_repeats_still_have_the_rounding_and_only_laying_anew_averages_it(string lays, double readingsPerLay)
    {
        var pooled = Simulated.Sweep(Simulated.Setup(), RailFace.Side, [.. lays.Select(lay => ($"{lay}", "forward", Flat))]).Pool();
        Assert.Equal(0, pooled.RepeatabilityUm!.Value, 1e-12);
        Assert.All(pooled.Errors!.StationUm, u => Assert.Equal(Math.Sqrt(readingsPerLay / 5 / 12), u, 1e-9));
        Assert.True(pooled.Errors.StationDegreesOfFreedom > 1e6);
    }

    // The truth is a random profile; every station is read once in each of 4 passes that lie alike, and rounded to the step. s has 43 degrees of freedom, so what is said scatters.
    [Theory]
    [InlineData(3, 1)] // scatter of three steps: all of it averages over passes
    [InlineData(0, 10)] // no scatter: the same rounding in each pass of the lay
    [InlineData(1, 10)] // between: half of the readings at a station differ
    [InlineData(1.5, 10)]
    [InlineData(2, 10)]
    [InlineData(3, 10)]
    public void A_stations_uncertainty_is_what_its_height_is_off_by(double sigma, double step)
    {
        var setup = Simulated.Setup(division: step);
        double off = 0, said = 0;
        for (var trial = 0; trial < 1000; trial++)
        {
            var truth = Simulated.Noise(trial, 0, 40);
            // All passes lie alike, so nothing but scatter tells their readings apart.
            var passes = Enumerable.Range(1, 4).Select(k => ("A", "forward", truth.Zip(Simulated.Noise(trial, k, sigma), (t, e) => step * Math.Round((t + e) / step)).ToArray())).ToArray();
            var pooled = Simulated.Sweep(setup, RailFace.Side, passes).Pool();
            for (var i = 0; i < truth.Length; i++)
            {
                off += Math.Pow(pooled.Profile.HeightsUm[i] - truth[i], 2);
                said += Math.Pow(pooled.Errors!.StationUm[i], 2);
            }
        }

        Assert.InRange(Math.Sqrt(off / said), 0.95, 1.05);
    }

    [Fact]
    public void The_guide_is_out_of_straight_by_at_most_what_is_stated_and_by_that_at_the_worst()
    {
        var errors = Simulated.Sweep(Simulated.Setup(guideUm: 6), RailFace.Side, ("", "forward", Flat)).Pool().Errors!;
        Assert.Equal(["guide bench: bow", "guide bench: S", "guide bench: W"], errors.Shapes.Select(s => s.Input));
        Assert.All(errors.Shapes, s => Assert.True(s is { IsRectangular: true, AveragesOut: AveragesOut.Nothing, Remedy: "reverse the guide" }));
        var largest = 0.0;
        for (var trial = 0; trial < 3000; trial++)
        {
            var draws = new double[errors.Shapes.Count];
            new RandomDraws(7).Uniform((uint)trial, 0, draws);
            var guide = Flat.Select((_, i) => errors.Shapes.Select((s, k) => s.HeightsUm[i] * Math.Sqrt(3) * ((2 * draws[k]) - 1)).Sum()).ToArray();
            largest = Math.Max(largest, Simulated.Straightness(guide));
        }

        Assert.InRange(largest, 6 * 0.9, 6 + 1e-9);
        var corners = from s in (int[])[-1, 1] from w in (int[])[-1, 1] select Corner(1, s, w);
        Assert.Equal(6, corners.Max(), 1e-9);

        double Corner(params int[] signs) => Simulated.Straightness([.. Flat.Select((_, i) => errors.Shapes.Select((s, k) => s.HeightsUm[i] * Math.Sqrt(3) * signs[k]).Sum())]);
    }

    [Fact]
    public void A_bare_profile_with_a_set_up_has_an_uncertainty_for_each_of_its_readings()
    {
        var pass = new SweepPass("", "", "", [0, 10, 10, 20, 30], [4, 9, 5, 6, 4]);
        var errors = new Sweep(null, null, "bench", Simulated.Setup(",\"range_mm\":1,\"turn_mm\":0.2", guideUm: 3), [pass], "test").Pool().Errors!;
        // JIS B 7503:2011, 0.001 mm dial of 1 mm range: repeatability 0.5 um as a full width; q / sqrt 12 = 0.29 is more.
        Assert.All(errors.StationUm, u => Assert.Equal(1 / Math.Sqrt(12), u, 1e-12));
        Assert.Equal(5, errors.StationUm.Count);
        // The readings 5 and 9 at 10 mm change places, for a profile keeps them in order of height; the wave's phase goes with them.
        var wave = errors.Shapes.Single(s => s.Input.EndsWith("tenth of a turn, sine", StringComparison.Ordinal));
        double[] kept = [4, 5, 9, 6, 4];
        Assert.All(kept.Zip(wave.HeightsUm), pair => Assert.Equal(Math.Sin(2 * Math.PI * pair.First / 20) / Math.Sin(2 * Math.PI * 4 / 20), pair.Second / wave.HeightsUm[0], 1e-9));
    }

    [Fact]
    public void A_guide_that_nobody_knows_has_no_shape()
    {
        var setup = Simulated.Setup(guideUm: 6) with { GuideKnownFrom = "unknown" };
        Assert.Empty(Simulated.Sweep(setup, RailFace.Side, ("", "forward", Flat)).Pool().Errors!.Shapes);
    }

    // Source: MODEL of the kit, numbers of an independent simulation: a 5 um gearing error on a straight rail, mean over its phase.
    [Theory]
    [InlineData(5, 0.02)]
    [InlineData(30, 0.7)]
    [InlineData(100, 4.4)]
    public void A_level_rail_hardly_shows_the_dials_error(double tiltUm, double expected)
    {
        var errors = Tilted(tiltUm).Errors!;
        var waves = errors.Shapes.Where(s => s.Input.StartsWith("dial", StringComparison.Ordinal)).ToArray();
        Assert.Equal(["dial dial: wave of a tenth of a turn, cosine", "dial dial: wave of a tenth of a turn, sine"], waves.Select(s => s.Input));
        const int phases = 360;
        var mean = Enumerable.Range(0, phases).Average(p => Simulated.Straightness(
            [.. Flat.Select((_, i) => Math.Sqrt(6) * ((Math.Cos(2 * Math.PI * p / phases) * waves[0].HeightsUm[i]) + (Math.Sin(2 * Math.PI * p / phases) * waves[1].HeightsUm[i])))]));
        Assert.InRange(mean / expected, 0.9, 1.1);
    }

    [Fact]
    public void Readings_over_more_of_a_turn_take_in_the_wider_limits()
    {
        // JIS B 7503:2011, 0.01 mm dial of 10 mm range: 5, 9, 10, 15 um over 1/10, 1/2, 1 turn and all.
        Assert.Equal(5, Limit(90), 1e-9);
        Assert.Equal(9, Limit(400), 1e-9);
        Assert.Equal(10, Limit(900), 1e-9);
        Assert.Equal(15, Limit(3000), 1e-9);

        // Each wave's largest peak to valley: cosine and sine at the limits of both draws.
        static double Limit(double tilt) => Tilted(tilt).Errors!.Shapes.Chunk(2).Sum(w => 2 * Math.Sqrt(6) * Math.Sqrt(Math.Pow(w[0].HeightsUm[3], 2) + Math.Pow(w[1].HeightsUm[3], 2)));
    }

    [Fact]
    public void Another_stand_height_averages_the_dials_error_and_the_same_height_does_not()
    {
        Assert.Equal(Size(0), Size(0, 0, 0), 1e-9);
        Assert.Equal(0, Size(0, 50), 1e-9);
        Assert.Equal(Size(0) / 3, Size(0, 0, 50), 1e-9);

        static double Size(params double[] heights)
        {
            var setup = Simulated.Setup(",\"range_mm\":10,\"turn_mm\":1,\"retrace_um\":0", division: 10);
            var passes = heights.Select(h => ("", "forward", Simulated.Stations.Select(x => h + (0.1 * x)).ToArray())).ToArray();
            return Simulated.Sweep(setup, RailFace.Side, passes).Pool().Errors!.Shapes.Max(s => s.HeightsUm.Max(Math.Abs));
        }
    }

    [Fact]
    public void Play_shows_where_the_plunger_turns_round_and_goes_when_swept_both_ways()
    {
        var setup = Simulated.Setup(",\"retrace_um\":4");
        var slope = Simulated.Stations.Select(x => 0.2 * x).ToArray();
        var crown = Simulated.Stations.Select(x => 40 - (Math.Abs(x - 160) / 4)).ToArray();
        Assert.Empty(Of(("", "forward", slope)).Shapes);
        var shape = Assert.Single(Of(("", "forward", crown), ("", "forward", crown)).Shapes);
        // Rising to the middle the pointer lags below, falling after it above: half of 4 um each way.
        Assert.Equal([-2, -2, 2, 2], new[] { 0, 8, 9, 16 }.Select(i => Math.Round(shape.HeightsUm[i] * Math.Sqrt(3), 9)));
        // Both ways the pointer comes to the highest place from below, and only there it still lags.
        var both = Assert.Single(Of(("", "forward", crown), ("", "back", crown)).Shapes);
        Assert.All(both.HeightsUm.Select((h, i) => (h, i)), s => Assert.Equal(s.i == 8 ? -2 / Math.Sqrt(3) : 0, s.h, 1e-9));

        ProfileErrors Of(params (string, string, double[])[] passes) => Simulated.Sweep(setup, RailFace.Side, passes).Pool().Errors!;
    }

    private static PooledSweep Tilted(double tilt)
        => Simulated.Sweep(Simulated.Setup(",\"range_mm\":10,\"turn_mm\":1,\"retrace_um\":0", division: 10), RailFace.Side, ("", "forward", [.. Simulated.Stations.Select(x => tilt * x / 320)])).Pool();
}
