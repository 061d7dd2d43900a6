using System.Text.Json.Nodes;

namespace Waywright.Kernel;

/// <summary>A session whose cells run in a child: every way in which a cell can end becomes a <see cref="CellRun"/>.</summary>
internal sealed class RunningSession(ChildProcess child, SessionOptions options) : ICellSession
{
    private static readonly TimeSpan RawTextArrives = TimeSpan.FromSeconds(1);

    private int _count;
    private int _running;
    private string? _over;

    /// <summary>The child's process id.</summary>
    public int ProcessId => child.Id;

    public Task<CellRun> RunAsync(string cellId, string code, Action<JsonObject>? onOutput, CancellationToken cancel) =>
        RunAsync(cellId, code, count => new CellOutputs(count, onOutput), cancel);

    /// <summary>Runs one cell for a listener that wants what it says, and not what became of it.</summary>
    public Task<CellRun> RunAsync(string cellId, string code, Action<CellEvent> onEvent, CancellationToken cancel) =>
        RunAsync(cellId, code, count => new CellOutputs(count, onOutput: null, onEvent), cancel);

    /// <summary>Asks the running cell, by <c>Notebook.Stop</c>, to end; it may not.</summary>
    public Task StopCellAsync(CancellationToken cancel) => child.SendAsync(new StopCell(_count), cancel);

    /// <summary>Asks about a place in a cell that is being written, while none runs; null when the child has gone.</summary>
    public async Task<SessionMessage?> AskAsync(AskAbout question, CancellationToken cancel)
    {
        if (_over is not null) return null;
        await child.SendAsync(question, cancel);
        await foreach (var received in child.Messages.ReadAllAsync(cancel))
        {
            if (received.Message is Completed or Inspected) return received.Message;
        }

        return null;
    }

    private async Task<CellRun> RunAsync(string cellId, string code, Func<int, CellOutputs> gather, CancellationToken cancel)
    {
        if (Interlocked.Exchange(ref _running, 1) == 1) throw new InvalidOperationException($"cell '{cellId}' cannot run while another one does");
        try
        {
            var outputs = gather(++_count);
            var end = _over is null ? await EndAsync(cellId, code, outputs, cancel) : CellEnd.SessionIsOver(cellId, _over);
            if (end.Failure is not null) outputs.Add(end.Failure);
            if (end.Outcome is not (CellOutcome.Done or CellOutcome.Raised)) _over ??= end.Why;
            return new CellRun(end.Outcome, outputs.ToList(), end.Why);
        }
        finally
        {
            Volatile.Write(ref _running, 0);
        }
    }

    public ValueTask DisposeAsync() => child.DisposeAsync();

    private async Task<CellEnd> EndAsync(string cellId, string source, CellOutputs outputs, CancellationToken cancel)
    {
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(cancel);
        limit.CancelAfter(options.CellLimit);
        try
        {
            await child.SendAsync(new RunCell(_count, cellId, source), limit.Token);
            if (await HearAsync(outputs, limit.Token) is { } over)
            {
                var end = CellEnd.Of(cellId, over.Failure, options.MemoryLimitBytes);
                // What filled the memory is still in the cell's variables.
                if (end.Outcome == CellOutcome.OutOfMemory) child.Kill();
                return end;
            }

            if (child.OutgrewMemory) return CellEnd.OutOfMemory(cellId, options.MemoryLimitBytes);
            return child.ExitCode is { } code
                ? CellEnd.ProcessEnded(cellId, code, outputs.RawError, options.MemoryLimitBytes)
                : CellEnd.Stopped(cellId);
        }
        catch (OperationCanceledException) when (limit.IsCancellationRequested)
        {
            child.Kill();
            await HearAsync(outputs, CancellationToken.None);
            return cancel.IsCancellationRequested ? CellEnd.Stopped(cellId) : CellEnd.OutOfTime(cellId, options.CellLimit);
        }
    }

    // Takes what the child says up to the end of the cell, or of the child: then null.
    private async Task<CellOver?> HearAsync(CellOutputs outputs, CancellationToken cancel)
    {
        CellOver? over = null;
        var marks = 0;
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(cancel);
        try
        {
            await foreach (var received in child.Messages.ReadAllAsync(patience.Token))
            {
                switch (received.Message)
                {
                    case CellSaid said:
                        outputs.Add(said.Event, received.Size);
                        break;
                    case RawText raw:
                        outputs.Add(raw);
                        break;
                    case RawMark mark when mark.Number == _count:
                        marks++;
                        break;
                    case CellOver ended when ended.Number == _count:
                        over = ended;
                        // A cell may have closed the streams that the marks come through.
                        patience.CancelAfter(RawTextArrives);
                        break;
                }

                if (over is not null && marks == 2) return over;
            }
        }
        catch (OperationCanceledException) when (over is not null)
        {
            // The cell had ended in time.
        }

        return over;
    }
}
