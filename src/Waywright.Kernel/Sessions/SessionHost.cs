using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using System.IO.Pipes;
using System.Runtime.InteropServices;
using System.Text;
using System.Text.Json;

namespace Waywright.Kernel;

/// <summary>The child's side of a cell session: takes cells from its parent's pipe, and ends with its parent.</summary>
public static class SessionHost
{
    private const int ParentAnswersMilliseconds = 30_000;

    /// <summary>Serves until the parent ends the session; the process is then killed, so this returns only when it could not begin.</summary>
    /// <param name="args">Name of the parent's pipe, and the secret of the marks in the raw streams.</param>
    /// <returns>The exit code 2: the arguments are not a session's, or nobody answers at the pipe.</returns>
    public static async Task<int> ServeAsync(string[] args)
    {
        if (args is not [var pipeName, var secret])
        {
            await Console.Error.WriteLineAsync("'waywright session' is started by waywright itself: it needs the name of its parent's pipe");
            return 2;
        }

        // The terminal sends Ctrl-C to parent and child; the parent decides what becomes of the child.
        using var interrupt = PosixSignalRegistration.Create(PosixSignal.SIGINT, signal => signal.Cancel = true);
        CultureInfo.DefaultThreadCurrentCulture = CultureInfo.DefaultThreadCurrentUICulture =
            CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture = CultureInfo.InvariantCulture;

        using var pipe = new NamedPipeClientStream(".", pipeName, PipeDirection.InOut, PipeOptions.Asynchronous | PipeOptions.CurrentUserOnly);
        try
        {
            await pipe.ConnectAsync(ParentAnswersMilliseconds);
        }
        catch (TimeoutException)
        {
            // The parent was killed: nobody else takes its pipe's name away.
            if (Path.IsPathRooted(pipeName)) File.Delete(pipeName);
            return 2;
        }

        using var asked = new BlockingCollection<SessionMessage>();
        var stops = new BlockingCollection<int>();
        new Thread(() => Listen(pipe, asked, stops)) { IsBackground = true, Name = "parent" }.Start();

        var raw = (Out: Console.OpenStandardOutput(), Error: Console.OpenStandardError());
        using var engine = await CellEngine.StartAsync();
        var toParent = new ToParent(pipe);
        toParent.Send(new SessionReady());
        new Thread(() => Stop(engine, stops)) { IsBackground = true, Name = "stop" }.Start();
        foreach (var message in asked.GetConsumingEnumerable())
        {
            if (message is AskAbout question) toParent.Send(await engine.AnswerAsync(question));
            if (message is not RunCell cell) continue;
            var failure = await engine.RunAsync(cell.Number, cell.CellId, cell.Code, said => toParent.Send(new CellSaid(said)));
            var mark = Encoding.UTF8.GetBytes(Wire.Mark(secret, cell.Number));
            raw.Out.Write(mark);
            raw.Error.Write(mark);
            toParent.Send(new CellOver(cell.Number, failure));
        }

        return 2;
    }

    private static void Stop(CellEngine engine, BlockingCollection<int> stops)
    {
        foreach (var number in stops.GetConsumingEnumerable()) engine.Stop(number);
    }

    // Its own thread: the parent's end is noticed whatever the cell does to the thread pool.
    private static void Listen(Stream pipe, BlockingCollection<SessionMessage> asked, BlockingCollection<int> stops)
    {
        try
        {
            using var lines = new StreamReader(pipe);
            while (lines.ReadLine() is { } line)
            {
                switch (Wire.Read(line))
                {
                    case StopCell stop:
                        stops.Add(stop.Number);
                        break;
                    case var other:
                        asked.Add(other);
                        break;
                }
            }
        }
        catch (Exception broken) when (broken is IOException or JsonException or ObjectDisposedException)
        {
            // As good as closed.
        }

        // Not Exit: that would wait for handlers which the cell may have added.
        Process.GetCurrentProcess().Kill();
    }
}
