using System.Text;
using Waywright.Notebooks;

namespace Waywright.Tests.Mounting;

/// <summary>What a reader is told: the action first.</summary>
public class MountingViewTests
{
    private const double Stiffness = 42.4;

    private static readonly ScrewPattern Every = ScrewPattern.Every(350, 20, 5);

    private static Profile Named(double um, string name) => new(MountedShapeTests.Parabola(um).PositionsMm, MountedShapeTests.Parabola(um).HeightsUm, name);

    [Fact]
    public void Screws_are_told_with_order_left_over_hole_and_free_end()
    {
        var text = Views.Text(Every.EveryOther());
        Assert.StartsWith("Put 9 screws into every other hole (18 holes) and tighten them in the order 9, 11, 7, 13, 5, 15, 3, 17, 1: once until the heads sit, then to the full torque.\n", text, StringComparison.Ordinal);
        Assert.Contains("Left over: hole 18; 5 mm stand free at the dot, 25 mm at the far end, the widest gap is 40 mm.", text);
        Assert.Contains("Caution:", text);
    }

    [Fact]
    public void A_mounted_top_is_told_by_what_is_left_and_says_that_it_counts_from_the_base()
    {
        var shape = MountedShape.Of(Named(-60, "R05 top"), Every.EveryOther(), Stiffness);
        Assert.Matches(@"^Screw it down in every other hole: R05 top is predicted to keep \d\.\d um of 60\.0, relative to the base\.$", Views.Text(shape).Split('\n')[0]);
        var figures = Views.Find(typeof(MountedShape))!.Figures(shape, "x").ToArray();
        Assert.Equal(["x/mounted-residual", "x/free", "x/widest-gap", "x/largest-pull"], figures.Select(f => f.Id));
        Assert.Equal(shape.ResidualUm, figures[0].Value);
        var weak = MountedShape.Of(Named(-60, "R05 top"), Every.EveryOther(), Stiffness, clampLimitN: shape.PullsN.Max() / 2);
        Assert.StartsWith("Use more screws or another rail: the screw", Views.Text(weak), StringComparison.Ordinal);
    }

    [Fact]
    public void The_fewest_screws_are_told_by_their_holes_or_said_not_to_exist()
    {
        Assert.Matches(@"^Use \d+ screws, in holes 1, .*: predicted to keep \d\.\d um, limit 5, relative to the base\.$", Views.Text(ScrewChoice.Fewest(Named(100, "R1 top"), Every, 5, Stiffness)).Split('\n')[0]);
        Assert.StartsWith("Use another rail: no screws tried bring it within 0.001 um;", Views.Text(ScrewChoice.Fewest(Named(100, "R1 top"), Every, 0.001, Stiffness)), StringComparison.Ordinal);
    }

    [Fact]
    public void A_side_is_never_said_to_be_straightened_by_tightening()
    {
        var side = Named(60, "R05 side");
        Assert.Contains("as laid, R05 side keeps its 60.0 um, and tightening doesn't change that.", Views.Text(SideMounting.AsLaid(side, Every)));
        Assert.StartsWith("Set it to the straightedge at each screw and tighten it there: R05 side is predicted to keep 0.", Views.Text(SideMounting.ToStraightedge(side, Every, 81.3, 0.2, 2000)), StringComparison.Ordinal);
        var text = Views.Text(SideMounting.FromOtherRail(side, Every, 81.3, 0.01, 2));
        Assert.Matches(@"^Don't count on the other rail: the clearance of 10\.0 um is too small at holes 1, .*, and friction holds 0\.2 N and not what bends it at holes .*; R05 side may be 60\.0 um, as when laid free\.", text);
    }

    [Fact]
    public void Fragments_stay_below_thirty_kilobytes_and_names_are_text()
    {
        var free = Named(60, "<b>R9</b> & top");
        object[] results = [Every, MountedShape.Of(free, Every, Stiffness), ScrewChoice.Fewest(free, Every, 5, Stiffness), SideMounting.ToStraightedge(free, Every, 81.3, 0.2, 2000)];
        foreach (var result in results)
        {
            // The first chart of a process brings the script that draws charts, once.
            Views.Html(result);
            var html = Views.Html(result);
            Assert.InRange(Encoding.UTF8.GetByteCount(html), 500, 30_000);
            Assert.DoesNotContain("<b>", html);
        }
    }
}

[UnderCulture("fa-IR")]
public sealed class MountingViewTestsInPersian : MountingViewTests;
