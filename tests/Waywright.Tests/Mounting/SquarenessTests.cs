namespace Waywright.Tests.Mounting;

public sealed class SquarenessTests
{
    private static Uncertain Mm(string name, double value, double u = 0.3) => Uncertain.Input(name, value, u);

    private static Squareness Of(double ab, double bc, double cd, double da, double ac, double bd, double u = 0.3)
        => Squareness.Of(Mm("AB", ab, u), Mm("BC", bc, u), Mm("CD", cd, u), Mm("DA", da, u), Mm("AC", ac, u), Mm("BD", bd, u));

    [Fact]
    public void A_three_four_five_frame_is_square()
    {
        var frame = Of(400, 300, 400, 300, 500, 500);
        Assert.Equal(0, frame.OffRad.Value, 1e-12);
        Assert.False(frame.IsOut);
        Assert.Equal(1, frame.CheckChance, 1e-9);
    }

    [Fact]
    public void A_sheared_frame_is_off_by_its_shear_and_by_what_the_two_diagonals_say()
    {
        // Parallelogram 400 x 300 leaning by 0.01 rad: AC² = a² + b² + 2ab sin 0.01, BD² with minus, for a corner A that is sharper by 0.01 (law of cosines, worked by hand).
        var lean = 2 * 400 * 300 * Math.Sin(0.01);
        var (ac, bd) = (Math.Sqrt(250_000 + lean), Math.Sqrt(250_000 - lean));
        var frame = Of(400, 300, 400, 300, ac, bd);
        Assert.Equal(-0.01, frame.OffRad.Value, 1e-9);
        Assert.Equal(Math.Asin(((bd * bd) - (ac * ac)) / (4 * 400 * 300)), frame.OffRad.Value, 1e-9);
        Assert.True(frame.IsOut);
        // Both diagonals with u: first order, u(angle) = sqrt 2 x 2 d u / (4 a b) where the sides don't matter; the sides add some; the simulation below holds the whole.
        Assert.InRange(frame.OffRad.StandardUncertainty, 0.9 * Math.Sqrt(2) * 2 * 500 * 0.3 / (4 * 400 * 300), 1.6 * Math.Sqrt(2) * 2 * 500 * 0.3 / (4 * 400 * 300));
    }

    [Fact]
    public void A_trapezium_with_equal_diagonals_is_found_out()
    {
        // Parallel sides 400 and 380, legs that meet AB at equal angles, height 300: corner A is sharper by atan(10 / 300).
        var leg = Math.Sqrt(100 + 90_000);
        var diagonal = Math.Sqrt((390 * 390) + 90_000);
        var frame = Of(400, leg, 380, leg, diagonal, diagonal);
        Assert.Equal(-Math.Atan(10.0 / 300), frame.OffRad.Value, 1e-9);
        Assert.True(frame.IsOut);
        Assert.True(frame.IsClosed);
    }

    [Fact]
    public void A_wrong_length_shows_in_the_check_and_stated_uncertainties_hold_in_simulation()
    {
        Assert.False(Of(400, 300, 405, 300, 500, 500).IsClosed);
        var random = new Random(3);
        double Noisy(double value) => value + (0.3 * Straightness.Sweeps.Gaussian(random));
        var frames = Enumerable.Range(0, 1000).Select(_ => Of(Noisy(400), Noisy(300), Noisy(400), Noisy(300), Noisy(500), Noisy(500))).ToArray();
        // 1,000 frames: a share of 5 % has a standard deviation of 0.7 %, of 1 % of 0.3 %.
        Assert.InRange(frames.Count(f => f.IsOut) / 1000.0, 0.03, 0.07);
        Assert.InRange(frames.Count(f => !f.IsClosed) / 1000.0, 0.001, 0.025);
    }

    [Fact]
    public void Lengths_that_make_no_triangle_or_have_no_uncertainty_are_refused()
    {
        Assert.Contains("AB, BC and AC can't close: 400, 300 and 800 mm make no triangle", Assert.Throws<ArgumentException>(() => Of(400, 300, 400, 300, 800, 500)).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => Of(400, 300, 400, -300, 500, 500));
        Assert.Throws<ArgumentException>(() => Of(400, 300, 400, 300, 500, 500, u: 0));
    }
}
