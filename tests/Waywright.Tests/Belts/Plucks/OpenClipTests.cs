namespace Waywright.Tests.Belts.Plucks;

public sealed class OpenClipTests
{
    private static readonly Lazy<Result[]> Whole = new(() => Analysed(clip => clip.Wav));
    private static readonly Lazy<Result[]> Noisy = new(() => Analysed(clip => clip.WithNoise(10, 7)));
    private static readonly Lazy<Result[]> Short = new(() => Analysed(clip => clip.Cut(0.3)));

    public static TheoryData<int> Clips => [.. Enumerable.Range(0, OpenClip.All.Count)];

    [Theory]
    [MemberData(nameof(Clips))]
    public void A_recorded_string_gets_a_usable_note_within_its_interval(int clip)
    {
        var result = Whole.Value[clip];
        Assert.True(result.Take.IsUsable, result.Take.Verdict);
        Assert.Single(result.Take.Plucks);
        Assert.InRange(result.Hertz, result.Clip.LowHz, result.Clip.HighHz);
    }

    [Fact]
    public void Half_of_the_notes_are_within_one_and_a_half_cents_and_all_but_two_within_five()
    {
        double[] errors = [.. Whole.Value.Select(r => Math.Abs(r.Cents)).Order()];
        Assert.True(errors[17] <= 1.5, $"median {errors[17]} cents");
        Assert.True(errors[33] <= 5, $"95th percentile {errors[33]} cents");
        Assert.True(errors[^1] <= 50, $"largest {errors[^1]} cents");
    }

    [Fact]
    public void The_interval_holds_the_reference_as_often_as_it_says()
    {
        // 95 % of 36, less what chance leaves out once in a thousand.
        var held = Whole.Value.Count(r => Math.Abs(r.Cents) <= 1.96 * Math.Sqrt((r.UCents * r.UCents) + (r.Clip.ReferenceUCents * r.Clip.ReferenceUCents)));
        Assert.True(held >= 30, $"{held} of 36");
    }

    [Fact]
    public void White_noise_at_ten_decibels_makes_no_wrong_partial()
        => Assert.All(Noisy.Value, r => Assert.InRange(r.Cents, -50, 50));

    [Fact]
    public void Three_tenths_of_a_second_from_the_first_sample_are_a_take()
    {
        Assert.All(Short.Value, r => Assert.True(r.Take.IsUsable, $"{r.Clip.File}: {r.Take.Verdict}"));
        Assert.True(Short.Value.Count(r => Math.Abs(r.Cents) > 50) <= 1);
        Assert.True(Short.Value.Average(r => r.UCents) > Whole.Value.Average(r => r.UCents), "less sound, less sure");
    }

    private static Result[] Analysed(Func<OpenClip, byte[]> wav)
        => OnAllCores.Select(OpenClip.All, clip => new Result(clip, PluckTake.Analyse(WavReader.Read(wav(clip), clip.File))), TestContext.Current.CancellationToken);

    private sealed record Result(OpenClip Clip, PluckTake Take)
    {
        public double Hertz => Take.Frequency!.Si.Value;

        public double Cents => PluckCents.Between(Clip.ReferenceHz, Hertz);

        public double UCents => PluckCents.Of(Take.Frequency!.Si.StandardUncertainty, Hertz);
    }
}
