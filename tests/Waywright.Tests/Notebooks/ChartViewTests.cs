using System.Text.RegularExpressions;
using System.Xml.Linq;
using Waywright.Notebooks;
using Chart = Plotly.NET.CSharp.Chart;
using GenericChart = Plotly.NET.GenericChart;

namespace Waywright.Tests.Notebooks;

public class ChartViewTests
{
    [Fact]
    public void A_chart_of_ones_own_gets_the_same_bytes_each_time_and_a_static_picture()
    {
        var html = ChartView.Html(Own(), Sent());
        Assert.Equal(html, ChartView.Html(Own(), Sent()));
        Assert.StartsWith("<figure class=\"ww-figure\" id=\"ww-", html, StringComparison.Ordinal);
        var svg = XElement.Parse(Regex.Match(html, "<svg.*?</svg>", RegexOptions.Singleline).Value);
        Assert.Contains(svg.Descendants(), e => e.Value == "readings");
        Assert.Equal("A chart of 2 traces: fit (3 points), readings (3 points).", ChartView.Text(Own()));
    }

    [Fact]
    public void A_gap_stays_a_gap_and_is_no_text()
    {
        var chart = Chart.Line<double, double, string>([1, 2, 3, 4, 5], [1, 2, double.NaN, 4, 5], Name: "gap");
        var html = ChartView.Html(chart, Sent());
        Assert.DoesNotContain("NaN", html, StringComparison.Ordinal);
        Assert.Contains("[1.0,2.0,null,4.0,5.0]", html, StringComparison.Ordinal);
        var line = Regex.Match(html, "d=\"([^\"]*L[^\"]*)\"").Groups[1].Value;
        Assert.Equal(2, line.Split('M').Count(piece => piece.Contains('L', StringComparison.Ordinal)));
    }

    [Fact]
    public void What_can_not_be_drawn_without_scripts_says_so()
    {
        var html = ChartView.Html(Chart.Column<double, string, string>([3, 4], Keys: new[] { "a", "b" }, Name: "R<b>"), Sent());
        Assert.DoesNotContain("<svg", html, StringComparison.Ordinal);
        Assert.Contains("<p class=\"ww-still\">A chart of 1 trace: R&lt;b&gt; (2 points). It needs scripts to show.</p>", html, StringComparison.Ordinal);
    }

    [Fact]
    public void A_name_can_not_end_the_data()
    {
        var html = ChartView.Html(Chart.Point<double, double, string>([1, 2], [1, 2], Name: "</script><script>alert(1)</script>"), Sent());
        Assert.Equal(2, Regex.Count(html, "<script")); // the data, and the call that shows it
    }

    [Fact]
    public void Black_on_white_paper_stays_black_on_a_dark_page()
    {
        var chart = Own();
        var layout = GenericChart.getLayout(chart);
        layout.SetProperty("paper_bgcolor", "white");
        layout.SetProperty("font", new { color = Roles.InkColour });
        Assert.DoesNotContain("\"#000000\"", ChartView.Html(chart, Sent()), StringComparison.Ordinal);
    }

    [Fact]
    public void In_the_house_style_a_chart_is_small_and_follows_the_pages_ink()
    {
        var plain = ChartView.Html(Own(), Sent()).Length;
        HouseStyle.Apply();
        try
        {
            var html = ChartView.Html(Own(), Sent());
            Assert.InRange(html.Length, 1_000, plain / 2);
            Assert.Contains("\"#000000\"", html, StringComparison.Ordinal);
        }
        finally
        {
            Plotly.NET.Defaults.reset();
        }
    }

    private static GenericChart Own() => Chart.Combine([
        Chart.Line<double, double, string>([1, 2, 3], [1, 2, 3], Name: "fit"),
        Chart.Point<double, double, string>([1, 2, 3], [1.1, 1.8, 3.2], Name: "readings")]);

    private static LiveScript Sent()
    {
        var live = new LiveScript();
        live.For("ww-000000000000");
        return live;
    }
}
