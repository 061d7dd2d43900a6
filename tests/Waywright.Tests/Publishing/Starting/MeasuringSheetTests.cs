using System.Globalization;
using System.Text.RegularExpressions;
using Waywright.Publishing;

namespace Waywright.Tests.Publishing;

public partial class MeasuringSheetTests
{
    [Theory]
    [InlineData("320 mm", "25 mm", null)]
    [InlineData("32 cm", "1 in", "10 mm")]
    [InlineData("1200 mm", "60 mm", "30 mm")]
    public void The_rows_of_a_sweep_sheet_are_the_stations_of_the_rail_once_for_each_rail(string length, string pitch, string? end)
    {
        var rails = SheetRails.Read(length, pitch, end, 2);
        foreach (var paper in Paper.All)
        {
            var rows = Row().Matches(SweepSheet.Html(paper, rails)).Select(m => double.Parse(m.Groups[1].Value, CultureInfo.InvariantCulture)).ToArray();
            var stations = rails.Rail.StationsMm.Select(x => Math.Round(x, 3)).ToArray();
            Assert.Equal([.. stations, .. stations], rows);
        }
    }

    [Fact]
    public void The_sheet_has_the_stations_that_the_new_builds_own_plan_is_worked_out_for()
    {
        var rails = SheetRails.Read("320 mm", "25 mm", null, 1);
        var notebook = StartFiles.Of("mine", rails).Single(f => f.Path == "notebooks/grade-rails.ipynb").Text;
        Assert.Contains(FormattableString.Invariant($"int stations = {rails.Rail.StationsMm.Count};"), notebook);
        Assert.Contains("double sweptMm = 312;", notebook);
        // As many as a plan takes by itself for that length, or more.
        Assert.True(rails.Rail.StationsMm.Count >= MeasuringPlan.Of(10, "half", 312, 30, trials: 1000, cancel: TestContext.Current.CancellationToken).Stations);
    }

    [Theory]
    [InlineData("320 mm", "25 mm", 10)]
    [InlineData("300 mm", "25 mm", 12.5)]
    [InlineData("240 mm", "60 mm", 30)]
    public void Without_an_end_distance_the_holes_lie_alike_from_both_ends(string length, string pitch, double expected)
    {
        var rail = SheetRails.Read(length, pitch, null, 1).Rail;
        Assert.Equal(expected, rail.EndDistanceMm, 9);
        Assert.Equal(expected, rail.FarEndDistanceMm, 9);
    }

    [Theory]
    [InlineData("3 N", "25 mm", null, 1, "--rail-length")]
    [InlineData("320", "25 mm", null, 1, "--rail-length")]
    [InlineData("20 mm", "5 mm", null, 1, "--rail-length")]
    [InlineData("320 +/- 1 mm", "25 mm", null, 1, "without an uncertainty")]
    [InlineData("320 mm", "-25 mm", null, 1, "--pitch")]
    [InlineData("320 mm", "200 mm", null, 1, "--pitch")]
    [InlineData("320 mm", "25 mm", "200 mm", 1, "--end-distance")]
    [InlineData("320 mm", "25 mm", null, 0, "--rails")]
    [InlineData("320 mm", "25 mm", null, 61, "--rails")]
    public void A_rail_that_no_sheet_can_be_made_for_is_one_clear_error(string length, string pitch, string? end, int count, string said)
        => Assert.Contains(said, Assert.Single(Assert.Throws<InputException>(() => SheetRails.Read(length, pitch, end, count)).Problems).ToString());

    [Fact]
    public void All_that_is_wrong_with_the_rails_is_said_at_once()
        => Assert.Equal(3, Assert.Throws<InputException>(() => SheetRails.Read("x", "0 mm", null, -2)).Problems.Count);

    [Theory]
    [InlineData(320, 10, 310)]
    [InlineData(345, 20, 340)]
    [InlineData(3000, 100, 2900)]
    public void Places_of_a_pull_are_evenly_apart_and_none_is_at_an_end(double length, int step, int last)
    {
        var places = DragSheet.PlacesMm(length);
        Assert.Equal(step, places[0]);
        Assert.Equal(last, places[^1]);
        Assert.True(places.Count <= 34);
    }

    [Fact]
    public void Every_sheet_prints_cautions()
        => Assert.All(StartFiles.Of("mine", SheetRails.Read("320 mm", "25 mm", null, 1)).Where(f => f.Path.StartsWith("sheets/", StringComparison.Ordinal)), f => Assert.Contains("<strong>Caution</strong>", f.Text));

    [GeneratedRegex("<tr><th scope=\"row\">([0-9.]+)</th>")]
    private static partial Regex Row();
}
