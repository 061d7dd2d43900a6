using System.Text.Json.Nodes;

namespace Waywright.Kernel;

/// <summary>One notebook's running cells: variables of a cell are seen by the next. Nothing here names the engine.</summary>
public interface ICellSession : IAsyncDisposable
{
    /// <summary>Runs one cell and returns when it has ended, whichever way.</summary>
    /// <param name="cellId">The cell's id, for messages.</param>
    /// <param name="code">C# source of the cell.</param>
    /// <param name="onOutput">Called with each output as it comes: an nbformat 4.5 output object.</param>
    /// <param name="cancel">Ends the session; the outputs so far are returned with <see cref="CellOutcome.Stopped"/>.</param>
    Task<CellRun> RunAsync(string cellId, string code, Action<JsonObject>? onOutput, CancellationToken cancel);
}

/// <summary>How a cell ended.</summary>
public enum CellOutcome
{
    /// <summary>It ran to its end.</summary>
    Done,

    /// <summary>It threw, or did not compile; the last output is the error.</summary>
    Raised,

    /// <summary>It was still running at the limit; the session is over.</summary>
    OutOfTime,

    /// <summary>The process that ran it ended; the session is over.</summary>
    Ended,

    /// <summary>It asked for more memory than the limit.</summary>
    OutOfMemory,

    /// <summary>The caller cancelled; the session is over.</summary>
    Stopped,
}

/// <summary>A cell's end.</summary>
/// <param name="Outcome">How it ended.</param>
/// <param name="Outputs">nbformat 4.5 output objects, in order; an error output is last unless the cell is <see cref="CellOutcome.Done"/>.</param>
/// <param name="Why">One sentence for the person who ran it; null when done.</param>
public sealed record CellRun(CellOutcome Outcome, IReadOnlyList<JsonObject> Outputs, string? Why);

/// <summary>What a session is started with.</summary>
/// <param name="WorkingFolder">The notebook's own folder.</param>
/// <param name="BuildFolder">The folder that inputs are named relative to.</param>
/// <param name="CellLimit">A cell that runs longer is ended.</param>
/// <param name="MemoryLimitBytes">A session that grows beyond this is ended.</param>
public sealed record SessionOptions(string WorkingFolder, string BuildFolder, TimeSpan CellLimit, long MemoryLimitBytes);
