using System.Text.Json.Nodes;

namespace Waywright.EndToEnd.Commands;

public sealed class NewVerbTests : IDisposable
{
    private static readonly string[] Needed = ["rails/rails.csv", "rails/setups.json", "rails/sweeps.csv", "rails/positions.json", "belts/pieces.csv", "belts/spans.csv"];

    private readonly TemporaryFolder _folder = new();

    private string Build => Path.Combine(_folder.Path, "gantry & more");

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task A_new_build_is_published_at_once_and_its_page_says_first_what_is_missing()
    {
        var made = await Command.RunInAsync(_folder.Path, "new", "gantry & more");
        Assert.Equal(0, made.ExitCode);
        Assert.Equal(Build, made.Out.TrimEnd().Split('\n')[^1]);
        var published = await Command.RunInAsync(Build, "publish", "--date", "2026-03-01");
        Assert.True(published.ExitCode == 0, published.Error);
        Assert.StartsWith("Fill in rails/rails.csv next: 6 sheets are still missing.", published.Out);
        Assert.All(Needed, sheet => Assert.Contains(sheet, published.Out.Split('\n')[0]));
        var page = await File.ReadAllTextAsync(Path.Combine(Build, "artifacts", "published", "index.html"));
        var first = page[page.IndexOf("id=\"decided\"", StringComparison.Ordinal)..page.IndexOf("id=\"contents\"", StringComparison.Ordinal)];
        Assert.Contains("Fill in rails/rails.csv next", first);
        Assert.Contains("Nothing to show yet: fill in rails/sweeps.csv and rails/setups.json first.", page);
        Assert.Contains("<h1>gantry &amp; more</h1>", page);
        var visible = page[..page.IndexOf("application/octet-stream", StringComparison.Ordinal)];
        Assert.DoesNotContain("NaN", visible);
        Assert.DoesNotContain("Exception", visible);
        Assert.Equal(0, (await Command.RunInAsync(Build, "verify", Path.Combine(Build, "artifacts", "published"))).ExitCode);
    }

    [Fact]
    public async Task Filled_with_rails_of_the_demo_it_grades_them_as_the_demo_does_and_only_the_rest_is_missing()
    {
        string[] rails = ["R01", "R04", "R07", "R09", "R12"];
        Assert.Equal(0, (await Command.RunInAsync(_folder.Path, "new", Build)).ExitCode);
        CopyRows("rails/rails.csv", rails);
        CopyRows("rails/sweeps.csv", rails);
        CopyRows("rails/drag.csv", rails);
        File.Copy(Path.Combine(Demo, "rails", "setups.json"), Path.Combine(Build, "rails", "setups.json"), overwrite: true);
        var published = await Command.RunInAsync(Build, "publish");
        Assert.True(published.ExitCode == 0, published.Error);
        Assert.StartsWith("Fill in rails/positions.json next: 3 sheets are still missing.", published.Out);

        var demo = (await Command.RunAsync(
            "grade", Path.Combine(Demo, "rails", "sweeps.csv"), "--setups", Path.Combine(Demo, "rails", "setups.json"), "--rails", Path.Combine(Demo, "rails", "rails.csv"), "--drag", Path.Combine(Demo, "rails", "drag.csv"), "--json")).Json;
        var expected = demo["rails"]!.AsArray().Where(r => rails.Contains((string)r!["rail"]!)).ToDictionary(r => $"rails/{((string)r!["rail"]!).ToLowerInvariant()}/grade", r => (string)r!["grade"]!);
        var record = JsonNode.Parse(await File.ReadAllTextAsync(Path.Combine(Build, "artifacts", "published", "record.json")))!;
        var found = record["figures"]!.AsArray().Where(f => ((string)f!["id"]!).EndsWith("/grade", StringComparison.Ordinal)).ToDictionary(f => (string)f!["id"]!, f => (string)f!["text"]!);
        Assert.Equal(5, expected.Count);
        Assert.Equal(expected.OrderBy(e => e.Key, StringComparer.Ordinal), found.OrderBy(f => f.Key, StringComparer.Ordinal));
        Assert.Contains("return", found.Values);
        Assert.Contains("gantry", found.Values);
    }

    [Fact]
    public async Task Filled_with_the_demos_belts_it_compares_them_and_weighs_what_was_weighed()
    {
        Assert.Equal(0, (await Command.RunInAsync(_folder.Path, "new", Build)).ExitCode);
        File.Copy(Path.Combine(Demo, "belts", "spans.csv"), Path.Combine(Build, "belts", "spans.csv"), overwrite: true);
        await File.AppendAllTextAsync(Path.Combine(Build, "belts", "pieces.csv"), "25,3000,5\n42,5000,5\n");
        await File.AppendAllTextAsync(Path.Combine(Build, "belts", "travel.csv"), "140,121.3\n180,94.5\n230,74.3\n290,58.9\n360,47.6\n");
        var published = await Command.RunInAsync(Build, "publish", "notebooks/tension-belts.ipynb", "--set", "overPitches=120.1 +/- 0.2 mm", "--set", "wanted=10 N", "--set", "movedMass=0.6 kg", "--set", "friction=2 N +/- 0.5 N", "--set", "beltLength=900 mm", "--set", "shortestSide=80 mm", "--set", "afterTurn=92.1 Hz u 0.2 Hz", "--set", "turned=0.5", "--set", "knownWeight=100 g", "--set", "knownReads=100 g");
        Assert.True(published.ExitCode == 0, published.Error);
        Assert.DoesNotContain("Nothing to show yet", await File.ReadAllTextAsync(Path.Combine(Build, "artifacts", "published", "index.html")));
        // The demo's notebook keeps the same of the same readings.
        Assert.Contains("Tighten right by about 1.26 N", published.Out);
        Assert.Contains("The belt weighs 8.3", published.Out);
    }

    [Fact]
    public async Task A_sheet_that_is_filled_in_wrongly_is_refused_by_file_line_and_column()
    {
        Assert.Equal(0, (await Command.RunInAsync(_folder.Path, "new", Build)).ExitCode);
        await File.AppendAllTextAsync(Path.Combine(Build, "rails", "rails.csv"), "R01,9,32O,25,10,,,\n");
        var published = await Command.RunInAsync(Build, "publish");
        Assert.Equal(1, published.ExitCode);
        Assert.Contains("rails.csv:6:7: found '32O', expected length_mm to be a number", published.Error);
        Assert.DoesNotContain("   at ", published.Error);
    }

    [Fact]
    public async Task What_is_there_already_is_never_overwritten()
    {
        _folder.Write("mine/photo.txt", "do not lose me");
        _folder.Write("note.txt", "a file");
        foreach (var (arguments, said) in new (string[], string)[]
        {
            (["mine"], "mine: found a folder with files in it, such as 'photo.txt'"),
            (["note.txt"], "note.txt: found a file"),
            (["note.txt/below"], "note.txt/below: found no folder to make it in"),
            (["no/such"], "no/such: found no folder to make it in"),
            (["/"], "the root of a drive"),
            ([""], "expected the name of a folder"),
            (["fresh", "--rail-length", "320"], "--rail-length"),
            (["fresh", "--pitch", "1 kg"], "--pitch"),
            (["fresh", "--rails", "many"], "--rails: found 'many', expected a whole number"),
            (["fresh", "--rails", "0"], "--rails: found '0'"),
            (["fresh", "other"], "other"),
            ([], "DIR"),
        })
        {
            var refused = await Command.RunInAsync(_folder.Path, ["new", .. arguments]);
            refused.IsRefused(said);
        }

        Assert.Equal(["mine", "note.txt"], Directory.EnumerateFileSystemEntries(_folder.Path).Select(Path.GetFileName).Order(StringComparer.Ordinal));
        Assert.Equal("do not lose me", await File.ReadAllTextAsync(Path.Combine(_folder.Path, "mine", "photo.txt")));
    }

    [Fact]
    public async Task A_place_that_may_not_be_written_is_one_clear_error()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "asks for a folder that not even the machine's owner may write");
        var refused = await Command.RunInAsync(_folder.Path, "new", "/proc/self/gantry");
        refused.IsRefused("/proc/self/gantry: found a folder that");
        Assert.Single(refused.Error.Split('\n', StringSplitOptions.RemoveEmptyEntries));
    }

    private static string Demo => Path.Combine(Command.Repository, "datasets", "demo");

    private void CopyRows(string file, string[] rails)
        => File.WriteAllLines(Path.Combine(Build, file), File.ReadLines(Path.Combine(Demo, file)).Where(line => line.StartsWith('#') || line.StartsWith("rail,", StringComparison.Ordinal) || rails.Contains(line.Split(',')[0])));
}
