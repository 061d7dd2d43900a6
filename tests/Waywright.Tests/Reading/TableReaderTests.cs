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
    [InlineData("R01,1,2.5", true)]
    [InlineData("R01,-1,+2.5", false)]
    [InlineData("R01,1,2,5", false)]
    [InlineData("R01,1, 2.5", false)]
    [InlineData("R01,1,\"2.5\"", false)]
    [InlineData("R01,1,2.5,", false)]
    [InlineData("R01,1", false)]
    [InlineData("R01,1,", false)]
    [InlineData("R01,,1", false)]
    [InlineData("R011,1,2.5", false)]
    [InlineData("R0", false)]
    [InlineData("", false)]
    [InlineData("#", false)]
    public void Only_a_row_like_the_remembered_one_is_read_by_its_pattern(string row, bool isAlike)
    {
        using var table = TableReader.Parse($"rail,a,b\nR01,0,0.5\n{row}\nR01,3,4\n", "s.csv");
        Assert.True(table.MoveNext());
        Assert.True(table.TryNumber(2, out _));
        table.Remember(1);
        Assert.Equal(isAlike, table.MoveNextAlike(out var first, out var second));
        Assert.Equal(isAlike ? (1, 2.5) : (0, 0), isAlike ? (first, second) : (0, 0));
        Assert.Equal(isAlike ? 3 : 2, table.Line);
        while (table.MoveNext())
            Assert.InRange(table.Line, 3, 4);
        Assert.Equal(4, table.Line);
    }

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
