using System.Diagnostics;
using System.IO.Pipes;
using System.Threading.Channels;

namespace Waywright.Kernel;

/// <summary>A message from the child, and its size in bytes.</summary>
internal readonly record struct Received(SessionMessage Message, int Size);

/// <summary>Everything that a child says, by its pipe and by its raw streams, up to its end.</summary>
internal sealed class ChildMessages(Process process, NamedPipeServerStream pipe)
{
    private static readonly TimeSpan LastWords = TimeSpan.FromSeconds(1);

    // Bounded: a child that talks faster than it is heard waits.
    private readonly Channel<Received> _received = Channel.CreateBounded<Received>(256);

    /// <summary>Ends when the child has ended and all was read.</summary>
    public ChannelReader<Received> Reader => _received.Reader;

    /// <summary>Null until the child has ended.</summary>
    public int? ExitCode { get; private set; }

    /// <summary>Reads until the child ends, or the reading is cancelled.</summary>
    /// <param name="connected">Called when the child has found its pipe.</param>
    /// <param name="secret">Of the marks in the raw streams.</param>
    /// <param name="cancel">Nobody listens any longer.</param>
    public async Task ReadAllAsync(Action connected, string secret, CancellationToken cancel)
    {
        try
        {
            var raw = Task.WhenAll(
                RawOutput.DrainAsync(process.StandardOutput.BaseStream, "stdout", secret, _received.Writer, cancel),
                RawOutput.DrainAsync(process.StandardError.BaseStream, "stderr", secret, _received.Writer, cancel));
            using var waiting = CancellationTokenSource.CreateLinkedTokenSource(cancel);
            var said = ReadPipeAsync(connected, waiting.Token, cancel);
            await process.WaitForExitAsync(cancel);
            ExitCode = process.ExitCode;
            // What the process wrote before its end is in the pipes; if it never came, nobody else will.
            if (!pipe.IsConnected) await waiting.CancelAsync();
            await said;
            // A program that a cell started may hold the raw streams open for ever.
            await Task.WhenAny(raw, Task.Delay(LastWords, cancel));
        }
        catch (Exception over) when (over is OperationCanceledException or IOException or ObjectDisposedException)
        {
            // Cancelled.
        }
        finally
        {
            _received.Writer.TryComplete();
        }
    }

    private async Task ReadPipeAsync(Action connected, CancellationToken waiting, CancellationToken cancel)
    {
        try
        {
            await pipe.WaitForConnectionAsync(waiting);
            connected();
            using var lines = new StreamReader(pipe, leaveOpen: true);
            while (await lines.ReadLineAsync(waiting) is { } line)
                await _received.Writer.WriteAsync(new Received(Wire.Read(line), line.Length), cancel);
        }
        catch (Exception over) when (over is OperationCanceledException or IOException or ObjectDisposedException or System.Text.Json.JsonException)
        {
            // Cut off in the middle of a line: what came whole was passed on.
        }
    }
}
