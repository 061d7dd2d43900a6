namespace Waywright.Tests;

public sealed class DistributionTests
{
    private const int Count = 1 << 18;

    // Distribution functions: from the densities of JCGM 101:2008, 6.4. The seed is fixed, so a draw that fails fails always.
    public static TheoryData<string, Distribution, Func<double, double>> All() => new()
    {
        { "Gaussian", Distribution.Gaussian(3, 2), x => StudentQuantile.Normal((x - 3) / 2) },
        { "truncated", Distribution.TruncatedGaussian(3, 2, 2, double.PositiveInfinity), x => (StudentQuantile.Normal((x - 3) / 2) - StudentQuantile.Normal(-0.5)) / StudentQuantile.Normal(0.5) },
        { "truncated to a narrow tail", Distribution.TruncatedGaussian(0, 1, 3, 4), x => (StudentQuantile.Normal(x) - StudentQuantile.Normal(3)) / (StudentQuantile.Normal(4) - StudentQuantile.Normal(3)) },
        { "t, 3", Distribution.StudentT(-1, 0.5, 3), x => StudentQuantile.Probability((x + 1) / 0.5, 3) },
        { "t, 17.5", Distribution.StudentT(0, 1, 17.5), x => StudentQuantile.Probability(x, 17.5) },
        { "t, a million", Distribution.StudentT(0, 1, 1e6), x => StudentQuantile.Probability(x, 1e6) },
        { "rectangular", Distribution.Rectangular(-1, 3), x => (x + 1) / 4 },
        { "triangular", Distribution.Triangular(-1, 1), x => x < 0 ? (1 + x) * (1 + x) / 2 : 1 - ((1 - x) * (1 - x) / 2) },
        { "trapezoid", Distribution.Trapezoid(-1, 1, 0.5), TrapezoidHalf },
        { "arcsine", Distribution.Arcsine(2, 6), x => 0.5 + (Math.Asin((x - 4) / 2) / Math.PI) },
        { "curvilinear trapezoid", Distribution.CurvilinearTrapezoid(-1, 1, 0.25), CurvilinearQuarter },
    };

    [Theory]
    [MemberData(nameof(All))]
    public void Draws_follow_the_distribution(string name, Distribution distribution, Func<double, double> probability)
    {
        var draws = Draws(distribution);
        Array.Sort(draws);
        // Kolmogorov and Smirnov: sqrt(n) D stays below 1.95 in 999 of 1000 samples.
        var furthest = draws.Select((x, i) => Math.Abs(probability(x) - ((i + 0.5) / Count))).Max();
        Assert.True(furthest * Math.Sqrt(Count) < 1.95, FormattableString.Invariant($"{name}: sqrt(n) D = {furthest * Math.Sqrt(Count):F2}"));
    }

    [Theory]
    [MemberData(nameof(All))]
    public void Draws_have_the_stated_mean_and_standard_uncertainty(string name, Distribution distribution, Func<double, double> probability)
    {
        Assert.NotNull(probability);
        var (mean, deviation) = MonteCarloResult.Moments(Draws(distribution));
        Assert.True(Math.Abs(mean - distribution.Mean) < 4 * distribution.StandardUncertainty / Math.Sqrt(Count), name);
        // The deviation of t with 3 degrees of freedom has no error of its own: its fourth moment is infinite.
        Assert.Equal(distribution.StandardUncertainty, deviation, distribution.StandardUncertainty * (name == "t, 3" ? 0.05 : 0.007));
    }

    // JCGM 101:2008, table 1 and 6.4: variances in closed form; the truncated one by Johnson and Kotz, mean and variance with phi(-0.5) / (1 - Phi(-0.5)) = 0.50915.
    [Fact]
    public void Standard_uncertainties_are_those_of_the_formulas()
    {
        Assert.Equal(4 / Math.Sqrt(12), Distribution.Rectangular(-1, 3).StandardUncertainty, 1e-15);
        Assert.Equal(2 / Math.Sqrt(24), Distribution.Triangular(-1, 1).StandardUncertainty, 1e-15);
        Assert.Equal(2 * Math.Sqrt(1.25 / 24), Distribution.Trapezoid(-1, 1, 0.5).StandardUncertainty, 1e-15);
        Assert.Equal(2 / Math.Sqrt(12), Distribution.Trapezoid(-1, 1, 1).StandardUncertainty, 1e-15);
        Assert.Equal(2 / Math.Sqrt(2), Distribution.Arcsine(2, 6).StandardUncertainty, 1e-15);
        Assert.Equal(Math.Sqrt((4.0 / 12) + (0.0625 / 9)), Distribution.CurvilinearTrapezoid(-1, 1, 0.25).StandardUncertainty, 1e-15);
        Assert.Equal(0.5 * Math.Sqrt(3), Distribution.StudentT(-1, 0.5, 3).StandardUncertainty, 1e-15);
        Assert.Equal(double.PositiveInfinity, Distribution.StudentT(0, 1, 2).StandardUncertainty);
        var truncated = Distribution.TruncatedGaussian(0, 1, -0.5, double.PositiveInfinity);
        Assert.Equal(0.5091604, truncated.Mean, 5e-7);
        Assert.Equal(Math.Sqrt(1 - (0.5 * truncated.Mean) - (truncated.Mean * truncated.Mean)), truncated.StandardUncertainty, 1e-12);
    }

    [Fact]
    public void An_uncertain_number_is_drawn_as_t_or_as_Gaussian()
    {
        Assert.Equal(Distribution.Gaussian(180, 0.2), Distribution.Of(Uncertain.Input("span", 180, 0.2)));
        Assert.Equal(Distribution.StudentT(180, 0.2, 4), Distribution.Of(Uncertain.Input("span", 180, 0.2, 4)));
    }

    [Fact]
    public void Impossible_distributions_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Distribution.Gaussian(0, -1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Distribution.Gaussian(double.NaN, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Distribution.StudentT(0, 1, 0.5));
        Assert.Throws<ArgumentException>(() => Distribution.Rectangular(1, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => Distribution.Rectangular(0, double.PositiveInfinity));
        Assert.Throws<ArgumentOutOfRangeException>(() => Distribution.Trapezoid(0, 1, 1.1));
        Assert.Throws<ArgumentException>(() => Distribution.CurvilinearTrapezoid(0, 1, 0.5));
        Assert.Throws<ArgumentException>(() => Distribution.TruncatedGaussian(0, 1, 1, 1));
        Assert.Throws<ArgumentException>(() => Distribution.TruncatedGaussian(0, 1, 8, 9));
        Assert.Throws<ArgumentException>(() => Distribution.Arcsine(1, 0));
    }

    private static double[] Draws(Distribution distribution)
    {
        var values = new double[Count];
        for (var from = 0; from < Count; from += 512)
            distribution.Draw(new RandomDraws(20260101), 0, from, values.AsSpan(from, 512));
        return values;
    }

    private static double TrapezoidHalf(double x)
    {
        // Top from -1/2 to 1/2, height 2/3.
        var side = Math.Max(0, Math.Abs(x) - 0.5);
        var fromMiddle = (2.0 / 3 * Math.Min(Math.Abs(x), 0.5)) + (2.0 / 3 * (side - (side * side)));
        return 0.5 + (Math.Sign(x) * fromMiddle);
    }

    // Half width w = 1, d = 1/4, x >= 0 from the middle: density (1 / 4d) ln((w + d) / max(x, w - d)), integrated.
    private static double CurvilinearQuarter(double x)
    {
        var (w, d, size) = (1.0, 0.25, Math.Min(Math.Abs(x), 1.25));
        var flat = Math.Log((w + d) / (w - d)) / (4 * d);
        var fromMiddle = size <= w - d
            ? flat * size
            : (flat * (w - d)) + (((size * (1 + Math.Log((w + d) / size))) - ((w - d) * (1 + Math.Log((w + d) / (w - d))))) / (4 * d));
        return 0.5 + (Math.Sign(x) * fromMiddle);
    }
}
