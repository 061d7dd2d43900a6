using System.Globalization;
using CsCheck;

namespace Waywright.Tests;

public class TableReaderTests
{
    [Fact]
    public void A_byte_order_mark_is_no_part_of_the_first_columns_name()
    {
        using var table = TableReader.Parse("\uFEFFposition_mm,reading_um\n0,1\n", "s.csv");
        Assert.Equal(["position_mm", "reading_um"], table.Columns);
    }

    [Theory]
    [InlineData("R01,1,2.5\n", true)]
    [InlineData("R01,1,2.5\r\n", true)]
    [InlineData("R01,1234567.5,2.5000000\n", true)]
    [InlineData("R01,1,2.5\r", false)]
    [InlineData("R01,-1,2.5\n", false)]
    [InlineData("R01,1,+2.5\n", false)]
    [InlineData("R01,1,2,5\n", false)]
    [InlineData("R01,1, 2.5\n", false)]
    [InlineData("R01,1,\"2.5\"\n", false)]
    [InlineData("R01,1,2.5,\n", false)]
    [InlineData("R01,1\n", false)]
    [InlineData("R01,1,\n", false)]
    [InlineData("R01,,1\n", false)]
    [InlineData("R011,1,2.5\n", false)]
    [InlineData("R0\n", false)]
    [InlineData("\n", false)]
    [InlineData("#\n", false)]
    public void Only_a_row_like_the_remembered_one_is_read_by_its_pattern(string row, bool isAlike)
    {
        using var table = TableReader.Parse($"rail,a,b\nR01,0,0.5\n{row}R02,3,4\n", "s.csv");
        Assert.True(table.MoveNext());
        Assert.True(table.TryNumber(2, out _));
        table.Remember(1);
        var pairs = new NumberPairs();
        table.ReadAlike(0, 10, pairs);
        Assert.Equal(isAlike ? [25.0] : [], pairs.Second.ToArray());
        Assert.Equal(isAlike ? 3 : 2, table.Line);
        while (table.MoveNext())
            Assert.InRange(table.Line, 3, 4);
        Assert.Equal(4, table.Line);
    }

    [Fact]
    public void Empty_rows_and_quoted_comments_above_the_header_as_a_spreadsheet_saves_them_are_passed_over_and_no_row_with_data_is()
    {
        using var table = TableReader.Parse("\"# A line looks like this: R01;1\";\r\n;\r\nrail;a\r\n;\r\n\"# 1\";2\r\n\"\";3\r\n", "s.csv");
        Assert.True(table.MoveNext());
        Assert.Equal("# 1", table.Text(0));
        Assert.True(table.MoveNext());
        Assert.Equal(6, table.Line);
        Assert.False(table.MoveNext());
        table.Problems.ThrowIfAny();
    }

    [Fact]
    public void A_quotation_mark_that_is_not_closed_spoils_its_own_line_only()
    {
        using var table = TableReader.Parse("a,b\n# 5\" dial\n\"x,1\n\"y,1\",2\n3,4\n", "s.csv");
        Assert.True(table.MoveNext());
        Assert.Equal("y,1", table.Text(0));
        Assert.True(table.MoveNext());
        Assert.Equal(5, table.Line);
        Assert.False(table.MoveNext());
        Assert.Equal("s.csv:3:1: found a quotation mark that is not closed on its line, expected a closing quotation mark", Assert.Throws<InputException>(table.Problems.ThrowIfAny).Message);
    }

    [Theory]
    [InlineData("", 1)]
    [InlineData("a,b\n1,2\n", 3)]
    public void A_line_without_end_is_refused_before_it_fills_the_memory(string before, int line)
    {
        var problem = Assert.Throws<InputException>(() =>
        {
            using var table = TableReader.Parse(before + new string('x', 17_000_000), "s.csv");
            while (table.MoveNext())
                Assert.Equal(2, table.Line);
            table.Problems.ThrowIfAny();
        }).Problems.Single();
        Assert.Equal((line, "a row too long to be a table's"), (problem.Line!.Value, problem.Found));
    }

    [Fact]
    public void Lines_of_every_length_come_whole_through_a_buffer_of_any_piece()
        => Gen.Select(Gen.Int[0, 200_000].Array[1, 6], Gen.OneOf(Gen.Const("\n"), Gen.Const("\r\n"), Gen.Const("\r"))).Sample(
            (lengths, lineEnd) =>
            {
                using var text = new StringReader(string.Join(lineEnd, lengths.Select(n => new string('x', n))) + lineEnd);
                var lines = new LineReader(text);
                return lengths.All(n => lines.MoveNext() && lines.Current.Length == n) && !lines.MoveNext() && lines.Number == lengths.Length;
            },
            iter: 50);

    [Fact]
    public void A_number_read_the_short_way_is_the_double_that_the_runtime_reads()
        => Gen.Select(Gen.Long[-999_999_999_999_999, 999_999_999_999_999], Gen.Int[0, 15], Gen.OneOf(Gen.Const('.'), Gen.Const(','))).Sample((digits, decimals, mark) =>
        {
            var text = ((decimal)digits / (decimal)Math.Pow(10, decimals)).ToString("0.###############", CultureInfo.InvariantCulture);
            var end = Number.ReadPlain($"a;{text.Replace('.', mark)};", 2, mark, out var value);
            // Zeros between the mark and the first other digit count as digits.
            return text.Count(char.IsAsciiDigit) > 15 ? end == -1 : end == 2 + text.Length && value.Equals(double.Parse(text, CultureInfo.InvariantCulture));
        });
}
