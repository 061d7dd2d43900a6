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
    public double Median => Interleaved.Quantile(Seconds, 0.5);
}

/// <summary>
/// Times contenders in turns, A, B, C, A, B, C, so that a busy or a throttled moment meets all of them. A ratio is taken within a round, and its median
/// over the rounds. Blocks are short, so that on a shared machine most of them run undisturbed.
/// </summary>
internal static class Interleaved
{
    public const double BlockSeconds = 0.01;

    private const double WarmSeconds = 0.2;

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

    /// <summary>The value below which that share of the values lies, between neighbours in proportion.</summary>
    public static double Quantile(IEnumerable<double> values, double share)
    {
        var sorted = values.Order().ToArray();
        var at = share * (sorted.Length - 1);
        var below = (int)at;
        var above = Math.Min(below + 1, sorted.Length - 1);
        return sorted[below] + ((at - below) * (sorted[above] - sorted[below]));
    }

    // Doubling until it lasts also brings the compiler to its last tier.
    private static int Count(Contender contender)
    {
        var count = 1;
        double seconds;
        while ((seconds = contender.Seconds(count)) < WarmSeconds)
            count *= 2;
        return Math.Max(1, (int)(count * BlockSeconds / seconds));
    }
}
