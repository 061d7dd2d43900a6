namespace Waywright.Tests;

public class SweepBatchTests
{
    private const string Header = "rail,face,pass,direction,position_mm,reading_um\n";

    private static readonly string Sound = Header + "R01,side,1,forward,10,1.5\nR01,side,1,forward,20,2.5\nR01,top,1,back,10,0\nR01,top,1,back,20,1\nR01,top,2,forward,10,3\nR01,top,2,forward,20,4\n";

    private static string Problem(string text) => string.Join('\n', Assert.Throws<InputException>(() => SweepBatch.Parse(text, "s.csv")).Problems);

    [Fact]
    public void A_tidy_table_is_read_into_sweeps_of_passes()
    {
        var batch = SweepBatch.Parse(Sound, "s.csv");
        Assert.Equal(["R01"], batch.Rails);
        Assert.Equal(["R01 side", "R01 top"], batch.Sweeps.Select(s => s.Name));
        Assert.Equal([1.5, 2.5], batch.Sweeps[0].Passes.Single().ReadingsUm);
        Assert.Equal(["back", "forward"], batch.Sweeps[1].Passes.Select(p => p.Direction));
    }

    [Theory]
    [InlineData(',', '.', "\n")]
    [InlineData(';', '.', "\r\n")]
    [InlineData(';', ',', "\n")]
    [InlineData('\t', ',', "\r\n")]
    [InlineData('\t', '.', "\n")]
    public void Separator_decimal_mark_and_line_ends_do_not_change_what_is_read(char separator, char mark, string lineEnd)
    {
        var text = "\uFEFF# written by hand\n" + Sound.Replace('.', '\u0001').Replace(',', separator).Replace('\u0001', mark);
        var path = Path.Combine(Path.GetTempPath(), $"waywright-{Guid.NewGuid():N}.csv");
        try
        {
            File.WriteAllText(path, text.Replace("\n", lineEnd));
            Assert.Equal(SweepBatch.Parse(Sound, "s.csv").Sweeps.SelectMany(s => s.Passes), SweepBatch.Read(path).Sweeps.SelectMany(s => s.Passes));
        }
        finally
        {
            File.Delete(path);
        }
    }

    [Theory]
    [InlineData("reading_um", "12.5", 12.5)]
    [InlineData("reading_mm", "0.0125", 12.5)]
    [InlineData("reading_in", "0.001", 25.4)]
    public void The_unit_of_the_readings_is_in_the_columns_name(string column, string reading, double um)
    {
        var batch = SweepBatch.Parse($"position_mm,{column}\n0,{reading}\n10,{reading}\n", "s.csv");
        Assert.Equal(um, batch.Sweeps[0].Passes[0].ReadingsUm[0], 1e-12);
    }

    [Fact]
    public void Readings_in_divisions_take_the_dials_division_from_the_set_up()
    {
        const string text = "position_mm,reading_div\n0,1.5\n10,2\n";
        var setups = SetupBook.Parse(SetupBookTests.OneSetup, "setups.json");
        Assert.Equal([15, 20], SweepBatch.Parse(text, "s.csv", setups).Sweeps[0].Passes[0].ReadingsUm);
        Assert.Contains("expected a set-ups file with the dial's division_um", Problem(text));
    }

    [Fact]
    public void A_bare_profile_has_no_rail_and_no_face()
    {
        var sweep = SweepBatch.Parse("position_mm,reading_um\n0,1\n10,2\n5,4\n", "p.csv").Sweeps.Single();
        Assert.Null(sweep.Rail);
        Assert.Null(sweep.Face);
        Assert.Equal([0, 5, 10], sweep.Passes[0].PositionsMm);
        Assert.Equal([1, 4, 2], sweep.Passes[0].ReadingsUm);
    }

    [Theory]
    [InlineData("", "s.csv: found an empty file, expected a header line and rows")]
    [InlineData("# only a comment\n", "s.csv: found no header line, expected a header line and rows")]
    [InlineData(Header, "s.csv:1: found a header and no rows, expected at least two rows of readings")]
    [InlineData("rail,face,pass,direction,reading_um\nR01,side,1,forward,1\n", "s.csv:1: found no column position_mm, expected position_mm")]
    [InlineData("rail,face,pass,position_mm,reading_um\nR01,side,1,0,1\n", "s.csv:1: found no column direction, expected the columns rail,face,pass,direction,position_mm,reading_um (or only position_mm,reading_um)")]
    [InlineData("position_mm,position_mm,reading_um\n0,0,1\n", "s.csv:1: found the column 'position_mm' twice, expected each column once")]
    [InlineData("position_mm,reading_um,reading_mm\n0,1,1\n", "s.csv:1: found the columns reading_um and reading_mm, expected one of reading_um, reading_mm, reading_in, reading_div")]
    [InlineData("position_mm,reading_furlong\n0,1\n", "s.csv:1: found the column 'reading_furlong', expected one of reading_um, reading_mm, reading_in, reading_div: the unit is part of the name")]
    [InlineData("position_mm,reading\n0,1\n", "s.csv:1: found the column 'reading', expected one of reading_um, reading_mm, reading_in, reading_div: the unit is part of the name")]
    [InlineData("position_in,reading_um\n0,1\n", "s.csv:1: found the column 'position_in', expected position_mm: the unit is part of the name")]
    [InlineData(Header + "R01,bottom,1,forward,10,1.5\nR01,side,1,forward,20,1\n", "s.csv:2:5: found 'bottom', expected the face: side or top")]
    [InlineData(Header + "R01,side,1,up,10,1.5\nR01,side,1,forward,20,1\n", "s.csv:2:12: found 'up', expected the direction: forward or back")]
    [InlineData(Header + "R01,side,1,forward,10,abc\nR01,side,1,forward,20,1\n", "s.csv:2:23: found 'abc', expected reading_um to be a number such as 12.5")]
    [InlineData(Header + "R01,side,1,forward,10,NaN\nR01,side,1,forward,20,1\n", "s.csv:2:23: found 'NaN', expected reading_um to be a number such as 12.5")]
    [InlineData(Header + "R01,side,1,forward,10,Infinity\nR01,side,1,forward,20,1\n", "s.csv:2:23: found 'Infinity', expected reading_um to be a number such as 12.5")]
    [InlineData(Header + "R01,side,1,forward,10,1e999\nR01,side,1,forward,20,1\n", "s.csv:2:23: found '1e999', expected reading_um to be a number such as 12.5")]
    [InlineData(Header + "R01,side,1,forward,10,\nR01,side,1,forward,20,1\n", "s.csv:2:23: found nothing, expected reading_um to be a number such as 12.5")]
    [InlineData(Header + "R01,side,1,forward,-3,1\nR01,side,1,forward,20,1\n", "s.csv:2:20: found '-3', expected a position from 0 mm, the end with the dot")]
    [InlineData(Header + "R01,side,1,forward,10,1\n", "s.csv:2: found one station for R01 side, expected at least two stations at different positions")]
    [InlineData(Header + "R01,side,1,forward,10\n", "s.csv:2: found 5 fields, expected 6 fields as in the header")]
    [InlineData(Header + "R01;side;1;forward;10;1\n", "s.csv:2: found 1 field, expected 6 fields as in the header (fields are separated by comma in this file, here is a semicolon)")]
    [InlineData(Header + "R01,side,1,forward,10,1,5\n", "s.csv:2: found 7 fields, expected 6 fields as in the header (where a comma is the decimal mark, separate fields by semicolons)")]
    [InlineData("rail;face,pass,direction,position_mm,reading_um\n", "s.csv:1:5: found fields separated by comma and by semicolon, expected one separator: comma, semicolon or tab")]
    [InlineData("position_mm;reading_um\n0;1,5\n10;2.5\n", "s.csv:3:4: found a decimal point in '2.5', expected one decimal mark in the file: line 2 has a decimal comma")]
    [InlineData(Header + "R01,\"side,1,forward,10,1\nR01,side,1,forward,20,1\n", "s.csv:2:5: found a quotation mark that is not closed on its line, expected a closing quotation mark")]
    [InlineData(Header + ",side,1,forward,10,1\nR01,side,1,forward,20,1\n", "s.csv:2:1: found nothing, expected a rail's name of 1 to 64 printable characters")]
    public void A_wrong_table_is_refused_with_file_line_and_what_was_expected(string text, string expected) => Assert.Equal(expected, Problem(text));

    [Fact]
    public void Every_problem_of_a_file_is_listed_at_once()
        => Assert.Equal(
            "s.csv:2:23: found 'x', expected reading_um to be a number such as 12.5\n" +
            "s.csv:3:5: found 'edge', expected the face: side or top\n" +
            "s.csv:4: found 2 fields, expected 6 fields as in the header",
            Problem(Header + "R01,side,1,forward,10,x\nR01,edge,1,forward,20,1\nR01,side\n"));

    [Fact]
    public void A_flood_of_problems_is_cut_with_its_count()
    {
        var problems = Assert.Throws<InputException>(() => SweepBatch.Parse(Header + string.Concat(Enumerable.Repeat("R01,side,1,forward,x,1\n", 1000)), "s.csv")).Problems;
        Assert.Equal(51, problems.Count);
        Assert.Equal("950 more problems", problems[^1].Found);
    }

    [Fact]
    public void Bytes_that_are_no_UTF_8_text_are_refused_with_their_line()
    {
        var path = Path.Combine(Path.GetTempPath(), $"waywright-{Guid.NewGuid():N}.csv");
        try
        {
            Assert.Equal($"{path}: found no such file, expected the path of an existing file", FileProblem());
            File.WriteAllBytes(path, []);
            Assert.Equal($"{path}: found an empty file, expected a header line and rows", FileProblem());
            File.WriteAllText(path, Sound, System.Text.Encoding.Unicode);
            Assert.Equal($"{path}:1:1: found UTF-16 text, expected text saved as UTF-8 (in a spreadsheet: 'CSV UTF-8')", FileProblem());
            File.WriteAllBytes(path, [.. "a,b\n"u8, 0, 1, 2]);
            Assert.Equal($"{path}:2: found binary data, expected text saved as UTF-8", FileProblem());
            File.WriteAllBytes(path, [.. "position_mm,reading_um\n0,1\n"u8, 0xE9, .. ",1\n"u8]);
            Assert.Equal($"{path}:3: found bytes that are not UTF-8, expected text saved as UTF-8", FileProblem());
        }
        finally
        {
            File.Delete(path);
        }

        Assert.Equal($"{Path.GetTempPath()}: found a folder, expected a file", Assert.Throws<InputException>(() => SweepBatch.Read(Path.GetTempPath())).Message);

        string FileProblem() => Assert.Throws<InputException>(() => SweepBatch.Read(path)).Message;
    }

    [Fact]
    public void Two_set_ups_or_two_tracks_of_one_face_are_refused()
    {
        const string header = "rail,face,pass,direction,position_mm,reading_um,setup,track\n";
        Assert.Contains("one set-up for R01 side", Problem(header + "R01,side,1,forward,10,1,a,\nR01,side,1,forward,20,1,b,\n"));
        Assert.Contains("one track for R01 side", Problem(header + "R01,side,1,forward,10,1,a,1\nR01,side,1,forward,20,1,a,2\n"));
    }

    [Fact]
    public void Columns_that_are_not_used_are_named()
        => Assert.EndsWith("readings in um; not used: note, mood", SweepBatch.Parse("position_mm,reading_um,note,mood\n0,1,a,b\n10,2,,\n", "p.csv").ReadAs);
}
