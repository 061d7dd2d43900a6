namespace Waywright.Tests.Straightness;

public sealed class StraightnessUncertaintyTests
{
    [Theory]
    // 300 rails: a share of 0.95 has a standard deviation of 0.013. docs/coverage.md has 1,000 and more at each of many points.
    [InlineData(0, 0)]
    [InlineData(5, 0)]
    [InlineData(40, 0)]
    [InlineData(5, 2)]
    public void Intervals_and_one_sided_bounds_hold_the_true_figure_in_95_of_100_rails(double bowUm, double sharedBowUm)
    {
        const int rails = 300;
        var truth = StraightnessFigures.Of(new Profile(Sweeps.Positions(14), Sweeps.Bow(14, bowUm)));
        var (inside, above, below) = (0, 0, 0);
        var (width, guaranteed) = (0.0, 0.0);
        Parallel.For(0, rails, i =>
        {
            var shared = sharedBowUm * Sweeps.Gaussian(new Random(9000 + i));
            var profile = Sweeps.Noisy(Sweeps.Bow(14, bowUm + shared), 1, i);
            var errors = sharedBowUm == 0 ? Sweeps.Even(14, 1) : Sweeps.Even(14, 1, double.PositiveInfinity, Sweeps.SharedBow(14, sharedBowUm));
            var figure = StraightnessUncertainty.Of(profile, errors, 1000, (ulong)i, TestContext.Current.CancellationToken).Of(ReferenceLineKind.MinimumZone);
            var um = truth.MinimumZone.Line.STRtUm;
            lock (truth)
            {
                inside += figure.LowUm <= um && um <= figure.HighUm ? 1 : 0;
                above += figure.LowerBoundUm(0.95) <= um ? 1 : 0;
                below += um <= figure.UpperBoundUm(0.95) ? 1 : 0;
                width += figure.HighUm - figure.LowUm;
                guaranteed += figure.GuaranteedHighUm - figure.GuaranteedLowUm;
            }
        });
        Assert.InRange(inside, 0.92 * rails, rails);
        Assert.InRange(above, 0.92 * rails, rails);
        Assert.InRange(below, 0.92 * rails, rails);
        Assert.True(width < 0.95 * guaranteed, $"{width / guaranteed:0.00} of the guaranteed width");
    }

    [Fact]
    public void A_line_added_to_the_sweep_changes_no_bound()
    {
        var profile = Sweeps.Noisy(Sweeps.Bow(18, 12), 1, 4);
        var tilted = new Profile(profile.PositionsMm, [.. profile.HeightsUm.Zip(profile.PositionsMm, (z, x) => z + 30 + (0.2 * x))]);
        foreach (var (a, b) in Of(profile, Sweeps.Even(18, 1)).Zip(Of(tilted, Sweeps.Even(18, 1))))
        {
            Assert.Equal(a.LowUm, b.LowUm, 1e-6);
            Assert.Equal(a.HighUm, b.HighUm, 1e-6);
            Assert.Equal(a.EstimateUm, b.EstimateUm, 1e-6);
        }
    }

    [Fact]
    public void Heights_and_errors_a_thousand_times_as_large_give_bounds_a_thousand_times_as_large()
    {
        var profile = Sweeps.Noisy(Sweeps.Bow(18, 12), 1, 4);
        var large = new Profile(profile.PositionsMm, [.. profile.HeightsUm.Select(z => 1000 * z)]);
        foreach (var (a, b) in Of(profile, Sweeps.Even(18, 1)).Zip(Of(large, Sweeps.Even(18, 1000))))
        {
            Assert.Equal(a.LowUm, b.LowUm / 1000, 1e-5);
            Assert.Equal(a.HighUm, b.HighUm / 1000, 1e-5);
            Assert.Equal(a.NoiseFloorUm, b.NoiseFloorUm / 1000, 1e-9);
        }
    }

    [Fact]
    public async Task One_thread_gives_the_same_bits_as_all_of_them()
    {
        var profile = Sweeps.Noisy(Sweeps.Bow(18, 12), 1, 4);
        var errors = Sweeps.Even(18, 1, 7, Sweeps.SharedBow(18, 2));
        var many = Of(profile, errors);
        var scheduler = new ConcurrentExclusiveSchedulerPair(TaskScheduler.Default, 1).ExclusiveScheduler;
        var single = await Task.Factory.StartNew(() => Of(profile, errors), TestContext.Current.CancellationToken, TaskCreationOptions.None, scheduler);
        Assert.Equal(many.Select(Numbers), single.Select(Numbers));
    }

    [Fact]
    public void Estimate_lies_in_the_interval_and_bounds_move_apart_as_confidence_rises()
    {
        for (var seed = 0; seed < 20; seed++)
        {
            foreach (var figure in Of(Sweeps.Noisy(Sweeps.Bow(10, seed), 1, seed), Sweeps.Even(10, 1, 12)))
            {
                Assert.InRange(figure.EstimateUm, figure.LowUm, figure.HighUm);
                Assert.True(figure.EstimateUm <= figure.ObservedUm);
                Assert.InRange(figure.LowUm, 0, figure.ObservedUm);
                Assert.InRange(figure.StandardUncertaintyUm, 0.01, 10);
                double[] levels = [0.5, 0.8, 0.95, 0.99, 0.999];
                Assert.Equal(levels.Select(figure.LowerBoundUm).OrderDescending(), levels.Select(figure.LowerBoundUm));
                Assert.Equal(levels.Select(figure.UpperBoundUm).Order(), levels.Select(figure.UpperBoundUm));
            }
        }
    }

    [Fact]
    public void Confidence_of_an_answer_is_the_highest_level_at_which_its_bound_still_holds()
    {
        var figure = StraightnessUncertainty.Of(Sweeps.Noisy(Sweeps.Bow(18, 12), 1, 4), Sweeps.Even(18, 1), 4000, 2, TestContext.Current.CancellationToken).Of(ReferenceLineKind.MinimumZone);
        var within = figure.ConfidenceWithin(figure.UpperBoundUm(0.9) + 1e-9)!.Value;
        Assert.Equal(0.9, within, 1e-9);
        Assert.True(figure.UpperBoundUm(within) <= figure.UpperBoundUm(0.9) + 1e-9);
        Assert.Null(figure.ConfidenceWithin(1));
        Assert.Null(figure.ConfidenceBeyond(100));
        Assert.Equal(0.999, figure.ConfidenceBeyond(1));
    }

    [Fact]
    public void A_station_that_stands_out_touches_the_zone_in_every_simulation_and_all_shares_make_three_contacts_or_four()
    {
        var heights = new double[14];
        heights[6] = 40;
        var sure = StraightnessUncertainty.Of(Sweeps.Noisy(heights, 1, 8), Sweeps.Even(14, 1), 2000, 2, TestContext.Current.CancellationToken);
        Assert.Equal(1, sure.ContactShares[6]);
        Assert.InRange(sure.ContactShares.Sum(), 3, 4);
    }

    [Fact]
    public void The_root_mean_square_about_the_zone_lies_between_its_neighbours_and_its_bounds_hold_them()
    {
        var sure = StraightnessUncertainty.Of(Sweeps.Noisy(Sweeps.Bow(18, 12), 1, 4), Sweeps.Even(18, 1), 4000, 2, TestContext.Current.CancellationToken);
        var figure = sure.Of(ReferenceLineKind.MinimumZone, StraightnessParameter.STRq);
        Assert.Equal(StraightnessFigures.Of(sure.Profile).MinimumZone.Line.STRqUm, figure.ObservedUm, 1e-9);
        Assert.Equal(sure.Of(ReferenceLineKind.LeastSquares, StraightnessParameter.STRq).LowUm, figure.LowUm);
        Assert.Equal(sure.Of(ReferenceLineKind.MinimumZone).HighUm / 2, figure.HighUm, 1e-9);
    }

    [Fact]
    public void Observed_figures_are_those_without_uncertainty()
    {
        foreach (var profile in RandomSweeps.Some(20, 3).Where(p => p.PositionsMm.Distinct().Count() > 2))
        {
            var sure = StraightnessUncertainty.Of(profile, Sweeps.Even(profile.Count, 1), 1000, 1, TestContext.Current.CancellationToken);
            var plain = StraightnessFigures.Of(profile);
            foreach (var line in new[] { plain.EndPoints, plain.LeastSquares, plain.MinimumZone.Line })
            {
                Assert.Equal(line.STRtUm, sure.Of(line.Kind).ObservedUm, 1e-9);
                Assert.Equal(line.STRpUm, sure.Of(line.Kind, StraightnessParameter.STRp).ObservedUm, 1e-9);
                Assert.Equal(line.STRvUm, sure.Of(line.Kind, StraightnessParameter.STRv).ObservedUm, 1e-9);
                Assert.Equal(line.STRqUm, sure.Of(line.Kind, StraightnessParameter.STRq).ObservedUm, 1e-9);
            }
        }
    }

    [Fact]
    public void Without_any_error_the_interval_is_the_figure()
    {
        var figure = StraightnessUncertainty.Of(Sweeps.Noisy(Sweeps.Bow(18, 12), 1, 4), Sweeps.Even(18, 0), 1000, 2, TestContext.Current.CancellationToken).Of(ReferenceLineKind.MinimumZone);
        Assert.Equal(figure.ObservedUm, figure.LowUm);
        Assert.Equal(figure.ObservedUm, figure.HighUm);
    }

    [Fact]
    public void What_can_not_be_worked_out_is_refused()
    {
        var profile = Sweeps.Noisy(new double[5], 1, 1);
        Assert.Contains("Errors of 4 stations", Assert.Throws<ArgumentException>(() => StraightnessUncertainty.Of(profile, Sweeps.Even(4, 1))).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => StraightnessUncertainty.Of(profile, Sweeps.Even(5, 1), 999));
        Assert.Contains("two positions", Assert.Throws<ArgumentException>(() => StraightnessUncertainty.Of(new Profile([0, 1], [0, 0]), Sweeps.Even(2, 1))).Message, StringComparison.Ordinal);
        var figure = StraightnessUncertainty.Of(profile, Sweeps.Even(5, 1), 1000).Of(ReferenceLineKind.MinimumZone);
        Assert.Throws<ArgumentOutOfRangeException>(() => figure.UpperBoundUm(1));
        Assert.Throws<ArgumentOutOfRangeException>(() => figure.LowerBoundUm(0.4));
        using var stopped = new CancellationTokenSource();
        stopped.Cancel();
        Assert.ThrowsAny<OperationCanceledException>(() => StraightnessUncertainty.Of(profile, Sweeps.Even(5, 1), 1000, 1, stopped.Token));
    }

    private static UncertainFigure[] Of(Profile profile, ProfileErrors errors)
        => [.. StraightnessUncertainty.Of(profile, errors, 2000, 11, TestContext.Current.CancellationToken).Figures];

    private static (double, double, double, double) Numbers(UncertainFigure figure) => (figure.LowUm, figure.HighUm, figure.EstimateUm, figure.NoiseFloorUm);
}
