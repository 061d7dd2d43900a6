namespace Waywright.Tests;

/// <summary>Sources: JCGM 106:2012, clauses 7 and 8; printed figures to their last digit, further digits computed with SciPy 1.10.</summary>
public sealed class ToleranceLimitsTests
{
    // 7.3.3, examples 1 and 2; 7.4, motor oil, where the printed 0.66 comes from rounded tails 0.93 - 0.27.
    [Fact]
    public void Probabilities_of_conformity_come_out_as_printed()
    {
        var zener = ToleranceLimits.AtMost(-5.40).Check(Uncertain.Input("breakdown voltage", -5.47, 0.05));
        Assert.Equal(0.92, zener.Probability, 0.005);
        Assert.Equal(0.919243, zener.Probability, 5e-7);
        var burst = ToleranceLimits.AtLeast(490).Check(Uncertain.Input("burst pressure", 509.7, 8.6));
        Assert.Equal(0.99, burst.Probability, 0.005);
        Assert.Equal(0.98901, burst.Probability, 5e-6);
        var oil = ToleranceLimits.Between(12.5, 16.3).Check(Uncertain.Input("viscosity", 13.6, 1.8));
        Assert.Equal(0.66, oil.Probability, 0.005);
        Assert.Equal(0.66263, oil.Probability, 5e-6);
        Assert.Equal(3.8 / 7.2, oil.CapabilityIndex!.Value, 1e-12);
        Assert.Null(burst.CapabilityIndex);
        Assert.Equal(0, oil.ProbabilityError);
    }

    // 7.7.5, C_m = 1: at least 95 % from 0.45 to 0.55 of the interval; the centre has 0.9545; the edge at exactly 95 % is 0.4491.
    [Fact]
    public void Two_tails_need_more_than_one_guard_band()
    {
        var unit = ToleranceLimits.Between(0, 1);
        Assert.Equal(0.950166, unit.Check(Uncertain.Input("y", 0.45, 0.25)).Probability, 5e-7);
        Assert.Equal(0.9545, unit.Check(Uncertain.Input("y", 0.5, 0.25)).Probability, 5e-5);
        Assert.Equal(1, unit.Check(Uncertain.Input("y", 0.5, 0.25)).CapabilityIndex);
        var accepted = unit.Acceptance(0.95, 0.25)!;
        Assert.Equal(0.4491, accepted.Lower!.Value, 5e-5);
        Assert.Equal(0.5509, accepted.Upper!.Value, 5e-5);
        Assert.Equal(0.95, unit.Check(Uncertain.Input("y", accepted.Lower.Value, 0.25)).Probability, 1e-10);
        Assert.Null(unit.Acceptance(0.96, 0.25));
        Assert.Null(unit.Acceptance(0.95, 10));
    }

    // 7.3.3, table 1 (as printed: 0.84, 1.28, 1.64, 2.33, 3.09), and the factors for one limit.
    public static IEnumerable<TheoryDataRow<double, double>> OneSidedFactors()
        => UncertaintyFile.Rows("guard_band_factors_computed.csv").Where(r => r[0][0] == '0').Select(r => new TheoryDataRow<double, double>(UncertaintyFile.Number(r[0]), UncertaintyFile.Number(r[1])));

    [Theory]
    [MemberData(nameof(OneSidedFactors))]
    public void One_limit_is_guarded_by_the_normal_quantile(double probability, double factor)
    {
        Assert.Equal(10 - (2 * factor), ToleranceLimits.AtMost(10).Acceptance(probability, 2)!.Upper!.Value, 1e-11);
        Assert.Equal(10 + (2 * factor), ToleranceLimits.AtLeast(10).Acceptance(probability, 2)!.Lower!.Value, 1e-11);
    }

    // 8.3.2.3: the guard band of ISO 14253-1, w = U with k = 2, leaves at most 2.3 % false acceptance; other widths computed.
    [Fact]
    public void A_guard_band_of_U_leaves_no_more_than_two_point_three_percent()
    {
        foreach (var row in UncertaintyFile.Rows("guard_band_factors_computed.csv").Where(r => r[0].StartsWith("PFA", StringComparison.Ordinal)))
        {
            var widths = UncertaintyFile.Number(row[0].Split("w=")[1].Split('U')[0]);
            var limit = ToleranceLimits.AtMost(10).Guarded(widths * 2 * 0.5).Upper!.Value;
            var falseAcceptance = 1 - ToleranceLimits.AtMost(10).Check(Uncertain.Input("y", limit, 0.5)).Probability;
            Assert.Equal(UncertaintyFile.Number(row[2]), falseAcceptance, 1e-12);
        }

        Assert.Equal(0.023, 1 - ToleranceLimits.AtMost(10).Check(Uncertain.Input("y", 9, 0.5)).Probability, 0.0005);
    }

    // 8.3.3.2: speed limit 100 km/h, u 2 % of what is measured, 99.9 %: 107 km/h; nandrolone: limit 2 ug/L, s 0.20 with 9 degrees of freedom, 95 %: g = 0.37, A = 2.37.
    [Fact]
    public void Acceptance_limits_come_out_as_printed()
    {
        var guardBandPerSpeed = ToleranceLimits.AtLeast(0).Acceptance(0.999, 0.02)!.Lower!.Value;
        Assert.Equal(107, 100 / (1 - guardBandPerSpeed), 0.5);
        Assert.Equal(106.5876, 100 / (1 - guardBandPerSpeed), 5e-5);
        var nandrolone = ToleranceLimits.AtLeast(2).Acceptance(0.95, 0.2, 9)!.Lower!.Value;
        Assert.Equal(2.37, nandrolone, 0.005);
        Assert.Equal(0.366623, nandrolone - 2, 5e-7);
    }

    // A.3.1: within one, two and three standard uncertainties.
    [Theory]
    [InlineData(1, 0.683, 0.682689)]
    [InlineData(2, 0.955, 0.9545)]
    [InlineData(3, 0.997, 0.9973)]
    public void The_normal_distribution_holds_what_is_printed(double k, double printed, double computed)
    {
        var probability = ToleranceLimits.Between(-k, k).Check(Uncertain.Input("y", 0, 1)).Probability;
        Assert.Equal(printed, probability, 0.0006); // 0.9545 is printed 0.955.
        Assert.Equal(computed, probability, 5e-7);
    }

    [Fact]
    public void Few_degrees_of_freedom_and_exact_values_have_their_own_probabilities()
    {
        // t_0.95 with 4 degrees of freedom is 2.132 (JCGM 100:2008, table G.2, 90 %: 2.13).
        Assert.Equal(0.95, ToleranceLimits.AtMost(2.13).Check(Uncertain.Input("y", 0, 1, 4)).Probability, 2e-4);
        Assert.Equal(1, ToleranceLimits.Between(0, 1).Check(1.0).Probability);
        Assert.Equal(0, ToleranceLimits.Between(0, 1).Check(1.1).Probability);
        Assert.Null(ToleranceLimits.Between(0, 1).Check(0.5).CapabilityIndex);
        Assert.Equal(ToleranceLimits.Between(0, 1), ToleranceLimits.Between(0, 1).Acceptance(0.95, 0));
    }

    [Fact]
    public void Monte_Carlo_gives_the_same_with_its_error()
    {
        var viscosity = MonteCarlo.Run(x => x[0], [("viscosity", Distribution.Gaussian(13.6, 1.8))], 200_000, seed: 1, cancel: TestContext.Current.CancellationToken);
        var oil = ToleranceLimits.Between(12.5, 16.3).Check(viscosity);
        Assert.Equal(Math.Sqrt(0.66263 * 0.33737 / 200_000), oil.ProbabilityError, 1e-5);
        Assert.Equal(0.66263, oil.Probability, 4 * oil.ProbabilityError);
        var sure = ToleranceLimits.AtMost(100).Check(viscosity);
        Assert.Equal(1, sure.Probability);
        Assert.InRange(sure.ProbabilityError, 1e-6, 1e-5);
    }

    // For large degrees of freedom the expansions must meet the exact functions.
    [Theory]
    [InlineData(0.6)]
    [InlineData(0.999)]
    [InlineData(0.001)]
    public void Quantile_and_probability_are_inverse(double p)
    {
        foreach (var df in new[] { 1, 2.5, 30, 1e4, 10_001, 1e6, double.PositiveInfinity })
            Assert.Equal(p, StudentQuantile.Probability(StudentQuantile.Of(p, df), df), 2e-10);
    }

    [Fact]
    public void Impossible_limits_are_refused()
    {
        Assert.Throws<ArgumentException>(() => new ToleranceLimits(null, null));
        Assert.Throws<ArgumentException>(() => ToleranceLimits.Between(1, 1));
        Assert.Throws<ArgumentException>(() => ToleranceLimits.Between(0, double.NaN));
        Assert.Throws<ArgumentException>(() => ToleranceLimits.AtMost(double.PositiveInfinity));
        Assert.Throws<ArgumentException>(() => ToleranceLimits.Between(0, 1).Guarded(0.5));
        Assert.Throws<ArgumentOutOfRangeException>(() => ToleranceLimits.AtMost(1).Acceptance(1, 0.1));
        Assert.Throws<ArgumentOutOfRangeException>(() => ToleranceLimits.AtMost(1).Acceptance(0.95, -0.1));
        Assert.Throws<ArgumentOutOfRangeException>(() => ToleranceLimits.AtMost(1).Acceptance(0.95, 0.1, 0));
    }
}
