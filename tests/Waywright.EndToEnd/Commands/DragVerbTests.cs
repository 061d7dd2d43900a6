using System.Text.Json.Nodes;

namespace Waywright.EndToEnd.Commands;

/// <summary>A drag log taken in by the grade verb.</summary>
public sealed class DragVerbTests
{
    private const string Folder = "datasets/demo/rails/";

    private static readonly string[] Grade = ["grade", Folder + "sweeps.csv", "--setups", Folder + "setups.json", "--rails", Folder + "rails.csv"];

    [Fact]
    public async Task The_json_has_grade_confidence_state_next_and_drag_of_each_rail_and_the_placement()
    {
        var answer = (await Command.RunAsync([.. Grade, "--drag", Folder + "drag.csv", "--positions", Folder + "positions.json", "--json"])).Json;
        var rails = answer["rails"]!.AsArray().ToDictionary(r => (string)r!["rail"]!, r => r!.AsObject());
        Assert.Equal(12, rails.Count);
        // The truth of the invented log.
        var truth = JsonNode.Parse(await File.ReadAllTextAsync(Path.Combine(Command.Repository, "datasets/demo/truth.json"), TestContext.Current.CancellationToken))!["drag"]!["rails"]!.AsArray();
        Assert.All(truth, t => Assert.Equal((string)t!["grade"]!, (string)rails[(string)t["rail"]!]["grade"]!));
        Assert.All(rails.Values, r =>
        {
            Assert.True(r.ContainsKey("confidence") && r.ContainsKey("drag"));
            Assert.NotEqual("", (string)r["next"]!);
            Assert.Equal(["gantry", "z"], r["state"]!.AsObject().Select(s => s.Key));
            Assert.All(r["state"]!.AsObject(), s => Assert.Contains((string)s.Value!["state"]!, new[] { "meets", "fails", "undecided" }));
        });
        Assert.Equal("fails", (string)rails["R09"]["state"]!["z"]!["state"]!);
        Assert.Equal("rail", (string)rails["R09"]["drag"]!["places"]![0]!["goes_with"]!);
        Assert.Equal("undecided", (string)rails["R12"]["state"]!["z"]!["state"]!);
        Assert.Equal("carriage", (string)rails["R10"]["drag"]!["places"]![0]!["goes_with"]!);
        Assert.Null(rails["R02"]["drag"]);
        var drag = rails["R06"]["features"]!.AsArray().Single(f => (string)f!["feature"]! == "drag")!;
        Assert.Equal(100, (double)drag["limit_percent"]!);
        // A sine of 0.24 N on 0.8 N: 2 x 0.24 x sin(0.45 pi) / 0.8 = 59 %, and noise.
        Assert.InRange((double)drag["value_percent"]!, 56, 64);
        Assert.Null(drag["value_um"]);
        var placed = answer["placement"]!["placed"]!.AsArray().Select(p => (string)p!["rail"]!).ToArray();
        Assert.Equal(5, placed.Length);
        Assert.DoesNotContain(placed, p => p is "R07" or "R09" or "R12");
    }

    [Fact]
    public async Task Without_a_log_no_rail_has_a_drag_and_the_basis_says_so()
    {
        var answer = (await Command.RunAsync([.. Grade, "--json"])).Json;
        Assert.EndsWith("Drag was not measured, so no grade says that a rail runs freely.", (string)answer["basis"]!, StringComparison.Ordinal);
        Assert.All(answer["rails"]!.AsArray(), r => Assert.Null(r!["drag"]));
        Assert.All(answer["rails"]!.AsArray(), r => Assert.DoesNotContain(r!["features"]!.AsArray(), f => (string)f!["feature"]! == "drag"));
    }

    [Fact]
    public async Task Each_limit_stands_beside_the_set_up_s_uncertainty()
    {
        var limits = (await Command.RunAsync([.. Grade, "--json"])).Json["limits"]!.AsArray();
        Assert.All(limits, l => Assert.Equal((double)l!["limit_um"]! < 3 * (double)l["expanded_uncertainty_um"]!, (bool)l["under_three_u"]!));
        Assert.Equal(["bench", "bench-plunger", "bench-wide"], limits.Select(l => (string)l!["setup"]!).Distinct().Order(StringComparer.Ordinal));
        Assert.Equal(["gantry", "z", "return"], limits.Where(l => (string)l!["setup"]! == "bench" && (string)l["feature"]! == "side").Select(l => (string)l!["grade"]!));
        Assert.Contains(limits, l => (bool)l!["under_three_u"]!);
        Assert.Contains("Under three times the set-up's U", (await Command.RunAsync(Grade)).Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_rail_that_the_drag_takes_away_leaves_a_position_unfilled_with_exit_1()
    {
        using var folder = new TemporaryFolder();
        var positions = folder.Write("positions.json", """{"positions":[{"name":"cross","width_mm":12,"length_mm":320,"grade":"gantry","face":"side","count":3}]}""");
        string[] ask = [.. Grade, "--positions", positions, "--json"];
        Assert.Equal(0, (await Command.RunAsync(ask)).ExitCode);
        var run = await Command.RunAsync([.. ask, "--drag", Folder + "drag.csv"]);
        Assert.Equal(1, run.ExitCode);
        var needs = (string)JsonNode.Parse(run.Out)!["placement"]!["unfilled"]!.AsArray().Single()!["needs"]!;
        Assert.StartsWith("cross needs one more 12 x 320 mm rail of gantry", needs, StringComparison.Ordinal);
        Assert.Contains("R12 may do after this: run a second carriage over 85 to 105 mm of rail R12", needs, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_wrong_log_ends_with_exit_2_and_all_that_is_wrong()
    {
        using var folder = new TemporaryFolder();
        const string header = "rail,carriage,direction,position_mm,force_n\n";
        var path = folder.Write("drag.csv", header + "R01,A,up,10,0.8\nR01,A,forward,20,-1\nR01,A,forward,30,hard\n");
        (await Command.RunAsync([.. Grade, "--drag", path])).IsRefused(path + ":2:", "found 'up', expected the direction: forward or back", path + ":3:", "found '-1'", path + ":4:", "found 'hard'");
        (await Command.RunAsync([.. Grade, "--drag", folder.Write("lbf.csv", "rail,carriage,direction,position_mm,force_lbf\n")])).IsRefused("no column force_n");
        (await Command.RunAsync([.. Grade, "--drag", folder.Write("none.csv", header + "R99,A,forward,10,0.8\n")])).IsRefused("a run of 1 reading");
        (await Command.RunAsync([.. Grade, "--drag", Path.Combine(folder.Path, "gone.csv")])).IsRefused("found no such file");
    }
}
