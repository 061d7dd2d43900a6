using System.Diagnostics;
using System.Globalization;
using System.IO.Pipes;
using System.Text;
using System.Threading.Channels;

namespace Waywright.Kernel;

/// <summary>The child of a session seen from its parent: its start, its memory, its end.</summary>
internal sealed class ChildProcess : IAsyncDisposable
{
    // What the process takes besides the cells' objects: engine, compiler, and the chart and frame libraries once a cell uses them.
    private const long EngineBytes = 400_000_000;

    private static readonly TimeSpan StartLimit = TimeSpan.FromSeconds(60);

    private readonly Process _process;
    private readonly NamedPipeServerStream _pipe;
    private readonly ChildMessages _messages;
    private readonly CancellationTokenSource _disposed = new();

    private ChildProcess(Process process, NamedPipeServerStream pipe)
    {
        _process = process;
        _pipe = pipe;
        _messages = new ChildMessages(process, pipe);
        Id = process.Id;
    }

    /// <summary>What the child says; ends when the child has ended and all was read.</summary>
    public ChannelReader<Received> Messages => _messages.Reader;

    public int Id { get; }

    /// <summary>Whether the child was ended because it grew beyond the limit.</summary>
    public bool OutgrewMemory { get; private set; }

    /// <summary>Null until <see cref="Messages"/> has ended, and after it if the session was disposed under it.</summary>
    public int? ExitCode => _messages.ExitCode;

    /// <summary>Starts the child and waits until it can take cells.</summary>
    public static async Task<ChildProcess> StartAsync(SessionOptions options, ChildCommand command, CancellationToken cancel)
    {
        // A named pipe, not inherited handles: whatever the cells start does not hold it open.
        var name = $"ww-{Guid.NewGuid():N}"[..19];
        if (!OperatingSystem.IsWindows()) name = Path.Combine(Path.GetTempPath(), name);
        var secret = Guid.NewGuid().ToString("N");
        var pipe = new NamedPipeServerStream(name, PipeDirection.InOut, 1, PipeTransmissionMode.Byte, PipeOptions.Asynchronous | PipeOptions.CurrentUserOnly);
        ChildProcess child;
        try
        {
            child = new ChildProcess(Process.Start(StartInfo(options, command, name, secret))!, pipe);
        }
        catch (System.ComponentModel.Win32Exception absent)
        {
            await pipe.DisposeAsync();
            throw new InvalidOperationException($"the process for the cells did not start: {absent.Message}", absent);
        }

        try
        {
            child._process.StandardInput.Close();
            _ = child._messages.ReadAllAsync(() => Forget(name), secret, child._disposed.Token);
            _ = child.WatchMemoryAsync(options.MemoryLimitBytes);
            await child.BecomeReadyAsync(cancel);
            return child;
        }
        catch
        {
            await child.DisposeAsync();
            throw;
        }
    }

    public async Task SendAsync(SessionMessage message, CancellationToken cancel)
    {
        try
        {
            await _pipe.WriteAsync(Wire.Line(message), cancel);
        }
        catch (IOException)
        {
            // The child is gone: its messages end and say so.
        }
    }

    /// <summary>Ends the child and whatever it started; what it said before can still be read.</summary>
    public void Kill()
    {
        try
        {
            _process.Kill(entireProcessTree: true);
        }
        catch (Exception gone) when (gone is InvalidOperationException or AggregateException or System.ComponentModel.Win32Exception)
        {
            // It had ended by itself.
        }
    }

    public async ValueTask DisposeAsync()
    {
        if (_disposed.IsCancellationRequested) return;
        await _disposed.CancelAsync();
        Kill();
        await _process.WaitForExitAsync();
        await _pipe.DisposeAsync();
        _process.Dispose();
    }

    private static ProcessStartInfo StartInfo(SessionOptions options, ChildCommand command, string pipe, string secret)
    {
        var start = new ProcessStartInfo(command.File, [.. command.Arguments, "session", pipe, secret])
        {
            WorkingDirectory = options.WorkingFolder,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            CreateNoWindow = true,
        };
        start.Environment["WAYWRIGHT_BUILD_FOLDER"] = Path.GetFullPath(options.BuildFolder);
        // Hexadecimal, as the runtime reads it. Below the limit that the parent watches: an exception in the cell tells more than a killed process.
        start.Environment["DOTNET_GCHeapHardLimit"] = (options.MemoryLimitBytes - EngineBytes).ToString("X", CultureInfo.InvariantCulture);
        start.Environment["DOTNET_gcConcurrent"] = "0";
        return start;
    }

    // Connected for good: nothing is left in the temporary folder, however the parent ends.
    private static void Forget(string pipe)
    {
        if (!OperatingSystem.IsWindows()) File.Delete(pipe);
    }

    private async Task BecomeReadyAsync(CancellationToken cancel)
    {
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(cancel);
        limit.CancelAfter(StartLimit);
        var said = new StringBuilder();
        try
        {
            await foreach (var received in Messages.ReadAllAsync(limit.Token))
            {
                if (received.Message is SessionReady) return;
                if (received.Message is RawText text) said.Append(text.Text);
            }
        }
        catch (OperationCanceledException) when (!cancel.IsCancellationRequested)
        {
            throw new InvalidOperationException($"the process for the cells was not ready after {StartLimit.TotalSeconds:0} s");
        }

        if (OutgrewMemory) throw new InvalidOperationException("the process for the cells outgrew its memory limit before it was ready");
        var why = said.ToString().Trim() is { Length: > 0 } words ? $": {words}" : $" (exit code {ExitCode})";
        throw new InvalidOperationException($"the process for the cells ended before it was ready{why}");
    }

    private async Task WatchMemoryAsync(long limit)
    {
        using var timer = new PeriodicTimer(TimeSpan.FromMilliseconds(100));
        try
        {
            while (await timer.WaitForNextTickAsync(_disposed.Token))
            {
                _process.Refresh();
                if (_process.HasExited) return;
                if (_process.WorkingSet64 <= limit) continue;
                OutgrewMemory = true;
                Kill();
                return;
            }
        }
        catch (Exception over) when (over is OperationCanceledException or InvalidOperationException)
        {
            // Disposed, or ended between two questions.
        }
    }
}
