using System.Text.Json.Nodes;
using Waywright.Kernel;

namespace Waywright.Publishing;

/// <summary>Runs the cells of one notebook in their order, to the end or to the first that fails.</summary>
internal sealed class NotebookRunner(Findings findings, TimeProvider clock, CancellationToken cancel)
{
    /// <summary>How many cells there are to run.</summary>
    public static int CellsOf(NotebookRun run) => Runnable(run).Count();

    public async Task RunAsync(NotebookRun run, Func<Task<ICellSession>> start, Action<int, int> onCell)
    {
        var began = clock.GetTimestamp();
        run.Started = true;
        if (await StartAsync(run, start).ConfigureAwait(false) is { } session)
        {
            await using (session.ConfigureAwait(false))
                await RunCellsAsync(run, session, onCell).ConfigureAwait(false);
        }

        run.Duration = clock.GetElapsedTime(began);
    }

    private static IEnumerable<NotebookCell> Runnable(NotebookRun run) => run.Document.Cells.Where(cell => cell.IsCode && !string.IsNullOrWhiteSpace(cell.Source));

    // Whatever keeps a session from starting is this notebook's failure, with its reason, and not the command's.
    private async Task<ICellSession?> StartAsync(NotebookRun run, Func<Task<ICellSession>> start)
    {
        try
        {
            return await start().ConfigureAwait(false);
        }
        catch (OperationCanceledException) when (cancel.IsCancellationRequested)
        {
            run.Fail(0, "", "stopped before its first cell", stopped: true);
        }
        catch (Exception e)
        {
            run.Fail(0, "", $"its session did not start: {e.Message}", stopped: false);
        }

        return null;
    }

    private async Task RunCellsAsync(NotebookRun run, ICellSession session, Action<int, int> onCell)
    {
        var cells = Runnable(run).ToList();
        for (var i = 0; i < cells.Count && run.Failure is null; i++)
        {
            onCell(i + 1, cells.Count);
            var ended = await RunCellAsync(cells[i], session).ConfigureAwait(false);
            cells[i].SetRun(i + 1, ended.Outputs);
            var why = ended.Outcome is CellOutcome.Done || (ended.Outcome is CellOutcome.Raised && cells[i].Has(NotebookCell.MayRaiseTag))
                ? findings.Take(run.Path, cells[i])
                : ended.Why ?? Sentence(ended.Outcome);
            if (why is not null)
                Mark(run, cells[i], i + 1, ended, why);
        }
    }

    private async Task<CellRun> RunCellAsync(NotebookCell cell, ICellSession session)
    {
        try
        {
            return cancel.IsCancellationRequested
                ? new CellRun(CellOutcome.Stopped, [], null)
                : await session.RunAsync(cell.Id, cell.Source, onOutput: null, cancel).ConfigureAwait(false);
        }
        catch (OperationCanceledException) when (cancel.IsCancellationRequested)
        {
            return new CellRun(CellOutcome.Stopped, [], null);
        }
        catch (Exception e) when (e is not OperationCanceledException)
        {
            return new CellRun(CellOutcome.Ended, [], $"its session broke off: {e.Message}");
        }
    }

    // The failed cell says so in the file itself: in its metadata, and as an error output wherever it is opened.
    private static void Mark(NotebookRun run, NotebookCell cell, int number, CellRun ended, string why)
    {
        var outcome = ended.Outcome == CellOutcome.Done ? CellOutcome.Raised : ended.Outcome;
        if (ended.Outputs.Count == 0 || (string?)ended.Outputs[^1]["output_type"] != "error" || ended.Outcome == CellOutcome.Done)
            cell.SetRun(number, [.. ended.Outputs, Error(outcome, why)]);
        cell.SetFailure(outcome.ToString(), why);
        run.Fail(number, cell.Id, why, stopped: outcome == CellOutcome.Stopped);
    }

    private static JsonObject Error(CellOutcome outcome, string why) => new()
    {
        ["ename"] = outcome.ToString(),
        ["evalue"] = why,
        ["output_type"] = "error",
        ["traceback"] = new JsonArray(),
    };

    private static string Sentence(CellOutcome outcome) => outcome switch
    {
        CellOutcome.Raised => "the cell threw",
        CellOutcome.OutOfTime => "the cell was still running at its time limit",
        CellOutcome.OutOfMemory => "the cell asked for more memory than its limit",
        CellOutcome.Stopped => "stopped by the person who ran it",
        _ => "the process that ran it ended",
    };
}
