namespace Waywright.Tests;

public sealed class ScrewGainTests
{
    private static readonly BeltSpan Span = new(180.mm.PlusMinus(0.5.mm), 8.4.g_per_m.WithUncertainty(0.1.g_per_m));

    private static BeltTension Belt(double hertz) => Span.Tension(hertz.Hz.WithUncertainty(0.1.Hz));

    // By hand: 4 x 0.0084 x 0.18^2 = 0.00108864; T(96) 10.0329, T(100) 10.8864; gain 1.7070 N a turn for half a turn.
    [Fact]
    public void The_gain_is_the_measured_change_over_the_turn()
    {
        var gain = ScrewGain.Measure(Belt(96), Belt(100), Uncertain.Input("turn", 0.5, 0.02), 0.1.N);
        Assert.Equal(0.00108864 * ((100 * 100) - (96 * 96)) / 0.5, gain.NewtonPerTurn.Value, 1e-9);
        Assert.True(gain.IsProven);
    }

    [Fact]
    public void Turns_left_carry_their_uncertainty()
    {
        var gain = ScrewGain.Measure(Belt(96), Belt(100), Uncertain.Input("turn", 0.5, 0.02), 0.1.N);
        var advice = gain.To(Belt(100), 15.N);
        Assert.Equal((15 - 10.8864) / 1.7069875, advice.Turns!.Value, 1e-4);
        Assert.True(advice.Turns.StandardUncertainty > 0);
        Assert.StartsWith("Tighten the belt by 2.41 (", advice.Verdict, StringComparison.Ordinal);
        Assert.Contains("Caution", advice.Verdict, StringComparison.Ordinal);
        Assert.StartsWith("Leave the belt: it is at ", gain.To(Belt(100), 11.N).Verdict, StringComparison.Ordinal);
        Assert.StartsWith("Slacken the belt by ", gain.To(Belt(130), 15.N).Verdict, StringComparison.Ordinal);
    }

    [Fact]
    public void The_slacker_of_two_belts_is_brought_to_the_other()
    {
        var gain = ScrewGain.Measure(Belt(96), Belt(100), Uncertain.Input("turn", 0.5, 0.02), 0.1.N);
        var advice = gain.Match(BeltPair.Compare(Belt(96), Belt(104), "left", "right"));
        Assert.Equal(0.00108864 * ((104 * 104) - (96 * 96)) / 1.7069875, advice.Turns!.Value, 1e-4);
        Assert.StartsWith("Tighten `left` by 1.02", advice.Verdict, StringComparison.Ordinal);
        Assert.StartsWith("Leave `left`: it is equal to the other within 5 %", gain.Match(BeltPair.Compare(Belt(100), Belt(100.5), "left", "right")).Verdict, StringComparison.Ordinal);
    }

    [Fact]
    public void The_friction_band_is_half_of_what_both_directions_differ_by()
    {
        Assert.Equal(0.00108864 * ((97 * 97) - (95 * 95)) / 2, ScrewGain.FrictionBandOf(Belt(95), Belt(97)).Si.Value, 1e-9);
        Assert.Equal(ScrewGain.FrictionBandOf(Belt(95), Belt(97)).Si.Value, ScrewGain.FrictionBandOf(Belt(97), Belt(95)).Si.Value, 1e-15);
    }

    // Never a turn below the friction band, nor below what the readings can tell apart.
    [Fact]
    public void No_turn_is_advised_that_friction_or_noise_would_swallow()
    {
        var rubbing = ScrewGain.Measure(Belt(96), Belt(100), 0.5, 2.N);
        var advice = rubbing.Match(BeltPair.Compare(Belt(96), Belt(104), "left", "right"));
        Assert.Equal(2 / 1.7069875, advice.SmallestTurns!.Value, 1e-5);
        Assert.StartsWith("Don't turn `left` yet: ", advice.Verdict, StringComparison.Ordinal);
        Assert.Contains("the friction band", advice.Verdict, StringComparison.Ordinal);
        var vague = new BeltSpan(180.mm, 8.4.g_per_m);
        var noisy = ScrewGain.Measure(Belt(96), Belt(100), 0.5).Match(BeltPair.Compare(vague.Tension(96.Hz.WithUncertainty(4.Hz)), vague.Tension(98.Hz.WithUncertainty(4.Hz)), "left", "right"));
        Assert.Contains("what the readings can tell apart", noisy.Verdict, StringComparison.Ordinal);
    }

    [Fact]
    public void A_gain_that_is_not_told_apart_from_none_gives_no_turns()
    {
        var gain = ScrewGain.Measure(Belt(96), Belt(96.1), 0.1);
        Assert.False(gain.IsProven);
        Assert.Null(gain.To(Belt(96), 15.N).Turns);
        Assert.StartsWith("Turn further before you measure the gain", gain.Verdict, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => ScrewGain.Measure(Belt(96), Belt(100), 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => ScrewGain.Measure(Belt(96), Belt(100), 0.5).To(Belt(96), 0.N));
    }
}
