using System.Diagnostics;
using Waywright.Publishing;

namespace Waywright.EndToEnd.Faults;

/// <summary>SIGKILL, which no program can answer, at random moments of a publish.</summary>
internal static class Kills
{
    /// <param name="times">How often; one in three waits until the new page is being written.</param>
    /// <param name="seed">Of the moments.</param>
    public static async Task<Fault> RunAsync(int times, int seed)
    {
        using var build = new TinyBuild();
        var random = new Random(seed);
        var clock = Stopwatch.StartNew();
        Assert.Equal(0, (await build.PublishAsync()).ExitCode);
        var usual = clock.Elapsed;
        var (old, renewed, leftovers, whole, clean, looked, finished) = (0, 0, 0, 0, 0, 0, 0);
        for (var i = 0; i < times; i++)
        {
            var before = build.Edition();
            finished += await KilledAsync(build, random, usual, isAimed: i % 3 == 2) ? 0 : 1;
            leftovers += build.Neighbours().Length > 0 ? 1 : 0;
            whole += build.Harm() is null ? 1 : 0;
            if (Directory.Exists(build.Out))
                (old, renewed) = build.Edition() == before ? (old + 1, renewed) : (old, renewed + 1);
            // The first thing that the next run does, every time; a whole next run now and then and at the end.
            OutFolder.Take(build.Out).Dispose();
            var isClean = build.Harm() is null && build.Neighbours().Length == 0;
            if (i % 10 == 9 || i == times - 1)
                isClean &= (await build.PublishAsync()).ExitCode == 0 && build.Harm() is null && build.Neighbours().Length == 0;
            (clean, looked) = (clean + (isClean ? 1 : 0), looked + 1);
        }

        var seen = FormattableString.Invariant($"{old} times the old page, {renewed} times the new one; {leftovers} times something beside it, which the next run took away; {finished} runs were over before their signal; files left in the temporary folder: {await PipesAsync(build)}");
        return new Fault("SIGKILL at a random moment", times, seen, whole, clean, looked, [137], "");
    }

    private static async Task<bool> KilledAsync(TinyBuild build, Random random, TimeSpan usual, bool isAimed)
    {
        using var process = build.Start();
        _ = process.StandardOutput.ReadToEndAsync();
        _ = process.StandardError.ReadToEndAsync();
        var page = Path.Combine(build.Site, ".page.waywright-new", "notebooks");
        while (isAimed && !process.HasExited && !Directory.Exists(page))
            await Task.Yield();
        // Spinning: a timer is too coarse for the milliseconds in which the page is written and exchanged.
        var wait = isAimed ? TimeSpan.FromMilliseconds(60 * random.NextDouble()) : usual * random.NextDouble();
        if (!isAimed)
            await Task.WhenAny(process.WaitForExitAsync(), Task.Delay(wait));
        for (var clock = Stopwatch.StartNew(); isAimed && clock.Elapsed < wait && !process.HasExited;)
            Thread.SpinWait(50);
        var isKilled = !process.HasExited;
        process.Kill();
        await process.WaitForExitAsync();
        return isKilled && process.ExitCode == 137;
    }

    // A child whose parent died before they met gives up after half a minute, and takes the name of its pipe away.
    private static async Task<int> PipesAsync(TinyBuild build)
    {
        for (var clock = Stopwatch.StartNew(); clock.Elapsed < TimeSpan.FromSeconds(45) && Left().Length > 0;)
            await Task.Delay(500);
        return Left().Length;

        string[] Left() => Directory.GetFileSystemEntries(build.Temporary);
    }
}
