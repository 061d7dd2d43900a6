using Waywright.Kernel;

namespace Waywright.EndToEnd.Sessions;

public sealed class CellEndTests
{
    [Theory]
    [InlineData("while (true) { }")]
    [InlineData("System.Threading.Thread.Sleep(-1);")]
    [InlineData("await Task.Delay(-1);")]
    [InlineData("while (true) Console.Error.WriteLine(\"more\");")]
    public async Task A_cell_that_never_ends_is_ended_at_its_limit(string code)
    {
        await using var session = await Cells.StartAsync(limitSeconds: 2);
        var run = await session.RunAsync("Console.WriteLine(\"before\"); " + code);
        Assert.Equal(CellOutcome.OutOfTime, run.Outcome);
        Assert.Equal("Cell 'the-cell' was still running after 2 s and was ended.", run.Why);
        Assert.Equal("before\n", run.Stdout());
        Assert.Equal(run.Why, (string?)run.Error()["evalue"]);
        Assert.False(Cells.Runs(session.ProcessId()));
    }

    [Theory]
    [InlineData("Environment.Exit(0);", "ended its own process with exit code 0.")]
    [InlineData("Environment.Exit(3);", "ended its own process with exit code 3.")]
    [InlineData("System.Diagnostics.Process.GetCurrentProcess().Kill(); System.Threading.Thread.Sleep(-1);", "was killed from outside, perhaps because the machine ran out of memory.")]
    [InlineData("Environment.FailFast(\"no rail\");", "ended its own process: no rail")]
    [InlineData("int Deeper(int x) => Deeper(x + 1) + 1; Deeper(0);", "overflowed the stack: a method calls itself without end.")]
    [InlineData("new System.Threading.Thread(() => throw new FormatException(\"elsewhere\")).Start(); System.Threading.Thread.Sleep(-1);", "threw on another thread, which ends the process: System.FormatException: elsewhere")]
    public async Task A_cell_that_takes_its_process_down_says_how_and_keeps_what_came_before(string code, string why)
    {
        await using var session = await Cells.StartAsync();
        var run = await session.RunAsync("Console.WriteLine(\"before\"); " + code);
        Assert.Equal(CellOutcome.Ended, run.Outcome);
        Assert.EndsWith($"ell 'the-cell' {why}", run.Why, StringComparison.Ordinal);
        Assert.Equal("before\n", run.Stdout());
        Assert.Equal(run.Why, (string?)run.Error()["evalue"]);
    }

    [Theory]
    [InlineData("var all = new List<byte[]>(); while (true) { var some = new byte[1_000_000]; Array.Fill(some, (byte)1); all.Add(some); }")]
    [InlineData("unsafe { while (true) { new Span<byte>(System.Runtime.InteropServices.NativeMemory.Alloc(10_000_000), 10_000_000).Fill(1); } }")]
    public async Task A_cell_that_eats_memory_is_ended(string code)
    {
        await using var session = await Cells.StartAsync(memoryBytes: 700_000_000);
        var run = await session.RunAsync("Console.WriteLine(\"before\"); " + code);
        Assert.Equal(CellOutcome.OutOfMemory, run.Outcome);
        Assert.Equal("Cell 'the-cell' needed more memory than the 700 MB that a notebook may have.", run.Why);
        Assert.Equal("before\n", run.Stdout());
        Assert.NotNull(run.Error());
        Assert.True(Cells.Ends(session.ProcessId()));
    }

    [Fact]
    public async Task A_cancelled_cell_is_stopped_with_what_it_gave_so_far()
    {
        await using var session = await Cells.StartAsync();
        using var cancel = new CancellationTokenSource();
        var run = await session.RunAsync("the-cell", "Console.WriteLine(\"before\"); while (true) { }", _ => cancel.Cancel(), cancel.Token);
        Assert.Equal(CellOutcome.Stopped, run.Outcome);
        Assert.Equal("Cell 'the-cell' was stopped.", run.Why);
        Assert.Equal("before\n", run.Stdout());
        Assert.False(Cells.Runs(session.ProcessId()));
    }

    [Fact]
    public async Task A_session_disposed_under_a_cell_stops_it()
    {
        var session = await Cells.StartAsync();
        Task? disposing = null;
        var run = await session.RunAsync("the-cell", "Console.WriteLine(\"before\"); while (true) { }", _ => disposing = session.DisposeAsync().AsTask(), TestContext.Current.CancellationToken);
        await disposing!;
        Assert.Equal(CellOutcome.Stopped, run.Outcome);
        Assert.Equal("before\n", run.Stdout());
    }

    [Fact]
    public async Task A_cell_after_the_sessions_end_is_not_run_and_says_why()
    {
        await using var session = await Cells.StartAsync();
        await session.RunAsync("Environment.Exit(3);");
        var run = await session.RunAsync("next", "1", null, TestContext.Current.CancellationToken);
        Assert.Equal(CellOutcome.Ended, run.Outcome);
        Assert.Equal("Cell 'next' was not run: Cell 'the-cell' ended its own process with exit code 3.", run.Why);
        Assert.Equal(run.Why, (string?)run.Error()["evalue"]);
    }

    [Fact]
    public async Task A_second_cell_at_the_same_time_is_refused()
    {
        await using var session = await Cells.StartAsync();
        Task<CellRun>? second = null;
        var first = await session.RunAsync("first", "Console.Write(1);", _ => second = session.RunAsync("2"), TestContext.Current.CancellationToken);
        Assert.Equal(CellOutcome.Done, first.Outcome);
        await Assert.ThrowsAsync<InvalidOperationException>(() => second!);
    }
}
