using CsCheck;

namespace Waywright.Tests;

public class PassAlignmentTests
{
    private static Sweep SweepOf(params (double[] X, double[] Z)[] passes)
        => new("R", RailFace.Side, null, null, passes.Select((p, k) => new SweepPass($"{k + 1}", "forward", "", p.X, p.Z)).ToArray(), "test");

    [Fact]
    public void Passes_that_differ_by_height_and_tilt_alone_pool_to_one_profile_without_scatter()
    {
        double[] x = [0, 10, 25, 60, 100];
        double[] shape = [0, 4, -2, 7, 1];
        var pooled = SweepOf((x, shape), (x, shape.Select((z, i) => z + 50 + (0.3 * x[i])).ToArray()), (x, shape.Select((z, i) => z - 9 - (0.1 * x[i])).ToArray())).Pool();
        Assert.Equal(0, pooled.RepeatabilityUm!.Value, 1e-10);
        Assert.Equal((5 * 3) - 5 - 4, pooled.DegreesOfFreedom);
        Assert.Equal(StraightnessFigures.Of(new Profile(x, shape)).MinimumZone.Line.STRtUm, pooled.Straightness.MinimumZone.Line.STRtUm, 1e-9);
    }

    [Fact]
    public void Balanced_passes_pool_to_the_mean_of_the_passes_less_their_own_lines()
        => Gen.Select(Gen.Double[-20, 20].Array[3, 12], Gen.Int[2, 5], Gen.Int).Sample((shape, passes, seed) =>
        {
            // For equal stations the model separates: each pass's line is its own least-squares line (worked by hand from the normal equations).
            var random = new Random(seed);
            var x = Enumerable.Range(0, shape.Length).Select(i => (i * 25.0) + random.Next(20)).ToArray();
            var z = Enumerable.Range(0, passes).Select(_ => shape.Select(s => s + random.NextDouble() + (10 * random.NextDouble())).ToArray()).ToArray();
            var pooled = SweepOf(z.Select(p => (x, p)).ToArray()).Pool();
            var expected = Detrended(x, Enumerable.Range(0, x.Length).Select(i => z.Average(p => p[i])).ToArray());
            var found = Detrended(x, pooled.Profile.HeightsUm.ToArray());
            Assert.All(expected.Zip(found), pair => Assert.Equal(pair.First, pair.Second, 1e-8));
        }, iter: 200);

    [Fact]
    public void A_line_added_to_one_pass_changes_neither_the_straightness_nor_the_repeatability()
        => Gen.Select(Gen.Double[-20, 20].Array[8], Gen.Double[-20, 20].Array[8], Gen.Double[-500, 500], Gen.Double[-2, 2]).Sample((a, b, height, tilt) =>
        {
            double[] x = [0, 7, 20, 31, 33, 50, 80, 81];
            var plain = SweepOf((x, a), (x, b)).Pool();
            var moved = SweepOf((x, a), (x, b.Select((z, i) => z + height + (tilt * x[i])).ToArray())).Pool();
            Assert.Equal(plain.RepeatabilityUm!.Value, moved.RepeatabilityUm!.Value, 1e-8);
            Assert.Equal(plain.Straightness.MinimumZone.Line.STRtUm, moved.Straightness.MinimumZone.Line.STRtUm, 1e-8);
        }, iter: 200);

    [Fact]
    public void Passes_over_different_stations_are_aligned_by_those_they_share()
    {
        var pooled = SweepOf(([0, 10, 20, 30], [0, 1, 5, 2]), ([10, 20, 30, 40], [101, 105, 102, 103])).Pool();
        Assert.Equal([0, 10, 20, 30, 40], pooled.Profile.PositionsMm);
        Assert.Equal(0, pooled.RepeatabilityUm!.Value, 1e-9);
        Assert.Equal(new[] { 0, 1, 5, 2, 3 }.Select(z => z - 0.0), pooled.Profile.HeightsUm.Select(h => Math.Round(h - pooled.Profile.HeightsUm[0], 6)));
    }

    [Fact]
    public void The_scatter_of_a_reading_is_found_and_tilt_is_not_taken_for_noise()
    {
        var random = new Random(7);
        var x = Enumerable.Range(0, 200).Select(i => i * 2.0).ToArray();
        double[] Pass(double tilt) => x.Select(p => (tilt * p) + (2 * Gauss(random))).ToArray();
        var pooled = SweepOf((x, Pass(0)), (x, Pass(0.5)), (x, Pass(-0.3))).Pool();
        // s of 396 degrees of freedom lies within 12 % of the truth with better than 99.9 % (chi-square).
        Assert.InRange(pooled.RepeatabilityUm!.Value, 2 * 0.88, 2 * 1.12);
    }

    [Theory]
    [InlineData(new double[] { 0, 10, 20 }, new double[] { 30, 40, 50 })]
    [InlineData(new double[] { 0, 10, 20 }, new double[] { 20, 30, 40 })]
    public void Passes_with_fewer_than_two_stations_in_common_are_refused(double[] first, double[] second)
        => Assert.Contains("fewer than two stations in common", Assert.Throws<InputException>(() => SweepOf((first, [1, 2, 4]), (second, [1, 2, 3])).Pool()).Message);

    private static double[] Detrended(double[] x, double[] z)
    {
        var (mx, mz) = (x.Average(), z.Average());
        var slope = x.Zip(z).Sum(p => (p.First - mx) * (p.Second - mz)) / x.Sum(p => (p - mx) * (p - mx));
        return z.Select((h, i) => h - mz - (slope * (x[i] - mx))).ToArray();
    }

    private static double Gauss(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
