using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Waywright.Notebooks;

namespace Waywright.Tests.Notebooks;

public class FigureHtmlTests
{
    private const string Caption = "Rail R07 is bowed 14 µm towards the dial (8 to 19), inside the limit of 30 µm.";

    [Fact]
    public void A_rail_of_42_readings_at_14_stations_is_under_12_kB_with_its_data()
    {
        var data = new TextTable("#position, mm", "#height, µm", "#U, µm");
        foreach (var station in SamplePictures.Stations)
            data.Add(SvgText.Px(station), "12.3", "2.9");
        Assert.InRange(Bytes(FigureHtml.Of(SamplePictures.Rail(), Caption, data, Sent())), 4_000, 12_000);
    }

    [Fact]
    public void Twelve_small_multiples_of_14_stations_are_under_30_kB()
        => Assert.InRange(Bytes(FigureHtml.Of(SamplePictures.Batch(), Caption, null, Sent())), 10_000, 30_000);

    [Fact]
    public void The_loader_comes_with_the_first_figure_only()
    {
        var live = new LiveScript();
        var (first, second) = (FigureHtml.Of(SamplePictures.Rail(), Caption, null, live), FigureHtml.Of(SamplePictures.Tension(), Caption, null, live));
        Assert.InRange(Bytes(first), 1_000_000, 1_700_000);
        Assert.Contains("DecompressionStream", first, StringComparison.Ordinal);
        Assert.DoesNotContain("DecompressionStream", second, StringComparison.Ordinal);
        Assert.Contains("waywright.show(\"ww-", second, StringComparison.Ordinal);
    }

    [Fact]
    public void The_packed_script_is_Plotly_as_Plotly_NET_carries_it()
    {
        var packed = Regex.Match(FigureHtml.Of(SamplePictures.Rail(), Caption, null, new LiveScript()), "atob\\(\"([A-Za-z0-9+/=]+)\"\\)").Groups[1].Value;
        using var unpacked = new System.IO.Compression.GZipStream(new MemoryStream(Convert.FromBase64String(packed)), System.IO.Compression.CompressionMode.Decompress);
        using var text = new StreamReader(unpacked);
        Assert.StartsWith($"/**\n* plotly.js v{Globals.PLOTLYJS_VERSION}", text.ReadToEnd(), StringComparison.Ordinal);
    }

    [Fact]
    public void Without_the_live_stretch_no_script_is_left_but_inert_data()
    {
        foreach (var name in HostileNames.All)
        {
            var html = WithoutLive(FigureHtml.Of(SamplePictures.Batch(name), name, new TextTable("rail").Add(name), new LiveScript()));
            Assert.Equal("<script type=\"application/json\" class=\"ww-plot\">", Assert.Single(Regex.Matches(html, "<script[^>]*>")).Value);
            var json = Regex.Match(html, "class=\"ww-plot\">(.*?)</script>", RegexOptions.Singleline).Groups[1].Value;
            Assert.DoesNotContain('<', json);
            Assert.Equal(["data", "layout", "config"], JsonNode.Parse(json)!.AsObject().Select(m => m.Key));
        }
    }

    [Fact]
    public void Nothing_is_fetched_from_anywhere()
    {
        var live = FigureHtml.Of(SamplePictures.Rail(), Caption, null, new LiveScript());
        var own = Regex.Replace(live, "atob\\(\"[^\"]+\"\\)", "");
        Assert.DoesNotMatch("(src|href)=|fetch\\(|import\\(|//[a-z]+\\.[a-z]+", own.Replace("http://www.w3.org/2000/svg", "", StringComparison.Ordinal));
    }

    [Fact]
    public void The_same_picture_gives_the_same_bytes_and_its_id_is_the_hash_of_its_figure()
    {
        var html = FigureHtml.Of(SamplePictures.Rail(), Caption, null, Sent());
        Assert.Equal(html, FigureHtml.Of(SamplePictures.Rail(), Caption, null, Sent()));
        var hash = Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(Encoding.UTF8.GetBytes(FigureHtml.Json(SamplePictures.Rail()))));
        Assert.StartsWith($"<figure class=\"ww-figure\" id=\"ww-{hash[..12]}\"", html, StringComparison.Ordinal);
        Assert.NotEqual(FigureHtml.Json(SamplePictures.Rail()), FigureHtml.Json(SamplePictures.Rail(bow: 15)));
    }

    [Fact]
    public void The_caption_is_words()
        => Assert.Contains("<figcaption>R&lt;b&gt; &amp; 3 µm</figcaption>", FigureHtml.Of(SamplePictures.Rail(), "R<b> & 3 µm", null, Sent()), StringComparison.Ordinal);

    [Theory]
    [InlineData("de-DE")]
    [InlineData("tr-TR")]
    [InlineData("fa-IR")]
    public void Figures_are_the_same_in_every_language_of_the_machine(string language)
    {
        var expected = Drawn(CultureInfo.InvariantCulture);
        var culture = CultureInfo.GetCultureInfo(language);
        Assert.NotEqual("-1.5", (-1.5).ToString(culture));
        Assert.Equal(expected, Drawn(culture));

        static string[] Drawn(CultureInfo culture)
        {
            var before = CultureInfo.CurrentCulture;
            CultureInfo.CurrentCulture = culture;
            try
            {
                return new[] { SamplePictures.Rail(), SamplePictures.Batch(), SamplePictures.Tension() }.Select(p => FigureHtml.Of(p, Caption, null, Sent())).ToArray();
            }
            finally
            {
                CultureInfo.CurrentCulture = before;
            }
        }
    }

    // A loader that was already sent.
    private static LiveScript Sent()
    {
        var live = new LiveScript();
        live.For("ww-000000000000");
        return live;
    }

    private static string WithoutLive(string html) => Regex.Replace(html, "<!--ww:live-->.*?<!--/ww:live-->", "", RegexOptions.Singleline);

    private static int Bytes(string text) => Encoding.UTF8.GetByteCount(text);
}
