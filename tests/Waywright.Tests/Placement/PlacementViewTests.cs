using Waywright.Notebooks;
using Waywright.Placement;

namespace Waywright.Tests;

public class PlacementViewTests
{
    private static readonly MachinePlan Pair = PlacementScene.Plan(PlacementScene.Position("left", "\"pair\":\"right\",\"ends\":[\"front\",\"back\"]") + "," + PlacementScene.Position("right", "\"ends\":[\"front\",\"back\"]"));

    private static RailPlacement Placed(params (string Rail, double Side)[] rails)
        => RailPlacement.Of(PlacementScene.Batch(rails.Select(r => (r.Rail, (Func<double, double>)(x => 4 * r.Side * x * (320 - x) / (320.0 * 320)), (Func<double, double>)(x => 0)))), null, Pair);

    [Fact]
    public void The_view_leads_with_what_goes_where_and_which_way_round()
    {
        var text = Views.Text(Placed(("A", 12), ("B", -12), ("C", 20)));
        Assert.StartsWith("Use A for left, dot at the front; B for right, dot at the back.\n", text, StringComparison.Ordinal);
        Assert.Contains("turned end for end", text, StringComparison.Ordinal);
        Assert.Contains("it is proven that no other placement has less", text, StringComparison.Ordinal);
        // A 12, B 12, matched; with C: 12 + 20 and 8 apart.
        Assert.Contains("Weighted residuals and mismatches add up to 24.0 um", text, StringComparison.Ordinal);
        Assert.Contains("Runner-up: C instead of B, 16.0 um more.", text, StringComparison.Ordinal);
        Assert.Contains("Widths and lengths were not compared", text, StringComparison.Ordinal);
        Assert.Contains("Left over: C.", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_shortage_stands_in_the_verdict()
    {
        var text = Views.Text(Placed(("A", 12), ("C", 70)));
        Assert.StartsWith("Use A for left, dot at the front. Right needs one more 9 x 320 mm rail of z or better: the one that fits is placed at left; C would do if its side were within 60 um (70 now).\n", text, StringComparison.Ordinal);
        Assert.StartsWith("No rail can be placed. Left needs one more", Views.Text(Placed(("C", 70))), StringComparison.Ordinal);
    }

    [Fact]
    public void Names_from_files_are_text_in_the_html()
    {
        var html = Views.Html(Placed(("<b>A", 12), ("B&C", -12)));
        Assert.DoesNotContain("<b>", html, StringComparison.Ordinal);
        Assert.Contains("&lt;b&gt;A", html, StringComparison.Ordinal);
        Assert.Contains("B&amp;C", html, StringComparison.Ordinal);
    }

    [Fact]
    public void A_hundred_machines_stay_under_thirty_kilobytes()
    {
        var batch = PlacementScene.RandomBatch(140, 3);
        var placement = RailPlacement.Of(batch, null, PlacementScene.Plan(PlacementScene.Position("left"), 120));
        Assert.InRange(Waywright.Publishing.CellOutputs.WithoutLive(Views.Html(placement)).Length, 1000, 30_000);
        Assert.StartsWith("Use R", Views.Text(placement), StringComparison.Ordinal);
    }

    [Fact]
    public void The_plan_is_shown_with_what_it_takes()
    {
        var text = Views.Text(PlacementScene.Plan(PlacementScene.Position("left") + "," + PlacementScene.Position("lift", "\"count\":2", face: "top"), 3));
        Assert.StartsWith("9 rails are wanted for 3 machines: left, lift (2).\n", text, StringComparison.Ordinal);
        Assert.Contains("near end", text, StringComparison.Ordinal);
        Assert.Contains("<table", Views.Html(Pair), StringComparison.Ordinal);
    }
}
