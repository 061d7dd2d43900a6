using System.Runtime.InteropServices;
using System.Text.Json.Nodes;
using Waywright.Notebooks;

namespace Waywright.Kernel;

/// <summary>A Jupyter kernel: requests of front ends on this machine, answered from one cell session.</summary>
internal sealed class JupyterKernel
{
    private const long MemoryLimitBytes = 4_000_000_000;

    // As long as a timer holds: a reader who waits can interrupt.
    private static readonly TimeSpan CellLimit = TimeSpan.FromDays(40);

    private readonly JupyterSockets _sockets;
    private readonly KernelCells _cells;
    private readonly Execution _execution;
    private readonly Assistance _assistance;

    private JupyterKernel(JupyterSockets sockets, KernelCells cells)
    {
        _sockets = sockets;
        _cells = cells;
        _execution = new Execution(sockets, cells);
        _assistance = new Assistance(cells);
    }

    /// <summary>Serves until it is told to shut down, or until the program that started it has ended.</summary>
    /// <param name="file">The connection file.</param>
    /// <exception cref="InputException">The file can't be served.</exception>
    public static async Task RunAsync(string file)
    {
        var connection = ConnectionFile.Read(file);
        // The cells' process starts while the sockets are bound: it takes longest.
        await using var cells = new KernelCells(new SessionOptions(Directory.GetCurrentDirectory(), BuildFolder.Current, CellLimit, MemoryLimitBytes));
        using var sockets = JupyterSockets.Open(connection, file);
        using var interrupt = PosixSignalRegistration.Create(PosixSignal.SIGINT, signal =>
        {
            signal.Cancel = true;
            cells.Stop();
        });
        using var over = new CancellationTokenSource();
        var kernel = new JupyterKernel(sockets, cells);
        sockets.Publish("status", parent: null, new JsonObject { ["execution_state"] = "starting" });
        var ended = await Task.WhenAny(
            Task.Run(() => kernel.ServeShellAsync(over.Token)),
            Task.Run(() => kernel.ServeControlAsync(over.Token)),
            ParentWatch.WaitAsync(over.Token));
        await over.CancelAsync();
        await ended;
    }

    private async Task ServeControlAsync(CancellationToken over)
    {
        await foreach (var request in _sockets.Control.ReadAllAsync(over))
        {
            if (await HandleAsync(request)) return;
        }
    }

    private async Task ServeShellAsync(CancellationToken over)
    {
        var toAbort = 0;
        await foreach (var request in _sockets.Shell.ReadAllAsync(over))
        {
            var isAborted = toAbort > 0;
            toAbort = Math.Max(0, toAbort - 1);
            if (request.Type != "execute_request")
            {
                if (await HandleAsync(request)) return;
                continue;
            }

            Say(request, "busy");
            if (isAborted) _execution.Abort(request);
            else if (await _execution.RunAsync(request)) toAbort = _sockets.Shell.Count;
            Say(request, "idle");
        }
    }

    /// <returns>Whether the kernel is to end.</returns>
    private async Task<bool> HandleAsync(JupyterRequest request)
    {
        Say(request, "busy");
        var isOver = request.Type == "shutdown_request";
        switch (request.Type)
        {
            case "kernel_info_request":
                _sockets.Reply(request, KernelInfo.Reply());
                break;
            case "complete_request" when request.Channel == RequestChannel.Shell:
                _sockets.Reply(request, await _assistance.CompleteAsync(request));
                break;
            case "inspect_request" when request.Channel == RequestChannel.Shell:
                _sockets.Reply(request, await _assistance.InspectAsync(request));
                break;
            case "is_complete_request":
                _sockets.Reply(request, Completeness.Of(request.Get("code", "")));
                break;
            case "history_request":
                _sockets.Reply(request, Ok("history", new JsonArray()));
                break;
            case "comm_info_request":
                _sockets.Reply(request, Ok("comms", new JsonObject()));
                break;
            case "comm_open":
                // Nobody here talks over comms: the front end is told that this one is closed.
                _sockets.Publish("comm_close", request, new JsonObject { ["comm_id"] = request.Get("comm_id", ""), ["data"] = new JsonObject() });
                break;
            case "interrupt_request":
                _cells.Stop();
                _sockets.Reply(request, new JsonObject { ["status"] = "ok" });
                break;
            case "shutdown_request":
                var content = Ok("restart", request.Get("restart", false));
                _sockets.Reply(request, content);
                _sockets.Publish("shutdown_reply", request, content);
                break;
        }

        Say(request, "idle");
        return isOver;
    }

    private void Say(JupyterRequest request, string state) => _sockets.Publish("status", request, new JsonObject { ["execution_state"] = state });

    private static JsonObject Ok(string name, JsonNode value) => new() { ["status"] = "ok", [name] = value };
}
