using System.Xml.Linq;
using CsCheck;
using Waywright.Notebooks;

namespace Waywright.Tests.Notebooks;

public class SvgPictureTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    public static TheoryData<string> Hostile => [.. HostileNames.All];

    [Theory]
    [MemberData(nameof(Hostile))]
    public void Names_from_data_stay_words_in_well_formed_xml(string name)
    {
        var svg = XElement.Parse(SvgPicture.Draw(SamplePictures.Rail(name)));
        Assert.Contains(HostileNames.AsXml(name), svg.Element(Svg + "title")!.Value, StringComparison.Ordinal);
        svg = XElement.Parse(SvgPicture.Draw(SamplePictures.Batch(name)));
        Assert.All(svg.DescendantsAndSelf(), e => Assert.Contains(e.Name.LocalName, new[] { "svg", "title", "desc", "path", "text", "tspan" }));
    }

    [Fact]
    public void Any_text_gives_well_formed_xml()
        => Gen.String[Gen.Char, 0, 40].Sample(words => XElement.Parse($"<text>{SvgText.Encode(words)}</text>"), iter: 2_000);

    [Fact]
    public void A_picture_says_what_it_is_and_needs_nothing_else()
    {
        var svg = XElement.Parse(SvgPicture.Draw(SamplePictures.Rail()));
        Assert.Equal("img", svg.Attribute("role")!.Value);
        Assert.Equal("Side profile of rail R07", svg.Elements().First().Value);
        Assert.Equal(Svg + "desc", svg.Elements().ElementAt(1).Name);
        Assert.NotNull(svg.Attribute("viewBox"));
        Assert.DoesNotContain(svg.DescendantsAndSelf().Attributes(), a => a.Name.LocalName is "id" or "href" or "src" or "class" || a.Value.Contains("url(", StringComparison.Ordinal));
    }

    [Fact]
    public void Ink_is_the_colour_of_the_page_and_every_other_colour_is_a_role()
    {
        var painted = XElement.Parse(SvgPicture.Draw(SamplePictures.Rail())).DescendantsAndSelf().Attributes().Where(a => a.Name.LocalName is "fill" or "stroke").Select(a => a.Value).Distinct().ToArray();
        Assert.Subset(new HashSet<string>([.. Enum.GetValues<Role>().Select(r => r.Colour()).Where(c => c != Roles.InkColour), "currentColor", "none"]), painted.ToHashSet());
        Assert.Contains("currentColor", painted);
    }

    [Fact]
    public void All_dots_of_a_look_are_one_path()
    {
        var faint = Assert.Single(XElement.Parse(SvgPicture.Draw(SamplePictures.Rail())).Descendants(Svg + "path"), p => p.Attribute("stroke-opacity")?.Value == "0.45");
        Assert.Equal(42 + 1, faint.Attribute("d")!.Value.Split("h0").Length - 1); // 3 passes over 14 stations, and the key
    }

    [Fact]
    public void Dots_lie_where_their_numbers_say()
    {
        var picture = new Picture("A test", "", Axis.Covering("x", "", [0, 10]), Axis.Covering("y", "", [0, 10]), new Panel(new DotLayer("", Role.Ink, Point.Of([0, 10], [0, 10]))));
        var layout = new PictureLayout(picture);
        var (left, top) = layout.PlotCorner(0);
        var d = XElement.Parse(SvgPicture.Draw(picture)).Descendants(Svg + "path").Select(p => p.Attribute("d")!.Value).Single(v => v.Contains("h0", StringComparison.Ordinal));
        Assert.Equal($"M{SvgText.Px(left)} {SvgText.Px(top + layout.PlotHeight)}h0M{SvgText.Px(left + layout.PanelWidth)} {SvgText.Px(top)}h0", d);
    }

    [Fact]
    public void Only_a_panel_that_its_data_leaves_is_clipped()
    {
        Assert.Single(XElement.Parse(SvgPicture.Draw(SamplePictures.Batch())).Elements(Svg + "svg"));
        Assert.Empty(XElement.Parse(SvgPicture.Draw(SamplePictures.Rail())).Elements(Svg + "svg"));
    }
}
