using System.Text.Json.Nodes;

namespace Waywright.EndToEnd.Jupyter;

/// <summary>What a front end hears of its cells, by Jupyter's messaging specification 5.3.</summary>
public sealed class ExecuteTests(RunningKernel running) : IClassFixture<RunningKernel>
{
    private JupyterClient Client => running.Client;

    [Fact]
    public async Task A_cell_is_busy_echoed_shown_and_idle_in_this_order()
    {
        var run = await Client.RunAsync("""Console.Write("a"); Console.Error.Write("b"); display("c"); "d" """);
        Assert.Equal("ok", run.Status);
        Assert.Equal(["status", "execute_input", "stream", "stream", "display_data", "execute_result", "status"], run.Types);
        Assert.Equal(("a", "b"), (run.Text("stdout"), run.Text("stderr")));
        var result = run.Published[^2].Content;
        Assert.Equal("d", (string?)result["data"]!["text/plain"]);
        Assert.Equal((int)run.Reply["execution_count"]!, (int)result["execution_count"]!);
        Assert.Equal((int)run.Reply["execution_count"]!, (int)run.Published[1].Content["execution_count"]!);
    }

    [Fact]
    public async Task Cells_are_counted_but_silent_unstored_and_empty_ones_are_not()
    {
        var count = (int)(await Client.RunAsync("1")).Reply["execution_count"]!;
        Assert.Equal(count + 1, (int)(await Client.RunAsync("2")).Reply["execution_count"]!);
        var silent = await Client.RunAsync("Console.Write(3); 3", with => with["silent"] = true);
        Assert.Equal(["status", "status"], silent.Types);
        Assert.Equal(count + 1, (int)silent.Reply["execution_count"]!);
        Assert.Equal(count + 1, (int)(await Client.RunAsync("4", with => with["store_history"] = false)).Reply["execution_count"]!);
        Assert.Equal(count + 1, (int)(await Client.RunAsync(" \n")).Reply["execution_count"]!);
        Assert.Equal(count + 2, (int)(await Client.RunAsync("5")).Reply["execution_count"]!);
    }

    [Fact]
    public async Task A_display_is_updated_by_its_id_from_a_later_cell_too()
    {
        var first = await Client.RunAsync("""var shown = display("one"); shown.Update("two");""");
        var id = (string?)first.Published.Single(one => one.Type == "display_data").Content["transient"]!["display_id"];
        Assert.NotNull(id);
        Assert.Equal(("two", id), Update(first));
        Assert.Equal(("three", id), Update(await Client.RunAsync("""shown.Update("three");""")));

        static (string?, string?) Update(Executed run)
        {
            var update = run.Published.Single(one => one.Type == "update_display_data").Content;
            return ((string?)update["data"]!["text/plain"], (string?)update["transient"]!["display_id"]);
        }
    }

    [Fact]
    public async Task Expressions_are_answered_beside_the_cell_each_for_itself()
    {
        var run = await Client.RunAsync("var rails = 12;", with => with["user_expressions"] = new JsonObject { ["good"] = "$\"{rails + 1}\"", ["bad"] = "nothing" });
        Assert.Equal("ok", run.Status);
        var (good, bad) = (run.Reply["user_expressions"]!["good"]!, run.Reply["user_expressions"]!["bad"]!);
        Assert.Equal(("ok", "13"), ((string?)good["status"], (string?)good["data"]!["text/plain"]));
        Assert.Equal(("error", "CompilationError"), ((string?)bad["status"], (string?)bad["ename"]));
        Assert.DoesNotContain("execute_result", run.Types);
    }

    [Fact]
    public async Task Cells_behind_one_that_failed_are_aborted_unless_it_says_otherwise()
    {
        var slow = await Client.SendCellAsync("await Task.Delay(500); throw new InvalidOperationException(\"no rail\");");
        var waiting = await Client.SendCellAsync("Console.Write(\"must not run\");");
        var question = await Client.SendAsync("shell", "is_complete_request", new JsonObject { ["code"] = "1" });
        var failed = await Client.EndAsync(slow);
        Assert.Equal(("error", "System.InvalidOperationException", "no rail"), (failed.Status, (string)failed.Reply["ename"]!, (string)failed.Reply["evalue"]!));
        Assert.Equal("no rail", (string?)failed.Published.Single(one => one.Type == "error").Content["evalue"]);
        var aborted = await Client.EndAsync(waiting);
        Assert.Equal("aborted", aborted.Status);
        Assert.Equal(["status", "status"], aborted.Types);
        await Client.HearAsync(one => one.Channel == "shell" && one.Parent == question && (string?)one.Content["status"] == "complete");

        slow = await Client.SendCellAsync("await Task.Delay(500); throw new InvalidOperationException(\"no rail\");", with => with["stop_on_error"] = false);
        waiting = await Client.SendCellAsync("Console.Write(\"runs\");");
        Assert.Equal("error", (await Client.EndAsync(slow)).Status);
        Assert.Equal("runs", (await Client.EndAsync(waiting)).Text("stdout"));
    }

    [Fact]
    public async Task Bad_input_is_shown_as_its_list_of_problems()
    {
        var run = await Client.RunAsync("""
            using Waywright;
            System.IO.File.WriteAllText("bad-sweeps.csv", "position_mm,reading_um\n0,one\n25,two\n");
            SweepBatch.Read("bad-sweeps.csv")
            """);
        Assert.Equal("Waywright.InputException", (string?)run.Reply["ename"]);
        var lines = run.Reply["traceback"]!.AsArray().Select(line => (string)line!).ToList();
        Assert.Equal(2, lines.Count);
        Assert.StartsWith("bad-sweeps.csv:2:3: found 'one', expected", lines[0], StringComparison.Ordinal);
        Assert.StartsWith("bad-sweeps.csv:3:4: found 'two', expected", lines[1], StringComparison.Ordinal);
    }

    [Fact]
    public async Task Input_is_refused_in_one_sentence_and_never_asked_for()
    {
        var run = await Client.RunAsync("Console.ReadLine()");
        Assert.Equal(("error", "InputRefused"), (run.Status, (string)run.Reply["ename"]!));
        Assert.Contains("parameters cell", (string)run.Reply["evalue"]!);
        Assert.False(await Client.HasHeardAsync(one => one.Type == "input_request"));
    }

    [Fact]
    public async Task Ten_thousand_lines_come_whole_and_in_few_messages()
    {
        var run = await Client.RunAsync("for (var i = 0; i < 10_000; i++) Console.WriteLine(i);");
        Assert.Equal(string.Concat(Enumerable.Range(0, 10_000).Select(i => $"{i}\n")), run.Text("stdout"));
        // Jupyter Notebook stops listening to a kernel that sends a thousand messages a second.
        Assert.InRange(run.Published.Count, 4, 500);
    }

    [Fact]
    public async Task A_kept_result_brings_its_figures_beside_its_picture()
    {
        var run = await Client.RunAsync("""
            using Waywright;
            using Waywright.Notebooks;
            Notebook.Start();
            Notebook.Keep("belt", new BeltSpan(Quantity.Read<UnitsNet.Length>("180 mm", "span"), Quantity.Read<UnitsNet.LinearDensity>("8.4 g/m", "density")).Tension(96.Hz))
            """);
        Assert.True(run.Status == "ok", run.Reply.ToJsonString());
        var figures = run.Published.Single(one => one.Type == "display_data").Content["data"]!;
        Assert.Equal("belt", (string?)figures["application/vnd.waywright.figures+json"]!["id"]);
        Assert.Contains("<svg", (string)run.Published.Single(one => one.Type == "execute_result").Content["data"]!["text/html"]!);
    }

    [Fact]
    public async Task A_cell_that_takes_its_process_down_loses_its_variables_and_the_next_cell_runs()
    {
        await Client.RunAsync("var mine = 5;");
        var ended = await Client.RunAsync("Environment.Exit(3);");
        Assert.Equal("error", ended.Status);
        Assert.EndsWith("ended its own process with exit code 3. All variables are gone; a new process is ready: run the notebook again from its first cell.", (string)ended.Reply["evalue"]!, StringComparison.Ordinal);
        Assert.Equal("CompilationError", (string?)(await Client.RunAsync("mine")).Reply["ename"]);
        Assert.Equal("7", (await Client.RunAsync("Console.Write(7);")).Text("stdout"));
    }
}
