namespace Waywright.EndToEnd.Commands;

public sealed class PlanVerbTests
{
    private static Task<Command> PlanAsync(string limit, params string[] more) => Command.RunAsync(["plan", "--dial", "0.01mm", "--length", "320 mm", "--limit", limit, .. more]);

    [Fact]
    public async Task A_limit_that_can_be_decided_ends_with_exit_0_and_its_figures()
    {
        var command = await PlanAsync("30um", "--json");
        Assert.Equal(0, command.ExitCode);
        var answer = command.Json;
        Assert.True((bool)answer["decidable"]!);
        Assert.Equal(14, (int)answer["stations"]!);
        Assert.InRange((double)answer["smallest_decidable_limit_um"]!, 20, 30);
        Assert.InRange((double)answer["chance_half_limit_accepted"]!, 0.9, 1);
        Assert.Equal(1, (int)answer["passes_needed"]!);
        // Width of the narrowest zone of noise of q / sqrt 12 at 14 stations lies between that of 8 (2.45 on average, 3.8 at 95 %) and 18 (3.4, 4.6), by SciPy: tests/Waywright.Tests/Reference/noise_floor.py.
        Assert.InRange((double)answer["mean_reading_of_a_straight_rail_um"]!, 2.45 * 10 / Math.Sqrt(12), 3.4 * 10 / Math.Sqrt(12));
        Assert.InRange((double)answer["noise_floor_95_um"]!, 3.8 * 10 / Math.Sqrt(12), 4.6 * 10 / Math.Sqrt(12));
        Assert.Contains("certificate or reversal", (string)answer["next"]!, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_limit_that_can_not_be_decided_ends_with_exit_1_and_what_would_decide_it()
    {
        var command = await PlanAsync("10um", "--json");
        Assert.Equal(1, command.ExitCode);
        Assert.False((bool)command.Json["decidable"]!);
        Assert.Null(command.Json["passes_needed"]);
        Assert.StartsWith("No number of passes settles this. ", (string)command.Json["next"]!, StringComparison.Ordinal);
        var lays = command.Json["lays_needed"]!.ToString();
        Assert.Equal(0, (await PlanAsync("10um", "--passes", lays, "--lays", lays)).ExitCode);
        Assert.Equal(0, (await PlanAsync("10um", "--read-to", "tenth")).ExitCode);
    }

    [Fact]
    public async Task The_verdict_comes_first_and_plain_figures_are_those_of_json()
    {
        var plain = await PlanAsync("10um", "--read-to", "tenth", "--repeatability", "2um", "--passes", "2", "--guide", "1um");
        var json = (await PlanAsync("10um", "--read-to", "tenth", "--repeatability", "2um", "--passes", "2", "--guide", "1um", "--json")).Json;
        Assert.Equal(1, plain.ExitCode);
        Assert.StartsWith((string)json["verdict"]!, plain.Out, StringComparison.Ordinal);
        Assert.Matches($@"passes needed +{json["passes_needed"]}\b", plain.Out);
        Assert.Contains((string)json["next"]!, plain.Out, StringComparison.Ordinal);
        Assert.Equal("", plain.Error);
    }

    [Fact]
    public async Task Against_an_unknown_guide_nothing_is_decided()
    {
        var command = await PlanAsync("100um", "--guide", "unknown", "--json");
        Assert.Equal(1, command.ExitCode);
        Assert.Contains("rank and pair", (string)command.Json["verdict"]!, StringComparison.Ordinal);
        Assert.Null(command.Json["smallest_decidable_limit_um"]);
    }

    [Theory]
    [InlineData("--limit: found '-30um', expected a length above 0", "-30um")]
    [InlineData("--limit: found '0um', expected a length above 0", "0um")]
    [InlineData("--limit: found 'NaNum'", "NaNum")]
    [InlineData("--limit: found 'furlong'", "30 furlong")]
    [InlineData("--limit: found '30'", "30")]
    [InlineData("--limit: found '1e300um'", "1e300um")]
    [InlineData("--stations: found '3', expected a whole number from 4 to 500", "30um", "--stations", "3")]
    [InlineData("--stations: found 'x', expected a whole number", "30um", "--stations", "x")]
    [InlineData("--stations: found '4.5', expected a whole number", "30um", "--stations", "4.5")]
    [InlineData("--stations: found '99999999999', expected a whole number", "30um", "--stations", "99999999999")]
    [InlineData("--passes: found '0', expected a whole number from 1 to 500", "30um", "--passes", "0")]
    [InlineData("--lays: found '2', expected 1 or more, and no more than the passes", "30um", "--lays", "2")]
    [InlineData("--read-to: found 'third', expected whole, half or tenth", "30um", "--read-to", "third")]
    [InlineData("--guide: found '-1'", "30um", "--guide", "-1um")]
    [InlineData("--guide: found 'N', expected a length", "30um", "--guide", "3 N")]
    [InlineData("--repeatability: found '-1'", "30um", "--repeatability", "-1um")]
    public async Task A_wrong_value_ends_with_one_clear_error_and_exit_2(string said, string limit, params string[] more)
        => (await PlanAsync(limit, more)).IsRefused(said);

    [Fact]
    public async Task What_is_not_given_is_asked_for()
        => (await Command.RunAsync("plan", "--dial", "0.01mm")).IsRefused("--length", "--limit");
}
