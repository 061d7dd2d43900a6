using CsCheck;

namespace Waywright.Tests;

public abstract class BeltPairTests
{
    public sealed class Invariant : BeltPairTests;

    [UnderCulture("de-DE")]
    public sealed class German : BeltPairTests;

    [UnderCulture("tr-TR")]
    public sealed class Turkish : BeltPairTests;

    [UnderCulture("fa-IR")]
    public sealed class Persian : BeltPairTests;

    // T_A / T_B = (f_A / f_B)2 once span and density are the same; u relative by JCGM 100:2008, 5.1.6.
    [Fact]
    public void What_both_share_cancels_in_the_ratio()
        => Gen.Select(Gen.Double[20, 200], Gen.Double[20, 200], Gen.Double[50, 500], Gen.Double[2, 40]).Sample(
            (a, b, millimetres, grams) =>
            {
                var span = new BeltSpan(millimetres.mm.PlusMinus(2.mm), grams.g_per_m.WithUncertainty(0.5.g_per_m));
                var pair = BeltPair.Compare(span.Tension(a.Hz.WithUncertainty(0.3.Hz)), span.Tension(b.Hz.WithUncertainty(0.4.Hz)));
                Assert.Equal(a * a / (b * b), pair.Ratio.Value, 1e-12 * pair.Ratio.Value);
                Assert.Equal(2 * double.Hypot(0.3 / a, 0.4 / b), pair.Ratio.StandardUncertainty / pair.Ratio.Value, 1e-12);
                Assert.Equal(["density", "span"], pair.Cancelled);
            },
            threads: 1);

    [Fact]
    public void What_is_measured_twice_does_not_cancel()
    {
        var pair = BeltPair.Compare(
            new BeltSpan(180.mm.WithUncertainty(0.2.mm), 8.1.g_per_m.WithUncertainty(0.1.g_per_m)).Tension(96.Hz),
            new BeltSpan(180.mm.WithUncertainty(0.2.mm), 8.1.g_per_m.WithUncertainty(0.1.g_per_m)).Tension(96.Hz));
        Assert.Empty(pair.Cancelled);
        Assert.Equal(Math.Sqrt(2) * double.Hypot(0.1 / 8.1, 2 * 0.2 / 180), pair.Ratio.StandardUncertainty, 1e-12);
        Assert.Contains("Nothing cancels: the uncertainty is from density of belt A (48 %), density of belt B (48 %)", pair.Verdict, StringComparison.Ordinal);
    }

    [Fact]
    public void A_shared_span_cancels_though_the_densities_differ()
    {
        var length = 180.mm.PlusMinus(0.5.mm);
        var pair = BeltPair.Compare(
            new BeltSpan(length, 8.1.g_per_m.WithUncertainty(0.1.g_per_m)).Tension(96.Hz),
            new BeltSpan(length, 8.3.g_per_m.WithUncertainty(0.1.g_per_m)).Tension(96.Hz));
        Assert.Equal(["span"], pair.Cancelled);
        Assert.Equal(8.1 / 8.3, pair.Ratio.Value, 1e-12);
    }

    [Fact]
    public void The_slacker_belt_is_the_one_to_tighten_and_by_how_much_is_said()
    {
        var (slack, tight) = (Tension(96), Tension(104));
        var pair = BeltPair.Compare(slack, tight, "left", "right");
        Assert.Equal((false, "left"), (pair.AreEqual, pair.Tighten));
        Assert.Equal(9.6745 - 11.3541, pair.Difference.Si.Value, 1e-3);
        Assert.Equal(
            "Tighten `left` by about 1.68 N (1.49 to 1.87), then pluck both again: it is at 0.852 (0.838 to 0.866) of `right`, beyond the 5 % within which belts count as equal (common practice). "
            + "The density and span cancel. What is left is from frequency of belt left (54 %) and frequency of belt right (46 %). "
            + "Ideal string: stiffness, clamped ends and a hard pluck read high; state the bending stiffness and the ends to take them in. "
            + "Caution: motors off and unplugged, small steps, and never above what the belt, the motor shafts and their brackets bear.",
            pair.Verdict);
        var swapped = BeltPair.Compare(tight, slack, "right", "left");
        Assert.Equal((false, "left"), (swapped.AreEqual, swapped.Tighten));
        Assert.StartsWith("Tighten `left` by about 1.68 N (1.49 to 1.87), then pluck both again: it is at 0.852 (0.838 to 0.866) of `right`", swapped.Verdict, StringComparison.Ordinal);
    }

    [Fact]
    public void Belts_within_the_limit_are_left_alone()
    {
        var pair = BeltPair.Compare(Tension(96), Tension(97), "left", "right");
        Assert.Equal((true, null), (pair.AreEqual, pair.Tighten));
        Assert.StartsWith("Leave both: `left` and `right` are equal. Their ratio is 0.979 (0.963 to 0.996), inside the 5 % within which belts count as equal (common practice). The density and span cancel.", pair.Verdict, StringComparison.Ordinal);
    }

    [Fact]
    public void A_ratio_that_straddles_the_limit_is_undecided()
    {
        var pair = BeltPair.Compare(Tension(96), Tension(98), "left", "right");
        Assert.Equal((null, null), (pair.AreEqual, pair.Tighten));
        Assert.StartsWith("Undecided, measure again: `left` to `right` is 0.960 (0.944 to 0.975), which straddles the 5 % within which belts count as equal (common practice). The largest share is the frequency of belt left: read its note more finely.", pair.Verdict, StringComparison.Ordinal);
    }

    // The limit is the same whichever belt stands first: tighter at most 1.05 times the slacker.
    [Theory]
    [InlineData(1.0499, true)]
    [InlineData(1.0501, false)]
    public void The_limit_is_the_same_both_ways_round(double ratio, bool areEqual)
    {
        var span = new BeltSpan(180.mm, 8.1.g_per_m);
        var (a, b) = (span.Tension(96.Hz), span.Tension((96 * Math.Sqrt(ratio)).Hz));
        Assert.Equal(areEqual, BeltPair.Compare(a, b).AreEqual);
        Assert.Equal(areEqual, BeltPair.Compare(b, a).AreEqual);
        Assert.Contains("No uncertainty was stated for the rest, so this rests on the values alone.", BeltPair.Compare(a, b).Verdict, StringComparison.Ordinal);
    }

    [Fact]
    public void A_wider_limit_may_be_set()
    {
        var pair = BeltPair.Compare(Tension(96), Tension(98), equalWithin: 0.1);
        Assert.True(pair.AreEqual);
        Assert.Contains("inside the 10 % within which belts count as equal. The density", pair.Verdict, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => BeltPair.Compare(Tension(96), Tension(98), equalWithin: 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => BeltPair.Compare(Tension(96), Tension(98), equalWithin: double.NaN));
        Assert.Throws<ArgumentException>(() => BeltPair.Compare(Tension(96), Tension(98), "left", "left"));
    }

    private static readonly BeltSpan Span = new(180.mm.PlusMinus(0.5.mm), 8.1.g_per_m.WithUncertainty(0.2.g_per_m));

    private static BeltTension Tension(double hertz) => Span.Tension(hertz.Hz.PlusMinus(0.5.Hz));
}
