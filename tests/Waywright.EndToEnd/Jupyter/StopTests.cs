using Waywright.EndToEnd.Sessions;

namespace Waywright.EndToEnd.Jupyter;

public sealed class StopTests(InstalledKernel kernel)
{
    [Fact]
    public async Task An_interrupt_stops_a_Monte_Carlo_and_variables_stay()
    {
        await using var client = await StartAsync();
        await client.RunAsync("using Waywright; using Waywright.Notebooks; var mine = 5;");
        var cell = await client.SendCellAsync("""
            Console.WriteLine("begun");
            for (var seed = 1ul; ; seed++)
                MonteCarlo.Run(x => Math.Sin(x[0]), [("angle", Distribution.Gaussian(0, 1))], trials: 10_000_000, seed, cancel: Notebook.Stop);
            """);
        await client.HearAsync(one => one.Parent == cell && one.Type == "stream");
        var waiting = await client.SendCellAsync("Console.Write(\"must not run\");");
        await client.OrderAsync("interrupt");
        var run = await client.EndAsync(cell);
        Assert.Equal(("error", "Stopped"), (run.Status, (string?)run.Reply["ename"]));
        Assert.Equal("The cell was stopped; variables keep what they held when it stopped.", (string?)run.Reply["evalue"]);
        Assert.Equal("", run.Text("stderr"));
        Assert.Equal("aborted", (await client.EndAsync(waiting)).Status);
        Assert.Equal("5", (await client.RunAsync("Console.Write(mine);")).Text("stdout"));
    }

    [Fact]
    public async Task A_cell_that_does_not_look_says_so_and_a_second_interrupt_ends_its_process()
    {
        await using var client = await StartAsync();
        await client.RunAsync("var mine = 5;");
        var cell = await client.SendCellAsync("Console.WriteLine(Environment.ProcessId); while (true) { }");
        var said = await client.HearAsync(one => one.Parent == cell && one.Type == "stream");
        await client.OrderAsync("interrupt");
        var told = await client.HearAsync(one => one.Parent == cell && one.Type == "stream" && (string?)one.Content["name"] == "stderr");
        Assert.Contains("still running after 3 s", (string)told.Content["text"]!);
        Assert.Contains("Interrupt again to end its process; all variables will be lost.", (string)told.Content["text"]!);
        await client.OrderAsync("interrupt");
        var run = await client.EndAsync(cell);
        Assert.Equal(("error", "Stopped"), (run.Status, (string?)run.Reply["ename"]));
        Assert.StartsWith("The cell did not stop when asked, so its process was ended. All variables are gone", (string)run.Reply["evalue"]!, StringComparison.Ordinal);
        Assert.True(Cells.Ends(int.Parse((string)said.Content["text"]!, System.Globalization.CultureInfo.InvariantCulture)));
        Assert.Equal("CompilationError", (string?)(await client.RunAsync("mine")).Reply["ename"]);
    }

    [Fact]
    public async Task An_interrupt_between_cells_stops_nothing()
    {
        await using var client = await StartAsync();
        await client.OrderAsync("interrupt");
        await client.AskAsync("control", "interrupt_request", []);
        Assert.Equal("False", (await client.RunAsync("using Waywright.Notebooks; Console.Write(Notebook.Stop.IsCancellationRequested);")).Text("stdout"));
    }

    [Fact]
    public async Task A_restart_on_the_same_ports_forgets_every_variable()
    {
        await using var client = await StartAsync();
        await client.RunAsync("var mine = 5;");
        var before = client.KernelId;
        await client.RestartAsync();
        Assert.NotEqual(before, client.KernelId);
        Assert.False(Cells.Runs(before));
        var run = await client.RunAsync("mine");
        Assert.Equal(("CompilationError", 1), ((string?)run.Reply["ename"], (int)run.Reply["execution_count"]!));
    }

    [Fact]
    public async Task A_shutdown_is_answered_and_ends_kernel_and_cells_even_under_a_running_cell()
    {
        await using var client = await StartAsync();
        var child = await ChildOfAsync(client);
        await client.SendCellAsync("while (true) { }");
        var reply = await client.AskAsync("control", "shutdown_request", new System.Text.Json.Nodes.JsonObject { ["restart"] = false });
        Assert.Equal(("ok", false), ((string?)reply["status"], (bool)reply["restart"]!));
        Assert.True(Cells.Ends(client.KernelId));
        Assert.True(Cells.Ends(child));
    }

    [Fact]
    public async Task A_kernel_whose_front_end_is_killed_ends_with_its_cells()
    {
        await using var client = await StartAsync();
        var child = await ChildOfAsync(client);
        using (var bridge = System.Diagnostics.Process.GetProcessById(client.BridgeId)) bridge.Kill();
        Assert.True(Cells.Ends(client.KernelId));
        Assert.True(Cells.Ends(child));
    }

    private static async Task<int> ChildOfAsync(JupyterClient client) =>
        int.Parse((await client.RunAsync("Console.Write(Environment.ProcessId);")).Text("stdout"), System.Globalization.CultureInfo.InvariantCulture);

    private async Task<JupyterClient> StartAsync()
    {
        Needed.OfClient();
        return await JupyterClient.StartAsync(kernel, Path.GetTempPath());
    }
}
