using System.Text.Json.Nodes;

namespace Waywright.EndToEnd.Commands;

public sealed class PublishTests
{
    private const string Start = "using Waywright;\nusing Waywright.Notebooks;\nNotebook.Start();";

    private static string NotebookOf(params string[] cells)
        => new JsonObject
        {
            ["cells"] = new JsonArray(cells.Select((code, i) => (JsonNode)new JsonObject
            {
                ["cell_type"] = "code",
                ["execution_count"] = null,
                ["id"] = $"cell-{i + 1}",
                ["metadata"] = new JsonObject(),
                ["outputs"] = new JsonArray(),
                ["source"] = code,
            }).ToArray()),
            ["metadata"] = new JsonObject { ["kernelspec"] = new JsonObject { ["name"] = "waywright", ["language"] = "C#", ["display_name"] = "C#" } },
            ["nbformat"] = 4,
            ["nbformat_minor"] = 5,
        }.ToJsonString();

    [Fact]
    public async Task The_demo_is_published_with_its_grades_belts_and_the_pages_path_last()
    {
        using var folder = new TemporaryFolder();
        var target = Path.Combine(folder.Path, "page");
        var run = await Command.RunAsync("publish", "--out", target, "--date", "2026-03-01");
        Assert.Equal(0, run.ExitCode);
        var lines = run.Out.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(Path.Combine(target, "index.html"), lines[^1]);
        Assert.Contains(lines, l => l.StartsWith("R07", StringComparison.Ordinal) && l.Contains("return"));
        Assert.Contains("Tighten right", run.Out);
        Assert.All(["index.html", "record.json", "run.json", "notebooks/grade-rails.ipynb", "inputs/datasets/demo/rails/sweeps.csv"], file => Assert.True(File.Exists(Path.Combine(target, file)), file));
        Assert.Equal(await File.ReadAllBytesAsync(Path.Combine(Command.Repository, "datasets/demo/rails/sweeps.csv")), await File.ReadAllBytesAsync(Path.Combine(target, "inputs/datasets/demo/rails/sweeps.csv")));

        var first = Contents(target);
        Assert.Equal(0, (await Command.RunAsync("publish", "--out", target, "--date", "2026-03-01")).ExitCode);
        Assert.Equal(first, Contents(target));
    }

    [Fact]
    public async Task Committed_notebooks_have_no_outputs_and_ids_that_are_words()
    {
        foreach (var path in Directory.EnumerateFiles(Path.Combine(Command.Repository, "notebooks"), "*.ipynb"))
        {
            var cells = JsonNode.Parse(await File.ReadAllTextAsync(path))!["cells"]!.AsArray();
            Assert.All(cells, cell =>
            {
                Assert.Matches("^[a-z-]+$", (string)cell!["id"]!);
                Assert.Empty(cell["outputs"]?.AsArray() ?? []);
                Assert.Null(cell["execution_count"]);
            });
            Assert.Contains(cells, c => ((string)c!["cell_type"]!) == "markdown" && string.Concat(c["source"]!.AsArray().Select(l => (string)l!)).Contains("What to do next") || path.EndsWith("build-record.ipynb", StringComparison.Ordinal));
        }
    }

    [Fact]
    public async Task A_failing_notebook_exits_1_keeps_what_ran_and_leaves_the_old_page_alone()
    {
        using var folder = new TemporaryFolder();
        folder.Write("notebooks/a.ipynb", NotebookOf(Start, "1 + 1"));
        Assert.Equal(0, (await Command.RunInAsync(folder.Path, "publish")).ExitCode);
        var published = Path.Combine(folder.Path, "artifacts", "published");
        var before = Contents(published);

        folder.Write("notebooks/a.ipynb", NotebookOf(Start, "Console.WriteLine(\"reached\");", "throw new InvalidOperationException(\"the dial fell\");", "2"));
        var failed = await Command.RunInAsync(folder.Path, "publish");
        Assert.Equal(1, failed.ExitCode);
        Assert.Contains("notebooks/a.ipynb", failed.Error);
        Assert.Contains("the dial fell", failed.Error);
        Assert.Equal(before, Contents(published));
        var kept = await File.ReadAllTextAsync(Path.Combine(folder.Path, "artifacts", "published-failed", "notebooks", "a.ipynb"));
        Assert.Contains("reached", kept);
        Assert.Contains("the dial fell", kept);
    }

    [Theory]
    [InlineData("while (true) { }", "1 s")]
    [InlineData("System.Threading.Thread.Sleep(-1);", "1 s")]
    [InlineData("Environment.Exit(0);", "ended")]
    public async Task A_cell_that_loops_sleeps_or_exits_is_a_failed_cell_and_not_a_vanished_publish(string code, string said)
    {
        using var folder = new TemporaryFolder();
        folder.Write("notebooks/a.ipynb", NotebookOf(code));
        var run = await Command.RunInAsync(folder.Path, "publish", "--cell-limit", "1");
        Assert.Equal(1, run.ExitCode);
        Assert.Contains("cell-1", run.Error);
        Assert.Contains(said, run.Error);
    }

    [Fact]
    public async Task An_input_problem_in_a_cell_is_shown_as_its_list()
    {
        using var folder = new TemporaryFolder();
        folder.Write("data/sweeps.csv", "position_mm,reading_um\n0,1\n5,x\n");
        folder.Write("notebooks/a.ipynb", NotebookOf(Start, "SweepBatch.Read(Notebook.Data(\"../data/sweeps.csv\"))"));
        var run = await Command.RunInAsync(folder.Path, "publish");
        Assert.Equal(1, run.ExitCode);
        Assert.Contains("../data/sweeps.csv:3:3: found 'x', expected reading_um to be a number", run.Error);
        Assert.DoesNotContain("   at ", run.Error);
    }

    [Fact]
    public async Task Ctrl_C_stops_a_publish_keeps_what_ran_and_leaves_no_process_behind()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "sends a signal");
        using var folder = new TemporaryFolder();
        folder.Write("notebooks/a.ipynb", NotebookOf("System.IO.File.WriteAllText(\"../running\", \"\"); System.Threading.Thread.Sleep(-1);"));
        using var process = Command.Start(folder.Path, "publish");
        using var watcher = new FileSystemWatcher(folder.Path, "running") { EnableRaisingEvents = true };
        var running = new TaskCompletionSource();
        watcher.Created += (_, _) => running.TrySetResult();
        if (File.Exists(Path.Combine(folder.Path, "running")))
            running.TrySetResult();
        await running.Task.WaitAsync(TimeSpan.FromSeconds(60));
        using (var kill = System.Diagnostics.Process.Start("kill", ["-INT", $"{process.Id}"]))
            await kill.WaitForExitAsync();
        var error = await process.StandardError.ReadToEndAsync();
        await process.WaitForExitAsync();
        Assert.Equal(130, process.ExitCode);
        Assert.Contains("a.ipynb", error);
        Assert.True(File.Exists(Path.Combine(folder.Path, "artifacts", "published-failed", "notebooks", "a.ipynb")));
    }

    [Fact]
    public async Task Wrong_notebooks_and_parameters_are_refused_before_any_cell_runs()
    {
        using var folder = new TemporaryFolder();
        (await Command.RunInAsync(folder.Path, "publish", "nowhere.ipynb")).IsRefused("nowhere.ipynb");
        folder.Write("notebooks/a.ipynb", "{ not json");
        (await Command.RunInAsync(folder.Path, "publish")).IsRefused("notebooks/a.ipynb");
        folder.Write("notebooks/a.ipynb", NotebookOf("System.IO.File.WriteAllText(\"../ran\", \"\");"));
        (await Command.RunInAsync(folder.Path, "publish", "--set", "pitch=2")).IsRefused("pitch");
        (await Command.RunInAsync(folder.Path, "publish", "--set", "pitch")).IsRefused("NAME=VALUE");
        (await Command.RunInAsync(folder.Path, "publish", "--date", "tomorrow")).IsRefused("tomorrow");
        folder.Write("mine/photo.txt", "do not lose me");
        (await Command.RunInAsync(folder.Path, "publish", "--out", "mine")).IsRefused("mine");
        Assert.False(File.Exists(Path.Combine(folder.Path, "ran")));
        Assert.True(File.Exists(Path.Combine(folder.Path, "mine", "photo.txt")));
    }

    // Everything of a published folder but run.json, which may differ.
    private static SortedDictionary<string, string> Contents(string folder)
        => new(Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories)
            .Where(f => Path.GetFileName(f) != "run.json")
            .ToDictionary(f => Path.GetRelativePath(folder, f), f => Convert.ToHexString(System.Security.Cryptography.SHA256.HashData(File.ReadAllBytes(f)))), StringComparer.Ordinal);
}
