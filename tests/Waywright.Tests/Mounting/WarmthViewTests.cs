using System.Text;
using Waywright.Notebooks;

namespace Waywright.Tests.Mounting;

/// <summary>What a reader is told of warmth.</summary>
public class WarmthViewTests
{
    private static readonly BarSection Rail = BarSection.Rectangle(206, 9, 6.5, 11.4);
    private static readonly BarSection Extrusion = new(69.5, 165, 7000, 10, 23.4);

    [Fact]
    public void The_verdict_gives_the_action_then_the_bow_with_its_side_and_both_temperatures()
    {
        var text = Views.Text(Of(1000, 50.5));
        Assert.Matches(@"^Tighten the screws near 50\.5 °C, or count on a bow of 1[78]\d um hollow at 50\.5 °C after screwing down at 20 °C\.$", text.Split('\n')[0]);
        Assert.Contains("Caution: warm the room", text);
        Assert.Contains("at right angles to the joint", text);
        Assert.Contains("100 mm of it by 71 um", text);
        Assert.Matches(@"^Leave it: both temperatures are the same", Views.Text(Of(1000, 20)));
        Assert.Matches(@"^Leave it: rail and base grow alike", Views.Text(Warmth.Of(Rail, Rail, 20, 50, Nine, 1000)));
        Assert.Matches(@"^Tighten the screws before you count on anything", Views.Text(Of(0, 50)));
        Assert.Matches(@"um crowned", Views.Text(Of(1000, 0)).Split('\n')[0]);
        Assert.Matches(@"^Let the frame bear \d+\.\d( and \d+\.\d)? N m at the ends: kept from turning, they leave a bow of \d\d um hollow", Views.Text(Of(1000, 50, endsHeld: true)));
        Assert.Matches(@"^Tighten both rails alike: on opposite faces", Views.Text(Of(1000, 50, opposite: true)));
    }

    [Fact]
    public void The_record_keeps_the_bows_the_growth_and_the_moments_of_held_ends()
    {
        var warmth = Of(1000, 50);
        var figures = Views.Find(typeof(Warmth))!.Figures(warmth, "x").ToArray();
        Assert.Equal(["x/held", "x/bonded", "x/stays", "x/base-growth"], figures.Select(f => f.Id));
        Assert.Equal((warmth.HeldUm, "um"), (figures[0].Value!.Value, figures[0].Unit));
        Assert.Equal(6, Views.Find(typeof(Warmth))!.Figures(Of(1000, 50, endsHeld: true), "x").Count());
    }

    [Fact]
    public void Three_curves_are_drawn_and_the_fragment_stays_below_thirty_kilobytes()
    {
        Views.Html(Of(1000, 50));
        var html = Views.Html(Of(1000, 50));
        Assert.InRange(Encoding.UTF8.GetByteCount(html), 2_000, 30_000);
        Assert.Contains("<svg", html);
        Assert.All(["free: no friction", "held by friction: expect this", "full bond: glued"], name => Assert.Contains(name, html));
        Assert.DoesNotContain("<svg", Views.Html(Of(1000, 50, opposite: true)));
        Assert.Contains("<svg", Views.Html(Of(1000, 50, endsHeld: true)));
    }

    private static ScrewPattern Nine => ScrewPattern.Every(350, 20, 5).OfCount(9);

    private static Warmth Of(double clampN, double toC, bool endsHeld = false, bool opposite = false) => Warmth.Of(Rail, Extrusion, 20, toC, Nine, clampN, endsHeld: endsHeld, hasOppositeRail: opposite);
}

[UnderCulture("de-DE")]
public sealed class WarmthViewTestsInGerman : WarmthViewTests;

[UnderCulture("fa-IR")]
public sealed class WarmthViewTestsInPersian : WarmthViewTests;
