using System.Globalization;
using System.Text;

namespace Waywright.Tests;

public class GradingTests
{
    // A bow of height h over the stations below: its minimum zone is h (analytic, parabola with a station at the middle and both ends).
    private static readonly double[] Stations = [0, 20, 40, 60, 80, 100, 120, 140, 160, 180, 200, 220, 240, 260, 280, 300, 320];

    private static string Face(string rail, string face, Func<double, double> height)
    {
        var text = new StringBuilder();
        foreach (var x in Stations)
            text.Append(CultureInfo.InvariantCulture, $"{rail},{face},1,forward,{x},{height(x)}\n");
        return text.ToString();
    }

    private static Func<double, double> Bow(double height) => x => 4 * height * x * (320 - x) / (320.0 * 320);

    private static GradedRail Grade(Func<double, double>? side, Func<double, double>? top, SetupBook? setups = null)
    {
        var text = "rail,face,pass,direction,position_mm,reading_um\n" + (side is null ? "" : Face("R", "side", side)) + (top is null ? "" : Face("R", "top", top));
        return SweepBatch.Parse(text, "s.csv", setups).Grade(stock: Holes.Of("R")).Rails.Single();
    }

    [Theory]
    [InlineData(10, "gantry")]
    [InlineData(30, "gantry")]
    [InlineData(31, "z")]
    [InlineData(60, "z")]
    [InlineData(61, "measure again")]
    [InlineData(100, "measure again")]
    [InlineData(101, "return")]
    [InlineData(400, "return")]
    public void A_side_bow_is_placed_by_the_starting_limits(double bow, string grade)
    {
        var rail = Grade(Bow(bow), Bow(5));
        Assert.Equal(grade, rail.Grade);
        Assert.Equal("side", rail.LimitingFeature);
        Assert.Equal(bow, rail.ValueOf("side")!.Value, 1e-9);
    }

    [Fact]
    public void A_long_bow_of_the_top_does_not_spoil_a_rail_and_a_short_wave_does()
    {
        Assert.Equal("gantry", Grade(Bow(10), Bow(90)).Grade);
        var wavy = Grade(Bow(10), x => 6 * Math.Cos(2 * Math.PI * x / 60));
        Assert.Equal("z", wavy.Grade);
        Assert.Equal("top mounted", wavy.LimitingFeature);
        Assert.Matches(@"^Top mounted 1\d(\.\d)? um is over 10 um, the limit for gantry. It is within 20 um, the limit for Z.$", wavy.Reason);
    }

    [Fact]
    public void A_kink_in_the_side_is_caught_by_its_local_straightness()
    {
        // A bend of 1.2 um/mm at the middle: 48 um over 320 mm about the best line, 25 um over the 100 mm around the bend.
        var kinked = Grade(x => 0.5 * Math.Abs(x - 160), Bow(3));
        Assert.Equal("measure again", kinked.Grade);
        var gentle = Grade(x => 0.18 * Math.Abs(x - 160), Bow(3));
        Assert.Equal("gantry", gentle.Grade);
    }

    [Fact]
    public void A_face_that_was_not_swept_means_measure_again_and_never_a_grade()
    {
        Assert.Equal(("measure again", "Sweep the top."), (Grade(Bow(5), null).Grade, Grade(Bow(5), null).Next));
        Assert.Equal(("measure again", "Sweep the side."), (Grade(null, Bow(5)).Grade, Grade(null, Bow(5)).Next));
    }

    [Fact]
    public void Against_an_unknown_guide_a_rail_is_neither_graded_nor_returned()
    {
        var unknown = SetupBook.Parse(SetupBookTests.OneSetup.Replace("\"certificate\"", "\"unknown\""), "setups.json");
        Assert.Equal("measure again", Grade(Bow(400), Bow(5), unknown).Grade);
        Assert.Equal("measure again", Grade(Bow(1), Bow(1), unknown).Grade);
        var known = SetupBook.Parse(SetupBookTests.OneSetup, "setups.json");
        Assert.Equal("return", Grade(Bow(400), Bow(5), known).Grade);
    }

    [Fact]
    public void Rails_are_sorted_by_what_to_do_next()
    {
        var text = "rail,face,pass,direction,position_mm,reading_um\n" + string.Concat(
            new[] { ("A", 5.0), ("B", 45), ("C", 80), ("D", 300), ("E", 20) }.Select(r => Face(r.Item1, "side", Bow(r.Item2)) + Face(r.Item1, "top", Bow(4))));
        var graded = SweepBatch.Parse(text, "s.csv").Grade(stock: Holes.Of("A", "B", "C", "D", "E"));
        Assert.Equal(["D", "C", "E", "A", "B"], graded.Rails.Select(r => r.Rail));
        Assert.Equal(["return", "measure again", "gantry", "z"], graded.Counts.Select(c => c.Key));
    }

    [Fact]
    public void A_bare_profile_can_not_be_graded()
        => Assert.Contains("expected the columns rail,face", Assert.Throws<InputException>(() => SweepBatch.Parse("position_mm,reading_um\n0,1\n1,2\n", "p.csv").Grade()).Message);
}
