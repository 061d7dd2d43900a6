using System.Text.Json.Nodes;
using Waywright.Kernel;
using Waywright.Publishing;

namespace Waywright.Tests.Publishing;

public sealed class PublisherTests : IDisposable
{
    private readonly BuildFolder _build = new();

    public void Dispose() => _build.Dispose();

    [Fact]
    public async Task A_build_whose_cells_all_run_is_published_whole()
    {
        TwoNotebooks();
        var sessions = new ScriptedSessions(Good);
        var result = await Publish(sessions);

        Assert.Equal(PublishStatus.Published, result.Status);
        Assert.Equal(
            ["index.html", "inputs/rails/sweeps.csv", "notebooks/1-rails.ipynb", "notebooks/2-belts.ipynb", "record.json", "ro-crate-metadata.json", "run.json"],
            _build.Files(_build.Out).Keys.Order(StringComparer.Ordinal));
        Assert.Equal("abc", _build.Published("inputs/rails/sweeps.csv"));
        Assert.Equal(["rails/grades"], result.Kept.Select(kept => kept.Id));
        Assert.Equal(Path.Combine(_build.Out, "index.html"), result.Page);
        Assert.Equal(result.Record, BuildRecord.Parse(_build.Published("record.json"), "record.json"));
        Assert.Equal(["gantry", "published"], Neighbours());
    }

    [Fact]
    public async Task Each_notebook_has_a_session_of_its_own_that_ends_with_it()
    {
        TwoNotebooks();
        var sessions = new ScriptedSessions(Good);
        await Publish(sessions);
        Assert.Equal(2, sessions.Started.Count);
        Assert.Equal(2, sessions.Ended);
        Assert.All(sessions.Started, options => Assert.Equal(_build.Root, options.BuildFolder));
        Assert.All(sessions.Started, options => Assert.Equal(Path.Combine(_build.Root, "notebooks"), options.WorkingFolder));
    }

    [Fact]
    public async Task Two_runs_give_the_same_bytes_but_for_the_run_log()
    {
        TwoNotebooks();
        await Publish(new ScriptedSessions(Good));
        var first = _build.Files(_build.Out);
        await Publish(new ScriptedSessions(Good));
        var second = _build.Files(_build.Out);
        Assert.Equal(first.Keys.Order(StringComparer.Ordinal), second.Keys.Order(StringComparer.Ordinal));
        foreach (var path in first.Keys.Where(path => path != "run.json"))
            Assert.True(first[path] == second[path], path);
    }

    [Fact]
    public async Task No_published_file_names_a_folder_of_this_machine()
    {
        TwoNotebooks();
        await Publish(new ScriptedSessions(Good));
        foreach (var (path, text) in _build.Files(_build.Out))
            Assert.False(text.Contains(_build.Parent, StringComparison.Ordinal), path);
    }

    [Fact]
    public async Task A_result_that_names_a_folder_of_this_machine_is_a_failure()
    {
        TwoNotebooks();
        var figure = new Figure("rails/source", "source", null, Path.Combine(_build.Root, "rails"), "1");
        var result = await Publish(new ScriptedSessions((id, code, token) => code == "keep" ? Output.Done(Output.Kept(new KeptResult("rails/grades", "Use R03.", "", [figure]), "")) : Good(id, code, token)));
        Assert.Equal(PublishStatus.Failed, result.Status);
        Assert.Contains("names a folder of this machine", result.Failure!.Why, StringComparison.Ordinal);
        Assert.False(Directory.Exists(_build.Out));
    }

    [Fact]
    public async Task A_failed_cell_stops_the_run_keeps_what_there_is_and_leaves_the_earlier_build()
    {
        TwoNotebooks();
        await Publish(new ScriptedSessions(Good));
        var before = _build.Files(_build.Out);
        var sessions = new ScriptedSessions((id, code, token) => code == "keep" ? Output.Raised("Waywright.InputException", "sweeps.csv:4:17: found 'abc', expected a number") : Good(id, code, token));
        var result = await Publish(sessions);

        Assert.Equal(PublishStatus.Failed, result.Status);
        Assert.Null(result.Record);
        Assert.Equal("notebooks/1-rails.ipynb, code cell 2 ('c3'): the cell threw Waywright.InputException: sweeps.csv:4:17: found 'abc', expected a number", result.Failure!.ToString());
        Assert.Equal(["c2", "c3"], sessions.Ran);
        Assert.Equal(sessions.Started.Count, sessions.Ended);
        Assert.Equal(before, _build.Files(_build.Out));

        Assert.Equal(_build.Failed, result.Folder);
        var kept = _build.Files(_build.Failed);
        Assert.DoesNotContain("record.json", kept.Keys);
        Assert.Contains("\"status\": \"failed\"", kept["run.json"], StringComparison.Ordinal);
        var cell = JsonNode.Parse(kept["notebooks/1-rails.ipynb"])!["cells"]![2]!;
        Assert.Equal("Raised", (string?)cell["metadata"]!["waywright"]!["outcome"]);
        Assert.Equal("error", (string?)cell["outputs"]![0]!["output_type"]);
        Assert.Empty((JsonArray)JsonNode.Parse(kept["notebooks/1-rails.ipynb"])!["cells"]![3]!["outputs"]!);
    }

    [Fact]
    public async Task A_later_success_takes_the_failed_remains_away()
    {
        TwoNotebooks();
        await Publish(new ScriptedSessions((_, _, _) => Output.Raised("E", "no")));
        Assert.True(Directory.Exists(_build.Failed));
        await Publish(new ScriptedSessions(Good));
        Assert.Equal(["gantry", "published"], Neighbours());
    }

    [Theory]
    [InlineData(CellOutcome.OutOfTime, "time limit")]
    [InlineData(CellOutcome.Ended, "process")]
    [InlineData(CellOutcome.OutOfMemory, "memory")]
    public async Task A_session_that_is_over_is_a_failure_with_a_sentence_and_an_error_in_the_notebook(CellOutcome outcome, string word)
    {
        TwoNotebooks();
        var result = await Publish(new ScriptedSessions((_, code, _) => code == "keep" ? new CellRun(outcome, [Output.Text("so far")], null) : Output.Done()));
        Assert.Equal(PublishStatus.Failed, result.Status);
        Assert.Contains(word, result.Failure!.Why, StringComparison.Ordinal);
        var outputs = (JsonArray)JsonNode.Parse(_build.Files(_build.Failed)["notebooks/1-rails.ipynb"])!["cells"]![2]!["outputs"]!;
        Assert.Equal(["stream", "error"], outputs.Select(output => (string?)output!["output_type"]));
    }

    [Fact]
    public async Task A_session_that_does_not_start_is_a_failure_and_not_a_crash()
    {
        TwoNotebooks();
        var publisher = new Publisher((_, _) => Task.FromException<ICellSession>(new InvalidOperationException("the executable is gone")), TimeProvider.System);
        var result = await publisher.PublishAsync(_build.Request(), null, TestContext.Current.CancellationToken);
        Assert.Equal("notebooks/1-rails.ipynb: its session did not start: the executable is gone", result.Failure!.ToString());
    }

    [Fact]
    public async Task A_cancelled_run_is_marked_stopped_and_leaves_the_earlier_build()
    {
        TwoNotebooks();
        await Publish(new ScriptedSessions(Good));
        var before = _build.Files(_build.Out);
        using var cancel = new CancellationTokenSource();
        var sessions = new ScriptedSessions((id, code, token) =>
        {
            if (code == "keep")
                cancel.Cancel();
            return token.IsCancellationRequested ? new CellRun(CellOutcome.Stopped, [Output.Text("half")], null) : Good(id, code, token);
        });
        var result = await new Publisher(sessions.StartAsync, TimeProvider.System).PublishAsync(_build.Request(), null, cancel.Token);

        Assert.Equal(PublishStatus.Stopped, result.Status);
        Assert.Equal(before, _build.Files(_build.Out));
        Assert.Contains("\"status\": \"stopped\"", _build.Files(_build.Failed)["run.json"], StringComparison.Ordinal);
        Assert.Equal("Stopped", (string?)JsonNode.Parse(_build.Files(_build.Failed)["notebooks/1-rails.ipynb"])!["cells"]![2]!["metadata"]!["waywright"]!["outcome"]);
        Assert.Equal(sessions.Started.Count, sessions.Ended);
    }

    [Fact]
    public async Task A_cell_that_is_meant_to_fail_may_fail()
    {
        var notebook = BuildFolder.Notebook("# Failing", "throw", "after");
        notebook["cells"]![1]!["metadata"]!["tags"] = new JsonArray("raises-exception");
        _build.Write("notebooks/1.ipynb", notebook.ToJsonString());
        var sessions = new ScriptedSessions((_, code, _) => code == "throw" ? Output.Raised("E", "as meant") : Output.Done());
        Assert.Equal(PublishStatus.Published, (await Publish(sessions)).Status);
        Assert.Equal(["c2", "c3"], sessions.Ran);
    }

    [Fact]
    public async Task Progress_is_told_before_each_cell()
    {
        TwoNotebooks();
        var told = new Told();
        await new Publisher(new ScriptedSessions(Good).StartAsync, TimeProvider.System).PublishAsync(_build.Request(), told, TestContext.Current.CancellationToken);
        Assert.Equal(
            [new("notebooks/1-rails.ipynb", 1, 2, 1, 3, 0, 4), new("notebooks/1-rails.ipynb", 1, 2, 2, 3, 1, 4), new("notebooks/1-rails.ipynb", 1, 2, 3, 3, 2, 4), new("notebooks/2-belts.ipynb", 2, 2, 1, 1, 3, 4)],
            told.Said);
    }

    [Fact]
    public async Task A_result_id_kept_twice_is_a_failure_that_names_both_places()
    {
        _build.Notebook("1", "# One", "keep");
        _build.Notebook("2", "# Two", "keep");
        var result = await Publish(new ScriptedSessions((_, _, _) => Output.Done(Output.Kept(Kept(), "<p>x</p>"))));
        Assert.Equal("notebooks/2.ipynb, code cell 1 ('c2'): 'rails/grades' is kept twice: notebooks/1.ipynb kept a result under that id before", result.Failure!.ToString());
    }

    [Fact]
    public async Task Without_a_date_the_clock_gives_it_in_UTC()
    {
        TwoNotebooks();
        var request = _build.Request() with { Date = null };
        var result = await new Publisher(new ScriptedSessions(Good).StartAsync, new LateClock()).PublishAsync(request, null, TestContext.Current.CancellationToken);
        Assert.Equal(new DateOnly(2028, 2, 29), result.Record!.Date);
    }

    private Task<PublishResult> Publish(ScriptedSessions sessions)
        => new Publisher(sessions.StartAsync, TimeProvider.System).PublishAsync(_build.Request(), null, TestContext.Current.CancellationToken);

    private string[] Neighbours() => [.. Directory.EnumerateFileSystemEntries(_build.Parent).Select(path => Path.GetFileName(path)!).Order(StringComparer.Ordinal)];

    private void TwoNotebooks()
    {
        _build.Write("rails/sweeps.csv", "abc");
        _build.Notebook("1-rails", "# Rails\n\nEight of them.", "read", "keep", "after");
        _build.Notebook("2-belts", "# Belts", "nothing");
    }

    private CellRun Good(string id, string code, CancellationToken cancel) => code switch
    {
        "read" => Output.Done(Output.Input(_build.Input("rails/sweeps.csv"))),
        "keep" => Output.Done(Output.Kept(Kept(), "<p class=\"ww-verdict\">Use R03.</p>")),
        _ => Output.Done(),
    };

    private static KeptResult Kept() => new("rails/grades", "Use R03.", "Use R03.\n14 um", [new Figure("rails/R03/side-strt", "R03 side STRt", 14.2, null, "um", 2.6)]);

    private sealed class Told : IProgress<PublishProgress>
    {
        public List<PublishProgress> Said { get; } = [];

        public void Report(PublishProgress value) => Said.Add(value);
    }

    // Already the next day in the east, not yet in UTC.
    private sealed class LateClock : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => new(2028, 2, 29, 23, 30, 0, TimeSpan.Zero);

        public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.CreateCustomTimeZone("east", TimeSpan.FromHours(9), "east", "east");
    }
}
