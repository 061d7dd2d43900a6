using System.Diagnostics;
using Waywright.Kernel;
using Waywright.Publishing;

namespace Waywright.Benchmarks;

/// <summary>Publishing the demo notebooks, against the same engine running as many empty cells.</summary>
internal sealed class PublishBenchmark : Benchmark
{
    private const int Rounds = 5;

    private static readonly TimeSpan CellLimit = TimeSpan.FromMinutes(2);
    private static readonly long MemoryLimit = 4_000_000_000;

    public override string Name => "publish";

    public override string Title => "Publishing the demo notebooks";

    public override Findings Run()
    {
        var notebooks = NotebookSet.Find([], Repository.Root);
        var empty = EmptyCells.Like(notebooks);
        var options = new SessionOptions(Repository.Root, notebooks.BuildFolder, CellLimit, MemoryLimit);
        var folder = Directory.CreateTempSubdirectory("waywright-");
        try
        {
            var target = Path.Combine(folder.FullName, "page");
            Contender[] contenders =
            [
                Here("publish", "reading the notebooks, a session for each in a child process, every cell, copies of the inputs, executed notebooks, record, page with its script, and the swap of folders; in the process that measures, which has published once before.", () => PublishAsync(notebooks, target)),
                Here("empty cells", $"{string.Join(" + ", empty.Sessions)} cells without any text in as many sessions one after the other, one for each notebook: child process, engine, cells, end of the child.", () => empty.RunAsync(options)),
                Here("empty cells, started ahead", "the same, but each session is started while the one before it runs, as publishing does it.", () => empty.RunAheadAsync(options)),
                Here("empty cells, one session", $"the same {empty.Count} cells in a single session.", () => empty.InOneSession.RunAsync(options)),
                Here("waywright publish", "the command as a person runs it, a new process, from its start to its exit.", () => CommandAsync(Path.Combine(folder.FullName, "command"))),
            ];
            return new Findings(About(empty), Interleaved.Measure(contenders, Rounds), Ratios(), [.. Software.List.Select(s => $"{s.Name} {s.Version.Split('+')[0]}")]);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static Contender Here(string name, string timed, Func<Task> run)
        => Contender.Here(name, timed, count =>
        {
            for (var i = 0; i < count; i++)
                run().GetAwaiter().GetResult();
        });

    private static async Task PublishAsync(NotebookSet notebooks, string target)
    {
        var request = new PublishRequest { Notebooks = notebooks, OutFolder = target, CellLimit = CellLimit, MemoryLimitBytes = MemoryLimit };
        var result = await new Publisher(ChildSession.StartAsync, TimeProvider.System).PublishAsync(request, progress: null, CancellationToken.None).ConfigureAwait(false);
        if (result.Status != PublishStatus.Published)
            throw new InvalidOperationException($"The demo was not published, so its time means nothing: {result.Failure}");
    }

    private static async Task CommandAsync(string target)
    {
        var command = ChildCommand.Default();
        var start = new ProcessStartInfo(command.File, [.. command.Arguments, "publish", "--out", target])
        {
            WorkingDirectory = Repository.Root,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        using var process = Process.Start(start)!;
        var said = process.StandardOutput.ReadToEndAsync();
        var error = await process.StandardError.ReadToEndAsync().ConfigureAwait(false);
        await said.ConfigureAwait(false);
        await process.WaitForExitAsync().ConfigureAwait(false);
        if (process.ExitCode != 0)
            throw new InvalidOperationException($"The command failed, so its time means nothing: {error}");
    }

    private static string[] About(EmptyCells empty) =>
    [
        $"`publish` runs the {empty.Sessions.Count} demo notebooks ({empty.Count} code cells) and writes the page. It is compared with what the engine alone needs for as many empty cells, through the same child processes and the same pipes: the difference is what the cells do and what is written, the rest is the engine's own start.",
        $"{Rounds} rounds in one run; in each, every contender runs once, one after the other. A ratio is the median of the ratios within rounds.",
    ];

    private static Ratio[] Ratios() =>
    [
        new("publish", "empty cells", "at most 2, aim 1.5"),
        new("publish", "empty cells, started ahead", "no target"),
        new("publish", "empty cells, one session", "no target"),
        new("waywright publish", "publish", "no target"),
    ];
}
