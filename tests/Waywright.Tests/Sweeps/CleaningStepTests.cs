using CsCheck;

namespace Waywright.Tests;

/// <summary>Each step against passes whose truth is known because they were made up for it.</summary>
public class CleaningStepTests
{
    private static readonly CleaningOptions Turn = new(TurnUm: 1000);
    private static readonly CleaningOptions Flip = new(FlipMirrored: true);
    private static readonly CleaningOptions Drop = new(DropSpikes: true);

    private static CleanedBatch Clean(Sweep sweep, CleaningOptions? options = null) => InventedPasses.Batch(sweep).Clean(options);

    // A dial of one turn shows readings modulo a turn, by its make; heights that differ by less than a quarter turn from station to station are so given back but for whole turns.
    [Fact]
    public void A_dial_that_rolled_over_is_given_back_but_for_whole_turns()
        => Gen.Select(Gen.Double[-249, 249].Array[2, 40], Gen.Double[-5000, 5000]).Sample((steps, start) =>
        {
            var truth = new double[steps.Length];
            var sum = start;
            for (var i = 0; i < steps.Length; i++)
                truth[i] = sum += steps[i];
            var shown = truth.Select(z => z - (1000 * Math.Floor(z / 1000))).ToArray();
            var x = Enumerable.Range(0, truth.Length).Select(i => i * 20.0).ToArray();
            var cleaned = Clean(InventedPasses.Of([shown], x), Turn);
            var offsets = truth.Zip(cleaned.Batch.Sweeps[0].Passes[0].ReadingsUm, (t, z) => (t - z) / 1000).ToArray();
            Assert.All(offsets, o => Assert.Equal(Math.Round(offsets[0]), o, 1e-9));
            // Most readings stay, so at least half are as they were where two turns are met.
            Assert.True(truth.Select(t => Math.Floor(t / 1000)).Distinct().Count() > 2 || 2 * cleaned["roll-over"].Changed.Count <= truth.Length);
        }, iter: 1000);

    [Fact]
    public void A_pass_through_zero_is_told_with_the_readings_that_moved()
    {
        var sweep = InventedPasses.Of([[3, 1, 998, 996, 2, 5, 9]], [0, 10, 20, 30, 40, 50, 60]);
        var step = Clean(sweep, Turn)["roll-over"];
        Assert.Equal("2 readings of R01 side moved by a whole turn of 1000 um.", step.Found);
        Assert.Equal([(20, 998, -2), (30, 996, -4)], step.Changed.Select(r => (r.PositionMm, r.BeforeUm, r.AfterUm!.Value)));
        Assert.Equal("the pointer passed zero: -1 turn", step.Changed[0].Why);
        Assert.Equal("Nothing changed: no turn of the pointer was given, so roll-over was not looked for.", Clean(sweep)["roll-over"].Found);
    }

    [Fact]
    public void Jumps_that_may_be_no_roll_over_are_left_and_told()
    {
        var half = Clean(InventedPasses.Of([[0, 5, 505, 510]], [0, 10, 20, 30]), Turn)["roll-over"];
        Assert.Equal("Nothing changed: no jump of about a turn (1000 um) between neighbouring stations. Jumps to look at in 1 pass.", half.Found);
        Assert.Equal(["R01 side pass 1 forward: a jump of 500 um between 10 and 20 mm, too small for a turn, large for a rail: look at the readings."], half.Notes);
        var counted = Clean(InventedPasses.Of([[0, 900, 1800, 1810]], [0, 10, 20, 30]), Turn)["roll-over"];
        Assert.Empty(counted.Changed);
        Assert.Equal(["R01 side pass 1 forward: 2 jumps, the largest of 900 um between 0 and 10 mm, and the pass spans more than a turn, so its turns were counted already and it is left."], counted.Notes);
    }

    [Theory]
    [InlineData(3, new[] { 1 })]
    [InlineData(4, new[] { 2 })]
    [InlineData(5, new[] { 0, 4 })]
    [InlineData(4, new[] { 1, 3 })]
    [InlineData(2, new[] { 1 })]
    public void A_mirrored_pass_is_found_and_flipped_only_when_asked(int passes, int[] mirrored)
    {
        var right = InventedPasses.Sweep(passes, 1, seed: 3);
        var wrong = mirrored.Aggregate(right, (s, k) => s.With(k, (_, z) => -z));
        Assert.Equal(right.Passes, Clean(wrong, Flip).Batch.Sweeps[0].Passes);
        var told = Clean(wrong)["sign"];
        Assert.Empty(told.Changed);
        Assert.Equal(mirrored.Select(k => right.Passes[k].ToString()), told.Flagged.Select(r => r.Pass).Distinct());
        Assert.Equal(mirrored.Length == 1
            ? $"Nothing changed: R01 side {right.Passes[mirrored[0]]} mirrors the other passes; flip it if it was read with the opposite sign."
            : $"Nothing changed: R01 side {right.Passes[mirrored[0]]} and R01 side {right.Passes[mirrored[1]]} mirror the other passes; flip them if they were read with the opposite sign.", told.Found);
        Assert.Contains("correlation -0.9", told.Flagged[0].Why, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_as_many_right_as_mirrored_passes_in_both_directions_none_is_flipped()
    {
        var wrong = InventedPasses.Sweep(4, 1, seed: 3).With(0, (_, z) => -z).With(1, (_, z) => -z);
        var cleaned = Clean(wrong, Flip);
        Assert.False(cleaned.IsChanged);
        Assert.Equal("Nothing changed: R01 side: as many passes mirror the others as don't, so nothing tells which have the right sign. Look them up in your notes.", cleaned["sign"].Found);
    }

    [Fact]
    public void A_line_added_to_a_pass_hides_no_mirror_image()
        => Gen.Select(Gen.Double[-3, 3], Gen.Double[-500, 500]).Sample((tilt, height) =>
        {
            var wrong = InventedPasses.Sweep(3, 1, seed: 3).With(1, (x, z) => -z + height + (tilt * x));
            Assert.Equal(["pass 2 back"], Clean(wrong)["sign"].Flagged.Select(r => r.Pass).Distinct());
        }, iter: 200);

    [Fact]
    public void Passes_of_a_straight_rail_are_hardly_ever_called_mirrored()
    {
        // Chance 1e-4 for each of 6 pairs: of 2000 sweeps of noise, 1.2 on average; 7 or more have a chance below 1 in 1000 (Poisson).
        var flagged = Enumerable.Range(0, 2000).Count(seed => Clean(InventedPasses.Sweep(4, 1, seed, _ => 0))["sign"] is { } step && step.Flagged.Count + step.Notes.Count > 0);
        Assert.InRange(flagged, 0, 6);
    }

    [Theory]
    [InlineData(4, 0)]
    [InlineData(3, 1)]
    [InlineData(8, 0)]
    public void A_spike_in_repeated_passes_is_found_alone_and_dropped_only_when_asked(int passes, double step)
    {
        for (var seed = 0; seed < 40; seed++)
        {
            var right = InventedPasses.Sweep(passes, 0.7, seed, step: step);
            var (pass, station) = (seed % passes, InventedPasses.Stations[seed % 14]);
            var wrong = right.With(pass, (x, z) => x == station ? z + (seed % 2 == 0 ? 20 : -20) : z);
            var told = Clean(wrong)["spikes"];
            Assert.Contains((right.Passes[pass].ToString(), station), told.Flagged.Select(r => (r.Pass, r.PositionMm)));
            Assert.InRange(told.Flagged.Count, 1, 2);
            var dropped = Clean(wrong, Drop);
            Assert.Equal(told.Flagged.Select(r => (r.Pass, r.PositionMm)), dropped["spikes"].Changed.Select(r => (r.Pass, r.PositionMm)));
            Assert.DoesNotContain(station, dropped.Batch.Sweeps[0].Passes[pass].PositionsMm);
            Assert.InRange(dropped.Batch.Sweeps[0].Pool().RepeatabilityUm!.Value, 0.3, 1.3);
        }
    }

    // What CleaningOptions says of its default: simulated here.
    [Theory]
    [InlineData(2, 12)]
    [InlineData(4, 14)]
    [InlineData(10, 70)]
    public void Fewer_than_one_in_a_hundred_sweeps_without_spikes_have_one_flagged(int passes, int stations)
    {
        var x = Enumerable.Range(0, stations).Select(i => i * 320.0 / (stations - 1)).ToArray();
        var flagged = Enumerable.Range(0, 1000).Count(seed => Clean(InventedPasses.Sweep(passes, 1, seed, stations: x))["spikes"].Flagged.Count > 0);
        Assert.InRange(flagged, 0, 10);
    }

    [Fact]
    public void Of_two_passes_the_reading_that_leaves_its_neighbours_is_the_spike_and_else_both_are_kept()
    {
        var right = InventedPasses.Sweep(2, 0.3, seed: 5);
        var plain = Clean(right.With(1, (x, z) => x == 147.5 ? z + 15 : z), Drop)["spikes"];
        Assert.Equal([("pass 2 back", 147.5)], plain.Changed.Select(r => (r.Pass, r.PositionMm)));
        var shared = Clean(right.With(0, (x, z) => x == 147.5 ? z - 8 : z).With(1, (x, z) => x == 147.5 ? z + 8 : z), Drop)["spikes"];
        Assert.Empty(shared.Changed);
        Assert.Equal(["pass 1 forward", "pass 2 back"], shared.Flagged.Select(r => r.Pass).Order());
        Assert.Equal("Nothing changed: 2 readings of R01 side flagged as spikes and kept.", shared.Found);
    }

    [Fact]
    public void A_mirrored_pass_that_is_kept_hides_no_spike()
    {
        var right = InventedPasses.Sweep(4, 1, seed: 3);
        var wrong = right.With(2, (_, z) => -z).With(0, (x, z) => x == 97.5 ? z + 20 : z).With(2, (x, z) => x == 222.5 ? z + 20 : z);
        var step = Clean(wrong, Drop)["spikes"];
        Assert.Equal([("pass 1 forward", 97.5), ("pass 3 forward", 222.5)], step.Changed.Select(r => (r.Pass, r.PositionMm)));
        Assert.Equal(wrong.Passes[2].ReadingsUm[9], step.Changed[1].BeforeUm);
    }

    [Fact]
    public void In_a_single_pass_a_spike_is_flagged_and_never_dropped()
    {
        var sweep = InventedPasses.Sweep(1, 0.4, seed: 2).With(0, (x, z) => x == 97.5 ? z + 15 : z);
        var step = Clean(sweep, Drop)["spikes"];
        Assert.Empty(step.Changed);
        Assert.Equal([97.5], step.Flagged.Select(r => r.PositionMm));
        Assert.Contains("a single pass can't tell a spike from a bump on the rail", step.Flagged[0].Why, StringComparison.Ordinal);
    }

    [Fact]
    public void More_than_a_fifth_of_the_readings_are_no_spikes()
    {
        // Four of fourteen stations where no pass agrees with another: 40 of 140 readings.
        var random = new Random(4);
        var loose = Enumerable.Range(0, 10).Aggregate(InventedPasses.Sweep(10, 0.1, seed: 4), (s, k) => s.With(k, (x, z) => x is > 90 and < 180 ? z + (200 * random.NextDouble()) : z));
        var step = Clean(loose, Drop)["spikes"];
        Assert.Empty(step.Flagged.Concat(step.Changed));
        Assert.Equal("Nothing changed: no reading is a spike. 1 face could not be judged in full.", step.Found);
        Assert.StartsWith("R01 side: more than a fifth of the readings stand out, so they are no spikes; none is flagged.", step.Notes[0], StringComparison.Ordinal);
    }

    [Fact]
    public void Retrace_and_drift_are_told_and_stay()
    {
        // Forward reads 3 um less than back and drifts by 6 um a pass, in time: so up the rail forward, down it back. Worked by hand: 6 um over 312 mm is 19.23 um/m.
        double[] Pass(int way) => InventedPasses.Stations.Select(x => InventedPasses.Bow(x) + (way * -1.5) + (way * 6 * (x - 160) / 312)).ToArray();
        var cleaned = Clean(InventedPasses.Of([Pass(1), Pass(-1)]));
        Assert.False(cleaned.IsChanged);
        Assert.Equal("Nothing changed: forward less back is -3.0 um on average, and scatters by up to 0.0 um about a line (R01 side); the average is retrace only where nothing was moved or set to zero between.", cleaned["retrace"].Found);
        Assert.Equal(["R01 side: forward less back -3.0 um on average over 14 stations, 0.0 um standard deviation about a line."], cleaned["retrace"].Notes);
        Assert.Equal(["R01 side: tilts of the passes from -19.2 to 19.2 um/m; forward and back share 19.2 um/m with opposite signs, 6.0 um along a pass if it is drift."], cleaned["drift"].Notes);
        Assert.StartsWith("Nothing changed: tilts of the passes of a face differ by up to 38.5 um/m (R01 side)", cleaned["drift"].Found, StringComparison.Ordinal);
        Assert.Equal("Nothing changed: no face was swept forward and back in one lay, so retrace doesn't show.", Clean(InventedPasses.Of([Pass(1)]))["retrace"].Found);
    }
}

[UnderCulture("de-DE")]
public sealed class CleaningStepTestsInGerman : CleaningStepTests;
