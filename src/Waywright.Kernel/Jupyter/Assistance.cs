using System.Text.Json.Nodes;

namespace Waywright.Kernel;

/// <summary>Answers what a person who writes a cell asks: how a word goes on, and what a word is.</summary>
internal sealed class Assistance(KernelCells cells)
{
    public async Task<JsonObject> CompleteAsync(JupyterRequest request)
    {
        var code = request.Get("code", "");
        var end = Cursor(request, code);
        var start = end;
        while (start > 0 && IsPartOfWord(code[start - 1])) start--;
        var typed = code[start..end];
        var answer = await cells.AskAsync(About(Question.Complete, code, end)) as Completed;
        var found = (answer?.Suggestions ?? [])
            // A generic type is offered with the brackets of its arguments, which are still to be written.
            .Select(one => one with { Text = one.Text.Split('<')[0] })
            .Where(one => one.Text.StartsWith(typed, StringComparison.OrdinalIgnoreCase))
            .DistinctBy(one => one.Text)
            .OrderByDescending(one => one.Text.StartsWith(typed, StringComparison.Ordinal))
            .ThenBy(one => one.Text, StringComparer.OrdinalIgnoreCase)
            .ToList();
        var (from, to) = (CodePoints.FromUnits(code, start), CodePoints.FromUnits(code, end));
        return new JsonObject
        {
            ["status"] = "ok",
            ["matches"] = new JsonArray([.. found.Select(one => (JsonNode)one.Text)]),
            ["cursor_start"] = from,
            ["cursor_end"] = to,
            ["metadata"] = new JsonObject
            {
                ["_jupyter_types_experimental"] = new JsonArray([.. found.Select(one => new JsonObject { ["start"] = from, ["end"] = to, ["text"] = one.Text, ["type"] = one.Kind })]),
            },
        };
    }

    public async Task<JsonObject> InspectAsync(JupyterRequest request)
    {
        var code = request.Get("code", "");
        var at = Cursor(request, code);
        // At a word's end, or after its opening bracket, the word is meant.
        if (at > 0 && (at == code.Length || !IsPartOfWord(code[at]))) at--;
        if (at > 0 && code[at] == '(') at--;
        var answer = await cells.AskAsync(About(Question.Inspect, code, at)) as Inspected;
        var data = (JsonObject?)answer?.Data?.DeepClone();
        // Front ends that know no Markdown show the same words.
        if (data is not null) data["text/plain"] ??= data["text/markdown"]?.DeepClone();
        return new JsonObject { ["status"] = "ok", ["found"] = data is not null, ["data"] = data ?? [], ["metadata"] = new JsonObject() };
    }

    private static int Cursor(JupyterRequest request, string code) => CodePoints.ToUnits(code, request.Get("cursor_pos", code.Length));

    private static AskAbout About(Question question, string code, int at)
    {
        var before = code.AsSpan(0, at);
        return new AskAbout(question, code, before.Count('\n'), at - (before.LastIndexOf('\n') + 1));
    }

    private static bool IsPartOfWord(char letter) => char.IsLetterOrDigit(letter) || letter == '_';
}
