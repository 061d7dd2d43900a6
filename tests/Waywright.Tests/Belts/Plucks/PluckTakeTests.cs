namespace Waywright.Tests.Belts.Plucks;

public sealed class PluckTakeTests
{
    private static readonly InventedTake Belt = new(new InventedPluck(95.6, 0.12) { Partials = 8, Inharmonicity = 1e-3 });

    [Fact]
    public void The_notes_of_invented_belts_are_found_and_their_interval_holds_them()
    {
        // tau 60 to 150 ms at 25 dB: measured over 400 takes in docs/plucks.md.
        var scene = PluckScenes.All.Single(s => s.Name.StartsWith("belt", StringComparison.Ordinal));
        var results = OnAllCores.Select([.. Enumerable.Range(1, 40)], i => Analysed(scene.Take(new PluckDraws((ulong)i)), (ulong)i), TestContext.Current.CancellationToken);
        // Under 40 Hz such a belt dies down within five periods, and the take says so.
        Assert.All(results, r => Assert.True(r.Take.IsUsable || (r.Invented.Pluck.FrequencyHz < 40 && r.Take.Reasons[0].StartsWith("too short", StringComparison.Ordinal)), r.Take.Verdict));
        Assert.All(results.Where(r => r.Take.IsUsable), r => Assert.InRange(r.Cents, -6, 6));
        Assert.True(results.Count(r => Math.Abs(r.Cents) <= 1.96 * r.UCents) >= 37);
    }

    [Theory]
    [InlineData("mains hum at -10 dB")]
    [InlineData("first partial missing")]
    [InlineData("second partial 10 x the first")]
    [InlineData("plucked at mid-span")]
    public void What_makes_other_partials_stronger_does_not_move_the_note(string scene)
    {
        var results = OnAllCores.Select([.. Enumerable.Range(1, 12)], i => Analysed(PluckScenes.All.Single(s => s.Name == scene).Take(new PluckDraws((ulong)i)), (ulong)i), TestContext.Current.CancellationToken);
        Assert.All(results, r => Assert.InRange(r.Cents, -4, 4));
    }

    [Fact]
    public void A_loud_pluck_that_falls_gives_the_note_without_amplitude()
    {
        var fallen = Analysed(Belt with { Pluck = new InventedPluck(120, 0.5) { GlideCents = 15 } }, 3);
        var pluck = Assert.Single(fallen.Take.Plucks);
        Assert.InRange(fallen.Cents, -1, 1);
        // 15 cents at the pluck, e^(-2 x 30 / 500) of it 30 ms later.
        Assert.InRange(pluck.GlideCents, 12, 15);
    }

    [Fact]
    public void Five_plucks_in_one_file_are_told_apart_and_their_median_is_given()
    {
        var left = PluckTake.Analyse(WavReader.Read(DemoTakes.All[0].Wav, "left.wav"));
        Assert.Equal(5, left.Plucks.Count);
        Assert.All(left.Plucks, p => Assert.True(p.IsUsable, left.Verdict));
        Assert.Equal([0.6, 1.25, 1.9, 2.55, 3.2], left.Plucks.Select(p => p.StartSeconds), (a, b) => Math.Abs(a - b) < 0.02);
        Assert.Equal(left.Plucks.Select(p => p.Frequency!.Si.Value).Order().ElementAt(2), left.Frequency!.Si.Value);
        Assert.InRange(left.MainsHumHz!.Value, 49.9, 50.06);
        Assert.InRange(left.Frequency.Si.Value, 95.4, 95.8);
    }

    [Fact]
    public void Takes_are_combined_over_all_their_plucks()
    {
        var takes = new[] { 1UL, 2UL, 3UL }.Select(seed => Analysed(Belt, seed).Take).ToArray();
        var note = PluckNote.Of(takes);
        Assert.Equal(3, note.UsedPlucks);
        Assert.Equal(takes.Select(t => t.Frequency!.Si.Value).Order().ElementAt(1), note.Frequency!.Si.Value);
        Assert.Equal(note, PluckNote.Of(takes));
    }

    [Fact]
    public void Takes_of_two_notes_are_not_averaged()
    {
        var note = PluckNote.Of(Analysed(Belt, 1).Take, Analysed(Belt with { Pluck = Belt.Pluck with { FrequencyHz = 70 } }, 2).Take);
        Assert.Null(note.Frequency);
        Assert.Contains("disagree", note.Disagreement);
    }

    [Fact]
    public void A_take_without_a_note_in_it_is_not_usable()
    {
        var noise = InventedTake.White(16000, new PluckDraws(9));
        var take = PluckTake.Analyse(WavReader.Read(InventedTake.Wav(noise, 16000), "noise.wav"));
        Assert.False(take.IsUsable);
        Assert.NotEmpty(take.Reasons);
    }

    [Theory]
    [InlineData(0.1, "too short")]
    [InlineData(0.05, "too short")]
    public void A_pluck_cut_short_says_so(double seconds, string reason)
        => Assert.Contains(reason, Analysed(Belt with { Seconds = seconds }, 1).Take.Verdict);

    [Fact]
    public void An_overdriven_recorder_is_told()
    {
        var clipped = (Belt with { Pluck = Belt.Pluck with { DecaySeconds = 1 }, ClipsAt = 0.2 }).Wav(1, peak: 1);
        Assert.Contains("clipped", PluckTake.Analyse(WavReader.Read(clipped, "loud.wav")).Verdict);
    }

    [Fact]
    public void Another_span_that_sounds_louder_is_told()
        => Assert.Contains("another note", Analysed(Belt with { Pluck = Belt.Pluck with { DecaySeconds = 0.5 }, Other = (0, 1.37) }, 1).Take.Verdict);

    [Theory]
    [InlineData(1.5)]
    [InlineData(4 / 3.0)]
    [InlineData(1.25)]
    [InlineData(5 / 3.0)]
    public void Two_spans_in_a_simple_ratio_are_not_taken_for_one_note_below_both(double ratio)
    {
        var take = Analysed(Belt with { Pluck = Belt.Pluck with { DecaySeconds = 0.5, Inharmonicity = 5e-5 }, Other = (-1, ratio) }, 1).Take;
        Assert.True(!take.IsUsable || take.Frequency!.Si.Value > 95, take.Verdict);
    }

    [Fact]
    public void Two_notes_close_together_beat_and_are_no_row_of_plucks()
    {
        var take = Analysed(Belt with { Pluck = Belt.Pluck with { DecaySeconds = 0.5 }, Other = (-1, 1.05) }, 1).Take;
        Assert.Single(take.Plucks);
        Assert.Contains("beating", take.Verdict);
    }

    [Fact]
    public void A_steady_note_of_the_mains_is_hum_and_not_a_belt()
    {
        double[] hum = [.. Enumerable.Range(0, 16000).Select(i => Math.Cos(2 * Math.PI * 100 * i / 16000) + (0.3 * Math.Cos(2 * Math.PI * 200 * i / 16000)))];
        Assert.Contains("hum", PluckTake.Analyse(WavReader.Read(InventedTake.Wav(hum, 16000), "hum.wav")).Verdict);
    }

    [Fact]
    public void A_note_that_sounds_with_a_finger_on_the_span_is_no_belt()
    {
        var recording = WavReader.Read(Belt.Wav(1), "take.wav");
        var same = PluckTake.Analyse(recording, new PluckSearch(Control: Analysed(Belt, 2).Take));
        Assert.Contains("control take matches", same.Verdict);
        Assert.True(PluckTake.Analyse(recording, new PluckSearch(Control: Analysed(Belt with { Pluck = new InventedPluck(44, 0.1) }, 2).Take)).IsUsable);
    }

    [Fact]
    public void The_range_that_was_asked_for_decides_the_octave()
    {
        var recording = WavReader.Read(Belt.Wav(1), "take.wav");
        Assert.InRange(PluckTake.Analyse(recording, new PluckSearch(60, 150)).Frequency!.Si.Value, 95, 96);
        var none = PluckTake.Analyse(recording, new PluckSearch(110, 150));
        Assert.True(none.Frequency is null || none.Frequency.Si.Value > 105);
    }

    [Fact]
    public void Loudness_and_sign_do_not_move_the_note()
    {
        var samples = Belt.Samples(5);
        double Note(Func<double, double> change) => PluckTake.Analyse(WavReader.Read(InventedTake.Wav([.. samples.Select(change)], Belt.Rate), "x")).Frequency!.Si.Value;
        // Each file is scaled to the same peak, so the sign alone changes, and the rounding of 16 bits.
        Assert.Equal(Note(x => x), Note(x => -x), 6);
        var quiet = PluckTake.Analyse(WavReader.Read(InventedTake.Wav(samples, Belt.Rate, 0.05), "x")).Frequency!.Si.Value;
        Assert.InRange(PluckCents.Between(Note(x => x), quiet), -0.1, 0.1);
    }

    [Theory]
    [InlineData(4000)]
    [InlineData(8000)]
    [InlineData(44100)]
    [InlineData(48000)]
    [InlineData(192000)]
    public void Any_sample_rate_gives_the_same_note(int rate)
        => Assert.InRange(Analysed(Belt with { Rate = rate, Pluck = Belt.Pluck with { Partials = 6 } }, 4).Cents, -2, 2);

    [Fact]
    public void Two_analyses_of_one_file_are_equal()
    {
        var wav = Belt.Wav(8);
        Assert.Equal(PluckTake.Analyse(WavReader.Read(wav, "a")), PluckTake.Analyse(WavReader.Read(wav, "a")));
    }

    [Fact]
    public void The_demo_recordings_are_those_that_their_generator_writes()
    {
        Assert.All(DemoTakes.All, take =>
        {
            var shipped = WavReader.Read(File.ReadAllBytes(Repository.PathOf("datasets", "demo", "belts", take.File)), take.File).Samples.ToArray();
            var made = WavReader.Read(take.Wav, take.File).Samples.ToArray();
            Assert.Equal(shipped.Length, made.Length);
            // Cosines may differ in their last bit from machine to machine, and a sample by one step.
            Assert.All(shipped.Zip(made, (a, b) => (a - b) * 32768), steps => Assert.InRange(steps, -1.01, 1.01));
        });
    }

    private static Result Analysed(InventedTake take, ulong seed) => new(take, PluckTake.Analyse(WavReader.Read(take.Wav(seed), "take.wav")));

    private sealed record Result(InventedTake Invented, PluckTake Take)
    {
        public double Cents => PluckCents.Between(Invented.Pluck.FrequencyHz, Take.Frequency!.Si.Value);

        public double UCents => PluckCents.Of(Take.Frequency!.Si.StandardUncertainty, Take.Frequency.Si.Value);
    }
}
