namespace Waywright.EndToEnd.Commands;

/// <summary>Recordings taken in by the pluck verb.</summary>
public sealed class PluckVerbTests
{
    private const string Belts = "datasets/demo/belts/";

    [Fact]
    public async Task The_json_has_the_note_of_each_take_their_combination_and_the_tension()
    {
        var answer = (await Command.RunAsync("pluck", Belts + "left.wav", Belts + "left.wav", "--span", "180 mm u 0.3 mm", "--density", "8.4 g/m u 0.1 g/m", "--json")).Json;
        var takes = answer["takes"]!.AsArray();
        Assert.Equal(2, takes.Count);
        Assert.All(takes, take =>
        {
            Assert.Equal(Belts + "left.wav", (string)take!["file"]!);
            Assert.True((bool)take["usable"]!);
            Assert.Empty(take["reasons"]!.AsArray());
            Assert.Equal(5, take["plucks"]!.AsArray().Count);
            Assert.InRange((double)take["frequency_hz"]!["standard_uncertainty"]!, 0.05, 0.3);
        });
        var note = (double)answer["combined"]!["frequency_hz"]!["value"]!;
        // Invented plucks scatter by 0.12 Hz about 95.6 Hz.
        Assert.InRange(note, 95.4, 95.8);
        Assert.Equal(4 * 0.0084 * Math.Pow(0.18 * note, 2), (double)answer["tension_n"]!["value"]!, 9);
    }

    [Fact]
    public async Task Without_span_and_density_there_is_a_note_and_no_tension()
    {
        var run = await Command.RunAsync("pluck", Belts + "right.wav");
        Assert.Equal(0, run.ExitCode);
        Assert.StartsWith("The span sounds 89.", run.Out, StringComparison.Ordinal);
        Assert.Null((await Command.RunAsync("pluck", Belts + "right.wav", "--json")).Json["tension_n"]);
    }

    [Fact]
    public async Task A_take_without_a_usable_pluck_says_why_and_ends_with_exit_1()
    {
        var run = await Command.RunAsync("pluck", Belts + "left-finger.wav");
        Assert.Equal(1, run.ExitCode);
        Assert.StartsWith("Not usable: ", run.Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_note_that_sounds_in_the_control_take_too_is_not_used()
    {
        var run = await Command.RunAsync("pluck", Belts + "left.wav", "--control", Belts + "left.wav");
        Assert.Equal(1, run.ExitCode);
        Assert.Contains("control take matches", run.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("README.md", "README.md: found a file that isn't a WAV")]
    [InlineData("no.wav", "no.wav: found no such file")]
    [InlineData("docs", "docs: found a folder")]
    public async Task A_file_that_is_no_recording_is_one_line_and_exit_2(string file, string message)
    {
        var run = await Command.RunAsync("pluck", file);
        Assert.Equal((2, ""), (run.ExitCode, run.Out));
        Assert.StartsWith(message, run.Error, StringComparison.Ordinal);
        Assert.Single(run.Error.Trim().Split('\n'));
    }

    [Fact]
    public async Task The_faults_of_several_files_are_told_together()
        => Assert.Equal(2, (await Command.RunAsync("pluck", "no.wav", Belts + "left.wav", "README.md")).Error.Trim().Split('\n').Length);

    [Theory]
    [InlineData("--lowest", "5 Hz")]
    [InlineData("--highest", "10 Hz")]
    [InlineData("--mains", "55")]
    [InlineData("--mains", "abc")]
    [InlineData("--span", "180 mm")]
    [InlineData("--lowest", "quick")]
    public async Task A_wrong_option_ends_with_exit_2(string option, string value)
    {
        var run = await Command.RunAsync("pluck", Belts + "left.wav", option, value);
        Assert.Equal((2, ""), (run.ExitCode, run.Out));
        Assert.Contains(option, run.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("0 mm", "8.4 g/m")]
    [InlineData("180 mm", "0 g/m")]
    public async Task A_span_or_density_of_nothing_ends_with_exit_2(string span, string density)
        => Assert.Equal(2, (await Command.RunAsync("pluck", Belts + "left.wav", "--span", span, "--density", density)).ExitCode);
}
