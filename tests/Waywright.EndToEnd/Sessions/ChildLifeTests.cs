using System.Diagnostics;
using System.Globalization;
using Waywright.Kernel;

namespace Waywright.EndToEnd.Sessions;

public sealed class ChildLifeTests
{
    [Fact]
    public async Task The_child_knows_its_folders()
    {
        var build = Directory.CreateTempSubdirectory();
        try
        {
            var work = build.CreateSubdirectory("notebooks");
            await using var session = await ChildSession.StartAsync(new SessionOptions(work.FullName, build.FullName, TimeSpan.FromSeconds(30), 1_000_000_000), TestContext.Current.CancellationToken);
            var run = await session.RunAsync("""Console.Write(Environment.GetEnvironmentVariable("WAYWRIGHT_BUILD_FOLDER") + "|" + Environment.CurrentDirectory);""");
            Assert.Equal($"{build.FullName}|{work.FullName}", run.Stdout());
        }
        finally
        {
            build.Delete(recursive: true);
        }
    }

    [Fact]
    public async Task Disposing_ends_the_child_and_what_its_cells_started()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "starts a program that Windows does not have");
        var session = await Cells.StartAsync();
        var started = (await session.RunAsync("""Console.Write(System.Diagnostics.Process.Start("sleep", "1000").Id);""")).Number();
        Assert.True(Cells.Runs(started));
        await session.DisposeAsync();
        Assert.True(Cells.Ends(started));
        Assert.True(Cells.Ends(session.ProcessId()));
        await session.DisposeAsync();
    }

    [Fact]
    public async Task A_child_whose_parent_is_killed_ends_even_in_a_loop()
    {
        await using var session = await Cells.StartAsync();
        // The session's process becomes the parent of another session.
        var inner = (await session.RunAsync($"""
            #r "{Path.Combine(AppContext.BaseDirectory, "Waywright.Kernel.dll")}"
            using Waywright.Kernel;
            var inner = await ChildSession.StartAsync(new SessionOptions(".", ".", TimeSpan.FromMinutes(10), 1_000_000_000), default);
            var started = new TaskCompletionSource();
            var running = inner.RunAsync("loop", "Console.WriteLine(1); while (true) ;", _ => started.TrySetResult(), default);
            await started.Task;
            Console.Write(inner.GetType().GetProperty("ProcessId").GetValue(inner));
            """)).Number();
        Assert.True(Cells.Runs(inner));
        using (var parent = Process.GetProcessById(session.ProcessId())) parent.Kill();
        Assert.True(Cells.Ends(inner));
    }

    [Fact]
    public async Task The_child_leaves_an_interrupt_to_its_parent()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "sends a signal");
        await using var session = await Cells.StartAsync();
        using (var kill = Process.Start("kill", ["-INT", session.ProcessId().ToString(CultureInfo.InvariantCulture)]))
            await kill.WaitForExitAsync(TestContext.Current.CancellationToken);
        var run = await session.RunAsync("Console.Write(1);");
        Assert.Equal("1", run.Stdout());
    }

    [Fact]
    public async Task Numbers_and_messages_do_not_follow_the_machines_language()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "sets the language by variables that Windows does not read");
        var usual = ChildCommand.Default();
        var german = new ChildCommand("/usr/bin/env", ["LANG=de_DE.UTF-8", "LC_ALL=de_DE.UTF-8", "LANGUAGE=de", usual.File, .. usual.Arguments]);
        await using var session = await Cells.StartAsync(command: german);
        var run = await session.RunAsync("""Console.Write($"{1234.5:n1} {1.5} {new DateTime(2026, 3, 4):d}"); new System.Threading.Thread(() => Console.Write($" {2.5}")).Start(); 1.5 """);
        Assert.StartsWith("1,234.5 1.5 03/04/2026", run.Stdout(), StringComparison.Ordinal);
        Assert.Contains("<pre>1.5</pre>", (string?)run.Outputs[^1]["data"]!["text/html"], StringComparison.Ordinal);
        Assert.Contains("Cannot implicitly convert", (string?)(await session.RunAsync("int x = \"\";")).Error()["evalue"], StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_program_that_is_no_cell_host_is_an_error_that_quotes_it()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "starts a program that Windows does not have");
        var wrong = await Assert.ThrowsAsync<InvalidOperationException>(() => Cells.StartAsync(command: new ChildCommand("/bin/sh", ["-c", "echo not me >&2; exit 7", "sh"])));
        Assert.Equal("the process for the cells ended before it was ready: not me", wrong.Message);
    }

    [Fact]
    public async Task A_program_that_does_not_exist_is_an_error_that_names_it()
    {
        var wrong = await Assert.ThrowsAsync<InvalidOperationException>(() => Cells.StartAsync(command: new ChildCommand("/no/such/program", [])));
        Assert.StartsWith("the process for the cells did not start: ", wrong.Message, StringComparison.Ordinal);
        Assert.Contains("/no/such/program", wrong.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Starting_can_be_cancelled()
    {
        using var cancel = new CancellationTokenSource();
        var starting = ChildSession.StartAsync(new SessionOptions(".", ".", TimeSpan.FromSeconds(30), 1_000_000_000), cancel.Token);
        await cancel.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => starting);
    }

    [Theory]
    [InlineData("/no/such/folder", ".", 1, 1_000_000_000, "working folder")]
    [InlineData(".", "/no/such/folder", 1, 1_000_000_000, "build folder")]
    [InlineData(".", ".", 0, 1_000_000_000, "cell limit")]
    [InlineData(".", ".", 1, 599_999_999, "memory limit")]
    public async Task Options_that_cannot_work_are_refused(string work, string build, int seconds, long memory, string named)
    {
        var refused = await Assert.ThrowsAsync<ArgumentException>(() =>
            ChildSession.StartAsync(new SessionOptions(work, build, TimeSpan.FromSeconds(seconds), memory), TestContext.Current.CancellationToken));
        Assert.Contains(named, refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_hosts_verb_alone_is_bad_use()
    {
        var command = ChildCommand.Default();
        using var host = Process.Start(new ProcessStartInfo(command.File, [.. command.Arguments, "session"]) { RedirectStandardError = true })!;
        var said = await host.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        await host.WaitForExitAsync(TestContext.Current.CancellationToken);
        Assert.Equal(2, host.ExitCode);
        Assert.StartsWith("'waywright session' is started by waywright itself", said, StringComparison.Ordinal);
    }
}
