namespace Waywright.Tests;

public sealed class BeltPitchTests
{
    private static double Probability(BeltPitch pitch, double? mm) => pitch.Candidates.Single(c => c.PitchMm == mm).Probability;

    // Normal densities by hand: u 0.05, N 10; 20.00 mm against 20 and 20.32 with the belt's tolerance 0.1 % / sqrt 3.
    [Fact]
    public void Likelihoods_are_normal_densities_of_the_length()
    {
        var pitch = BeltPitch.Identify(10, 20.1.mm.WithUncertainty(0.1.mm));
        var (u2, uMxl) = (double.Hypot(0.1, 0.02 / Math.Sqrt(3)), double.Hypot(0.1, 0.02032 / Math.Sqrt(3)));
        var ratio = Math.Exp(-0.5 * Math.Pow(0.1 / u2, 2)) / u2 / (Math.Exp(-0.5 * Math.Pow(0.22 / uMxl, 2)) / uMxl);
        Assert.Equal(ratio, Probability(pitch, 2) / Probability(pitch, 2.032), 1e-9 * ratio);
        Assert.Equal(1, pitch.Candidates.Sum(c => c.Probability), 1e-12);
        Assert.Null(pitch.Found);
        Assert.NotNull(pitch.PitchesToSettle);
        Assert.StartsWith("Measure over ", pitch.Verdict, StringComparison.Ordinal);
    }

    // ISO 5296: MXL 2.032 and XL 5.080 mm. A caliper over 50 pitches to 0.05 mm tells 2.000 from 2.032 (1.6 mm apart).
    [Theory]
    [InlineData(50, 100.02, 2)]
    [InlineData(50, 101.58, 2.032)]
    [InlineData(50, 103.7, 2.073)]
    [InlineData(40, 100.0, 2.5)]
    [InlineData(33, 99.03, 3)]
    [InlineData(20, 100.0, 5)]
    [InlineData(20, 101.6, 5.08)]
    public void A_caliper_over_many_pitches_settles_it(int pitches, double mm, double expected)
    {
        var pitch = BeltPitch.Identify(pitches, mm.mm.PlusMinus(0.05.mm));
        Assert.Equal(expected, pitch.Found!.PitchMm);
        Assert.Null(pitch.PitchesToSettle);
        Assert.StartsWith("Take the belt as ", pitch.Verdict, StringComparison.Ordinal);
    }

    // Counted one tooth too many, 50 pitches of 2 mm are 49: 2.0408 mm, which is no pitch of the list.
    [Fact]
    public void A_miscount_is_none_of_these()
    {
        var pitch = BeltPitch.Identify(49, 100.mm.PlusMinus(0.05.mm));
        Assert.Null(pitch.Candidates[0].PitchMm);
        Assert.Null(pitch.Found);
        Assert.StartsWith("Count the teeth again: ", pitch.Verdict, StringComparison.Ordinal);
    }

    // The number that is said to settle it does: at the true length, the likelihoods stand 999 to 1 or better.
    [Theory]
    [InlineData(2, 2.032)]
    [InlineData(5, 5.08)]
    public void The_teeth_to_count_do_settle_it(double truth, double other)
    {
        var few = BeltPitch.Identify(3, (3 * truth).mm.PlusMinus(0.5.mm));
        var more = BeltPitch.Identify(few.PitchesToSettle!.Value, (few.PitchesToSettle.Value * truth).mm.PlusMinus(0.5.mm));
        Assert.InRange(Probability(more, truth) / Probability(more, other), 999, 5000);
        Assert.Equal(truth, more.Found!.PitchMm);
    }

    // Heights from SDP/SI D265 p. T15 as printed (Reference/belts/belt_profile_dims.csv): 2 mm curvilinear 0.76, HTD 3 mm 1.22, 3 mm curvilinear 1.14.
    [Fact]
    public void The_tooth_form_is_asked_and_never_inferred()
    {
        var unasked = BeltPitch.Identify(50, 100.mm.PlusMinus(0.05.mm));
        Assert.False(unasked.IsFormAsked);
        Assert.Contains("Form not proven: measure a tooth's height", unasked.Verdict, StringComparison.Ordinal);
        var asked = BeltPitch.Identify(50, 100.mm.PlusMinus(0.05.mm), 0.75.mm, "round");
        Assert.Equal(["2 mm curvilinear"], asked.Forms);
        Assert.EndsWith("Height and flanks are those of 2 mm curvilinear.", asked.Verdict, StringComparison.Ordinal);
        var two = BeltPitch.Identify(33, 99.mm.PlusMinus(0.05.mm), 1.18.mm, "round");
        Assert.Equal(["HTD 3 mm", "3 mm curvilinear"], two.Forms);
        Assert.Contains("Form not proven: height and flanks fit HTD 3 mm, 3 mm curvilinear.", two.Verdict, StringComparison.Ordinal);
        Assert.Contains("no profile of this pitch", BeltPitch.Identify(50, 100.mm.PlusMinus(0.05.mm), 0.75.mm, "straight").Verdict, StringComparison.Ordinal);
    }

    [Fact]
    public void Bad_numbers_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => BeltPitch.Identify(0, 20.mm.PlusMinus(0.1.mm)));
        Assert.Throws<ArgumentOutOfRangeException>(() => BeltPitch.Identify(10, 0.mm));
        Assert.Throws<ArgumentException>(() => BeltPitch.Identify(10, 20.mm));
        Assert.Throws<ArgumentException>(() => BeltPitch.Identify(10, 20.mm.PlusMinus(0.1.mm), flanks: "wavy"));
        Assert.Throws<ArgumentOutOfRangeException>(() => BeltPitch.Identify(10, 20.mm.PlusMinus(0.1.mm), 0.mm));
        Assert.Throws<ArgumentOutOfRangeException>(() => BeltPitch.Identify(10, 20.mm.PlusMinus(0.1.mm), tolerance: 0.2));
    }
}
