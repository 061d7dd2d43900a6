using Waywright.Placement;

namespace Waywright.Tests;

public class PlacementOptimumTests
{
    public static TheoryData<int> Seeds => [.. Enumerable.Range(1, 24)];

    // left and right are a pair, lift stands alone on its top; weights differ, every fourth plan asks a better grade at the left.
    private static MachinePlan Three(int seed) => PlacementScene.Plan(string.Join(',',
        PlacementScene.Position("left", $"\"pair\":\"right\",\"weight\":{1 + (seed % 3)}", seed % 4 == 0 ? "gantry" : "z"),
        PlacementScene.Position("right"),
        PlacementScene.Position("lift", "\"weight\":0.5", face: "top")));

    [Theory]
    [MemberData(nameof(Seeds))]
    public void The_answer_is_the_least_of_all_permutations_and_ways_round(int seed)
    {
        // 5 or 6 rails in 3 places: every choice and every way round, by enumeration.
        var batch = PlacementScene.RandomBatch(5 + (seed % 2), seed, 2);
        var plan = Three(seed);
        var all = PlacementEnumeration.Of(batch, plan);
        var placement = RailPlacement.Of(batch, null, plan);
        if (all.Count == 0)
        {
            Assert.False(placement.IsFilled);
            return;
        }

        Assert.True(placement.IsFilled);
        Assert.True(placement.IsProven);
        Assert.Equal(0, placement.Gap);
        Assert.Equal(all[0].Cost, placement.CostUm, 0.003);
        // The cost that it states is the cost of what it says to do.
        Assert.Equal(placement.CostUm, PlacementEnumeration.CostOf(batch, plan, [.. placement.Placed.Select(p => (p.Rail, p.IsTurned))]), 0.003);
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void The_runner_up_is_the_least_of_all_other_sets_of_rails(int seed)
    {
        var batch = PlacementScene.RandomBatch(5 + (seed % 2), seed, 2);
        var plan = Three(seed);
        var all = PlacementEnumeration.Of(batch, plan);
        var placement = RailPlacement.Of(batch, null, plan);
        var used = placement.Placed.Select(p => p.Rail).Order().ToArray();
        var others = all.Where(a => !a.Rails.Order().SequenceEqual(used)).ToArray();
        if (others.Length == 0)
        {
            Assert.Empty(placement.RunnerUp);
            Assert.Null(placement.RunnerUpCostUm);
            return;
        }

        Assert.NotEqual(used, placement.RunnerUp.Select(p => p.Rail).Order());
        Assert.True(placement.IsRunnerUpProven);
        Assert.Equal(others[0].Cost, placement.RunnerUpCostUm!.Value, 0.003);
    }

    [Fact]
    public void Most_of_the_random_cases_can_be_filled_and_have_a_runner_up()
    {
        // Otherwise the two tests above would prove little.
        var cases = Seeds.Select(s => PlacementEnumeration.Of(PlacementScene.RandomBatch(5 + (s.Data % 2), s.Data, 2), Three(s.Data))).ToArray();
        Assert.InRange(cases.Count(c => c.Select(a => string.Join(',', a.Rails.Order())).Distinct().Count() > 1), 18, 24);
    }

    [Fact]
    public void Machines_share_one_stock_and_the_sum_over_them_is_the_least()
    {
        var batch = PlacementScene.RandomBatch(6, 77);
        var (one, two) = (PlacementScene.Plan(PlacementScene.Position("left", "\"pair\":\"right\"") + "," + PlacementScene.Position("right"), 2), PlacementScene.Plan(string.Join(',',
            PlacementScene.Position("left a", "\"pair\":\"right a\""), PlacementScene.Position("right a"), PlacementScene.Position("left b", "\"pair\":\"right b\""), PlacementScene.Position("right b"))));
        var placement = RailPlacement.Of(batch, null, one);
        Assert.Equal(PlacementEnumeration.Of(batch, two)[0].Cost, placement.CostUm, 0.003);
        Assert.Equal([1, 1, 2, 2], placement.Placed.Select(p => p.Machine));
        Assert.Equal(4, placement.Placed.Select(p => p.Rail).Distinct().Count());
    }

    [Fact]
    public void Equal_rails_are_placed_the_same_on_every_run_and_the_first_come_first()
    {
        // Eight rails alike: every placement costs the same.
        static double Bow(double x) => 12 * x * (320 - x) / (320 * 320);
        var batch = PlacementScene.Batch(Enumerable.Range(1, 8).Select(i => ($"R{i}", (Func<double, double>)Bow, (Func<double, double>)Bow)));
        var plan = PlacementScene.Plan(string.Join(',', PlacementScene.Position("cross"), PlacementScene.Position("left"), PlacementScene.Position("lift")));
        var first = RailPlacement.Of(batch, null, plan);
        Assert.Equal(["R1", "R2", "R3"], first.Placed.Select(p => p.Rail));
        for (var run = 0; run < 3; run++)
            Assert.Equal(first.Placed, RailPlacement.Of(batch, null, plan).Placed);
    }

    [Fact]
    public void Two_hundred_rails_go_into_twenty_machines_with_what_is_left_of_the_gap_told()
    {
        var batch = PlacementScene.RandomBatch(200, 5, 1.5);
        var plan = PlacementScene.Plan(string.Join(',', PlacementScene.Position("left", "\"pair\":\"right\""), PlacementScene.Position("right"), PlacementScene.Position("cross", "\"weight\":2"), PlacementScene.Position("lift", "\"count\":2", face: "top")), 20);
        var placement = RailPlacement.Of(batch, null, plan);
        Assert.True(placement.IsFilled);
        Assert.Equal(100, placement.Placed.Select(p => p.Rail).Distinct().Count());
        Assert.InRange(placement.BoundUm, 0.97 * placement.CostUm, placement.CostUm);
        Assert.Equal(placement.Gap == 0, placement.IsProven);
        Assert.Equal(placement.CostUm, PlacementEnumeration.CostOfPlaced(batch, plan, placement.Placed), 0.1);
        Assert.Equal(placement.Placed, RailPlacement.Of(batch, null, plan).Placed);
    }

    [Fact]
    public void A_small_effort_still_places_every_rail_and_tells_the_gap()
    {
        var batch = PlacementScene.RandomBatch(60, 9, 1.5);
        var plan = PlacementScene.Plan(string.Join(',', PlacementScene.Position("left", "\"pair\":\"right\""), PlacementScene.Position("right")), 10);
        var hasty = RailPlacement.Of(batch, null, plan, new PlacementOptions(1e-9));
        var best = RailPlacement.Of(batch, null, plan);
        Assert.True(best.IsProven);
        Assert.False(hasty.IsProven);
        Assert.True(hasty.IsFilled);
        Assert.Equal(20, hasty.Placed.Select(p => p.Rail).Distinct().Count());
        Assert.InRange(best.CostUm, hasty.BoundUm, hasty.CostUm);
        Assert.InRange(hasty.Gap, 1e-6, 1);
        Assert.Equal(hasty.CostUm, PlacementEnumeration.CostOfPlaced(batch, plan, hasty.Placed), 0.05);
        Assert.Contains("no placement has less than", Waywright.Notebooks.Views.Text(hasty), StringComparison.Ordinal);
        Assert.Equal(hasty.Placed, RailPlacement.Of(batch, null, plan, new PlacementOptions(1e-9)).Placed);
    }
}
