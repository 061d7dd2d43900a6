using System.Diagnostics;
using System.Text.Json.Nodes;
using Waywright.EndToEnd.Commands;

namespace Waywright.EndToEnd.Jupyter;

/// <summary>A message from the kernel, or from the bridge to it.</summary>
internal sealed record Heard(string Channel, string Type, string? Parent, JsonNode Content);

/// <summary>What a cell gave: its reply, and everything that was published for it.</summary>
internal sealed record Executed(JsonNode Reply, IReadOnlyList<Heard> Published)
{
    public string Status => (string)Reply["status"]!;

    public string Text(string stream) => string.Concat(Published.Where(one => one.Type == "stream" && (string?)one.Content["name"] == stream).Select(one => (string)one.Content["text"]!));

    public IEnumerable<string> Types => Published.Select(one => one.Type);
}

/// <summary>A front end: Debian's jupyter_client, which starts the installed kernel, speaks the protocol and checks signatures.</summary>
internal sealed class JupyterClient : IAsyncDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(90);

    private readonly Process _bridge;
    private readonly List<Heard> _heard = [];
    private readonly SemaphoreSlim _news = new(0);
    private readonly Task _reading;
    private Task<string>? _complaint;
    private int _last;

    private JupyterClient(Process bridge)
    {
        _bridge = bridge;
        _reading = Task.Run(ReadAsync);
    }

    public int BridgeId => _bridge.Id;

    public int KernelId { get; private set; }

    public string ConnectionFile { get; private set; } = "";

    /// <summary>Starts a kernel in a folder and waits until it answers and is heard on every channel.</summary>
    public static async Task<JupyterClient> StartAsync(InstalledKernel kernel, string folder)
    {
        var start = new ProcessStartInfo(Needed.Python, [Path.Combine(Command.Repository, "tests", "Waywright.EndToEnd", "Jupyter", "bridge.py"), folder])
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        kernel.Show(start);
        var client = new JupyterClient(Process.Start(start)!);
        client._complaint = client._bridge.StandardError.ReadToEndAsync();
        await client.StartedAsync();
        return client;
    }

    public async Task<string> SendAsync(string channel, string type, JsonObject content, string how = "send")
    {
        var id = $"request-{++_last}";
        await OrderAsync(new JsonObject { ["do"] = how, ["channel"] = channel, ["type"] = type, ["content"] = content, ["id"] = id });
        return id;
    }

    /// <summary>Sends a request and waits for its reply.</summary>
    public async Task<JsonNode> AskAsync(string channel, string type, JsonObject content)
    {
        var id = await SendAsync(channel, type, content);
        return (await HearAsync(one => one.Channel == channel && one.Parent == id)).Content;
    }

    public Task<string> SendCellAsync(string code, Action<JsonObject>? with = null)
    {
        var content = new JsonObject { ["code"] = code, ["silent"] = false, ["store_history"] = true, ["user_expressions"] = new JsonObject(), ["allow_stdin"] = true, ["stop_on_error"] = true };
        with?.Invoke(content);
        return SendAsync("shell", "execute_request", content);
    }

    public async Task<Executed> RunAsync(string code, Action<JsonObject>? with = null) => await EndAsync(await SendCellAsync(code, with));

    /// <summary>Waits for a cell's reply and for all that was published for it.</summary>
    public async Task<Executed> EndAsync(string id)
    {
        var reply = await HearAsync(one => one.Channel == "shell" && one.Parent == id);
        await HearAsync(one => one.Parent == id && IsStatus(one, "idle"));
        lock (_heard) return new Executed(reply.Content, [.. _heard.Where(one => one.Channel == "iopub" && one.Parent == id)]);
    }

    /// <summary>Waits for the first message of a kind, from the beginning of all that was heard.</summary>
    public async Task<Heard> HearAsync(Func<Heard, bool> wanted)
    {
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        patience.CancelAfter(Patience);
        while (true)
        {
            lock (_heard)
            {
                if (_heard.Find(one => wanted(one)) is { } found) return found;
            }

            if (_reading.IsCompleted) throw new InvalidOperationException($"the bridge has ended: {await _complaint!}");
            await _news.WaitAsync(patience.Token);
        }
    }

    /// <summary>Whether such a message came up to now; a round trip before makes sure that nothing is on its way.</summary>
    public async Task<bool> HasHeardAsync(Func<Heard, bool> wanted)
    {
        await AskAsync("shell", "kernel_info_request", []);
        lock (_heard) return _heard.Exists(one => wanted(one));
    }

    public Task OrderAsync(string order) => OrderAsync(new JsonObject { ["do"] = order });

    public async Task OrderAsync(JsonObject order)
    {
        await _bridge.StandardInput.WriteAsync(order.ToJsonString() + "\n");
        await _bridge.StandardInput.FlushAsync();
    }

    /// <summary>Restarts the kernel on the same ports, as a front end does it.</summary>
    public async Task RestartAsync()
    {
        lock (_heard) _heard.Clear();
        await OrderAsync("restart");
        await StartedAsync();
    }

    public static bool IsStatus(Heard one, string state) => one.Type == "status" && (string?)one.Content["execution_state"] == state;

    public async ValueTask DisposeAsync()
    {
        if (!_bridge.HasExited)
        {
            // The end of its input: the bridge then ends kernel and itself.
            _bridge.StandardInput.Close();
            using var patience = new CancellationTokenSource(Patience);
            await _bridge.WaitForExitAsync(patience.Token);
        }

        await _reading;
        _bridge.Dispose();
        _news.Dispose();
    }

    private async Task StartedAsync()
    {
        var started = (await HearAsync(one => one.Type == "started")).Content;
        KernelId = (int)started["pid"]!;
        ConnectionFile = (string)started["file"]!;
        // A publisher sends to those who have subscribed by then: asked again until an answer comes that way too.
        while (true)
        {
            var id = await SendAsync("shell", "kernel_info_request", []);
            await HearAsync(one => one.Channel == "shell" && one.Parent == id);
            lock (_heard)
            {
                if (_heard.Exists(one => one.Channel == "iopub")) return;
            }
        }
    }

    private async Task ReadAsync()
    {
        while (await _bridge.StandardOutput.ReadLineAsync() is { } line)
        {
            var said = JsonNode.Parse(line)!;
            lock (_heard) _heard.Add(new Heard((string)said["channel"]!, (string)said["type"]!, (string?)said["parent"], said["content"]!));
            _news.Release();
        }

        _news.Release();
    }
}
