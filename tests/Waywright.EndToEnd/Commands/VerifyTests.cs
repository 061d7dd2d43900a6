using System.IO.Compression;
using System.Security.Cryptography;
using System.Text.Json.Nodes;

namespace Waywright.EndToEnd.Commands;

/// <summary>One small build, published once; each test harms a copy of it at another path in its own way.</summary>
public sealed class VerifyTests : IAsyncLifetime
{
    private readonly TemporaryFolder _folder = new();

    private string Published => Path.Combine(_folder.Path, "artifacts", "published");

    public async ValueTask InitializeAsync()
    {
        _folder.Write("data/spans.csv", await File.ReadAllTextAsync(Path.Combine(Command.Repository, "datasets/demo/belts/spans.csv")));
        _folder.Write("notebooks/belts.ipynb", Notebook(
            "using Waywright;\nusing Waywright.Notebooks;\nNotebook.Start();",
            "var log = BeltLog.Read(Notebook.Data(\"../data/spans.csv\"));\nNotebook.Keep(\"belts/left\", log[\"left\"])"));
        var run = await Command.RunInAsync(_folder.Path, "publish", "--date", "2026-03-01");
        Assert.True(run.ExitCode == 0, run.Error);
    }

    public ValueTask DisposeAsync()
    {
        _folder.Dispose();
        return ValueTask.CompletedTask;
    }

    [Fact]
    public async Task A_build_that_was_zipped_moved_and_unzipped_elsewhere_gives_the_same_figures()
    {
        var copy = Moved("moved as a zip/deep");
        var run = await Command.RunAsync("verify", copy);
        Assert.True(run.ExitCode == 0, run.Out + run.Error);
        Assert.StartsWith("The same: all ", run.Out);
        Assert.True(Figures(copy).Count > 0, "there is something to compare");
    }

    [Fact]
    public async Task A_figure_off_by_two_tolerances_another_unit_and_another_id_are_found_even_with_the_hash_brought_up_to_date()
    {
        var copy = Moved("figure");
        var record = Record(copy);
        var figure = record["figures"]!.AsArray().First(f => f!["standardUncertainty"] is not null)!;
        var u = (double)figure["standardUncertainty"]!;
        var value = (double)figure["value"]!;
        var tolerance = Math.Max(Math.Max((double)figure["absoluteTolerance"]!, 1e-6 * u), Math.Max((double)figure["relativeTolerance"]!, 1e-9) * Math.Abs(value));
        var id = (string)figure["id"]!;

        figure["value"] = value + (0.5 * tolerance);
        Save(copy, record);
        Assert.Equal(0, (await Command.RunAsync("verify", copy)).ExitCode);

        figure["value"] = value + (2 * tolerance);
        Save(copy, record);
        await DiffersAsync(copy, id + ": recorded ");

        figure["value"] = value;
        figure["unit"] = "kN";
        Save(copy, record);
        await DiffersAsync(copy, $"{id}: recorded in 'kN'");

        figure["unit"] = (string)Record(Published)["figures"]!.AsArray().First(f => (string)f!["id"]! == id)!["unit"]!;
        figure["id"] = "belts/renamed";
        Save(copy, record);
        await DiffersAsync(copy, "belts/renamed: recorded, and not found", $"{id}: found by the rerun, and not recorded");
    }

    [Fact]
    public async Task A_changed_missing_or_added_decision_is_found_even_where_every_figure_is_the_same()
    {
        var copy = Moved("decision");
        var record = Record(copy);
        var decision = record["decisions"]![0]!;
        var verdict = (string)decision["verdict"]!;
        decision["verdict"] = "Leave it as it is.";
        Save(copy, record);
        await DiffersAsync(copy, $"decision belts/left: recorded 'Leave it as it is.', found '{verdict}'");

        decision["verdict"] = verdict;
        decision["id"] = "belts/other";
        Save(copy, record);
        await DiffersAsync(copy, "decision belts/other: recorded, and not found", "decision belts/left: found by the rerun, and not recorded");
    }

    [Fact]
    public async Task One_changed_byte_of_the_data_is_told_from_a_change_of_the_kit()
    {
        var copy = Moved("data");
        var data = Path.Combine(copy, "inputs", "data", "spans.csv");
        await File.AppendAllTextAsync(data, " ", TestContext.Current.CancellationToken);
        foreach (var arguments in new string[][] { ["verify", copy, "--check-only"], ["verify", copy] })
        {
            var run = await Command.RunAsync(arguments);
            Assert.Equal(1, run.ExitCode);
            Assert.StartsWith("Your data changed", run.Out);
            Assert.Contains("inputs/data/spans.csv", run.Out);
        }

        var kit = Moved("kit");
        var record = Record(kit);
        record["software"]!.AsArray().First(s => (string)s!["name"]! == "Waywright")!["version"] = "0.0.1-older";
        Save(kit, record);
        var other = await Command.RunAsync("verify", kit, "--json");
        Assert.Equal(0, other.ExitCode);
        Assert.Contains("0.0.1-older", (string)other.Json["other_software"]![0]!);
        record["figures"]!.AsArray().First(f => f!["value"] is not null)!["value"] = -1;
        Save(kit, record);
        Assert.StartsWith("The kit changed", (await Command.RunAsync("verify", kit)).Out);
    }

    [Fact]
    public async Task A_changed_page_and_a_changed_cell_are_found_without_a_rerun()
    {
        var copy = Moved("page");
        await File.AppendAllTextAsync(Path.Combine(copy, "index.html"), "<p>", TestContext.Current.CancellationToken);
        var run = await Command.RunAsync("verify", copy, "--check-only");
        Assert.Equal(1, run.ExitCode);
        Assert.Contains("index.html: changed since it was published", run.Out);
        await File.WriteAllTextAsync(Path.Combine(copy, "late.txt"), "later", TestContext.Current.CancellationToken);
        Assert.Contains("late.txt: added since it was published", (await Command.RunAsync("verify", copy, "--check-only")).Out);
        var cell = Path.Combine(copy, "notebooks", "belts.ipynb");
        await File.WriteAllTextAsync(cell, (await File.ReadAllTextAsync(cell, TestContext.Current.CancellationToken)).Replace("Notebook.Start();", "Notebook.Start(); ", StringComparison.Ordinal), TestContext.Current.CancellationToken);
        Assert.StartsWith("The notebooks changed", (await Command.RunAsync("verify", copy, "--check-only")).Out);
    }

    [Fact]
    public async Task What_is_no_published_build_is_refused()
    {
        (await Command.RunAsync("verify", Path.Combine(_folder.Path, "nowhere"))).IsRefused("no such folder", "a build that waywright published");
        (await Command.RunAsync("verify", Path.Combine(_folder.Path, "data"))).IsRefused("a folder without record.json");
        (await Command.RunAsync("verify", Published, "--reseed", "7")).IsRefused("--reseed", "without a parameter 'seed'");
        (await Command.RunAsync("verify", Published, "--check-only", "--reseed", "7")).IsRefused("--check-only");
        var copy = Moved("broken");
        await File.WriteAllTextAsync(Path.Combine(copy, "record.json"), "{ not json", TestContext.Current.CancellationToken);
        (await Command.RunAsync("verify", copy)).IsRefused("record.json:1:");
    }

    private static async Task DiffersAsync(string copy, params string[] said)
    {
        var run = await Command.RunAsync("verify", copy);
        Assert.Equal(1, run.ExitCode);
        Assert.All(said, part => Assert.Contains(part, run.Out));
    }

    private string Moved(string name)
    {
        var zip = Path.Combine(_folder.Path, Guid.NewGuid().ToString("N") + ".zip");
        ZipFile.CreateFromDirectory(Published, zip);
        var target = Path.Combine(_folder.Path, "elsewhere", name);
        ZipFile.ExtractToDirectory(zip, target);
        return target;
    }

    private static JsonNode Record(string build) => JsonNode.Parse(File.ReadAllText(Path.Combine(build, "record.json")))!;

    private static JsonArray Figures(string build) => Record(build)["figures"]!.AsArray();

    // As somebody would who wants to hide the change: with the hash in run.json brought up to date.
    private static void Save(string build, JsonNode record)
    {
        File.WriteAllText(Path.Combine(build, "record.json"), record.ToJsonString());
        var run = JsonNode.Parse(File.ReadAllText(Path.Combine(build, "run.json")))!;
        run["files"]!["record.json"] = Convert.ToHexStringLower(SHA256.HashData(File.ReadAllBytes(Path.Combine(build, "record.json"))));
        File.WriteAllText(Path.Combine(build, "run.json"), run.ToJsonString());
    }

    private static string Notebook(params string[] cells) => new JsonObject
    {
        ["cells"] = new JsonArray([.. cells.Select((code, i) => new JsonObject { ["cell_type"] = "code", ["execution_count"] = null, ["id"] = $"cell-{i + 1}", ["metadata"] = new JsonObject(), ["outputs"] = new JsonArray(), ["source"] = code })]),
        ["metadata"] = new JsonObject(),
        ["nbformat"] = 4,
        ["nbformat_minor"] = 5,
    }.ToJsonString();
}
