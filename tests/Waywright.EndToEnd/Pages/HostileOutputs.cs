using System.Security.Cryptography;
using System.Text.Json.Nodes;
using Waywright.EndToEnd.Commands;
using Waywright.Kernel;
using Waywright.Publishing;

namespace Waywright.EndToEnd.Pages;

/// <summary>
/// A page of hostile texts in every place that a page has for text: title, headings, words, raw cells, attached pictures, parameters, each kind of output, errors,
/// results, figures, file names. Its cells don't run: a session of ours says what they gave, since a data file never gets so far.
/// </summary>
public sealed class HostileOutputs : IAsyncLifetime
{
    private static readonly string[] Types =
    [
        "text/plain", "text/markdown", "text/latex", "text/javascript", "application/javascript", "application/json", "application/pdf", "application/xhtml+xml",
        "application/vnd.unknown+json", "image/svg+xml", "image/png", "image/png\" onerror=\"alert(1)",
    ];

    private readonly TemporaryFolder _folder = new();
    private Browser? _browser;

    internal string Page => Path.Combine(_folder.Path, "page", "index.html");

    public async ValueTask InitializeAsync()
    {
        if (!Required.HasChromium)
            return;
        _folder.Write("notebooks/texts.ipynb", Notebook());
        foreach (var (name, i) in Files.Select((name, i) => (name, i)))
            _folder.Write(name, $"{i}");
        var request = new PublishRequest { Notebooks = NotebookSet.Find([], _folder.Path), OutFolder = Path.GetDirectoryName(Page)!, Licence = HostileTexts.Names[0], Set = new Dictionary<string, string> { ["who"] = HostileTexts.Names[1] } };
        var result = await new Publisher((_, _) => Task.FromResult<ICellSession>(new Session()), TimeProvider.System).PublishAsync(request, null, TestContext.Current.CancellationToken);
        Assert.True(result.Status == PublishStatus.Published, result.Failure?.ToString());
        _browser = await Browser.StartAsync();
    }

    internal Task<OpenPage> OpenAsync(int width)
    {
        Required.OfChromium();
        return _browser!.OpenAsync(Page, new Reader(width));
    }

    public async ValueTask DisposeAsync()
    {
        if (_browser is not null)
            await _browser.DisposeAsync();
        _folder.Dispose();
    }

    // What a record takes as a file's path: no colon and no backslash, which mean something on Windows.
    private static IEnumerable<string> Files => HostileTexts.Names.Select(name => $"data/{name.Replace('/', '_').Replace(':', '_').Replace('\\', '_')}.csv");

    private static string Notebook()
    {
        // A JSON text can't hold half of a pair: that is refused with its line, and tested there.
        var texts = HostileTexts.All.Where(text => !text.Contains('\ud800')).ToArray();
        var cells = new JsonArray(Cell("code", $"string who = {"\"nobody\""}; // {HostileTexts.Names[0]}", "parameters"), Cell("code", "outputs"), Cell("code", "raises", "raises-exception"));
        foreach (var text in texts)
        {
            cells.Add(Cell("markdown", $"# {text}\n\n{text}\n\n- {text}\n\n> **Caution:** {text}\n\n| {text} |\n| --- |\n| {text} |\n\n`{text}`\n\n    {text}\n\n[{text}]({text})\n\n<{text}>\n\n![{text}](attachment:a.png)"));
            cells[^1]!["attachments"] = new JsonObject { ["a.png"] = new JsonObject { ["image/png\" onerror=\"alert(1)"] = text } };
            cells.Add(Cell("raw", text));
            cells.Add(Cell("code", "// " + text));
        }

        return new JsonObject
        {
            ["cells"] = cells,
            ["metadata"] = new JsonObject { ["waywright"] = new JsonObject { ["build"] = string.Concat(texts.Where(t => t.Length < 100)) }, ["title"] = texts[0] },
            ["nbformat"] = 4,
            ["nbformat_minor"] = 5,
        }.ToJsonString();
    }

    private static JsonObject Cell(string type, string source, params string[] tags)
    {
        var cell = new JsonObject { ["cell_type"] = type, ["metadata"] = new JsonObject { ["tags"] = new JsonArray([.. tags.Select(tag => (JsonNode)tag)]) }, ["source"] = source };
        if (type == "code")
            (cell["execution_count"], cell["outputs"]) = (null, new JsonArray());
        return cell;
    }

    private sealed class Session : ICellSession
    {
        public Task<CellRun> RunAsync(string cellId, string code, Action<JsonObject>? onOutput, CancellationToken cancel) => Task.FromResult(code switch
        {
            "outputs" => new CellRun(CellOutcome.Done, [.. Outputs()], null),
            "raises" => new CellRun(CellOutcome.Raised, [new JsonObject { ["ename"] = HostileTexts.Names[0], ["evalue"] = string.Join('\n', HostileTexts.All), ["output_type"] = "error", ["traceback"] = Lines() }], HostileTexts.Names[0]),
            _ => new CellRun(CellOutcome.Done, [], null),
        });

        public ValueTask DisposeAsync() => ValueTask.CompletedTask;

        private static JsonArray Lines() => [.. HostileTexts.All.Select(text => (JsonNode)text)];

        private static IEnumerable<JsonObject> Outputs()
        {
            foreach (var stream in (string[])["stdout", "stderr"])
                yield return new JsonObject { ["name"] = stream, ["output_type"] = "stream", ["text"] = string.Join('\n', HostileTexts.All) };
            foreach (var type in Types)
            {
                foreach (var text in HostileTexts.Names)
                    yield return Data(type, type.EndsWith("json", StringComparison.Ordinal) ? new JsonObject { [text] = text } : text);
            }

            foreach (var (text, i) in HostileTexts.All.Select((text, i) => (text, i)))
            {
                var id = FormattableString.Invariant($"texts/{i}");
                var kept = new KeptResult(id, "Use " + text, text, [new Figure($"{id}/text", text, null, text, "1", method: text)]);
                yield return Data("application/vnd.waywright.figures+json", JsonNode.Parse(kept.ToJson())!);
            }

            foreach (var (name, i) in Files.Select((name, i) => (name, i)))
                yield return Data("application/vnd.waywright.input+json", JsonNode.Parse(new InputFile(name, Convert.ToHexStringLower(SHA256.HashData(System.Text.Encoding.UTF8.GetBytes($"{i}"))), $"{i}".Length).ToJson())!);
        }

        private static JsonObject Data(string type, JsonNode value) => new() { ["data"] = new JsonObject { [type] = value }, ["metadata"] = new JsonObject(), ["output_type"] = "display_data" };
    }
}
