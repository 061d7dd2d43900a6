using System.Text.Json.Nodes;

namespace Waywright.Kernel;

/// <summary>
/// The cells of a kernel: a session in a child process, another one when that ends, and how a running cell is stopped.
/// The first wish to stop cancels <c>Notebook.Stop</c>; a cell that is still running after <see cref="Patience"/> says so; the next wish ends its process.
/// </summary>
internal sealed class KernelCells : IAsyncDisposable
{
    /// <summary>How long a cell may take to stop by itself.</summary>
    public static readonly TimeSpan Patience = TimeSpan.FromSeconds(3);

    /// <summary>What follows when a session ended under its cell.</summary>
    public const string Lost = "All variables are gone; a new process is ready: run the notebook again from its first cell.";

    private const string NotStopped = "waywright: asked to stop, this cell is still running after 3 s. It does not look at Notebook.Stop. Interrupt again to end its process; all variables will be lost.\n";

    private readonly Lock _gate = new();
    private readonly SessionOptions _options;
    private readonly CancellationTokenSource _over = new();
    private Task<ICellSession> _session;
    private Running? _running;

    public KernelCells(SessionOptions options)
    {
        _options = options;
        _session = ChildSession.StartAsync(options, _over.Token);
    }

    /// <summary>Runs a cell, or an expression, to its end.</summary>
    public async Task<CellRun> RunAsync(string cellId, string code, Action<CellEvent> hear)
    {
        using var running = new Running(hear);
        lock (_gate) _running = running;
        try
        {
            var session = (RunningSession)await _session;
            if (running.Begin(session) is { } before) return before;
            var run = await session.RunAsync(cellId, code, hear, running.End);
            if (run.Outcome is CellOutcome.Done or CellOutcome.Raised) return run;
            await StartAgainAsync(session);
            var why = running.IsEnded ? $"The cell did not stop when asked, so its process was ended. {Lost}" : $"{run.Why} {Lost}";
            return Failed(run.Outcome, run.Outcome.ToString(), why);
        }
        catch (InvalidOperationException absent) when (!_over.IsCancellationRequested)
        {
            _session = ChildSession.StartAsync(_options, _over.Token);
            return Failed(CellOutcome.Ended, "Ended", $"{absent.Message}. Run the cell again to try once more.");
        }
        finally
        {
            lock (_gate) _running = null;
        }
    }

    /// <summary>Asks about a place in a cell, while none runs; null when nobody can tell.</summary>
    public async Task<SessionMessage?> AskAsync(AskAbout question)
    {
        try
        {
            return await ((RunningSession)await _session).AskAsync(question, _over.Token);
        }
        catch (InvalidOperationException)
        {
            return null;
        }
    }

    /// <summary>Asks the running cell to stop; nothing happens when none runs.</summary>
    public void Stop()
    {
        lock (_gate) _running?.Stop();
    }

    public async ValueTask DisposeAsync()
    {
        await _over.CancelAsync();
        await ((Task)_session).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        if (_session.IsCompletedSuccessfully) await (await _session).DisposeAsync();
    }

    private async Task StartAgainAsync(RunningSession ended)
    {
        await ended.DisposeAsync();
        _session = ChildSession.StartAsync(_options, _over.Token);
    }

    private static CellRun Failed(CellOutcome outcome, string name, string why) =>
        new(outcome, [new JsonObject { ["ename"] = name, ["evalue"] = why, ["output_type"] = "error", ["traceback"] = new JsonArray(why) }], why);

    /// <summary>The cell that runs now, and how far its stopping has come.</summary>
    private sealed class Running(Action<CellEvent> hear) : IDisposable
    {
        private readonly Lock _gate = new();
        private readonly CancellationTokenSource _end = new();
        private readonly CancellationTokenSource _done = new();
        private RunningSession? _session;
        private bool _isAsked;
        private bool _isTold;

        public CancellationToken End => _end.Token;

        public bool IsEnded => _end.IsCancellationRequested;

        /// <summary>The session is there; the outcome if the cell was stopped while it waited.</summary>
        public CellRun? Begin(RunningSession session)
        {
            lock (_gate)
            {
                _session = session;
                return _isAsked ? Failed(CellOutcome.Raised, CellErrors.Stopped, "The cell was stopped before it began.") : null;
            }
        }

        public void Stop()
        {
            lock (_gate)
            {
                if (_isTold) _end.Cancel();
                if (_isAsked) return;
                _isAsked = true;
                if (_session is not null) _ = AskAsync(_session, _done.Token);
            }
        }

        public void Dispose()
        {
            lock (_gate)
            {
                _done.Cancel();
                _done.Dispose();
                _end.Dispose();
            }
        }

        private async Task AskAsync(RunningSession session, CancellationToken done)
        {
            try
            {
                await session.StopCellAsync(done);
                await Task.Delay(Patience, done);
                lock (_gate)
                {
                    done.ThrowIfCancellationRequested();
                    _isTold = true;
                    hear(new StreamWritten("stderr", NotStopped));
                }
            }
            catch (OperationCanceledException)
            {
                // It has ended.
            }
        }
    }
}
