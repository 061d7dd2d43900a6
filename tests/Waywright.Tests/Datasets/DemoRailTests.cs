using MathNet.Numerics.Interpolation;

namespace Waywright.Tests.Datasets;

/// <summary>The invented rails hold together: truth, grades, readings; all figures recomputed here by all pairs.</summary>
public sealed class DemoRailTests
{
    [Fact]
    public void The_true_figures_are_those_of_the_true_profiles()
    {
        Assert.Equal(12, DemoBatch.Rails.Count);
        foreach (var face in DemoBatch.Rails.SelectMany(rail => new[] { rail.Side, rail.Top }))
        {
            Assert.Equal(AllPairs.MinimumZone(DemoBatch.StationsMm, face.ProfileUm), face.MinimumZoneUm, 1e-6);
            Assert.Equal(AllPairs.Local(DemoBatch.StationsMm, face.ProfileUm, StartingLimits.WindowMm), face.LocalUm, 1e-6);
        }
    }

    [Fact]
    public void The_true_figures_earn_the_intended_grade()
        => Assert.All(DemoBatch.Rails, rail => Assert.Equal(rail.Grade, StartingLimits.GradeOf(rail.Side.MinimumZoneUm, rail.Side.LocalUm, rail.TopMountedUm)));

    [Fact]
    public void The_pooled_readings_earn_the_intended_grade()
        => Assert.All(DemoBatch.Rails, rail => Assert.Equal(rail.Grade, StartingLimits.GradeOf(
            AllPairs.MinimumZone(DemoBatch.StationsMm, DemoBatch.Pooled(rail.Rail, "side")),
            AllPairs.Local(DemoBatch.StationsMm, DemoBatch.Pooled(rail.Rail, "side"), StartingLimits.WindowMm),
            // A wave of 60 mm is not read in full at stations of 25 mm: what screws leave of the shape itself counts.
            rail.TopMountedUm)));

    [Fact]
    public void The_true_mounted_residual_is_what_a_general_library_s_spline_through_the_holes_leaves()
    {
        double[] holes = [.. Enumerable.Range(0, 13).Select(i => 10 + (25.0 * i))];
        foreach (var rail in DemoBatch.Rails)
        {
            double Height(double x)
            {
                var (u, parts) = (x / 320, rail.Top.Parts);
                return (parts[0] * 4 * u * (1 - u)) + (parts[1] * 6 * Math.Sqrt(3) * u * (1 - u) * (1 - (2 * u))) + (parts[2] * Math.Min(x / 147.5, (320 - x) / 172.5)) + (parts[3] * Math.Sin(2 * Math.PI * x / 60));
            }

            var spline = CubicSpline.InterpolateNaturalSorted(holes, Array.ConvertAll(holes, Height));
            double Held(double x) => Math.Clamp(x, 10, 310) is var end && end == x ? spline.Interpolate(x) : spline.Interpolate(end) + (spline.Differentiate(end) * (x - end));
            double[] places = [.. Enumerable.Range(0, 129).Select(i => 2.5 * i)];
            // The truth is rounded to 0.1 um and looks at half millimetres.
            Assert.InRange(AllPairs.MinimumZone(places, [.. places.Select(x => Height(x) - Held(x))]), 0.98 * (rail.TopMountedUm - 0.06), rail.TopMountedUm + 0.06);
        }
    }

    [Fact]
    public void No_true_figure_stands_within_4_um_of_a_limit_that_could_decide()
    {
        // 4 um: noise 0.6 um over three passes reads at most about 2.5 um (95 %), the plate up to 1.5 um. A rail to return is decided by its side alone.
        foreach (var rail in DemoBatch.Rails.Where(rail => rail.Grade != "return"))
        {
            foreach (var limits in StartingLimits.BestFirst)
            {
                Assert.True(Math.Abs(rail.Side.MinimumZoneUm - limits.Side) > 4, rail.Rail);
                Assert.True(Math.Abs(rail.Side.LocalUm - limits.SideLocal) > 4, rail.Rail);
                // How near a wave comes to its limit is known less well than any distance that a story could keep: its bounds decide.
                Assert.True(Math.Abs(rail.TopMountedUm - limits.TopMounted) > 1, rail.Rail);
            }
        }
    }

    [Fact]
    public void The_story_has_every_kind_of_rail()
    {
        Assert.Equal(new Dictionary<string, int> { ["gantry"] = 6, ["z"] = 4, ["measure again"] = 1, ["return"] = 1 }, DemoBatch.Rails.CountBy(rail => rail.Grade).ToDictionary());
        Assert.Contains(DemoBatch.Rails, rail => rail.Grade == "return" && rail.Side.MinimumZoneUm > 250);
        Assert.Contains(DemoBatch.Rails, rail => rail.Grade == "z" && rail.Side.MinimumZoneUm < 30 && rail.Side.LocalUm > 15); // a kink
        Assert.Contains(DemoBatch.Rails, rail => rail.Grade == "z" && rail.Side.MinimumZoneUm < 30 && rail.TopMountedUm > 10); // a wave
        Assert.Contains(DemoBatch.Rails, rail => rail.Grade == "gantry" && rail.Top.MinimumZoneUm is > 80 and < 100 && rail.TopMountedUm < 2); // a bow that screws take out
    }

    [Fact]
    public void The_range_of_unaligned_readings_would_refuse_a_rail_that_is_straight_enough()
    {
        var gantry = StartingLimits.BestFirst[0];
        var levelledInHaste = DemoBatch.Rails.Where(rail => rail.Grade == "gantry")
            .Where(rail => DemoBatch.Readings.Where(r => r.Rail == rail.Rail && r.Face == "side").GroupBy(r => r.Pass).Any(pass => AllPairs.Range([.. pass.Select(r => r.Um)]) > gantry.Side));
        var rail = Assert.Single(levelledInHaste);
        Assert.True(AllPairs.MinimumZone(DemoBatch.StationsMm, DemoBatch.Pooled(rail.Rail, "side")) < gantry.Side - 10);
    }
}
