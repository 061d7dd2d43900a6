namespace Waywright.Tests.Straightness;

/// <summary>Bends that were put in, and shapes that are none.</summary>
public sealed class KinkTests
{
    private static readonly double[] Rail = [4, .. Enumerable.Range(0, 12).Select(i => 22.5 + (25 * i)), 316];

    [Theory]
    // Slopes change by 86/147.5 + 86/172.5 um/mm there (truth.json beside the invented batch).
    [InlineData("R04", 147.5, -1081.6)]
    [InlineData("R01", null, 0)]
    public void In_the_demo_batch_the_rail_that_was_pressed_over_an_edge_is_found_bent_and_a_good_one_is_not(string rail, double? positionMm, double angleUmPerM)
    {
        var side = SweepBatch.Read(Repository.PathOf("datasets", "demo", "rails", "sweeps.csv")).Sweeps.Single(s => s.Rail == rail && s.Face == RailFace.Side).Pool();
        var scatter = side.RepeatabilityUm!.Value / Math.Sqrt(side.Passes.Count);
        var found = KinkTest.Of(side.Profile, new ProfileErrors([.. side.Profile.PositionsMm.Select(_ => scatter)], side.DegreesOfFreedom, []), seed: 320_025);
        Assert.Equal(positionMm is not null, found.IsFound);
        if (positionMm is not { } position)
            return;
        Assert.Equal(1 / 10_001.0, found.ChanceOfNoise);
        Assert.InRange(position, found.FromMm, found.ToMm);
        Assert.InRange(found.ToMm - found.FromMm, 0.5, 10);
        Assert.InRange(Math.Abs(angleUmPerM - found.AngleUmPerM.Value), 0, found.AngleUmPerM.Expanded().U);
    }

    [Theory]
    [InlineData(147.5)]
    [InlineData(158.3)]
    [InlineData(47.5)]
    [InlineData(272.5)]
    public void A_bend_without_scatter_is_found_where_and_as_large_as_it_is(double kneeMm)
    {
        // On top of it a bow, an S and a W, which must not move it.
        var bent = Of(x => (0.4 * Math.Max(0, x - kneeMm)) + Smooth(x));
        foreach (var errors in new[] { null, Scatter(0.3) })
        {
            var found = KinkTest.Of(bent, errors, seed: 1);
            Assert.True(found.IsFound);
            Assert.Equal(kneeMm, found.PositionMm, 1e-7);
            Assert.Equal(400, found.AngleUmPerM.Value, 1e-6);
            Assert.InRange(kneeMm, found.FromMm, found.ToMm);
            Assert.All(bent.PositionsMm.Zip(bent.HeightsUm), s => Assert.Equal(s.Second, found.BentHeightUm(s.First), 1e-8));
        }
    }

    [Fact]
    public void Turned_end_for_end_the_bend_is_at_the_mirrored_place_with_the_same_angle()
    {
        var profile = Noisy(3, 0.3, x => (-0.5 * Math.Max(0, x - 203)) + Smooth(x));
        var (found, turned) = (KinkTest.Of(profile, Scatter(0.3), seed: 1), KinkTest.Of(profile.Reversed(), Scatter(0.3), seed: 1));
        Assert.Equal(320 - found.PositionMm, turned.PositionMm, 1e-6);
        Assert.Equal(320 - found.FromMm, turned.ToMm, 1e-6);
        Assert.Equal(found.AngleUmPerM.Value, turned.AngleUmPerM.Value, 1e-6);
        Assert.Equal(found.Statistic, turned.Statistic, 1e-7);
        Assert.True(found.AngleUmPerM.Value < 0);
    }

    [Fact]
    public void A_smooth_shape_added_to_the_profile_changes_neither_angle_nor_statistic()
    {
        for (var trial = 0; trial < 20; trial++)
        {
            var level = KinkTest.Of(Noisy(trial, 0.3, x => 0.1 * Math.Max(0, x - 120)), Scatter(0.3), seed: 1, trials: 100);
            var other = KinkTest.Of(Noisy(trial, 0.3, x => (0.1 * Math.Max(0, x - 120)) + Smooth(x) + 300 - (1.5 * x)), Scatter(0.3), seed: 1, trials: 100);
            Assert.Equal(level.Statistic, other.Statistic, 1e-7);
            Assert.Equal(level.AngleUmPerM.Value, other.AngleUmPerM.Value, 1e-5);
            Assert.Equal(level.PositionMm, other.PositionMm, 1e-5);
        }
    }

    [Fact]
    public void A_wave_or_a_rough_surface_is_not_called_one_bend()
    {
        Assert.False(KinkTest.Of(Noisy(1, 0.3, x => 8 * Math.Sin(2 * Math.PI * x / 60)), Scatter(0.3), seed: 1).IsFound);
        var random = new Random(6);
        Assert.False(KinkTest.Of(Noisy(2, 0.3, _ => 5 * (random.NextDouble() - 0.5)), Scatter(0.3), seed: 1).IsFound);
    }

    [Fact]
    public void A_step_of_one_division_that_a_coarse_dial_shows_is_not_a_bend()
    {
        // Rounded to 10 um: u = 10/sqrt 12 for each reading, and no residuals to speak of.
        var rounded = new Profile(Rail, [0, 0, 0, 0, 0, 0, 0, 10, 10, 10, 10, 10, 10, 10]);
        Assert.False(KinkTest.Of(rounded, Scatter(10 / Math.Sqrt(12)), seed: 1).IsFound);
        Assert.False(KinkTest.Of(Of(_ => 0.1), Scatter(10 / Math.Sqrt(12)), seed: 1).IsFound);
        Assert.Equal(1, KinkTest.Of(Of(_ => 0.1), null, seed: 1).ChanceOfNoise);
    }

    [Fact]
    public void A_bend_that_the_guide_may_have_is_not_laid_to_the_rail()
    {
        var profile = Noisy(5, 0.3, x => 0.3 * Math.Max(0, x - 150));
        Assert.True(KinkTest.Of(profile, Scatter(0.3), seed: 1).IsFound);
        var guide = new ErrorShape("joint of the guide", [.. Rail.Select(x => 0.3 * Math.Max(0, x - 150))], double.PositiveInfinity, true, AveragesOut.Nothing, "another guide");
        var found = KinkTest.Of(profile, new ProfileErrors(Scatter(0.3).StationUm, 24, [guide]), seed: 1);
        Assert.False(found.IsFound);
        // It is in the angle's budget, nearly whole: scatter puts the knee a little beside that of the guide.
        Assert.InRange(found.AngleUmPerM.Contributions.Single(c => c.Input == guide.Input).Signed, 200, 350);
    }

    [Fact]
    public void The_same_seed_gives_the_same_chance_and_another_seed_nearly_the_same()
    {
        var profile = Noisy(7, 0.3, x => 0.06 * Math.Max(0, x - 150));
        var found = KinkTest.Of(profile, Scatter(0.3), seed: 1);
        Assert.Equal(found.ChanceOfNoise, KinkTest.Of(profile, Scatter(0.3), seed: 1).ChanceOfNoise);
        Assert.Equal(found, KinkTest.Of(profile, Scatter(0.3), seed: 1));
        var other = KinkTest.Of(profile, Scatter(0.3), seed: 2);
        Assert.NotEqual(found.ChanceOfNoise, other.ChanceOfNoise);
        // Five standard deviations of the difference of two shares of 10,000.
        Assert.Equal(found.ChanceOfNoise, other.ChanceOfNoise, 5 * Math.Sqrt(2 * found.ChanceOfNoise / 10_000));
    }

    [Fact]
    public void Too_few_stations_a_filtered_profile_and_errors_of_another_kind_are_refused()
    {
        var eight = new Profile([0, 20, 40, 60, 80, 100, 120, 140], [0, 1, 0, 1, 0, 1, 0, 1]);
        Assert.Contains("9 different positions, not 8", Assert.Throws<ArgumentException>(() => KinkTest.Of(eight, null, seed: 1)).Message);
        Assert.Equal(3, KinkTest.Of(eight, null, seed: 1, smoothOrder: 3).SmoothOrder);
        var dense = new Profile([.. Enumerable.Range(0, 30).Select(i => 10.0 * i)], [.. Enumerable.Range(0, 30).Select(i => i % 3.0)], "R02 top");
        Assert.Contains("rounds a bend off", Assert.Throws<ArgumentException>(() => KinkTest.Of(dense.Filter(60), null, seed: 1)).Message);
        Assert.Contains("don't fit", Assert.Throws<ArgumentException>(() => KinkTest.Of(dense, Scatter(1), seed: 1)).Message);
        Assert.Contains("no uncertainty of their own", Assert.Throws<ArgumentException>(() => KinkTest.Of(Of(x => x), new ProfileErrors([0, .. Rail.Skip(1).Select(_ => 1.0)], 9, []), seed: 1)).Message);
        Assert.Throws<ArgumentOutOfRangeException>(() => KinkTest.Of(dense, null, seed: 1, smoothOrder: 5));
        Assert.Throws<ArgumentOutOfRangeException>(() => KinkTest.Of(dense, null, seed: 1, trials: 99));
    }

    [Fact]
    public void Trials_can_be_cancelled()
        => Assert.ThrowsAny<OperationCanceledException>(() => KinkTest.Of(Noisy(1, 1, _ => 0), null, seed: 1, cancel: new CancellationToken(canceled: true)));

    private static double Smooth(double x)
    {
        var t = (x - 160) / 156;
        return (30 * (1 - (t * t))) + (8 * ((t * t * t) - t)) + (2 * t * t * t * t);
    }

    private static ProfileErrors Scatter(double um) => new([.. Rail.Select(_ => um)], 24, []);

    private static Profile Of(Func<double, double> shape) => new(Rail, Array.ConvertAll(Rail, x => shape(x)), "R04 side");

    private static Profile Noisy(int seed, double um, Func<double, double> shape)
    {
        var random = new Random(seed);
        return Of(x => shape(x) + (um * Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble())));
    }
}
