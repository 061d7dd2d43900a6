using System.Text.Json.Nodes;

namespace Waywright.EndToEnd.Commands;

/// <summary>What straightness and grade tell of uncertainty.</summary>
public sealed class UncertaintyJsonTests
{
    private const string Sweeps = "datasets/demo/rails/sweeps.csv";
    private const string Rails = "datasets/demo/rails/rails.csv";
    private const string Setups = "datasets/demo/rails/setups.json";

    [Fact]
    public async Task With_a_set_up_each_line_has_estimate_interval_floor_and_standard_uncertainty()
    {
        var answer = (await Command.RunAsync("straightness", Sweeps, "--setups", Setups, "--json")).Json.AsArray();
        Assert.Equal(24, answer.Count);
        foreach (var face in answer)
        {
            Assert.Equal("from the set-up", (string)face!["uncertainty"]!);
            Assert.NotEmpty(face["budget"]!.AsArray());
            Assert.NotEmpty(face["corrections"]!.AsArray());
            foreach (var line in new[] { "end_points", "least_squares", "minimum_zone" })
            {
                var (low, high) = ((double)face[line]!["interval_95_um"]![0]!, (double)face[line]!["interval_95_um"]![1]!);
                Assert.InRange((double)face[line]!["estimate_um"]!, low, high);
                Assert.InRange((double)face[line]!["STRt_um"]!, (double)face[line]!["estimate_um"]!, high);
                Assert.InRange((double)face[line]!["noise_floor_95_um"]!, 1, 8);
                Assert.Equal((high - low) / (2 * 1.959964), (double)face[line]!["standard_uncertainty_um"]!, 1e-5);
                Assert.NotNull(face[line]!["STRq_uncertainty"]!["interval_95_um"]);
            }
        }
    }

    [Fact]
    public async Task Without_a_set_up_it_says_that_none_was_given()
    {
        foreach (var file in new[] { Sweeps, "datasets/published/laser_guide_axis1.csv" })
        {
            foreach (var face in (await Command.RunAsync("straightness", file, "--json")).Json.AsArray())
            {
                Assert.Equal("no set-up given", (string)face!["uncertainty"]!);
                Assert.Null(face["minimum_zone"]!["estimate_um"]);
            }
        }
    }

    [Fact]
    public async Task Two_runs_give_the_same_bytes()
    {
        var first = await Command.RunAsync("straightness", Sweeps, "--setups", Setups, "--json");
        Assert.Equal(first.Out, (await Command.RunAsync("straightness", Sweeps, "--setups", Setups, "--json")).Out);
    }

    [Fact]
    public async Task Grade_tells_each_feature_with_its_interval_and_how_sure_the_answer_is()
    {
        var answer = (await Command.RunAsync("grade", Sweeps, "--setups", Setups, "--rails", Rails, "--json")).Json;
        Assert.Contains("at 95 %", (string)answer["basis"]!, StringComparison.Ordinal);
        foreach (var rail in answer["rails"]!.AsArray())
        {
            var proven = (string)rail!["grade"]! is not "measure again";
            Assert.Equal(proven, rail["confidence"] is not null);
            Assert.All(rail["features"]!.AsArray(), f => Assert.True((double)f!["interval_95_um"]![0]! <= (double)f["interval_95_um"]![1]!));
            if (proven && (string)rail["grade"]! != "return")
                Assert.All(rail["features"]!.AsArray().Where(f => f!["limit_um"] is not null), f => Assert.True((double)f!["estimate_um"]! < (double)f["limit_um"]!));
            Assert.Equal(["side", "side local", "top mounted", "top local", "top free"], rail["features"]!.AsArray().Select(f => (string)f!["feature"]!));
            Assert.Equal([true, true, true, false, false], rail["features"]!.AsArray().Select(f => f!["limit_um"] is not null));
        }
    }

    [Fact]
    public async Task Own_rules_grade_by_their_limits_and_wrong_ones_end_with_exit_2()
    {
        using var folder = new TemporaryFolder();
        const string rules = """{"return_above_side_um":50,"grades":[{"grade":"shelf","limits":[{"feature":"side","limit_um":50}]}]}""";
        var rails = (await Command.RunAsync("grade", Sweeps, "--setups", Setups, "--json", "--rules", folder.Write("rules.json", rules))).Json["rails"]!.AsArray();
        var grades = rails.ToDictionary(r => (string)r!["rail"]!, r => (string)r!["grade"]!);
        Assert.Equal("return", grades["R09"]);
        Assert.Equal("shelf", grades["R01"]);
        Assert.Equal("meets", (string)rails.Single(r => (string)r!["rail"]! == "R01")!["state"]!["shelf"]!["state"]!);
        var path = folder.Write("wrong.json", rules.Replace("\"side\"", "\"hue\"", StringComparison.Ordinal));
        (await Command.RunAsync("grade", Sweeps, "--rules", path)).IsRefused(path, "found 'hue'");
    }

    [Fact]
    public async Task Against_an_unknown_guide_no_rail_is_graded_or_returned()
    {
        using var folder = new TemporaryFolder();
        var setups = JsonNode.Parse(await File.ReadAllTextAsync(Path.Combine(Command.Repository, Setups)))!;
        foreach (var setup in setups["setups"]!.AsArray())
        {
            setup!.AsObject().Remove("guide_straightness_um");
            setup["guide_known_from"] = "unknown";
        }

        var path = folder.Write("setups.json", setups.ToJsonString());
        var rails = (await Command.RunAsync("grade", Sweeps, "--setups", path, "--json")).Json["rails"]!.AsArray();
        Assert.All(rails, rail => Assert.Equal("measure again", (string)rail!["grade"]!));
        var faces = (await Command.RunAsync("straightness", Sweeps, "--setups", path, "--json")).Json.AsArray();
        Assert.All(faces, face => Assert.Contains("rail against guide", (string)face!["uncertainty"]!, StringComparison.Ordinal));
    }
}
