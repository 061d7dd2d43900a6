using System.Globalization;
using System.Text.Json.Nodes;

namespace Waywright.Kernel;

/// <summary>Answers <c>execute_request</c>: the cell's outputs as they come, its count, its error, the expressions asked for beside it.</summary>
internal sealed class Execution(JupyterSockets sockets, KernelCells cells)
{
    private int _count;

    /// <summary>Runs what is asked.</summary>
    /// <returns>Whether cells that wait behind this one are to be aborted.</returns>
    public async Task<bool> RunAsync(JupyterRequest request)
    {
        var code = request.Get("code", "");
        var isSilent = request.Get("silent", false);
        // As the protocol has it: a silent cell is in no history, and counts as little as an empty one.
        if (!isSilent && request.Get("store_history", true) && !string.IsNullOrWhiteSpace(code)) _count++;
        if (!isSilent) sockets.Publish("execute_input", request, new JsonObject { ["code"] = code, ["execution_count"] = _count });

        var run = await RunAsync(request, code, isSilent);
        if (run.Outcome != CellOutcome.Done)
        {
            var error = ErrorOf(run);
            if (!isSilent) sockets.Publish("error", request, (JsonObject)error.DeepClone());
            Reply(request, "error", error);
            return request.Get("stop_on_error", true);
        }

        Reply(request, "ok", new JsonObject { ["payload"] = new JsonArray(), ["user_expressions"] = await EvaluateAsync(request) });
        return false;
    }

    /// <summary>Answers a request that waited behind a cell which failed.</summary>
    public void Abort(JupyterRequest request) => Reply(request, "aborted", []);

    private void Reply(JupyterRequest request, string status, JsonObject content)
    {
        content["status"] = status;
        content["execution_count"] = _count;
        sockets.Reply(request, content);
    }

    private async Task<CellRun> RunAsync(JupyterRequest request, string code, bool isSilent)
    {
        if (string.IsNullOrWhiteSpace(code)) return new CellRun(CellOutcome.Done, [], null);
        using var pieces = new StreamPieces((name, text) => sockets.Publish("stream", request, new JsonObject { ["name"] = name, ["text"] = text }));
        return await cells.RunAsync($"cell {_count.ToString(CultureInfo.InvariantCulture)}", code, said =>
        {
            if (isSilent) return;
            if (said is StreamWritten written)
            {
                pieces.Add(written.Name, written.Text);
                return;
            }

            pieces.Flush();
            Show(request, said);
        });
    }

    private void Show(JupyterRequest request, CellEvent said)
    {
        switch (said)
        {
            case ValueReturned returned:
                sockets.Publish("execute_result", request, new JsonObject { ["data"] = returned.Data.DeepClone(), ["metadata"] = new JsonObject(), ["execution_count"] = _count });
                break;
            case ValueDisplayed displayed:
                sockets.Publish("display_data", request, Displayed(displayed.Data, displayed.DisplayId));
                break;
            case DisplayUpdated updated:
                sockets.Publish("update_display_data", request, Displayed(updated.Data, updated.DisplayId));
                break;
        }
    }

    private static JsonObject Displayed(JsonObject data, string? displayId) => new()
    {
        ["data"] = data.DeepClone(),
        ["metadata"] = new JsonObject(),
        ["transient"] = displayId is null ? new JsonObject() : new JsonObject { ["display_id"] = displayId },
    };

    private async Task<JsonObject> EvaluateAsync(JupyterRequest request)
    {
        var answers = new JsonObject();
        foreach (var (name, asked) in request.Content["user_expressions"] as JsonObject ?? [])
        {
            JsonObject? value = null;
            var run = await cells.RunAsync($"expression {name}", asked?.ToString() ?? "", said => value = said is ValueReturned returned ? returned.Data : value);
            answers[name] = run.Outcome == CellOutcome.Done
                ? new JsonObject { ["status"] = "ok", ["data"] = value?.DeepClone() ?? new JsonObject(), ["metadata"] = new JsonObject() }
                : new JsonObject(ErrorOf(run).Select(field => KeyValuePair.Create(field.Key, field.Value?.DeepClone()))) { ["status"] = "error" };
        }

        return answers;
    }

    // Name, value and trace of the last output, which is the error.
    private static JsonObject ErrorOf(CellRun run) => new()
    {
        ["ename"] = run.Outputs[^1]["ename"]!.DeepClone(),
        ["evalue"] = run.Outputs[^1]["evalue"]!.DeepClone(),
        ["traceback"] = run.Outputs[^1]["traceback"]!.DeepClone(),
    };
}
