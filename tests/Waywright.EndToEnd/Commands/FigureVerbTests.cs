using System.Text;

namespace Waywright.EndToEnd.Commands;

public sealed class FigureVerbTests
{
    // Figures of expected.csv, whose sources stand in datasets/published/datapackage.json.
    [Theory]
    [InlineData("laser_guide_axis1.csv", 10, 0.866667, 0.703636, 0.225066, 0.65)]
    [InlineData("laser_guide_axis2.csv", 10, 1.288889, 1.083636, 0.299029, 0.933333)]
    [InlineData("machine_tool_standard_example.csv", 5, 1.0, 1.0, 0.489898, 1.0)]
    [InlineData("autocollimator_lecture.csv", 7, 3.0, 3.035714, 0.94153, 3.0)]
    public async Task Straightness_of_a_published_table_is_the_published_figure(string table, int stations, double ends, double squares, double rms, double zone)
    {
        var answer = (await Command.RunAsync("straightness", $"datasets/published/{table}", "--json")).Json[0]!;
        Assert.Null(answer["rail"]);
        Assert.Null(answer["face"]);
        Assert.Equal(stations, (int)answer["stations"]!);
        Assert.Equal(ends, (double)answer["end_points"]!["STRt_um"]!, 5.1e-7);
        Assert.Equal(squares, (double)answer["least_squares"]!["STRt_um"]!, 5.1e-7);
        Assert.Equal(rms, (double)answer["least_squares"]!["STRq_um"]!, 5.1e-7);
        Assert.Equal(zone, (double)answer["minimum_zone"]!["STRt_um"]!, 5.1e-7);
        Assert.NotEmpty(answer["minimum_zone"]!["contacts"]!.AsArray());
    }

    [Fact]
    public async Task The_demo_batch_is_graded_as_its_truth_intends()
    {
        var truth = System.Text.Json.Nodes.JsonNode.Parse(await File.ReadAllTextAsync(Path.Combine(Command.Repository, "datasets", "demo", "truth.json")))!;
        var answer = (await Command.RunAsync("grade", "datasets/demo/rails/sweeps.csv", "--setups", "datasets/demo/rails/setups.json", "--rails", "datasets/demo/rails/rails.csv", "--json")).Json["rails"]!.AsArray();
        var intended = truth["rails"]!.AsArray().ToDictionary(r => (string)r!["rail"]!, r => (string)r!["grade"]!);
        Assert.Equal(12, intended.Count);
        Assert.Equal(intended.OrderBy(r => r.Key), answer.ToDictionary(r => (string)r!["rail"]!, r => (string)r!["grade"]!).OrderBy(r => r.Key));
        Assert.All(answer, rail =>
        {
            Assert.NotEqual("", (string)rail!["reason"]!);
            Assert.NotEqual("", (string)rail["next"]!);
            Assert.True((double)rail["faces"]!["side"]!["minimum_zone_um"]! > 0);
            Assert.True((double)rail["faces"]!["top"]!["minimum_zone_um"]! > 0);
        });
    }

    // T = 4 mu L^2 f^2 worked by hand: 4 x 0.0081 x 0.18^2 x 96^2 = 9.67458816 N; f = sqrt(9 / 0.0081) / 0.36 = 92.5925925925... Hz.
    [Theory]
    [InlineData("--frequency", "96Hz", "tension_n", 9.674588160000001)]
    [InlineData("--force", "9N", "frequency_hz", 92.59259259259258)]
    public async Task Tension_and_note_follow_from_span_and_density(string option, string given, string asked, double expected)
    {
        var answer = (await Command.RunAsync("tension", "--span", "180mm", "--density", "8.1 g/m", option, given, "--json")).Json[asked]!;
        Assert.Equal(expected, (double)answer["value"]!, 1e-9);
        Assert.Equal(0, (double)answer["standard_uncertainty"]!);
    }

    [Fact]
    public async Task A_stated_uncertainty_reaches_the_tension()
    {
        // Relative: span 2 x 0.5/180/sqrt 3, density 0.1/8.1, note 2 x 0.4/96; combined in quadrature (JCGM 100:2008, 5.1.2).
        var answer = (await Command.RunAsync("tension", "--span", "180 +/- 0.5 mm", "--density", "8.1 g/m u 0.1 g/m", "--frequency", "96 Hz U 0.8 Hz k 2", "--json")).Json["tension_n"]!;
        var relative = Math.Sqrt(Math.Pow(2 * 0.5 / 180 / Math.Sqrt(3), 2) + Math.Pow(0.1 / 8.1, 2) + Math.Pow(2 * 0.4 / 96, 2));
        Assert.Equal(9.67458816 * relative, (double)answer["standard_uncertainty"]!, 1e-9);
    }

    // Pinned: T = 4 mu L2 f2 - pi2 EI / L2 (Irvine, eq. 2), by hand 9.67458816 - 0.01218... N for 40 N mm2 on 180 mm.
    [Fact]
    public async Task Stiffness_and_ends_are_taken_in_and_said()
    {
        string[] given = ["tension", "--span", "180mm", "--density", "8.1 g/m", "--frequency", "96Hz", "--stiffness", "40 Nmm2", "--json"];
        var pulleys = (await Command.RunAsync(given)).Json;
        var tension = 9.67458816 - (Math.PI * Math.PI * 4e-5 / (0.18 * 0.18));
        Assert.Equal(tension, (double)pulleys["tension_n"]!["value"]!, 1e-9);
        Assert.Equal(9.67458816, (double)pulleys["ideal_tension_n"]!, 1e-9);
        // Teeth may hold each pulley end by up to sqrt(EI / T) / L of the note: root mean square of it, both ends together, twice in the tension.
        Assert.Equal(4 * Math.Sqrt(4e-5 / tension) / 0.18 / Math.Sqrt(3), (double)pulleys["tension_n"]!["standard_uncertainty"]! / tension, 0.002);
        var effects = pulleys["effects"]!.AsArray().ToDictionary(e => (string)e!["name"]!, e => (double?)e!["ideal_reads_high_by"]);
        Assert.Equal((9.67458816 / tension) - 1, effects["bending stiffness"]!.Value, 1e-9);
        Assert.True(effects["teeth on two pulleys"] > 0);
        Assert.Null(effects["air"]);
        var clamped = (await Command.RunAsync([.. given, "--ends", "pulley,clamp"])).Json;
        Assert.InRange((double)clamped["tension_n"]!["value"]!, tension * 0.97, tension * 0.99);
        Assert.Equal(["pulley", "clamp"], clamped["ends"]!.AsArray().Select(e => (string)e!));
        Assert.Contains("reads", (await Command.RunAsync(given[..^1])).Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--ends", "pulley", "--ends: found 'pulley', expected two ends")]
    [InlineData("--ends", "pulley,glue", "--ends: found 'pulley,glue', expected two ends")]
    [InlineData("--stiffness", "40", "--stiffness: found")]
    [InlineData("--stiffness", "0 Nmm2", "--stiffness: found")]
    [InlineData("--stiffness", "40 N", "--stiffness: found")]
    [InlineData("--stiffness", "40 Nm2", "expected a note above")]
    public async Task Wrong_ends_and_stiffness_end_with_one_clear_error_and_exit_2(string option, string given, string said)
        => (await Command.RunAsync("tension", "--span", "180mm", "--density", "8.1 g/m", "--frequency", "96Hz", option, given, "--json")).IsRefused(said);

    public static TheoryData<string, string> WrongFiles => new()
    {
        { "", "found an empty file" },
        { "position_mm,reading_um\n", "found a header and no rows" },
        { "position_mm\n1\n", "found no column reading_um" },
        { "position_mm,reading_um,reading_um\n1,2,3\n", "found the column 'reading_um' twice" },
        { "position_mm,reading_yd\n1,2\n", "found the column 'reading_yd'" },
        { "position_mm,reading_um\n0,1\n5,abc\n", ":3:3: found 'abc'" },
        { "position_mm,reading_um\n0,1\n5,NaN\n", ":3:3: found 'NaN'" },
        { "position_mm,reading_um\n0,1\n5,Infinity\n", ":3:3: found 'Infinity'" },
        { "position_mm,reading_um\n0,1\n5,1e999\n", ":3:3: found '1e999'" },
        { "position_mm,reading_um\n0,1\n", "found one station" },
        { "position_mm,reading_um\n0;1\n5;2\n", ":2: found 1 field" },
        { "position_mm;reading_um\n0;1,5\n5;1.5\n", ":3:3: found a decimal point" },
        { "position_mm,reading_um\n0,\"1\n5,2\n", "found a quotation mark that is not closed" },
        { "position_mm,reading_um\n0,1\n5\n", ":3: found 1 field" },
        { "rail,face,pass,direction,position_mm,reading_um\nR,back,1,forward,0,1\nR,side,1,forward,5,1\n", ":2:3: found 'back', expected the face: side or top" },
    };

    [Theory]
    [MemberData(nameof(WrongFiles))]
    public async Task A_wrong_file_ends_with_one_clear_error_and_exit_2(string text, string said)
    {
        using var folder = new TemporaryFolder();
        var path = folder.Write("sweep.csv", text);
        (await Command.RunAsync("straightness", path, "--json")).IsRefused(path, said);
    }

    [Fact]
    public async Task What_is_no_text_file_ends_with_exit_2()
    {
        using var folder = new TemporaryFolder();
        (await Command.RunAsync("straightness", folder.Path)).IsRefused("found a folder");
        (await Command.RunAsync("straightness", Path.Combine(folder.Path, "none.csv"))).IsRefused("found no such file");
        await File.WriteAllTextAsync(Path.Combine(folder.Path, "wide.csv"), "position_mm,reading_um\n0,1\n", Encoding.Unicode);
        (await Command.RunAsync("straightness", Path.Combine(folder.Path, "wide.csv"))).IsRefused(":1:1: found UTF-16 text");
        await File.WriteAllBytesAsync(Path.Combine(folder.Path, "bytes.csv"), [1, 2, 0, 3]);
        (await Command.RunAsync("straightness", Path.Combine(folder.Path, "bytes.csv"))).IsRefused(":1: found binary data");
    }

    [Fact]
    public async Task A_file_that_may_not_be_read_ends_with_exit_2()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows() || Environment.UserName == "root", "the superuser may read every file");
        using var folder = new TemporaryFolder();
        var path = folder.Write("closed.csv", "position_mm,reading_um\n0,1\n5,2\n");
        if (!OperatingSystem.IsWindows())
            File.SetUnixFileMode(path, UnixFileMode.None);
        (await Command.RunAsync("straightness", path)).IsRefused("found a file that may not be read");
    }

    [Theory]
    [InlineData("--span: found", "180", "8.1 g/m", "96Hz")]
    [InlineData("--span: found", "0mm", "8.1 g/m", "96Hz")]
    [InlineData("--span: found", "-5 mm", "8.1 g/m", "96Hz")]
    [InlineData("--density: found", "180mm", "-8.1 g/m", "96Hz")]
    [InlineData("--density: found", "180mm", "8.1 mm", "96Hz")]
    [InlineData("--frequency: found", "180mm", "8.1 g/m", "NaN Hz")]
    [InlineData("--span: found", "150,5 mm", "8.1 g/m", "96Hz")]
    [InlineData("--span: found", "", "8.1 g/m", "96Hz")]
    public async Task A_wrong_quantity_ends_with_one_clear_error_and_exit_2(string said, string span, string density, string frequency)
        => (await Command.RunAsync("tension", "--span", span, "--density", density, "--frequency", frequency, "--json")).IsRefused(said);

    [Theory]
    [InlineData("tension", "--span", "180mm", "--density", "8.1 g/m")]
    [InlineData("tension", "--span", "180mm", "--density", "8.1 g/m", "--frequency", "96Hz", "--force", "9N")]
    [InlineData("tension", "--density", "8.1 g/m", "--frequency", "96Hz")]
    [InlineData("grade")]
    [InlineData("straightness", "a.csv", "b.csv")]
    [InlineData("straightness", "a.csv", "--metres")]
    [InlineData("fly")]
    public async Task Wrong_use_ends_with_exit_2(params string[] arguments) => (await Command.RunAsync(arguments)).IsRefused();

    [Fact]
    public async Task A_bare_profile_can_not_be_graded() => (await Command.RunAsync("grade", "datasets/published/laser_guide_axis1.csv")).IsRefused("expected the columns rail,face");

    [Fact]
    public async Task The_machines_language_changes_nothing()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "sets the language by a variable");
        var plain = await Command.RunAsync("straightness", "datasets/published/laser_guide_axis2.csv");
        Environment.SetEnvironmentVariable("LC_ALL", "de_DE.UTF-8");
        try
        {
            Assert.Equal(plain.Out, (await Command.RunAsync("straightness", "datasets/published/laser_guide_axis2.csv")).Out);
        }
        finally
        {
            Environment.SetEnvironmentVariable("LC_ALL", null);
        }

        Assert.Contains("0.9", plain.Out, StringComparison.Ordinal);
    }
}
