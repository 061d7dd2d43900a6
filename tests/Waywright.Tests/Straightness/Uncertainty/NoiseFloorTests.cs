using System.Globalization;
using Waywright.Tests.Reference;

namespace Waywright.Tests.Straightness;

/// <summary>What the same set-up reads on a perfectly straight rail.</summary>
public sealed class NoiseFloorTests
{
    [Fact]
    public void Mean_and_95_percent_point_of_noise_alone_are_those_that_numpy_and_the_convex_hull_find()
    {
        DebianPython.RequireSciPy();
        int[] counts = [8, 18, 35];
        var file = Path.GetTempFileName();
        try
        {
            File.WriteAllLines(file, counts.Select(n => n.ToString(CultureInfo.InvariantCulture)));
            var lines = DebianPython.Run("noise_floor.py", file);
            for (var i = 0; i < counts.Length; i++)
            {
                var theirs = lines[i].Split(' ').Skip(1).Select(ReferenceFile.Number).ToArray();
                var trials = ErrorTrials.Draw(new PreparedStations(Sweeps.Positions(counts[i])), Sweeps.Even(counts[i], 1), 20_000, 7, TestContext.Current.CancellationToken);
                HeightFigure[] figures =
                [
                    new LeastSquaresFigure(trials.Stations, StraightnessParameter.STRt),
                    new EndPointFigure(trials.Stations, StraightnessParameter.STRt),
                    new ZoneFigure(trials.Stations),
                ];
                for (var k = 0; k < figures.Length; k++)
                {
                    var ours = Enumerable.Range(0, trials.Trials).Select(t => figures[k].At(trials.All(t), trials.All(t)).Value).Order().ToArray();
                    // Standard deviations of the two means: 0.01 together for 6,000 hulls; of the 95 % points about 0.03.
                    Assert.Equal(theirs[2 * k], ours.Average(), 0.04);
                    Assert.Equal(theirs[(2 * k) + 1], ours[(int)(0.95 * ours.Length)], 0.12);
                }
            }
        }
        finally
        {
            File.Delete(file);
        }
    }

    // Range of n normal values, upper 5 % point for infinite degrees of freedom: 4.29 (8), 4.73 for 14 and 5.01 for 20; tables of the studentized range (from memory).
    [Theory]
    [InlineData(8, 4.29)]
    [InlineData(20, 5.01)]
    public void The_floor_of_least_squares_stays_below_the_studentized_range_because_a_line_is_taken_out(int stations, double range)
    {
        var sure = StraightnessUncertainty.Of(Sweeps.Noisy(new double[stations], 1, 1), Sweeps.Even(stations, 1), 20_000, 3, TestContext.Current.CancellationToken);
        var floor = sure.Of(ReferenceLineKind.LeastSquares).NoiseFloorUm;
        Assert.InRange(floor, 0.85 * range, range);
        Assert.True(sure.Of(ReferenceLineKind.MinimumZone).NoiseFloorUm < floor);
    }

    [Fact]
    public void A_floor_known_from_few_repeats_is_higher_and_a_shared_shape_raises_it()
    {
        var profile = Sweeps.Noisy(Sweeps.Bow(18, 10), 1, 5);
        double Floor(ProfileErrors errors) => StraightnessUncertainty.Of(profile, errors, 4000, 3, TestContext.Current.CancellationToken).Of(ReferenceLineKind.MinimumZone).NoiseFloorUm;
        var plain = Floor(Sweeps.Even(18, 1));
        Assert.True(Floor(Sweeps.Even(18, 1, 5)) > 1.15 * plain);
        Assert.True(Floor(Sweeps.Even(18, 1, double.PositiveInfinity, Sweeps.SharedBow(18, 3))) > 1.3 * plain);
    }

    [Fact]
    public void Short_windows_have_a_lower_floor_and_a_window_of_the_whole_length_has_the_whole_figure()
    {
        var profile = Sweeps.Noisy(Sweeps.Bow(18, 10), 1, 5);
        var sure = StraightnessUncertainty.Of(profile, Sweeps.Even(18, 1), 4000, 3, TestContext.Current.CancellationToken);
        var whole = sure.Of(ReferenceLineKind.MinimumZone);
        var local = sure.Local(100, TestContext.Current.CancellationToken)!;
        Assert.Equal(profile.Local(100)!.STRtUm, local.ObservedUm, 1e-9);
        Assert.True(local.NoiseFloorUm < whole.NoiseFloorUm);
        var all = sure.Local(1000, TestContext.Current.CancellationToken)!;
        Assert.Equal(whole.LowUm, all.LowUm, 1e-9);
        Assert.Equal(whole.HighUm, all.HighUm, 1e-9);
        Assert.Null(sure.Local(60, TestContext.Current.CancellationToken));
    }
}
