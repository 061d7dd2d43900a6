namespace Waywright.Tests;

public abstract class BeltLogTests
{
    private const string Header = "belt,reel,fixture,span,density,frequency\n";

    // Invented readings.
    private const string Log = Header
        + "left,R1,F1,180 +/- 0.5 mm,8.1 g/m u 0.2 g/m,96.2 Hz +/- 0.5 Hz\n"
        + "left,R1,F1,180 +/- 0.5 mm,8.1 g/m u 0.2 g/m,95.1 Hz +/- 0.5 Hz\n"
        + "right,R1,F1,180 +/- 0.5 mm,8.1 g/m u 0.2 g/m,103.4 Hz +/- 0.5 Hz\n"
        + "left,R1,F1,180 +/- 0.5 mm,8.1 g/m u 0.2 g/m,97.4 Hz +/- 0.5 Hz\n"
        + "right,R1,F1,180 +/- 0.5 mm,8.1 g/m u 0.2 g/m,103.6 Hz +/- 0.5 Hz\n"
        + "spare,R2,,200 mm,8.3 g/m,80 Hz\n";

    public sealed class Invariant : BeltLogTests;

    [UnderCulture("de-DE")]
    public sealed class German : BeltLogTests;

    [UnderCulture("tr-TR")]
    public sealed class Turkish : BeltLogTests;

    [UnderCulture("fa-IR")]
    public sealed class Persian : BeltLogTests;

    [Fact]
    public void Rows_of_one_belt_are_its_plucks()
    {
        var log = BeltLog.Parse(Log, "spans.csv");
        Assert.Equal(["left", "right", "spare"], log.Belts.Select(b => b.Belt));
        Assert.Equal([3, 2, 1], log.Belts.Select(b => b.Plucks));
        Assert.Equal("fields separated by comma, decimal point, 6 plucks of 3 belts", log.ReadAs);
        Assert.Equal(("R2", null), (log["spare"].Reel, log["spare"].Fixture));
        Assert.Throws<ArgumentException>(() => log["middle"]);
    }

    // Scatter by hand: 96.2, 95.1, 97.4 have mean 96.2333, s = sqrt(2.64667 / 2) = 1.15036, s / sqrt 3 = 0.66416 (JCGM 100:2008, 4.2.3).
    [Fact]
    public void The_note_is_the_mean_with_the_larger_of_scatter_and_what_is_stated()
    {
        var log = BeltLog.Parse(Log, "spans.csv");
        var left = log["left"].Tension.Frequency;
        Assert.Equal(96.233333333333, left.Si.Value, 1e-9);
        Assert.Equal(0.66416, left.Si.StandardUncertainty, 5e-6);
        Assert.Equal(2, left.Si.DegreesOfFreedom);
        Assert.Equal(1.15036, log["left"].ScatterHz!.Value, 5e-6);
        Assert.Equal("mean of 3 plucks; u 0.66 Hz from their scatter (s 1.2 Hz / sqrt(3), 2 degrees of freedom), larger than the 0.29 Hz stated", left.TakenAs);
        var right = log["right"].Tension.Frequency;
        Assert.Equal(0.5 / Math.Sqrt(3), right.Si.StandardUncertainty, 1e-12);
        Assert.Equal(double.PositiveInfinity, right.Si.DegreesOfFreedom);
        Assert.Equal("mean of 2 plucks; u 0.29 Hz as stated, not less than their scatter gives (0.10 Hz)", right.TakenAs);
        var spare = log["spare"];
        Assert.Equal("one pluck: 80 Hz, taken as exact: no uncertainty was given", spare.Tension.Frequency.TakenAs);
        Assert.Null(spare.ScatterHz);
    }

    [Fact]
    public void Plucks_that_read_alike_without_a_stated_uncertainty_are_said_to_have_none()
    {
        var log = BeltLog.Parse(Header + "left,R1,F1,180 mm,8.1 g/m,96 Hz\nleft,R1,F1,180 mm,8.1 g/m,96 Hz\n", "spans.csv");
        Assert.Equal("mean of 2 plucks; no uncertainty: they read alike and none was stated, so state the analyser's step", log["left"].Tension.Frequency.TakenAs);
    }

    [Fact]
    public void One_reel_and_one_fixture_are_one_input_each_and_cancel()
    {
        var log = BeltLog.Parse(Log, "spans.csv");
        var pair = BeltPair.Compare(log["left"], log["right"]);
        Assert.Equal(["density of reel R1", "span in fixture F1"], pair.Cancelled);
        Assert.Equal("left", pair.Tighten);
        Assert.Equal(Math.Pow(96.2333333333 / 103.5, 2), pair.Ratio.Value, 1e-9);
        Assert.Equal(["frequency of belt left", "frequency of belt right"], pair.Ratio.Contributions.Where(c => c.Share > 0).Select(c => c.Input));
        Assert.Contains("The density of reel R1 and span in fixture F1 cancel.", pair.Verdict, StringComparison.Ordinal);
    }

    [Fact]
    public void The_same_belt_plucked_again_in_another_log_is_another_measurement()
    {
        var before = BeltLog.Parse(Header + "left,R1,F1,180 mm u 1 mm,8.1 g/m u 0.1 g/m,96 Hz u 0.3 Hz\n", "before.csv");
        var after = BeltLog.Parse(Header + "left,R1,F1,180 mm u 1 mm,8.1 g/m u 0.1 g/m,98 Hz u 0.3 Hz\n", "after.csv");
        var pair = BeltPair.Compare(before["left"].Tension, after["left"].Tension, "before", "after");
        Assert.Equal(["density of reel R1", "span in fixture F1"], pair.Cancelled);
        Assert.Equal(2 * double.Hypot(0.3 / 96, 0.3 / 98), pair.Ratio.StandardUncertainty / pair.Ratio.Value, 1e-12);
    }

    [Fact]
    public void A_decimal_comma_is_read_where_the_file_has_it()
    {
        var log = BeltLog.Parse("# plucked on the bench\r\nbelt;reel;fixture;span;density;frequency;note\r\nleft;R1;F1;180,5 +/- 0,5 mm;\"8,1 g/m\";96,25 Hz;second try\r\n", "spans.csv");
        Assert.Equal(0.1805, log["left"].Tension.Span.Length.Si.Value);
        Assert.Equal(96.25, log["left"].Tension.Frequency.Si.Value);
        Assert.Equal("fields separated by semicolon, decimal comma, 1 pluck of 1 belt, not used: note", log.ReadAs);
    }

    [Fact]
    public void Logs_of_equal_content_are_equal()
    {
        Assert.Equal(BeltLog.Parse(Log, "spans.csv"), BeltLog.Parse(Log, "spans.csv"));
        Assert.NotEqual(BeltLog.Parse(Log, "spans.csv"), BeltLog.Parse(Log.Replace("96.2", "96.3", StringComparison.Ordinal), "spans.csv"));
    }

    [Fact]
    public void Every_problem_is_listed_with_its_place()
    {
        const string text = Header
            + "left,R1,F1,180,8.1 g/m,96 Hz\n"
            + "left,R1,F1,180 mm,8.1 mm,0 Hz\n"
            + ",R1,F1,180 mm,8.1 g/m,96 Hz\n"
            + "left,R1,F1,180 mm,8.1 g/m\n"
            + "right,R1,F1,181 mm,8.1 g/m,96 Hz\n"
            + "right,R2,F1,180 mm,8.10 g/m,96 Hz\n"
            + "right,R2,F1,180 mm,8.10 g/m,192 Hz\n";
        var problems = Assert.Throws<InputException>(() => BeltLog.Parse(text, "spans.csv")).Problems.Select(p => p.ToString());
        Assert.Equal(
            [
                "spans.csv:2:12: found '180', expected span to be a length with its unit, such as 180 mm",
                "spans.csv:3:19: found 'mm', expected density to be a linear density: g/m, kg/m, mg/mm",
                "spans.csv:3:26: found '0 Hz', expected frequency to be a frequency above 0",
                "spans.csv:4:1: found nothing, expected the belt's name",
                "spans.csv:5: found 5 fields, expected 6 fields as in the header",
                "spans.csv:6:13: found '181 mm', expected '180 mm' as in line 3 for the span in fixture 'F1'",
                "spans.csv:7:7: found 'R2', expected 'R1' as in line 6 for the reel of belt 'right'",
                "spans.csv:8:7: found 'R2', expected 'R1' as in line 6 for the reel of belt 'right'",
                "spans.csv:8:29: found '192 Hz', expected a pluck within a factor 1.5 of the belt's first, in line 6 (is one an overtone?)",
            ],
            problems);
    }

    [Theory]
    [InlineData("", "spans.csv: found an empty file, expected a header line and rows")]
    [InlineData("belt,reel,fixture,span,density,frequency_hz\n", "spans.csv:1: found no column 'frequency', expected the columns belt, reel, fixture, span, density, frequency")]
    [InlineData(Header, "spans.csv:1: found no row below the header, expected a row for each pluck")]
    [InlineData("belt;reel;fixture;span;density;frequency\nleft;;;180,5 mm;8.1 g/m;96 Hz\n", "spans.csv:2:17: found a decimal point in '8.1 g/m', expected one decimal mark in the file: line 2 has a decimal comma")]
    [InlineData(Header + "le\u001B[2Jft,R1,F1,180 mm,8.1 g/m,96 Hz\n", "spans.csv:2:1: found 'le\uFFFD[2Jft', expected a name of up to 60 printable characters")]
    public void A_file_that_is_no_log_gets_one_plain_message(string text, string message)
        => Assert.Equal(message, Assert.Throws<InputException>(() => BeltLog.Parse(text, "spans.csv")).Message);

    [Fact]
    public void A_missing_file_is_named()
        => Assert.Equal("no/spans.csv: found no such file, expected the path of an existing file", Assert.Throws<InputException>(() => BeltLog.Read("no/spans.csv")).Message);

    [Fact]
    public void A_file_is_read_as_its_text_is()
    {
        var path = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName());
        try
        {
            File.WriteAllText(path, "\uFEFF" + Log.ReplaceLineEndings("\r\n"));
            Assert.Equal(BeltLog.Parse(Log, path), BeltLog.Read(path));
        }
        finally
        {
            File.Delete(path);
        }
    }
}
