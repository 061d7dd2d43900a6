namespace Waywright.Kernel;

/// <summary>Cancels the token of one cell, whenever the wish comes: before the cell begins, while it runs, or too late.</summary>
internal sealed class StopSource : IDisposable
{
    private readonly Lock _gate = new();
    private CancellationTokenSource _source = new();
    private int _running;
    private int _stopped = -1;

    /// <summary>The token of the cell that begins now.</summary>
    public CancellationToken Begin(int number)
    {
        lock (_gate)
        {
            // The source of the cell before is left to the collector: a thread that it left behind may still look at it.
            _running = number;
            _source = new CancellationTokenSource();
            if (_stopped == number) _source.Cancel();
            return _source.Token;
        }
    }

    public void Stop(int number)
    {
        CancellationTokenSource? source = null;
        lock (_gate)
        {
            _stopped = number;
            if (_running == number) source = _source;
        }

        // Outside the lock, and off this thread: what the cell registered runs here.
        source?.CancelAsync();
    }

    public bool IsStopped(int number)
    {
        lock (_gate) return _stopped == number;
    }

    public void Dispose() => _source.Dispose();
}
