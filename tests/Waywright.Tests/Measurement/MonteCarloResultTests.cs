using CsCheck;

#pragma warning disable xUnit1051 // Runs of a second or less need no token.

namespace Waywright.Tests;

public sealed class MonteCarloResultTests
{
    // JCGM 101:2008, 7.7.2: M = 1000, p = 0.95: q = 950, r = 25; results 1 to 1000 stand at their own places.
    [Fact]
    public void Intervals_are_counted_as_in_the_guide()
    {
        var result = Result([.. Enumerable.Range(1, 1000).Reverse().Select(i => (double)i)]);
        Assert.Equal(new CoverageInterval(25, 975, 0.95), result.Symmetric());
        Assert.Equal(new CoverageInterval(1, 951, 0.95), result.Shortest());
        // q = 951, M - q odd: r = the whole part of (1000 - 951 + 1) / 2 = 25.
        Assert.Equal(new CoverageInterval(25, 976, 0.951), result.Symmetric(0.951));
        Assert.Equal(500.5, result.Quantile(0.5));
        Assert.Equal(1, result.Quantile(0));
        Assert.Equal(1000, result.Quantile(1));
        Assert.Equal(500.5, result.Mean);
        Assert.Equal(Math.Sqrt(1000.0 * 1001 / 12), result.StandardUncertainty, 1e-10);
    }

    // Exponential of mean 1: the shortest 95 % interval begins at 0 and ends at -ln 0.05 = 2.996.
    [Fact]
    public void The_shortest_interval_of_a_leaning_distribution_leans()
    {
        var result = Result([.. Enumerable.Range(0, 20_000).Select(i => -Math.Log(1 - ((i + 0.5) / 20_000)))]);
        Assert.Equal(0, result.Shortest().Low, 1e-3);
        Assert.Equal(2.9957, result.Shortest().High, 2e-3);
        Assert.Equal(-Math.Log(0.975), result.Symmetric().Low, 1e-3);
    }

    [Fact]
    public void Shares_count_both_ends()
    {
        var result = Result([1, 2, 2, 3, 4]);
        Assert.Equal(0.6, result.Share(2, 3));
        Assert.Equal(1, result.Share(double.NegativeInfinity, double.PositiveInfinity));
        Assert.Equal(0, result.Share(2.1, 2.9));
        Assert.Equal(0, result.Share(3, 2));
    }

    [Fact]
    public void Too_few_trials_for_an_interval_are_refused()
    {
        var result = Result([.. Enumerable.Range(0, 100).Select(i => (double)i)]);
        Assert.Throws<ArgumentOutOfRangeException>(() => result.Symmetric());
        Assert.Throws<ArgumentOutOfRangeException>(() => result.Shortest(0.95));
        Assert.Equal(90, result.Symmetric(0.9).High - result.Symmetric(0.9).Low);
        Assert.Throws<ArgumentOutOfRangeException>(() => result.Quantile(1.1));
        Assert.Throws<ArgumentOutOfRangeException>(() => result.Symmetric(double.NaN));
    }

    [Fact]
    public void Sorting_agrees_with_the_library()
        => Gen.Double[-1e6, 1e6].Array[0, 300].Sample(values =>
        {
            double[] mine = [.. values, 0.0, -1e-300, 1e300, 5e-324];
            var theirs = (double[])mine.Clone();
            RadixSort.Sort(mine);
            Array.Sort(theirs);
            Assert.Equal(theirs, mine);
        });

    // One value far away leaves all the others in one place of the leading bits: insertion alone would take 1e10 moves.
    [Theory]
    [InlineData(0)]
    [InlineData(1e300)]
    [InlineData(-1e300)]
    public void Sorting_agrees_with_the_library_where_values_crowd(double far)
    {
        double[] mine = [.. Enumerable.Range(0, 200_000).Select(i => 1 + (((i * 7919L) % 200_003) * 1e-13)), far];
        var theirs = (double[])mine.Clone();
        RadixSort.Sort(mine);
        Array.Sort(theirs);
        Assert.Equal(theirs, mine);
    }

    // JCGM 101:2008, 7.9.2, examples 1 and 2: u = 0.00035 g with two digits: 35 x 10^-5, delta 0.000005; u = 2 K with one digit: 0.5.
    [Fact]
    public void The_numerical_tolerance_is_half_of_the_last_digit()
    {
        Assert.Equal(0.000005, MonteCarloResult.NumericalTolerance(0.00035, 2), 1e-18);
        Assert.Equal(0.5, MonteCarloResult.NumericalTolerance(2, 1));
        Assert.Equal(0.005, MonteCarloResult.NumericalTolerance(0.0996, 2), 1e-15);
        Assert.Equal(50, MonteCarloResult.NumericalTolerance(1234, 2));
    }

    [Fact]
    public void It_prints_itself()
    {
        Assert.Equal("180.00 (179.61 to 180.39), 200000 trials", MonteCarlo.Run(x => x[0], [("span", Distribution.Gaussian(180, 0.2))], 200_000, seed: 1).ToString());
        Assert.Equal("7.5, 100 trials", MonteCarlo.Run(_ => 7.5, [("span", Distribution.Gaussian(180, 0.2))], 100, seed: 1).ToString());
    }

    [Fact]
    public void Results_too_large_for_a_variance_are_refused()
        => Assert.Throws<ArithmeticException>(() => Result([1e200, -1e200]));

    private static MonteCarloResult Result(double[] values)
        => new(values, FixedList<MonteCarloInput>.Own([MonteCarloInput.Of("a", Distribution.Gaussian(0, 1))]), 1);
}
