using System.Globalization;
using System.Text;
using System.Xml.Linq;
using Deedle;
using Waywright.Notebooks;
using IFrameFormattable = Deedle.Internal.IFrameFormattable;
using ISeriesFormattable = Deedle.Internal.ISeriesFormattable;

namespace Waywright.Tests.Notebooks;

public class FrameGridTests
{
    [Fact]
    public void A_long_frame_shows_its_ends_and_says_what_is_left_out()
    {
        var grid = FrameGrid.Of((IFrameFormattable)Rails(351));
        Assert.Equal(21, grid.Table.Rows.Count);
        Assert.Equal(["0", "9", "…", "341", "350"], new[] { 0, 9, 10, 11, 20 }.Select(r => grid.Table.Rows[r][0]));
        Assert.Equal("351 rows, of which 331 are left out where the dots are. Missing values: 1. Long values are shown shortened.", grid.Remark);
    }

    [Theory]
    [InlineData(1, "1 row.")]
    [InlineData(21, "21 rows.")]
    [InlineData(22, "22 rows, of which 2 are left out where the dots are.")]
    public void The_sentence_counts_rows(int rows, string remark)
    {
        var frame = Frame.FromColumns([KeyValuePair.Create("n", Enumerable.Range(0, rows).ToOrdinalSeries())]);
        Assert.Equal(remark, FrameGrid.Of((IFrameFormattable)frame).Remark);
    }

    [Fact]
    public void Cells_are_words_and_columns_of_numbers_are_marked()
    {
        var html = FrameGrid.Of((IFrameFormattable)Rails(30)).Html();
        XElement.Parse($"<div>{html}</div>");
        Assert.Contains("<td>R&lt;b&gt;0</td>", html, StringComparison.Ordinal);
        Assert.Contains("<th scope=\"col\" class=\"ww-num\">height_um</th>", html, StringComparison.Ordinal);
        Assert.Contains("<td class=\"ww-num\">missing</td>", html, StringComparison.Ordinal);
    }

    [Fact]
    public void A_wide_frame_of_long_hostile_cells_is_under_30_kB()
    {
        var columns = Enumerable.Range(0, 40).Select(c => KeyValuePair.Create($"<{c}>", Enumerable.Repeat(new string('"', 500), 100).ToOrdinalSeries()));
        var grid = FrameGrid.Of((IFrameFormattable)Frame.FromColumns(columns));
        Assert.InRange(Encoding.UTF8.GetByteCount(grid.Html()), 1_000, 30_000);
        Assert.Contains("28 of 40 columns are left out", grid.Remark, StringComparison.Ordinal);
    }

    [Fact]
    public void A_series_shows_like_a_frame_of_one_column()
    {
        var grid = FrameGrid.Of((ISeriesFormattable)Enumerable.Range(0, 40).Select(i => i / 4.0).ToOrdinalSeries());
        Assert.Equal("40 rows, of which 20 are left out where the dots are.", grid.Remark);
        Assert.StartsWith("    value\n 0      0\n 1   0.25\n", grid.Text(), StringComparison.Ordinal);
    }

    [Fact]
    public void An_empty_frame_has_no_rows()
        => Assert.Equal("0 rows.", FrameGrid.Of((IFrameFormattable)Frame.CreateEmpty<int, string>()).Remark);

    [Fact]
    public void Numbers_have_a_point_whatever_the_machines_language()
    {
        var before = CultureInfo.CurrentCulture;
        CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
        try
        {
            Assert.Contains("0.25", FrameGrid.Of((ISeriesFormattable)new[] { 0.25 }.ToOrdinalSeries()).Text(), StringComparison.Ordinal);
            Assert.Equal("de-DE", CultureInfo.CurrentCulture.Name);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    private static Frame<int, string> Rails(int rows) => new FrameBuilder.Columns<int, string>
    {
        { "rail", Enumerable.Range(0, rows).Select(i => string.Create(CultureInfo.InvariantCulture, $"R<b>{i}")).ToOrdinalSeries() },
        { "height_um", Enumerable.Range(0, rows).Select(i => i == 2 ? double.NaN : i + (1 / 3.0)).ToOrdinalSeries() },
    }.Frame;
}
