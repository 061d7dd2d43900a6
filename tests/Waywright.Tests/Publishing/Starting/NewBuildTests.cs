using System.Text.Json;
using System.Text.RegularExpressions;
using Waywright.Publishing;

namespace Waywright.Tests.Publishing;

public sealed partial class NewBuildTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("waywright-").FullName;

    private static SheetRails Usual { get; } = SheetRails.Read("320 mm", "25 mm", null, 3);

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void A_failure_half_way_leaves_nothing_behind()
    {
        var target = Path.Combine(_folder, "mine");
        Assert.Throws<InputException>(() => NewBuild.Make(target, HalfWay()));
        Assert.Empty(Directory.EnumerateFileSystemEntries(_folder));
        Directory.CreateDirectory(target);
        Assert.Throws<InputException>(() => NewBuild.Make(target, HalfWay()));
        Assert.Empty(Directory.EnumerateFileSystemEntries(target));

        static IEnumerable<StartFile> HalfWay()
        {
            yield return new StartFile("rails/rails.csv", "rail\n");
            throw new IOException("the disk is full");
        }
    }

    [Fact]
    public void An_empty_folder_is_filled_where_it_stands_and_keeps_no_trace_of_the_making()
    {
        var made = NewBuild.Make(_folder, Usual);
        Assert.Equal(_folder, made);
        Assert.Equal(["START-HERE.md", "belts", "instruments", "notebooks", "rails", "sheets"], Directory.EnumerateFileSystemEntries(_folder).Select(Path.GetFileName).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void No_placeholder_is_left_in_any_file_and_notebooks_have_ids_that_are_words_and_no_outputs()
    {
        foreach (var file in StartFiles.Of("a \"build\" <b>", Usual))
        {
            Assert.DoesNotMatch("@[a-z]+@", file.Text);
            Assert.DoesNotContain("pressed-plant", file.Text);
            if (!file.Path.EndsWith(".ipynb", StringComparison.Ordinal))
                continue;
            var root = JsonDocument.Parse(file.Text).RootElement;
            Assert.Equal("a \"build\" <b>", root.GetProperty("metadata").GetProperty("waywright").GetProperty("build").GetString());
            Assert.All(root.GetProperty("cells").EnumerateArray(), cell =>
            {
                Assert.Matches("^[a-z-]+$", cell.GetProperty("id").GetString());
                Assert.False(cell.TryGetProperty("outputs", out var outputs) && outputs.GetArrayLength() > 0);
            });
        }
    }

    [Fact]
    public void Each_data_sheet_is_empty_explains_itself_and_is_refused_only_for_having_no_rows()
    {
        NewBuild.Make(_folder, Usual);
        foreach (var (file, read) in new (string, Action<string>)[]
        {
            ("rails/rails.csv", path => RailStock.Read(path)), ("rails/sweeps.csv", path => SweepBatch.Read(path)), ("rails/drag.csv", path => DragLog.Read(path)),
            ("rails/mounted.csv", path => SweepBatch.Read(path)), ("rails/parallel.csv", path => SweepBatch.Read(path)), ("belts/spans.csv", path => BeltLog.Read(path)),
        })
        {
            var path = Path.Combine(_folder, file);
            Assert.Matches("^# (To do|If you like): ", File.ReadLines(path).First());
            var said = Assert.Throws<InputException>(() => read(path)).Problems;
            Assert.Matches("no row", Assert.Single(said).Found);
        }
    }

    [Fact]
    public void The_example_line_that_a_sheet_shows_is_one_that_its_reader_takes()
    {
        NewBuild.Make(_folder, Usual);
        Assert.Equal(320, Assert.Single(RailStock.Parse(WithExample("rails/rails.csv"), "rails.csv").Rails).LengthMm);
        Assert.Equal(96.1, Assert.Single(BeltLog.Parse(WithExample("belts/spans.csv"), "spans.csv").Belts).Tension.Frequency.Si.Value, 6);
        Assert.Equal(RailFace.Side, Assert.Single(SweepBatch.Parse(WithExample("rails/sweeps.csv") + "R01,side,1,forward,22.5,9,bench,A\n", "sweeps.csv").Sweeps).Face);
    }

    [Fact]
    public void The_documents_are_read_as_they_are_and_the_limits_are_the_starting_ones()
    {
        NewBuild.Make(_folder, Usual);
        var setup = Assert.Single(SetupBook.Read(Path.Combine(_folder, "rails", "setups.json")).Setups);
        Assert.False(setup.IsGuideKnown);
        Assert.NotEmpty(MachinePlan.Read(Path.Combine(_folder, "rails", "positions.json")).Positions);
        var rules = GradeRules.Read(Path.Combine(_folder, "rails", "rules.json"));
        Assert.Equal(GradeRules.Starting.ReturnSideUm, rules.ReturnSideUm);
        Assert.Equal(GradeRules.Starting.Grades.Select(g => (g.Grade, string.Join(',', g.Limits))), rules.Grades.Select(g => (g.Grade, string.Join(',', g.Limits))));
    }

    private string WithExample(string file)
    {
        var text = File.ReadAllText(Path.Combine(_folder, file));
        return text + Example().Match(text).Groups[1].Value + "\n";
    }

    [GeneratedRegex("^# A line looks like this: (.*)$", RegexOptions.Multiline)]
    private static partial Regex Example();
}
