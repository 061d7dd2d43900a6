using System.Text.Json.Nodes;
using Waywright.Tests.Reference;

namespace Waywright.EndToEnd.Commands;

/// <summary>The demo's published build as data: what it says of itself, and what is found when it runs again.</summary>
public sealed class DemoBuildTests(DemoBuild demo) : IClassFixture<DemoBuild>
{
    [Fact]
    public void Its_record_and_its_run_are_valid_by_the_shipped_schemas_and_not_when_they_are_broken()
    {
        var record = demo.Text("record.json");
        Assert.Equal([true], new ShippedSchema("run.schema.json").Accepts(demo.Text("run.json")));
        Assert.Equal(
            [true, false, false, false, false],
            new ShippedSchema("record.schema.json").Accepts(
                record,
                Broken(record, root => root["machine"] = "bench"),
                Broken(record, root => root["figures"]![0]!["unit"] = "furlong"),
                Broken(record, root => root["figures"]![0]!.AsObject().Remove("absoluteTolerance")),
                Broken(record, root => root["decisions"]![0]!["notebook"] = "../elsewhere.ipynb")));
    }

    [Fact]
    public async Task Other_random_numbers_decide_the_same_and_give_figures_that_agree_within_their_uncertainty()
    {
        Assert.Equal(1, (int)JsonNode.Parse(demo.Text("record.json"))!["seed"]!);
        var run = await Command.RunAsync("verify", demo.Folder, "--reseed", "7");
        Assert.True(run.ExitCode == 0, run.Out + run.Error);
        Assert.StartsWith("The same: all ", run.Out);
    }

    private static string Broken(string record, Action<JsonObject> harm)
    {
        var root = JsonNode.Parse(record)!.AsObject();
        harm(root);
        return root.ToJsonString();
    }
}

/// <summary>The demo, published once.</summary>
public sealed class DemoBuild : IAsyncLifetime
{
    private readonly TemporaryFolder _folder = new();

    internal string Folder => Path.Combine(_folder.Path, "page");

    internal string Text(string name) => File.ReadAllText(Path.Combine(Folder, name));

    public async ValueTask InitializeAsync()
    {
        var run = await Command.RunAsync("publish", "--out", Folder, "--date", "2026-03-01");
        Assert.True(run.ExitCode == 0, run.Error);
    }

    public ValueTask DisposeAsync()
    {
        _folder.Dispose();
        return ValueTask.CompletedTask;
    }
}
