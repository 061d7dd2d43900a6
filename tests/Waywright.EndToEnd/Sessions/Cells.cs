using System.Diagnostics;
using System.Globalization;
using System.Text.Json.Nodes;
using Waywright.Kernel;

namespace Waywright.EndToEnd.Sessions;

/// <summary>Starts real sessions for the tests, and reads what their cells gave.</summary>
internal static class Cells
{
    private static readonly TimeSpan LongAgo = TimeSpan.FromSeconds(20);

    public static Task<ICellSession> StartAsync(double limitSeconds = 30, long memoryBytes = 1_000_000_000, ChildCommand? command = null) =>
        ChildSession.StartAsync(
            new SessionOptions(Path.GetTempPath(), Path.GetTempPath(), TimeSpan.FromSeconds(limitSeconds), memoryBytes),
            command ?? ChildCommand.Default(),
            TestContext.Current.CancellationToken);

    public static Task<CellRun> RunAsync(this ICellSession session, string code) =>
        session.RunAsync("the-cell", code, null, TestContext.Current.CancellationToken);

    public static int ProcessId(this ICellSession session) => ((RunningSession)session).ProcessId;

    /// <summary>Stream outputs as <c>stdout: text</c>, in order.</summary>
    public static IEnumerable<string> Streams(this CellRun run) =>
        run.Outputs.Where(output => Is(output, "stream")).Select(output => $"{output["name"]}: {output["text"]}");

    public static string Stdout(this CellRun run) =>
        string.Concat(run.Outputs.Where(output => (string?)output["name"] == "stdout").Select(output => (string)output["text"]!));

    public static JsonObject Error(this CellRun run)
    {
        Assert.True(Is(run.Outputs[^1], "error"), "an error is the last output");
        return run.Outputs[^1];
    }

    public static bool Is(JsonObject output, string type) => (string?)output["output_type"] == type;

    public static int Number(this CellRun run) => int.Parse(run.Stdout(), CultureInfo.InvariantCulture);

    /// <summary>Waits until a process has ended; a dead one that nobody has buried counts as ended.</summary>
    public static bool Ends(int processId) => SpinWait.SpinUntil(() => !Runs(processId), LongAgo);

    public static bool Runs(int processId)
    {
        if (!OperatingSystem.IsLinux()) return Process.GetProcesses().Any(process => process.Id == processId);
        try
        {
            // The state follows the name, which stands in brackets.
            var line = File.ReadAllText($"/proc/{processId}/stat");
            return line[line.LastIndexOf(')') + 2] is not ('Z' or 'X');
        }
        catch (IOException)
        {
            return false;
        }
    }
}

/// <summary>One session for the tests of a class whose cells do no harm.</summary>
public sealed class SharedSession : IAsyncLifetime
{
    public ICellSession Session { get; private set; } = null!;

    public async ValueTask InitializeAsync() => Session = await Cells.StartAsync();

    public ValueTask DisposeAsync() => Session.DisposeAsync();
}
