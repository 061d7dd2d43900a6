using System.Text.Json.Nodes;

namespace Waywright.Tests.Datasets;

/// <summary>The demo's tables are what a careful builder could have written down.</summary>
public sealed class DemoReadingTests
{
    [Fact]
    public void Every_face_has_three_passes_over_every_station_and_one_new_lay()
    {
        Assert.Equal(12 * 2 * 3 * 14, DemoBatch.Readings.Count);
        foreach (var pass in DemoBatch.Readings.GroupBy(r => (r.Rail, r.Face, r.Pass)))
        {
            var taken = pass.Select(r => r.PositionMm).ToArray();
            Assert.Equal(pass.First().Direction == "back" ? DemoBatch.StationsMm.Reverse() : DemoBatch.StationsMm, taken);
            Assert.Single(pass.Select(r => (r.Direction, r.Setup, r.Lay)).Distinct());
        }

        foreach (var face in DemoBatch.Readings.GroupBy(r => (r.Rail, r.Face)))
            Assert.Equal(["1 forward A", "2 back A", "3 forward B"], face.Select(r => $"{r.Pass} {r.Direction} {r.Lay}").Distinct());
    }

    [Fact]
    public void No_station_stands_in_a_counterbore()
    {
        // Holes n = floor((L - 2 e_min)/p) + 1, ends (L - (n - 1) p)/2 (makers' catalogues: holes are symmetric); 4 mm for counterbore and tip is from memory.
        foreach (var rail in Rows("rails/rails.csv"))
        {
            var (length, pitch) = (DataFolder.Number(rail["length_mm"]), DataFolder.Number(rail["pitch_mm"]));
            var holes = (int)Math.Floor((length - (2 * 5)) / pitch) + 1;
            var end = (length - ((holes - 1) * pitch)) / 2;
            Assert.Equal(13, holes);
            Assert.Equal(end, DataFolder.Number(rail["end_distance_mm"]), 1e-12);
            Assert.All(DemoBatch.StationsMm, x => Assert.All(Enumerable.Range(0, holes), hole => Assert.True(Math.Abs(x - end - (hole * pitch)) > 4)));
        }
    }

    [Fact]
    public void Every_sweep_is_of_a_known_rail_in_a_known_set_up_and_read_to_that_set_ups_step()
    {
        var rails = Rows("rails/rails.csv").Select(row => row["rail"]).ToArray();
        var steps = JsonNode.Parse(File.ReadAllText(DemoBatch.Folder.PathOf("rails/setups.json")))!["setups"]!.AsArray().ToDictionary(setup => setup!["id"]!.GetValue<string>(), Step);
        Assert.Equal(rails, DemoBatch.Readings.Select(r => r.Rail).Distinct());
        Assert.Equal(steps.Keys.Order(StringComparer.Ordinal), DemoBatch.Readings.Select(r => r.Setup).Distinct().Order(StringComparer.Ordinal));
        Assert.All(DemoBatch.Readings, r => Assert.Equal(0, Math.IEEERemainder(r.Um, steps[r.Setup]), 1e-12));
    }

    [Fact]
    public void The_two_belts_share_reel_and_fixture_and_the_right_one_is_slacker()
    {
        var rows = Rows("belts/spans.csv");
        Assert.Single(rows.Select(row => (row["reel"], row["fixture"], row["span"], row["density"])).Distinct());
        double Note(string belt) => rows.Where(row => row["belt"] == belt).Average(row => DataFolder.Number(row["frequency"].Split(' ')[0]));
        // T = 4 mu L^2 f^2, the ideal string; with one reel and one fixture the ratio needs neither mu nor L.
        var tension = 4 * 0.0084 * 0.18 * 0.18 * Note("left") * Note("left");
        Assert.InRange(tension, 9.5, 10.5);
        var ratio = Math.Pow(Note("right") / Note("left"), 2);
        Assert.Equal(DemoBatch.Truth["belts"]!["right_n"]!.GetValue<double>() / DemoBatch.Truth["belts"]!["left_n"]!.GetValue<double>(), ratio, 0.02);
        Assert.Equal("tighten the right a little", DemoBatch.Truth["belts"]!["verdict"]!.GetValue<string>());
    }

    static double Step(JsonNode? setup)
        => setup!["instrument"]!["division_um"]!.GetValue<double>() / setup["instrument"]!["read_to"]!.GetValue<string>() switch { "whole" => 1, "half" => 2, _ => 10 };

    static Dictionary<string, string>[] Rows(string table)
    {
        var (header, rows) = DemoBatch.Folder.Table(table);
        return [.. rows.Select(row => header.Zip(row).ToDictionary(field => field.First, field => field.Second))];
    }
}
