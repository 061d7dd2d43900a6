using System.Text.Json.Nodes;
using Waywright.Kernel;

namespace Waywright.Tests.Publishing;

/// <summary>A session without an engine: a function says what each cell gives.</summary>
internal sealed class ScriptedSession(Func<string, string, CancellationToken, CellRun> cell, Action ended) : ICellSession
{
    public Task<CellRun> RunAsync(string cellId, string code, Action<JsonObject>? onOutput, CancellationToken cancel) => Task.FromResult(cell(cellId, code, cancel));

    public ValueTask DisposeAsync()
    {
        ended();
        return ValueTask.CompletedTask;
    }
}

/// <summary>Starts scripted sessions and remembers what was started, run and ended.</summary>
internal sealed class ScriptedSessions(Func<string, string, CancellationToken, CellRun> cell)
{
    public List<SessionOptions> Started { get; } = [];

    public List<string> Ran { get; } = [];

    public int Ended { get; private set; }

    public Task<ICellSession> StartAsync(SessionOptions options, CancellationToken cancel)
    {
        Started.Add(options);
        return Task.FromResult<ICellSession>(new ScriptedSession((id, code, token) =>
        {
            Ran.Add(id);
            return cell(id, code, token);
        }, () => Ended++));
    }
}

/// <summary>Outputs as a session returns them.</summary>
internal static class Output
{
    public static CellRun Done(params JsonObject[] outputs) => new(CellOutcome.Done, outputs, null);

    public static CellRun Raised(string name, string message, params string[] trace)
        => new(CellOutcome.Raised, [new JsonObject { ["ename"] = name, ["evalue"] = message, ["output_type"] = "error", ["traceback"] = new JsonArray([.. trace.Select(line => (JsonNode)line)]) }], $"the cell threw {name}: {message}");

    public static JsonObject Html(string html, string plain = "") => Data(new JsonObject { ["text/html"] = html, ["text/plain"] = plain });

    public static JsonObject Text(string text) => new() { ["name"] = "stdout", ["output_type"] = "stream", ["text"] = text };

    public static JsonObject Kept(KeptResult result, string html)
        => Data(new JsonObject { ["application/vnd.waywright.figures+json"] = JsonNode.Parse(result.ToJson()), ["text/html"] = html, ["text/plain"] = result.Text });

    public static JsonObject Input(InputFile input) => Data(new JsonObject { ["application/vnd.waywright.input+json"] = JsonNode.Parse(input.ToJson()) });

    public static JsonObject Data(JsonObject data) => new() { ["data"] = data, ["metadata"] = new JsonObject(), ["output_type"] = "display_data" };
}
