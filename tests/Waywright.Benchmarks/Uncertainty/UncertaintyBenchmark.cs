using System.Globalization;
using System.Numerics;

namespace Waywright.Benchmarks;

/// <summary>Monte Carlo of a least-squares straightness against NumPy, and the full uncertainty of one rail face.</summary>
internal sealed class UncertaintyBenchmark : Benchmark
{
    private const int Stations = 18;
    private const int Trials = 100_000;
    private const int Rounds = 21;

    private static readonly MonteCarloInput[] Inputs =
        [.. Enumerable.Range(0, Stations).Select(i => MonteCarloInput.Of(string.Create(CultureInfo.InvariantCulture, $"station {i}"), Distribution.Gaussian(0, 1)))];

    private double _kept;

    public override string Name => "uncertainty";

    public override string Title => "Simulating what a straightness figure is uncertain by";

    public override Findings Run()
    {
        var file = Path.GetTempFileName();
        try
        {
            File.WriteAllText(file, $"{Stations} {Trials}");
            using var peer = new PythonPeer("Uncertainty/uncertainty_peer.py", file);
            Agree(peer);
            var profile = Face();
            var errors = new ProfileErrors([.. Enumerable.Repeat(1 / Math.Sqrt(3), Stations)], 32, []);
            Contender[] contenders =
            [
                Contender.Here("kit", $"MonteCarlo.Run: {Trials} trials of {Stations} normal errors; the model takes the least-squares line off and gives the range, in columns; sorted results, quantile; both cores.", count => Repeat(count, Floor)),
                peer.Contender("plain", "NumPy", "the same by default_rng().standard_normal, matrix products, max, min and quantile; trials in rows."),
                peer.Contender("transposed", "NumPy, transposed", "the same with trials in columns, the faster layout for NumPy."),
                Contender.Here("one rail face", $"StraightnessUncertainty.Of with {Trials} trials: twelve figures with floor, estimate and bounds, and contact shares.",
                    count => Repeat(count, seed => StraightnessUncertainty.Of(profile, errors, Trials, seed).Figures[0].HighUm)),
            ];
            var timings = Interleaved.Measure(contenders, Rounds);
            return new Findings(About(timings[3]), timings, Ratios(), [peer.Ask("versions") + " (Debian)"]);
        }
        finally
        {
            File.Delete(file);
        }
    }

    private void Repeat(int count, Func<ulong, double> one)
    {
        for (var i = 0; i < count; i++)
            _kept += one((ulong)i);
    }

    private static double Floor(ulong seed) => MonteCarlo.Run(Ranges, Inputs, Trials, seed).Quantile(0.95);

    // The model that a user would write for whole columns: a line of least squares taken off, then the range.
    private static void Ranges(TrialBatch batch, Span<double> results)
    {
        const double middle = (Stations - 1) / 2.0;
        const double squares = Stations * ((Stations * Stations) - 1) / 12.0;
        var lanes = Vector<double>.Count;
        for (var t = 0; t < results.Length; t += lanes)
        {
            // The last turn goes over trials again where they don't fill the lanes.
            var at = Math.Max(0, Math.Min(t, results.Length - lanes));
            var (mean, slope) = (Vector<double>.Zero, Vector<double>.Zero);
            for (var i = 0; i < Stations; i++)
            {
                var z = new Vector<double>(batch[i][at..]);
                mean += z;
                slope += z * (i - middle);
            }

            (mean, slope) = (mean / Stations, slope / squares);
            var (highest, lowest) = (new Vector<double>(double.NegativeInfinity), new Vector<double>(double.PositiveInfinity));
            for (var i = 0; i < Stations; i++)
            {
                var residual = new Vector<double>(batch[i][at..]) - mean - (slope * (i - middle));
                (highest, lowest) = (Vector.Max(highest, residual), Vector.Min(lowest, residual));
            }

            (highest - lowest).CopyTo(results[at..]);
        }
    }

    private static void Agree(PythonPeer peer)
    {
        var ours = Enumerable.Range(0, 5).Average(i => Floor((ulong)i));
        var theirs = peer.Answer("plain");
        if (Math.Abs(ours - theirs) > 0.02)
            throw new InvalidOperationException($"The routes disagree, so their times mean nothing: {ours:R} and {theirs:R}.");
    }

    private static Profile Face()
    {
        var random = new Random(5);
        double[] positions = [.. Enumerable.Range(0, Stations).Select(i => 25.0 * i)];
        return new Profile(positions, [.. positions.Select(x => (12 * 4 * x * (425 - x) / (425.0 * 425)) + random.NextDouble())]);
    }

    private static string[] About(Timing face) =>
    [
        $"{Stations} stations, independent normal errors. Kit and NumPy find the same 95 % point (checked in the run to 0.02 of the errors' standard deviation).",
        string.Create(CultureInfo.InvariantCulture, $"{Rounds} rounds; in each, every contender has a turn, one after the other in one run. A ratio is the median of the ratios within rounds. One rail face of {Stations} stations with {Trials} trials took {face.Median:0.00} s in the median here (wanted: 0.3 s)."),
    ];

    private static Ratio[] Ratios() =>
    [
        new("NumPy", "kit", "at least 10"),
        new("NumPy, transposed", "kit", "no target"),
        new("one rail face", "kit", "no target"),
    ];
}
