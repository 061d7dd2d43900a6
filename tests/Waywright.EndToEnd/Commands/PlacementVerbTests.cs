namespace Waywright.EndToEnd.Commands;

/// <summary>Which rail goes where, by the command.</summary>
public sealed class PlacementVerbTests
{
    private const string Folder = "datasets/demo/rails/";

    private static readonly string[] Grade = ["grade", Folder + "sweeps.csv", "--setups", Folder + "setups.json", "--rails", Folder + "rails.csv", "--json", "--positions"];

    [Fact]
    public async Task The_demo_machine_gets_rails_that_fit_and_the_runner_up_is_another_set()
    {
        var answer = (await Command.RunAsync([.. Grade, Folder + "positions.json"])).Json["placement"]!;
        Assert.True((bool)answer["proven"]!);
        Assert.Empty(answer["unfilled"]!.AsArray());
        var placed = answer["placed"]!.AsArray().ToDictionary(p => (string)p!["position"]!, p => (string)p!["rail"]!);
        Assert.Equal(["cross", "left", "lift 1", "lift 2", "right"], placed.Keys.Order(StringComparer.Ordinal));
        // Widths of rails.csv: R05, R08, R11 and R12 are 12 mm wide, the others 9 mm.
        Assert.Contains(placed["cross"], new[] { "R05", "R08", "R12" });
        Assert.DoesNotContain(placed.Where(p => p.Key != "cross"), p => p.Value is "R05" or "R08" or "R11" or "R12" or "R07" or "R09");
        var runnerUp = answer["runner_up"]!.AsArray().Select(p => (string)p!["rail"]!).Order(StringComparer.Ordinal);
        Assert.NotEqual(placed.Values.Order(StringComparer.Ordinal), runnerUp);
    }

    [Fact]
    public async Task A_position_that_can_not_be_filled_ends_with_exit_1_and_says_what_would_fill_it()
    {
        using var folder = new TemporaryFolder();
        var text = await File.ReadAllTextAsync(Path.Combine(Command.Repository, Folder, "positions.json"));
        var run = await Command.RunAsync([.. Grade, folder.Write("positions.json", text.Replace("\"count\": 2", "\"count\": 9", StringComparison.Ordinal))]);
        Assert.Equal(1, run.ExitCode);
        var lacking = System.Text.Json.Nodes.JsonNode.Parse(run.Out)!["placement"]!["unfilled"]!.AsArray().Single()!;
        Assert.StartsWith("lift", (string)lacking["position"]!, StringComparison.Ordinal);
        Assert.Contains("9 x 320 mm", (string)lacking["needs"]!, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Wrong_positions_end_with_exit_2()
    {
        using var folder = new TemporaryFolder();
        var path = folder.Write("positions.json", "{\"positions\":[{\"name\":\"left\",\"width_mm\":-9,\"length_mm\":320,\"grade\":\"gantry\",\"face\":\"bottom\"}]}");
        (await Command.RunAsync([.. Grade, path])).IsRefused(path, "width_mm", "face");
        (await Command.RunAsync([.. Grade, path + ".none"])).IsRefused("found no such file");
    }
}
