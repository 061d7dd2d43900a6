using Waywright.EndToEnd.Commands;

namespace Waywright.EndToEnd.Faults;

/// <summary>What others do while a publish runs.</summary>
internal static class Meanwhile
{
    /// <summary>The data file is written once the first cell has read it; the notebook goes on long enough to see it.</summary>
    public static async Task<Fault> ChangedInputAsync(int times)
    {
        using var build = new TinyBuild();
        var (whole, clean, codes, message) = (0, 0, new SortedSet<int>(), "");
        for (var i = 0; i < times; i++)
        {
            build.Write("data/notes.txt", "invented\n");
            var before = (await build.PublishAsync()).ExitCode == 0 ? build.Edition() : "";
            using var process = build.Start();
            var ending = TinyBuild.EndAsync(process);
            while (!process.HasExited && !Directory.Exists(Path.Combine(build.Site, ".page.waywright-new", "inputs")))
                await Task.Yield();
            build.Write("data/notes.txt", FormattableString.Invariant($"invented, changed {i}\n"));
            var run = await ending;
            codes.Add(run.ExitCode);
            message = Fault.Told(run.Error, build);
            whole += build.Harm() is null && build.Edition() == before && build.Neighbours().Length == 0 ? 1 : 0;
            clean += (await build.PublishAsync()).ExitCode == 0 && build.Harm() is null && build.Edition() != before && build.Neighbours().Length == 0 ? 1 : 0;
        }

        return new Fault("Data that changes while the notebooks run", times, "the next run publishes the new data", whole, clean, times, codes, message);
    }

    /// <summary>Two publishes to one folder: one publishes, the other is told.</summary>
    public static async Task<Fault> TwoAtOnceAsync(int times)
    {
        using var build = new TinyBuild();
        Assert.Equal(0, (await build.PublishAsync()).ExitCode);
        var (whole, clean, won, codes, message) = (0, 0, 0, new SortedSet<int>(), "");
        for (var i = 0; i < times; i++)
        {
            var before = build.Edition();
            using var one = build.Start();
            using var other = build.Start();
            Command[] runs = await Task.WhenAll(TinyBuild.EndAsync(one), TinyBuild.EndAsync(other));
            won += runs.Count(run => run.ExitCode == 0);
            foreach (var refused in runs.Where(run => run.ExitCode != 0))
            {
                codes.Add(refused.ExitCode);
                message = Fault.Told(refused.Error, build);
            }

            whole += build.Harm() is null && build.Edition() != before && build.Neighbours().Length == 0 ? 1 : 0;
            clean += (await build.PublishAsync()).ExitCode == 0 && build.Harm() is null && build.Neighbours().Length == 0 ? 1 : 0;
        }

        return new Fault("Two publishes to one folder at once", times, FormattableString.Invariant($"{won} of {2 * times} runs published, the others were told"), whole, clean, times, codes, message);
    }
}
