using Waywright.Kernel;

namespace Waywright.Publishing;

/// <summary>Starts the next notebook's session while one runs, so that its start costs no waiting.</summary>
internal sealed class SessionQueue(Func<SessionOptions, CancellationToken, Task<ICellSession>> start, IReadOnlyList<SessionOptions> wanted, CancellationToken cancel) : IAsyncDisposable
{
    private readonly CancellationTokenSource _ending = CancellationTokenSource.CreateLinkedTokenSource(cancel);
    private Task<ICellSession>? _ahead;
    private int _started;

    /// <summary>The session of the next notebook; the caller disposes it.</summary>
    public async Task<ICellSession> NextAsync()
    {
        var current = _ahead ?? StartNext();
        _ahead = null;
        var session = await current.ConfigureAwait(false);
        if (_started < wanted.Count)
            _ahead = StartNext();
        return session;
    }

    /// <summary>Ends a session that was started ahead and is not wanted any more.</summary>
    public async ValueTask DisposeAsync()
    {
        await _ending.CancelAsync().ConfigureAwait(false);
        if (_ahead is not null)
        {
            await ((Task)_ahead).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            if (_ahead.IsCompletedSuccessfully)
                await (await _ahead.ConfigureAwait(false)).DisposeAsync().ConfigureAwait(false);
        }

        _ending.Dispose();
    }

    private Task<ICellSession> StartNext() => start(wanted[_started++], _ending.Token);
}
