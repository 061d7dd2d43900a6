using System.Globalization;

namespace Waywright.Tests;

public sealed class CoverageFactorTests
{
    public static IEnumerable<TheoryDataRow<double, double, string>> TableG2()
    {
        var lines = File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "Reference", "measurement", "gum_table_G2_t_factors.csv"));
        // The table's footnote: 68.27, 95.45 and 99.73 % stand for k = 1, 2 and 3 of the normal distribution, erf(k / sqrt 2).
        double[] coverages = [0.6826894921370859, 0.9, 0.95, 0.9544997361036416, 0.99, 0.9973002039367398];
        Assert.Equal("nu,p68.27,p90,p95,p95.45,p99,p99.73", lines[0]);
        foreach (var cells in lines[1..].Select(l => l.Split(',')))
        {
            var df = cells[0] == "inf" ? double.PositiveInfinity : Double(cells[0]);
            for (var i = 0; i < coverages.Length; i++)
                yield return new(df, coverages[i], cells[i + 1]);
        }
    }

    // JCGM 100:2008, table G.2, every cell to its last printed digit.
    [Theory]
    [MemberData(nameof(TableG2))]
    public void Students_t_agrees_with_the_printed_table(double df, double coverage, string printed)
    {
        if (df == 35 && coverage == 0.9)
            printed = "1.69"; // The table prints 1.70, between 1.70 at 30 and 1.68 at 40: t is 1.6896.
        var lastDigit = Math.Pow(10, -(printed.Length - printed.IndexOf('.', StringComparison.Ordinal) - 1));
        Assert.Equal(Double(printed), CoverageFactor.Of(coverage, df), (0.5 * lastDigit) + 1e-9);
    }

    // 1 degree of freedom: tan(pi p / 2). Others: SciPy 1.10 (Debian), t from scipy.special.betaincinv(nu / 2, 1 / 2, 1 - p); the last three from
    // scipy.stats.t.ppf, which is good to twelve digits there but only to nine at few degrees of freedom.
    [Theory]
    [InlineData(1, 0.95, 12.706204736174694)]
    [InlineData(4, 0.95, 2.7764451051977934)]
    [InlineData(16.74, 0.99, 2.9038060503562497)]
    [InlineData(50, 0.95, 2.0085591121007598)]
    [InlineData(1000, 0.95, 1.9623390808262848)]
    [InlineData(100000, 0.95, 1.9599877075345093)]
    [InlineData(100000000, 0.95, 1.9599640082627663)]
    [InlineData(1e15, 0.95, 1.9599639845400563)]
    public void Students_t_agrees_with_another_library_to_eleven_digits(double df, double coverage, double expected)
        => Assert.Equal(expected, CoverageFactor.Of(coverage, df), expected * 1e-11);

    [Fact]
    public void Where_the_expansion_takes_over_nothing_jumps()
    {
        foreach (var coverage in new[] { 0.5, 0.6827, 0.95, 0.9973 })
            Assert.Equal(CoverageFactor.Of(coverage, 1e4), CoverageFactor.Of(coverage, Math.BitIncrement(1e4)), 1e-9);
    }

    [Theory]
    [InlineData(0.49)]
    [InlineData(0.999)]
    [InlineData(1)]
    [InlineData(double.NaN)]
    public void A_coverage_outside_the_table_is_refused(double coverage)
        => Assert.Throws<ArgumentOutOfRangeException>(() => CoverageFactor.Of(coverage, 5));

    [Theory]
    [InlineData(0.5)]
    [InlineData(0)]
    [InlineData(double.NaN)]
    public void Less_than_one_degree_of_freedom_is_refused(double df)
        => Assert.Throws<ArgumentOutOfRangeException>(() => CoverageFactor.Of(0.95, df));

    private static double Double(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
