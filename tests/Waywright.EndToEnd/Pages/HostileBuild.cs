using System.Text.Json.Nodes;
using Waywright.EndToEnd.Commands;

namespace Waywright.EndToEnd.Pages;

/// <summary>
/// Two published notebooks. One opens data files whose every text tries to be something else than text; the other is written by an author whose cells show
/// HTML that runs, fetches, frames and sends.
/// </summary>
public sealed class HostileBuild : IAsyncLifetime
{
    /// <summary>Names of rails and belts, and the lines of a note.</summary>
    internal static readonly string[] Names =
    [
        "<img src=x onerror=alert(1)>",
        "</script><script>alert(2)</script>",
        "<a href=\"javascript:alert(3)\">rail</a>",
        "<a href='https://example.invalid/'>rail</a>",
        "\"><svg onload=alert(4)>",
        "<!--ww:live--><b>bold</b>",
        "[rail](javascript:alert(5))",
        "R&amp;D &lt;i&gt;",
    ];

    private const string FileName = "<img src=x onerror=alert(6)>.csv";

    private const string Start = "using Waywright;\nusing Waywright.Notebooks;\nNotebook.Start();";

    private const string Rails = "var batch = SweepBatch.Read(Notebook.Data(\"../data/sweeps.csv\"), SetupBook.Read(Notebook.Data(\"../data/setups.json\")));";

    private readonly TemporaryFolder _folder = new();
    private Browser? _browser;

    internal string DataPage => Path.Combine(_folder.Path, "data-page", "index.html");

    internal string CellPage => Path.Combine(_folder.Path, "cell-page", "index.html");

    public async ValueTask InitializeAsync()
    {
        if (!Required.HasChromium)
            return;
        WriteData();
        _folder.Write("notebooks/data.ipynb", Notebook(
            Markdown($"# {Names[0]}\n\n{string.Join("\n\n", Names)}"),
            Code(Start),
            Code(Rails + "\nbatch"),
            Code("Notebook.Keep(\"rails\", batch.Grade())"),
            Code("batch.Sweeps[0].Setup"),
            Code("batch.Sweeps[1].Pool()"),
            Code("var log = BeltLog.Read(Notebook.Data(\"../data/spans.csv\"));\nlog"),
            Code("Notebook.Keep(\"belts/first\", log.Belts[0])"),
            Code("Notebook.Keep(\"belts/pair\", BeltPair.Compare(log.Belts[2], log.Belts[3]))"),
            Code($"Frames.Read(Notebook.Data(\"../data/{FileName}\"))"),
            Code("var note = System.IO.File.ReadAllText(Notebook.Data(\"../data/note.txt\"));\nConsole.Write(note);\nnote"),
            Code("throw new InvalidOperationException(note);", "raises-exception")));
        _folder.Write("notebooks/cells.ipynb", Notebook(
            Code(Start),
            Code(Rails + "\nbatch.Sweeps[1].Pool()"),
            Code("""
                HTML(@"<script>alert(1)</script><img src='x' onerror='alert(2)'><img src='https://example.invalid/a.png'>
                <link rel='stylesheet' href='https://example.invalid/a.css'><script src='https://example.invalid/a.js'></script>
                <iframe src='https://example.invalid/'></iframe><object data='https://example.invalid/a.svg'></object>
                <a id='link' href='javascript:alert(3)'>link</a><form action='https://example.invalid/'><button id='send'>send</button></form>")
                """)));
        await PublishAsync("data", DataPage);
        await PublishAsync("cells", CellPage);
        _browser = await Browser.StartAsync();
    }

    internal Task<OpenPage> OpenAsync(string file, string before = "")
    {
        Required.OfChromium();
        return _browser!.OpenAsync(file, new Reader(), before);
    }

    public async ValueTask DisposeAsync()
    {
        if (_browser is not null)
            await _browser.DisposeAsync();
        _folder.Dispose();
    }

    private async Task PublishAsync(string notebook, string page)
    {
        var run = await Command.RunInAsync(_folder.Path, "publish", $"notebooks/{notebook}.ipynb", "--out", Path.GetDirectoryName(page)!);
        Assert.True(run.ExitCode == 0, run.Error);
    }

    private void WriteData()
    {
        double[] heights = [0, 7, 9, 4, 1, 0];
        _folder.Write("data/sweeps.csv", "rail,face,pass,direction,position_mm,reading_um,setup\n" + string.Concat(
            from name in Names
            from face in (string[])["side", "top"]
            from station in Enumerable.Range(0, heights.Length)
            select FormattableString.Invariant($"{Quoted(name)},{face},1,forward,{station * 50},{heights[station]},{Quoted(Names[0])}\n")));
        _folder.Write("data/setups.json", new JsonObject
        {
            ["setups"] = new JsonArray(new JsonObject
            {
                ["id"] = Names[0],
                ["guide"] = "rail:" + Names[1],
                ["guide_straightness_um"] = 1.5,
                ["guide_known_from"] = "reversal",
                ["probe"] = "surface",
                ["held"] = "two supports at 50 mm, 200 mm",
                ["instrument"] = new JsonObject { ["name"] = Names[3], ["division_um"] = 1, ["read_to"] = "whole" },
            }),
        }.ToJsonString());
        _folder.Write("data/spans.csv", "belt,reel,fixture,span,density,frequency\n" + string.Concat(
            Names.Select((name, i) => FormattableString.Invariant($"{Quoted(name)},{Quoted(Names[0])},{Quoted(Names[1])},180 mm u 0.3 mm,8.4 g/m u 0.1 g/m,{90 + i} Hz u 0.4 Hz\n"))));
        _folder.Write("data/" + FileName, "name\n" + string.Concat(Names.Select(name => Quoted(name) + "\n")));
        _folder.Write("data/note.txt", string.Join('\n', Names));
    }

    private static string Quoted(string text) => $"\"{text.Replace("\"", "\"\"")}\"";

    private static JsonObject Markdown(string text) => new() { ["cell_type"] = "markdown", ["metadata"] = new JsonObject(), ["source"] = text };

    private static JsonObject Code(string text, params string[] tags) => new()
    {
        ["cell_type"] = "code",
        ["execution_count"] = null,
        ["metadata"] = new JsonObject { ["tags"] = new JsonArray([.. tags.Select(tag => (JsonNode)tag)]) },
        ["outputs"] = new JsonArray(),
        ["source"] = text,
    };

    private static string Notebook(params JsonObject[] cells) => new JsonObject
    {
        ["cells"] = new JsonArray([.. cells]),
        ["metadata"] = new JsonObject { ["kernelspec"] = new JsonObject { ["name"] = "waywright", ["language"] = "C#", ["display_name"] = "C#" } },
        ["nbformat"] = 4,
        ["nbformat_minor"] = 5,
    }.ToJsonString();
}
