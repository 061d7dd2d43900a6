using CsCheck;
using Waywright.Notebooks;

namespace Waywright.Tests;

public class RailStockTests
{
    private const string Header = "rail,width_mm,length_mm,pitch_mm,end_distance_mm,counterbore_mm,mass_g,note\n";

    private static string Problem(string text) => Assert.Throws<InputException>(() => RailStock.Parse(text, "rails.csv")).Message;

    private static SweepBatch Top(params double[] x)
        => InventedPasses.Batch(InventedPasses.Sweep(2, 0, 1, stations: x) with { Face = RailFace.Top });

    [Fact]
    public void The_demo_rails_are_read_with_their_holes()
    {
        var stock = RailStock.Read(Repository.PathOf("datasets", "demo", "rails", "rails.csv"));
        Assert.Equal(12, stock.Rails.Count);
        Assert.Equal(("R05", 12, 208, "bag B"), (stock.Rails[4].Name, stock.Rails[4].WidthMm, stock.Rails[4].MassG, stock.Rails[4].Note));
        // 320 = 10 + 12 x 25 + 10: worked by hand.
        Assert.Equal(Enumerable.Range(0, 13).Select(k => 10.0 + (25 * k)), stock.Find("R01")!.HolesMm);
        Assert.Equal(10, stock.Find("R01")!.FarEndDistanceMm);
        Assert.Null(stock.Find("r01"));
        Assert.Equal("fields separated by comma, decimal point", stock.ReadAs);
        Assert.StartsWith("Add counterbore_mm for each rail, so that stations on top faces can be held against the holes; 12 rails read.", Views.Text(stock), StringComparison.Ordinal);
    }

    // Source: standard lengths in NB's catalogue of miniature guides, SEBS 7B, 9B, 12B and 15B; a standard length has equal ends, L = n P + 2 E, from which the list gives P and E.
    [Theory]
    [InlineData(15, 5, new double[] { 40, 55, 70, 85, 100, 130, 160, 190, 220, 250, 280, 310 })]
    [InlineData(20, 7.5, new double[] { 55, 75, 95, 115, 135, 155, 175, 195, 235, 275, 315, 355 })]
    [InlineData(25, 10, new double[] { 70, 95, 120, 145, 170, 195, 220, 245, 270, 295, 320, 345 })]
    [InlineData(40, 15, new double[] { 70, 110, 150, 190, 230, 270, 310, 350, 390, 430, 470, 510 })]
    public void Standard_lengths_leave_equal_ends(double pitch, double end, double[] lengths)
        => Assert.All(lengths, length => Assert.Equal(end, new RailStock.Rail("R", 9, length, pitch, end, null, null, "").FarEndDistanceMm, 1e-9));

    // Worked by hand: how many pitches fit behind the first hole.
    [Theory]
    [InlineData(320, 25, 10, 13, 10)]
    [InlineData(350, 20, 5, 18, 5)]
    [InlineData(300, 20, 20, 14, 20)]
    [InlineData(95, 20, 7.5, 5, 7.5)]
    [InlineData(100, 25, 12, 4, 13)]
    [InlineData(0.3, 0.1, 0.1, 2, 0.1)]
    [InlineData(20, 25, 10, 1, 10)]
    public void Holes_stand_at_the_end_distance_and_every_pitch(double length, double pitch, double end, int holes, double farEnd)
    {
        var rail = new RailStock.Rail("R", 9, length, pitch, end, null, null, "");
        Assert.Equal(holes, rail.HolesMm.Count);
        Assert.Equal(farEnd, rail.FarEndDistanceMm, 1e-9);
    }

    [Fact]
    public void Each_hole_is_on_the_rail_and_the_next_would_not_be()
        => Gen.Select(Gen.Double[1, 4000], Gen.Double[3, 100], Gen.Double[0.01, 0.99]).Sample((length, pitch, share) =>
        {
            var rail = new RailStock.Rail("R", 9, length, pitch, share * length, null, null, "");
            Assert.True(rail.HolesMm[^1] <= length + 1e-6 && rail.HolesMm[^1] + pitch >= length - 1e-6);
            var x = share * length * 1.01;
            Assert.Equal(rail.HolesMm.MinBy(h => Math.Abs(h - x)), rail.NearestHoleMm(x), 1e-9);
        }, iter: 500);

    [Theory]
    [InlineData("rail,width_mm\nR01,9\n", "rails.csv:1: found no column length_mm, expected the columns rail,width_mm,length_mm,pitch_mm,end_distance_mm\nrails.csv:1: found no column pitch_mm, expected the columns rail,width_mm,length_mm,pitch_mm,end_distance_mm\nrails.csv:1: found no column end_distance_mm, expected the columns rail,width_mm,length_mm,pitch_mm,end_distance_mm")]
    [InlineData(Header, "rails.csv:1: found a header and no rows, expected a row for each rail")]
    [InlineData(Header + "R01,9,320,25,10,,,\nR01,9,320,25,10,,,\n", "rails.csv:3:1: found 'R01', expected each rail once: it is in line 2 already")]
    [InlineData(Header + ",9,320,25,10,,,\n", "rails.csv:2:1: found nothing, expected a rail's name of 1 to 64 printable characters")]
    [InlineData(Header + "R01,nine,320,25,10,,,\n", "rails.csv:2:5: found 'nine', expected width_mm to be a number such as 12.5")]
    [InlineData(Header + "R01,9,-320,25,10,,,\n", "rails.csv:2:7: found '-320', expected length_mm above 0 and up to 10000")]
    [InlineData(Header + "R01,9,320,0,10,,,\n", "rails.csv:2:11: found '0', expected pitch_mm above 0 and up to 10000")]
    [InlineData(Header + "R01,9,320,25,320,,,\n", "rails.csv:2:14: found '320', expected a first hole within the rail's length of 320 mm")]
    [InlineData(Header + "R01,9,320,0.1,10,,,\n", "rails.csv:2:11: found '0.1', expected a pitch that gives at most 2000 holes")]
    [InlineData(Header + "R01,9,320,25,10,9,,\n", "rails.csv:2:17: found '9', expected a diameter below width and pitch")]
    [InlineData(Header + "R01,9,320,25,10,,heavy,\n", "rails.csv:2:18: found 'heavy', expected mass_g to be a number such as 12.5")]
    public void A_wrong_table_is_refused_with_line_and_column(string text, string expected) => Assert.Equal(expected, Problem(text));

    [Fact]
    public void Commas_as_decimal_marks_and_unused_columns_are_told()
    {
        var stock = RailStock.Parse("rail;width_mm;length_mm;pitch_mm;end_distance_mm;colour\nR01;9;320,5;25;10,25;red\n", "rails.csv");
        Assert.Equal((320.5, 10.25), (stock.Rails[0].LengthMm, stock.Rails[0].EndDistanceMm));
        Assert.Equal("fields separated by semicolon, decimal comma; not used: colour", stock.ReadAs);
    }

    [Fact]
    public void A_station_off_the_rail_or_in_a_counterbore_is_refused_with_its_place()
    {
        var stock = RailStock.Parse(Header + "R01,9,320,25,10,6,,\n", "rails.csv");
        var sound = Top(4, 22.5, 47.5, 320);
        Assert.Same(sound, sound.Check(stock));
        Assert.Equal("sweeps.csv: found R01 top at 320.5 mm (pass 1 forward, pass 2 back), expected a station on the rail: from 0 to 320 mm",
            Assert.Throws<InputException>(() => Top(4, 22.5, 320.5).Check(stock)).Message);
        // 10 - 6 = 6 mm from the first hole's middle, and 3 + 1.5 = 4.5 is enough; 13.9 mm is 3.9 from it.
        Assert.Same(sound, sound.Check(stock, 1.5));
        Assert.Equal("sweeps.csv: found R01 top at 13.9 mm (pass 1 forward, pass 2 back), in the counterbore of the hole at 10 mm, expected a station 4.5 mm or more from a hole's middle (half of 6 mm and the tip's 1.5 mm)",
            Assert.Throws<InputException>(() => Top(4, 13.9, 22.5).Check(stock, 1.5)).Message);
        Assert.NotNull(Top(4, 14.5, 22.5).Check(stock, 1.5));
        var side = InventedPasses.Batch(InventedPasses.Sweep(2, 0, 1, stations: [10, 35, 60]));
        Assert.Same(side, side.Check(stock, 1.5));
    }

    [Fact]
    public void What_the_check_needs_and_has_not_is_asked_for()
    {
        var stock = RailStock.Parse("rail,width_mm,length_mm,pitch_mm,end_distance_mm\nR01,9,320,25,10\nR02,9,320,25,10\n", "rails.csv");
        Assert.Equal("sweeps.csv: found R01 top and no counterbore_mm for R01 in rails.csv, expected the diameter of its counterbores: stations on a top face are held against it",
            Assert.Throws<InputException>(() => Top(4, 22.5).Check(stock, 1)).Message);
        var other = InventedPasses.Batch(InventedPasses.Sweep(2, 0, 1) with { Rail = "R13" });
        Assert.Equal("sweeps.csv: found R13 side, a rail that rails.csv doesn't list, expected one of R01, R02", Assert.Throws<InputException>(() => other.Check(stock)).Message);
        Assert.StartsWith("The radius of a tip is 0 mm or more.", Assert.Throws<ArgumentOutOfRangeException>(() => other.Check(stock, -1)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_demo_sweeps_lie_on_their_rails()
    {
        var stock = RailStock.Read(Repository.PathOf("datasets", "demo", "rails", "rails.csv"));
        Assert.NotNull(SweepBatch.Read(Repository.PathOf("datasets", "demo", "rails", "sweeps.csv")).Check(stock));
    }

    [Fact]
    public void Notes_are_text_in_the_view()
    {
        var stock = RailStock.Parse(Header + "R01,9,320,25,10,6,121,<b>bag</b>\n", "rails.csv");
        Assert.DoesNotContain("<b>", Views.Html(stock), StringComparison.Ordinal);
        Assert.StartsWith("1 rail; sweeps can be held against ends and counterbores.", Views.Text(stock), StringComparison.Ordinal);
        Assert.StartsWith("R01: 9 mm wide, 320 mm long, 13 holes, the last 10 mm from the far end.", Views.Text(stock.Rails[0]), StringComparison.Ordinal);
    }
}

[UnderCulture("de-DE")]
public sealed class RailStockTestsInGerman : RailStockTests;
