using System.Globalization;
using MathNet.Numerics.IntegralTransforms;

namespace Waywright.Benchmarks;

/// <summary>A take of four seconds beside one Fourier transform of its length, and many takes on one core and on all.</summary>
internal sealed class PlucksBenchmark : Benchmark
{
    private const int Rounds = 15;
    private const int Many = 48;
    private const int Rate = 48_000;
    private const int Seconds = 4;

    public override string Name => "plucks";

    public override string Title => "A plucked note from a recording";

    public override Findings Run()
    {
        PluckRecording[] takes = [.. Enumerable.Range(0, Many).Select(i => Take((ulong)i))];
        if (takes.Select(t => PluckTake.Analyse(t)).Any(t => !t.IsUsable || Math.Abs(PluckCents.Between(95.6, t.Frequency!.Si.Value)) > 5))
            throw new InvalidOperationException("A note was not found, so its time means nothing.");
        var (real, imaginary) = (new double[Rate * Seconds], new double[Rate * Seconds]);
        Contender[] contenders =
        [
            Contender.Here("a take", "PluckTake.Analyse of 4 s at 48 kHz, one pluck of a belt at 95.6 Hz with hum and noise: everything from the filter to the uncertainty.", count =>
            {
                for (var i = 0; i < count; i++)
                    PluckTake.Analyse(takes[i % Many]);
            }),
            Contender.Here("one FFT", "MathNet.Numerics Fourier.Forward of 192,000 points, real and imaginary parts apart.", count =>
            {
                for (var i = 0; i < count; i++)
                {
                    takes[0].Samples.Span.CopyTo(real);
                    Array.Clear(imaginary);
                    Fourier.Forward(real, imaginary, FourierOptions.NoScaling);
                }
            }),
            Contender.Here("48 takes, one core", "The same of 48 recordings, one after the other.", count => Batch(takes, count, 1)),
            Contender.Here("48 takes, all cores", "The same on all cores.", count => Batch(takes, count, Environment.ProcessorCount)),
        ];
        var timings = Interleaved.Measure(contenders, Rounds);
        return new Findings(
            [
                "Invented takes: 0.3 s of quiet with mains hum, a pluck with tau 0.12 s, noise at 25 dB. Every note is found within 5 cents before any is timed.",
                string.Create(CultureInfo.InvariantCulture, $"{Rounds} rounds, every contender once in each, one after the other in one run. A ratio is the median of the ratios within rounds. Wanted: a take in at most 30 times one FFT of its length; one core / all cores near the number of cores ({Environment.ProcessorCount})."),
            ],
            timings,
            [new("a take", "one FFT", "at most 30"), new("48 takes, one core", "48 takes, all cores", "near the cores"), new("48 takes, one core", "a take", "near 48")],
            []);
    }

    private static void Batch(PluckRecording[] takes, int count, int cores)
    {
        for (var i = 0; i < count; i++)
            Parallel.ForEach(takes, new ParallelOptions { MaxDegreeOfParallelism = cores }, take => PluckTake.Analyse(take));
    }

    private static PluckRecording Take(ulong seed)
    {
        var take = new InventedTake(new InventedPluck(95.6, 0.12) { Inharmonicity = 1e-3, Partials = 8 }) { Rate = Rate, Seconds = Seconds - 0.3, NoiseDb = 25, HumDb = -15 };
        return WavReader.Read(take.Wav(seed), "take");
    }
}
