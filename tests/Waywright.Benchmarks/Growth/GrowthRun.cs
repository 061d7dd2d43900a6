using System.Diagnostics;
using System.Globalization;

namespace Waywright.Benchmarks;

/// <summary>One batch read and graded in a process of its own, so that its peak of memory is its own too.</summary>
/// <param name="ReadSeconds">From the path to sweeps.</param>
/// <param name="GradeSeconds">From sweeps to grades.</param>
/// <param name="ProcessorSeconds">Of both, over all cores.</param>
/// <param name="PeakBytes">The most that the process held.</param>
/// <param name="KeptBytes">What the graded batch holds.</param>
/// <param name="Counts">Rails of each grade.</param>
internal sealed record GrowthRun(double ReadSeconds, double GradeSeconds, double ProcessorSeconds, long PeakBytes, long KeptBytes, string Counts)
{
    /// <summary>First argument of a process that is such a run.</summary>
    public const string Argument = "growth-run";

    private const int Warm = 100;

    public double Seconds => ReadSeconds + GradeSeconds;

    public static GrowthRun Of(string folder, int rails)
    {
        var start = new ProcessStartInfo(Environment.ProcessPath!) { RedirectStandardOutput = true };
        foreach (var argument in new[] { Argument, folder, rails.ToString(CultureInfo.InvariantCulture) })
            start.ArgumentList.Add(argument);
        using var process = Process.Start(start)!;
        var parts = process.StandardOutput.ReadToEnd().Trim().Split('\t');
        process.WaitForExit();
        if (process.ExitCode != 0 || parts.Length != 6)
            throw new InvalidOperationException("A run failed.");
        double Number(int i) => double.Parse(parts[i], CultureInfo.InvariantCulture);
        return new GrowthRun(Number(0), Number(1), Number(2), (long)Number(3), (long)Number(4), parts[5]);
    }

    /// <summary>The run itself, in its own process.</summary>
    public static void Print(string folder, string rails)
    {
        Grade(folder, Warm.ToString(CultureInfo.InvariantCulture));
        GC.Collect();
        var before = GC.GetTotalMemory(forceFullCollection: true);
        using var process = Process.GetCurrentProcess();
        var busy = process.TotalProcessorTime;
        var (read, grade, graded) = Grade(folder, rails);
        process.Refresh();
        busy = process.TotalProcessorTime - busy;
        var kept = GC.GetTotalMemory(forceFullCollection: true) - before;
        process.Refresh();
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{read:R}\t{grade:R}\t{busy.TotalSeconds:R}\t{process.PeakWorkingSet64}\t{kept}\t{string.Join(", ", graded.Counts.Select(c => $"{c.Key} {c.Value}"))}"));
        GC.KeepAlive(graded);
    }

    public static string SweepsOf(string folder, string rails) => Path.Combine(folder, $"sweeps-{rails}.csv");

    public static string StockOf(string folder, string rails) => Path.Combine(folder, $"rails-{rails}.csv");

    private static (double Read, double Grade, GradedBatch Graded) Grade(string folder, string rails)
    {
        var watch = Stopwatch.StartNew();
        var batch = SweepBatch.Read(SweepsOf(folder, rails), SetupBook.Parse(GrowthBatch.Setups, "setups.json"));
        var stock = RailStock.Read(StockOf(folder, rails));
        var read = watch.Elapsed.TotalSeconds;
        var graded = batch.Grade(stock: stock);
        return (read, watch.Elapsed.TotalSeconds - read, graded);
    }
}
