using System.Diagnostics;
using System.Text.Json.Nodes;
using Waywright.EndToEnd.Commands;
using Waywright.EndToEnd.Jupyter;
using Waywright.EndToEnd.Pages;

namespace Waywright.EndToEnd.Packages;

/// <summary>The same notebooks, first cell and all, in the engine's own Jupyter tool, which fetches Waywright from a feed: the same figures.</summary>
[Collection(FeedUsers.Name)]
public sealed class StockToolTests(LocalFeed feed)
{
    private const string Tool = "Microsoft.dotnet-interactive";
    private const string ToolVersion = "1.0.712001";
    private const string FiguresType = "application/vnd.waywright.figures+json";

    private static readonly string[] Notebooks = ["grade-rails.ipynb", "mount-rails.ipynb", "tension-belts.ipynb"];

    [Fact]
    public async Task Verdicts_tables_and_figures_are_the_same_and_charts_and_frames_say_what_they_need()
    {
        Needed.OfClient();
        Needed.OfConverter();
        var tools = Path.Combine(feed.Folder, "stock");
        var installed = await LocalFeed.RunAsync(feed.Folder, "tool", "install", Tool, "--version", ToolVersion, "--tool-path", tools);
        Required.Of(installed.Exit == 0, $"{Tool} {ToolVersion} from NuGet ({installed.Said})");
        feed.Write("jupyter/kernels/stock/kernel.json", Spec(Path.Combine(tools, "dotnet-interactive")));
        foreach (var file in Directory.EnumerateFiles(Path.Combine(Command.Repository, "datasets"), "*", SearchOption.AllDirectories))
            Copy(file, Path.Combine(feed.Folder, "build", Path.GetRelativePath(Command.Repository, file)));
        foreach (var name in Notebooks) Copy(Path.Combine(Command.Repository, "notebooks", name), Path.Combine(feed.Folder, "build", "notebooks", name));
        feed.Write("build/notebooks/frames.ipynb", FrameNotebook());

        var page = Path.Combine(feed.Folder, "same");
        var published = await Command.RunAsync(["publish", .. Notebooks.Select(name => Path.Combine(Command.Repository, "notebooks", name)), "--out", page, "--date", "2026-03-01"]);
        Assert.True(published.ExitCode == 0, published.Error);
        Assert.Null(await ConvertAsync([.. Notebooks, "frames.ipynb"]));

        foreach (var name in Notebooks)
        {
            var (own, theirs) = (Read(Path.Combine(page, "notebooks", name)), Read(Path.Combine(feed.Folder, "converted", name)));
            Assert.DoesNotContain(theirs, output => (string?)output["output_type"] == "error");
            Assert.NotEmpty(Figures(own));
            Assert.Equal(Figures(own), Figures(theirs));
            Assert.Equal(Verdicts(own), Verdicts(theirs));
            Assert.Contains(theirs, output => Text(output["data"]?["text/html"]).Contains("Static only: this notebook host carries an FSharp.Core too old for live charts; Waywright", StringComparison.Ordinal));
        }

        var frames = Read(Path.Combine(feed.Folder, "converted", "frames.ipynb"));
        Assert.Contains("Frames can't be shown here", (string)frames.Single(output => (string?)output["output_type"] == "error")["evalue"]!);
    }

    // Without these it would listen on every interface, and send telemetry.
    // It restores in a folder of its own, where no file names the places of packages: said by variables.
    private string Spec(string program) => new JsonObject
    {
        ["argv"] = new JsonArray(program, "jupyter", "--default-kernel", "csharp", "{connection_file}", "--http-local-only"),
        ["display_name"] = "stock",
        ["language"] = "C#",
        ["interrupt_mode"] = "message",
        ["env"] = new JsonObject
        {
            ["DOTNET_INTERACTIVE_CLI_TELEMETRY_OPTOUT"] = "1",
            ["DOTNET_INTERACTIVE_SKIP_FIRST_TIME_EXPERIENCE"] = "1",
            ["NUGET_PACKAGES"] = feed.Packages,
            ["NUGET_FALLBACK_PACKAGES"] = LocalFeed.MachinePackages,
        },
    }.ToJsonString();

    // The first cell of every notebook, and a frame.
    private static string FrameNotebook()
    {
        var first = JsonNode.Parse(File.ReadAllText(Path.Combine(Command.Repository, "notebooks", Notebooks[0])))!["cells"]!.AsArray().First(cell => (string?)cell!["cell_type"] == "code")!.DeepClone();
        var frame = first.DeepClone();
        (frame["id"], frame["source"]) = ("frame", "Frames.Read(\"../datasets/published/expected.csv\")");
        return new JsonObject { ["cells"] = new JsonArray(first, frame), ["metadata"] = new JsonObject(), ["nbformat"] = 4, ["nbformat_minor"] = 5 }.ToJsonString();
    }

    private static void Copy(string from, string to)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(to)!);
        File.Copy(from, to);
    }

    private static List<JsonNode> Read(string notebook) =>
        [.. JsonNode.Parse(File.ReadAllText(notebook))!["cells"]!.AsArray().Where(cell => (string?)cell!["cell_type"] == "code").SelectMany(cell => cell!["outputs"]!.AsArray()).Select(output => output!)];

    // The tool sends JSON types as text.
    private static IEnumerable<string> Figures(IEnumerable<JsonNode> outputs) =>
        from output in outputs
        let figures = output["data"]?[FiguresType]
        where figures is not null
        select (figures is JsonObject ? figures : JsonNode.Parse(Text(figures))!).ToJsonString();

    private static IEnumerable<string> Verdicts(IEnumerable<JsonNode> outputs) =>
        outputs.Where(output => (string?)output["output_type"] == "execute_result").Select(output => Text(output["data"]!["text/plain"]));

    private static string Text(JsonNode? text) => text is JsonArray lines ? string.Concat(lines.Select(line => (string)line!)) : (string?)text ?? "";

    // Null when all went well, else what it complains of.
    private async Task<string?> ConvertAsync(string[] notebooks)
    {
        var start = new ProcessStartInfo(Needed.Python, ["-m", "nbconvert", "--to", "notebook", "--execute", "--allow-errors", "--ExecutePreprocessor.kernel_name=stock", "--output-dir", Path.Combine(feed.Folder, "converted"), .. notebooks])
        {
            WorkingDirectory = Path.Combine(feed.Folder, "build", "notebooks"),
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.Environment["JUPYTER_PATH"] = Path.Combine(feed.Folder, "jupyter");
        using var python = Process.Start(start)!;
        var output = python.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        var said = await python.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        await output;
        await python.WaitForExitAsync(TestContext.Current.CancellationToken);
        return python.ExitCode == 0 ? null : said;
    }
}
