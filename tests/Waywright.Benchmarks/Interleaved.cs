using System.Diagnostics;

namespace Waywright.Benchmarks;

/// <summary>Something that can be repeated.</summary>
/// <param name="Name">What the table calls it.</param>
/// <param name="Timed">What is inside the time, and what was made ready before.</param>
/// <param name="Seconds">Runs it so many times and tells how long that took.</param>
internal sealed record Contender(string Name, string Timed, Func<int, double> Seconds)
{
    /// <summary>A contender of this process; the action repeats itself so many times.</summary>
    public static Contender Here(string name, string timed, Action<int> repeat) => new(name, timed, count =>
    {
        var watch = Stopwatch.StartNew();
        repeat(count);
        return watch.Elapsed.TotalSeconds;
    });
}

/// <summary>Seconds for one run of a contender in each round.</summary>
internal sealed record Timing(Contender Contender, IReadOnlyList<double> Seconds)
{
    public double Median => Interleaved.Median(Seconds);

    public double Shortest => Seconds.Min();

    public double Longest => Seconds.Max();
}

/// <summary>
/// Times contenders in turns, A, B, C, A, B, C, so that a busy or a throttled moment meets all of them. A ratio is taken within a round, and its median
/// over the rounds.
/// </summary>
internal static class Interleaved
{
    private const double BlockSeconds = 0.1;

    public static IReadOnlyList<Timing> Measure(IReadOnlyList<Contender> contenders, int rounds)
    {
        var counts = contenders.Select(Count).ToArray();
        var seconds = contenders.Select(_ => new List<double>()).ToArray();
        for (var round = 0; round < rounds; round++)
        {
            for (var i = 0; i < contenders.Count; i++)
                seconds[i].Add(contenders[i].Seconds(counts[i]) / counts[i]);
        }

        return [.. contenders.Select((contender, i) => new Timing(contender, seconds[i]))];
    }

    public static IReadOnlyList<double> Ratios(Timing slower, Timing faster) => [.. slower.Seconds.Zip(faster.Seconds, (a, b) => a / b)];

    public static double Median(IEnumerable<double> values)
    {
        var sorted = values.Order().ToArray();
        var middle = sorted.Length / 2;
        return sorted.Length % 2 == 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
    }

    // Doubling until a block lasts also brings the compiler to its last tier.
    private static int Count(Contender contender)
    {
        var count = 1;
        double seconds;
        while ((seconds = contender.Seconds(count)) < BlockSeconds)
            count *= 2;
        return Math.Max(1, (int)(count * BlockSeconds / seconds));
    }
}
