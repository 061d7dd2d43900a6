namespace Waywright.Tests.Mounting;

/// <summary>Differential sweeps with slopes and uncertainties worked out by hand.</summary>
public sealed class ParallelismTests
{
    private static readonly double[] X = [0, 100, 200, 300];

    // Readings (0, 9, 21, 30) over x: mean x 150, Sxx = 2 (150^2 + 50^2) = 50000, Sxz = -150 x 0 - 50 x 9 + 50 x 21 + 150 x 30 = 5100: b = 0.102 um/mm, mean z 15.
    // Residuals from 15 + 0.102 (x - 150): 0.3, -0.9, 0.9, -0.3: range 1.8, squares 1.8, s2 = 1.8 / 2, u(b) = sqrt(0.9 / 50000) um/mm.
    private static readonly Profile Swept = new(X, [0, 9, 21, 30], "R02 against R01");

    [Fact]
    public void Slope_move_and_variation_are_those_worked_out_by_hand()
    {
        var rails = Parallelism.Of(Swept, 240.mm.PlusMinus(0.5.mm), dialBetween: true, guide: "R01", moved: "R02");
        Assert.Equal(102, rails.SlopeUmPerM.Value, 1e-9);
        Assert.Equal(1000 * Math.Sqrt(0.9 / 50_000), rails.SlopeUmPerM.StandardUncertainty, 1e-9);
        Assert.Equal(2, rails.SlopeUmPerM.DegreesOfFreedom, 1e-9);
        // Over 300 mm 30.6 um; the dial between reads more where the rails are closer, so the far end has to go away from the guide.
        Assert.Equal(30.6, rails.MoveUm.Value, 1e-9);
        Assert.Equal(1.8, rails.VariationUm, 1e-9);
        Assert.True(rails.IsOutOfParallel);
    }

    [Fact]
    public void On_the_far_face_the_same_readings_ask_for_the_other_way()
        => Assert.Equal(-30.6, Parallelism.Of(Swept, 240.mm, dialBetween: false).MoveUm.Value, 1e-9);

    [Fact]
    public void What_the_dial_s_zero_is_does_not_matter()
        => Assert.Equal(102, Parallelism.Of(new Profile(X, [500, 509, 521, 530]), 240.mm, dialBetween: true).SlopeUmPerM.Value, 1e-9);

    [Fact]
    public void With_errors_given_the_uncertainty_is_theirs()
    {
        // Scatter of 2 um a station: u(b) = 2 / sqrt(50000) um/mm. A shape that rises by 3 um from end to end tilts by 3 / 300 um/mm.
        var tilt = new ErrorShape("temperature of the dial's arm", [0, 1, 2, 3], double.PositiveInfinity, IsRectangular: false, AveragesOut.Nothing, "wait until it is settled");
        var rails = Parallelism.Of(Swept, 240.mm, dialBetween: true, new ProfileErrors([2, 2, 2, 2], 20, [tilt]));
        Assert.Equal(Math.Sqrt((4e6 / 50_000) + 100), rails.SlopeUmPerM.StandardUncertainty, 1e-9);
        Assert.Equal(0.3 * rails.SlopeUmPerM.StandardUncertainty, rails.MoveUm.StandardUncertainty, 1e-9);
    }

    [Fact]
    public void A_slope_within_its_uncertainty_is_left_alone()
        => Assert.False(Parallelism.Of(new Profile(X, [0, 4, -3, 2]), 240.mm, dialBetween: true).IsOutOfParallel);

    [Fact]
    public void A_tape_read_to_half_a_millimetre_does_not_see_a_twentieth()
    {
        // Limits of 0.5 mm are u 0.2887 mm; a difference of two such readings is told from 0 at 1.96 sqrt 2 times that, 0.80 mm.
        var rails = Parallelism.Of(Swept, 240.mm.PlusMinus(0.5.mm), dialBetween: true);
        Assert.Equal(800.2, rails.TapeSeesUm, 0.1);
        Assert.True(rails.TapeSeesUm > 50);
        Assert.Equal(0, Parallelism.Of(Swept, 240.mm, dialBetween: true).TapeSeesUm);
    }

    [Fact]
    public void Bad_input_is_named()
    {
        Assert.Contains("at least 3 are needed", Assert.Throws<ArgumentException>(() => Parallelism.Of(new Profile([0, 300], [0, 1]), 240.mm, true)).Message);
        Assert.Contains("above 0", Assert.Throws<ArgumentOutOfRangeException>(() => Parallelism.Of(Swept, 0.mm, true)).Message);
        Assert.Contains("Both rails are called 'R01'", Assert.Throws<ArgumentException>(() => Parallelism.Of(Swept, 240.mm, true, guide: "R01", moved: "R01")).Message);
        Assert.Contains("Errors of 3 stations", Assert.Throws<ArgumentException>(() => Parallelism.Of(Swept, 240.mm, true, new ProfileErrors([1, 1, 1], 5, []))).Message);
    }
}
