using System.Globalization;
using System.Text;

namespace Waywright.Benchmarks;

/// <summary>How time and memory grow from a hundred to ten thousand rails, read and graded.</summary>
internal sealed class GrowthBenchmark : Benchmark
{
    private const int Rounds = 3;

    private static readonly int[] Sizes = [100, 316, 1000, 3162, 10_000];

    public override string Name => "growth";

    public override string Title => "From 100 to 10,000 rails, read and graded";

    public override Findings Run()
    {
        var folder = Directory.CreateTempSubdirectory().FullName;
        try
        {
            foreach (var size in Sizes)
                GrowthBatch.Write(GrowthRun.SweepsOf(folder, Text(size)), GrowthRun.StockOf(folder, Text(size)), size);
            var runs = Sizes.Select(_ => new List<GrowthRun>()).ToArray();
            for (var round = 0; round < Rounds; round++)
            {
                for (var i = 0; i < Sizes.Length; i++)
                    runs[i].Add(GrowthRun.Of(folder, Sizes[i]));
            }

            if (runs.Any(r => r.Select(run => run.Counts).Distinct().Count() > 1))
                throw new InvalidOperationException("The same batch was graded in two ways.");
            return new Findings(About(runs), [.. Sizes.Select((size, i) => TimingOf(size, runs[i]))], Ratios(), []);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static string[] About(List<GrowthRun>[] runs) =>
    [
        "Rails x 2 faces x 3 passes x 18 stations, invented, with a set-up and their holes, against the starting rules: side, side local, top mounted, 10,000 trials. The file is in the page cache.",
        string.Create(CultureInfo.InvariantCulture, $"{Rounds} rounds; in each, every size has a turn in a process of its own, which grades 100 rails first to warm up. Seconds grow with rails to the power {Exponent(runs, r => r.Seconds):0.00}, time on the processors to the power {Exponent(runs, r => r.ProcessorSeconds):0.00} (least squares of the logarithms of the medians; wanted: at most 1.05). Other work on the machine was not kept away: time on the processors tells more than seconds."),
        Table(runs),
        "Read and graded: the grade of each rail is settled. Reasons, confidences and intervals are simulated when somebody asks for them, and are no part of these times.",
        "To rerun: `dotnet run -c Release --project tests/Waywright.Benchmarks -- growth`.",
    ];

    private static string Table(List<GrowthRun>[] runs)
    {
        var table = new StringBuilder("| rails | read, s | grade, s | rails per second | processor, ms per rail | peak memory, MB | held per rail, kB | grades |\n| ---: | ---: | ---: | ---: | ---: | ---: | ---: | --- |\n");
        for (var i = 0; i < Sizes.Length; i++)
        {
            double Median(Func<GrowthRun, double> value) => Interleaved.Quantile(runs[i].Select(value), 0.5);
            table.Append(CultureInfo.InvariantCulture, $"| {Sizes[i]} | {Median(r => r.ReadSeconds):0.000} | {Median(r => r.GradeSeconds):0.00} | {Median(r => Sizes[i] / r.Seconds):0} | {Median(r => r.ProcessorSeconds * 1e3 / Sizes[i]):0.0} | {Median(r => r.PeakBytes / 1e6):0} | {Median(r => r.KeptBytes / 1e3 / Sizes[i]):0.0} | {runs[i][0].Counts} |\n");
        }

        return table.ToString().TrimEnd();
    }

    private static double Exponent(List<GrowthRun>[] runs, Func<GrowthRun, double> seconds)
    {
        double[] x = [.. Sizes.Select(s => Math.Log(s))];
        double[] y = [.. runs.Select(r => Math.Log(Interleaved.Quantile(r.Select(seconds), 0.5)))];
        return x.Zip(y, (a, b) => (a - x.Average()) * (b - y.Average())).Sum() / x.Sum(a => (a - x.Average()) * (a - x.Average()));
    }

    private static Timing TimingOf(int size, List<GrowthRun> runs)
        => new(new Contender(NameOf(size), "SweepBatch.Read, RailStock.Read and Grade.", _ => throw new NotSupportedException()), [.. runs.Select(r => r.Seconds)]);

    private static Ratio[] Ratios() =>
    [
        new(NameOf(10_000), NameOf(1000), "at most 11.2, so that the exponent is 1.05"),
        new(NameOf(10_000), NameOf(100), "at most 126"),
    ];

    private static string NameOf(int size) => string.Create(CultureInfo.InvariantCulture, $"{size:#,0} rails");

    private static string Text(int size) => size.ToString(CultureInfo.InvariantCulture);
}
