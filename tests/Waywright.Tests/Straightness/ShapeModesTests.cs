namespace Waywright.Tests.Straightness;

/// <summary>Closed forms, worked by hand from the definitions of the modes.</summary>
public sealed class ShapeModesTests
{
    private static readonly double[] Rail = [4, .. Enumerable.Range(0, 12).Select(i => 22.5 + (25 * i)), 316];

    [Theory]
    [InlineData(2, 1.5)]
    // P3 - t is greatest at t = 1/sqrt 3: 5 / (3 sqrt 3).
    [InlineData(3, 0.96225044864937627)]
    // P4 - 1 is greatest at t² = 3/7: 10/7.
    [InlineData(4, 1.4285714285714286)]
    [InlineData(5, null)]
    [InlineData(6, null)]
    public void The_amplitude_of_a_Legendre_polynomial_is_its_greatest_height_over_the_line_through_its_ends(int order, double? height)
    {
        var t = Enumerable.Range(0, 20_001).Select(i => (i / 10_000.0) - 1).ToArray();
        var heights = Array.ConvertAll(t, at => Legendre(order, at));
        var greatest = t.Zip(heights, (at, z) => Math.Abs(z - (int.IsEvenInteger(order) ? 1 : at))).Max();
        // A grid of 1e-4 misses the greatest height by 1e-7 at most: half the curvature, below 60, times the square of half a step.
        Assert.Equal(greatest, Math.Abs(Amplitude(ShapeModes.Of(new Profile(t, heights), highestOrder: order), order)), 1e-7);
        if (height is { } exact)
            Assert.Equal(exact, Math.Abs(Amplitude(ShapeModes.Of(new Profile(t, heights), highestOrder: order), order)), 1e-12);
    }

    [Fact]
    public void A_parabola_has_its_height_as_its_bow_and_nothing_else_on_any_stations()
    {
        foreach (var profile in RandomSweeps.Some(200, seed: 21).Where(p => p.PositionsMm.Distinct().Count() > 10))
        {
            var parabola = new Profile(profile.PositionsMm, [.. profile.PositionsMm.Select(x => 12 * x * (350 - x) / 30_625)]);
            var modes = ShapeModes.Of(parabola, highestOrder: 6);
            Assert.Equal(12, modes.Bow.AmplitudeUm.Value, 1e-11);
            Assert.Equal(1, modes.Bow.Share, 1e-12);
            Assert.Equal(0, modes.Bow.LeftUm, 1e-12);
            Assert.All(modes.Modes.Skip(1), m => Assert.Equal(0, m.AmplitudeUm.Value, 1e-8));
        }
    }

    [Fact]
    public void An_S_that_rises_as_much_before_the_middle_as_it_falls_after_it_has_that_height()
    {
        // 6 sqrt 3 u (1 - u)(1 - 2u) is 1 at u = (3 - sqrt 3)/6.
        var s = Of(Equal(33), u => -7 * 6 * Math.Sqrt(3) * u * (1 - u) * (1 - (2 * u)));
        var modes = ShapeModes.Of(s, highestOrder: 6);
        Assert.Equal(-7, Amplitude(modes, 3), 1e-12);
        Assert.All(modes.Modes.Where(m => m.Order != 3), m => Assert.Equal(0, m.AmplitudeUm.Value, 1e-12));
        Assert.Equal(7, s.HeightsUm.Max(Math.Abs), 0.05);
    }

    [Fact]
    public void A_sine_over_the_whole_length_is_odd_and_has_the_S_of_its_Legendre_series()
    {
        // 7/2 ∫ P3 sin(2 pi x) = 7 (15 - pi²)/pi³, times the height of P3.
        var modes = ShapeModes.Of(Of(Equal(20_001), u => Math.Sin(2 * Math.PI * u)), highestOrder: 6);
        Assert.Equal(7 * (15 - (Math.PI * Math.PI)) / Math.Pow(Math.PI, 3) * 5 / (3 * Math.Sqrt(3)), Amplitude(modes, 3), 3e-4);
        Assert.All(modes.Modes.Where(m => int.IsEvenInteger(m.Order)), m => Assert.Equal(0, m.AmplitudeUm.Value, 1e-11));
        Assert.Equal(0, Amplitude(ShapeModes.Of(Of(Rail, u => Math.Sin(2 * Math.PI * u))), 2), 1e-14);
    }

    [Fact]
    public void Squares_of_modes_and_of_what_they_leave_add_up_to_the_whole()
    {
        foreach (var profile in RandomSweeps.Some(200, seed: 22).Where(p => p.PositionsMm.Distinct().Count() > 10))
        {
            var modes = ShapeModes.Of(profile, highestOrder: 6);
            var whole = Math.Pow(StraightnessFigures.Of(profile).LeastSquares.STRqUm, 2);
            Assert.Equal(whole, modes.Modes.Sum(m => m.Share * whole) + Math.Pow(modes.LeftUm, 2), 1e-10 * whole);
            var left = profile.PositionsMm.Zip(profile.HeightsUm, (x, z) => z - modes.HeightUm(x)).ToArray();
            Assert.Equal(modes.LeftUm, Math.Sqrt(left.Sum(r => r * r) / left.Length), 1e-10 * Math.Sqrt(whole));
            for (var k = 1; k < modes.Modes.Count; k++)
                Assert.True(modes.Modes[k].LeftUm <= modes.Modes[k - 1].LeftUm);
        }
    }

    [Fact]
    public void A_line_added_to_the_profile_changes_no_mode()
    {
        foreach (var profile in RandomSweeps.Some(100, seed: 23).Where(p => p.PositionsMm.Distinct().Count() > 10))
        {
            var (level, tilted) = (ShapeModes.Of(profile), ShapeModes.Of(new Profile(profile.PositionsMm, [.. profile.PositionsMm.Zip(profile.HeightsUm, (x, z) => z + 500 - (2 * x))])));
            foreach (var (one, other) in level.Modes.Zip(tilted.Modes))
                Assert.Equal(one.AmplitudeUm.Value, other.AmplitudeUm.Value, 1e-7);
        }
    }

    [Fact]
    public void Turned_end_for_end_even_modes_keep_their_sign_and_odd_ones_change_it()
    {
        foreach (var profile in RandomSweeps.Some(100, seed: 24).Where(p => p.PositionsMm.Distinct().Count() > 10))
        {
            foreach (var (one, turned) in ShapeModes.Of(profile, highestOrder: 6).Modes.Zip(ShapeModes.Of(profile.Reversed(), highestOrder: 6).Modes))
                Assert.Equal((int.IsEvenInteger(one.Order) ? 1 : -1) * one.AmplitudeUm.Value, turned.AmplitudeUm.Value, 1e-7);
        }
    }

    [Fact]
    public void A_positive_mode_rises_from_the_first_end()
    {
        var modes = ShapeModes.Of(Of(Equal(101), u => (u * (1 - u)) + (0.3 * u * (1 - u) * (1 - (2 * u)))));
        Assert.True(modes.Bow.AmplitudeUm.Value > 0 && Amplitude(modes, 3) > 0);
        foreach (var order in new[] { 2, 3, 4, 5, 6 })
        {
            var curve = Of(Equal(101), u => Legendre(order, (2 * u) - 1));
            var end = StraightnessFigures.Of(curve).EndPoints;
            Assert.Equal(curve.HeightsUm[1] > end.HeightUm(curve.PositionsMm[1]), Amplitude(ShapeModes.Of(curve, highestOrder: order), order) > 0);
        }
    }

    [Fact]
    public void As_many_stations_as_the_order_needs_are_met_exactly_and_one_fewer_are_refused()
    {
        double[] x = [0, 40, 90, 200, 320];
        var modes = ShapeModes.Of(new Profile(x, [3, -1, 4, 1, -5]), highestOrder: 4);
        Assert.Equal(0, modes.LeftUm, 1e-13);
        Assert.Equal([3.0, -1, 4, 1, -5], x.Select(at => Math.Round(modes.HeightUm(at), 11)));
        Assert.Contains("5 different positions: 4 are there", Assert.Throws<ArgumentException>(() => ShapeModes.Of(new Profile([0, 40, 90, 90, 320], [3, -1, 4, 1, -5]))).Message);
        Assert.Contains("3 different positions", Assert.Throws<ArgumentException>(() => ShapeModes.Of(new Profile([0, 320], [3, -1]))).Message);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(7)]
    public void Orders_outside_two_to_six_are_refused(int order)
        => Assert.Throws<ArgumentOutOfRangeException>(() => ShapeModes.Of(Of(Rail, u => u), highestOrder: order));

    [Fact]
    public void A_straight_profile_has_no_modes_and_no_shares()
    {
        var modes = ShapeModes.Of(Of(Rail, _ => 0.1), highestOrder: 6);
        Assert.All(modes.Modes, m => Assert.Equal((0.0, 0.0, 0.0), (m.AmplitudeUm.Value, m.Share, m.LeftUm)));
        Assert.Equal(["bow", "S", "W", "order 5", "order 6"], modes.Modes.Select(m => m.Name));
    }

    [Fact]
    public void Modes_of_equal_profiles_are_equal()
    {
        var once = ShapeModes.Of(Of(Rail, u => u * u));
        Assert.Equal(once, ShapeModes.Of(Of(Rail, u => u * u)));
        Assert.NotEqual(once, ShapeModes.Of(Of(Rail, u => u * u), highestOrder: 3));
    }

    private static double Amplitude(ShapeModes modes, int order) => modes.Modes.Single(m => m.Order == order).AmplitudeUm.Value;

    private static double[] Equal(int stations) => [.. Enumerable.Range(0, stations).Select(i => 320.0 * i / (stations - 1))];

    // u from 0 to 1 over the stations.
    private static Profile Of(double[] x, Func<double, double> shape) => new(x, Array.ConvertAll(x, at => shape((at - x[0]) / (x[^1] - x[0]))));

    private static double Legendre(int order, double t)
    {
        var (before, value) = (1.0, t);
        for (var k = 1; k < order; k++)
            (before, value) = (value, ((((2 * k) + 1) * t * value) - (k * before)) / (k + 1));
        return value;
    }
}
