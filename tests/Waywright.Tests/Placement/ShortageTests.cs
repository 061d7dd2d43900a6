using Waywright.Placement;

namespace Waywright.Tests;

public class ShortageTests
{
    private static Func<double, double> Bow(double height) => x => 4 * height * x * (320 - x) / (320.0 * 320);

    private static GradedBatch Bows(params (string Rail, double Side)[] rails) => PlacementScene.Batch(rails.Select(r => (r.Rail, Bow(r.Side), Bow(5))));

    private static readonly MachinePlan Pair = PlacementScene.Plan(PlacementScene.Position("left", "\"pair\":\"right\"", "gantry") + "," + PlacementScene.Position("right", grade: "gantry"));

    [Fact]
    public void A_shortage_names_the_position_and_the_rail_that_would_do()
    {
        var placement = RailPlacement.Of(Bows(("R01", 12), ("R02", 41), ("R03", 55), ("R04", 150)), null, Pair);
        Assert.False(placement.IsFilled);
        Assert.Equal(["left"], placement.Placed.Select(p => p.Position));
        Assert.Equal("right needs one more 9 x 320 mm rail of gantry: the one that fits is placed at left; R02 would do if its side were within 30 um (41 now).", placement.Unfilled.Single().Needs);
        Assert.Equal(1, placement.Unfilled.Single().Missing);
    }

    [Fact]
    public void What_would_do_is_proven_by_doing_it()
    {
        var placement = RailPlacement.Of(Bows(("R01", 12), ("R02", 30), ("R03", 55)), null, Pair);
        Assert.True(placement.IsFilled);
    }

    [Fact]
    public void The_more_important_position_is_filled_first()
    {
        var plan = PlacementScene.Plan(PlacementScene.Position("left", "\"weight\":1", "gantry") + "," + PlacementScene.Position("right", "\"weight\":3", "gantry"));
        var placement = RailPlacement.Of(Bows(("R01", 12), ("R02", 41)), null, plan);
        Assert.Equal(["right"], placement.Placed.Select(p => p.Position));
        Assert.Equal(["left"], placement.Unfilled.Select(u => u.Position));
    }

    [Fact]
    public void A_good_rail_moves_on_where_another_can_take_its_place()
    {
        // The z position comes first and may take any; only one rail meets gantry.
        var plan = PlacementScene.Plan(PlacementScene.Position("cross", "\"weight\":5") + "," + PlacementScene.Position("left", grade: "gantry"));
        var placement = RailPlacement.Of(Bows(("R01", 12), ("R02", 41)), null, plan);
        Assert.True(placement.IsFilled);
        Assert.Equal(["R02", "R01"], placement.Placed.Select(p => p.Rail));
    }

    [Fact]
    public void Sizes_come_from_the_stock_and_a_rail_that_is_not_in_it_is_not_placed()
    {
        var stock = RailStock.Parse("rail,width_mm,length_mm,pitch_mm,end_distance_mm\nR01,12,320,25,10\nR02,9,320.8,25,10\n", "rails.csv");
        var placement = RailPlacement.Of(Bows(("R01", 5), ("R02", 20), ("R03", 3)), stock, Pair);
        Assert.Equal(["R02"], placement.Placed.Select(p => p.Rail));
        Assert.Equal("right needs one more 9 x 320 mm rail of gantry: the one that fits is placed at left; R03 may do once its size is in rails.csv.", placement.Unfilled.Single().Needs);
    }

    [Fact]
    public void A_size_that_nobody_has_is_said()
    {
        var stock = RailStock.Parse("rail,width_mm,length_mm,pitch_mm,end_distance_mm\nR01,12,320,25,10\nR02,9,321.2,25,10\n", "rails.csv");
        var placement = RailPlacement.Of(Bows(("R01", 5), ("R02", 20)), stock, PlacementScene.Plan(PlacementScene.Position("left")));
        Assert.Equal("left needs one more 9 x 320 mm rail of z or better: none of the rails fits it; no rail left over has that size.", placement.Unfilled.Single().Needs);
    }

    [Fact]
    public void Where_nothing_fits_nothing_is_placed_and_each_position_says_so()
    {
        var placement = RailPlacement.Of(Bows(("R01", 41)), null, Pair);
        Assert.Empty(placement.Placed);
        Assert.Equal(["left needs one more 9 x 320 mm rail of gantry: none of the rails fits it; R01 would do if its side were within 30 um (41 now).",
            "right needs one more 9 x 320 mm rail of gantry: none of the rails fits it; R01 would do if its side were within 30 um (41 now)."], placement.Unfilled.Select(u => u.Needs));
        Assert.Equal(0, placement.CostUm);
    }

    [Fact]
    public void A_grade_that_the_rules_do_not_have_is_named_where_it_stands()
    {
        var problem = Assert.Throws<InputException>(() => RailPlacement.Of(Bows(("R01", 5)), null, PlacementScene.Plan(PlacementScene.Position("left", grade: "best"))));
        Assert.Equal("positions.json:1:80: found 'best', expected a grade of the rules: gantry, z", problem.Message);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(double.NaN)]
    [InlineData(1e9)]
    public void An_effort_outside_its_range_is_refused(double effort) => Assert.Throws<ArgumentOutOfRangeException>(() => new PlacementOptions(effort));
}
