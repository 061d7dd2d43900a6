using System.Globalization;

namespace Waywright.Tests;

public sealed class SampleTests
{
    // NIST StRD, univariate summary statistics: certified values from the head of each file. NumAcc3's deviation is limited by its decimals, which no double holds: 9.5 digits.
    [Theory]
    [InlineData("Lottery.dat", 15, 14.5, 14)]
    [InlineData("Mavro.dat", 15, 12.5, 12.5)]
    [InlineData("NumAcc1.dat", 15, 15, 15)]
    [InlineData("NumAcc2.dat", 14.5, 13.5, 14)]
    [InlineData("NumAcc3.dat", 15, 9.4, 9.4)]
    public void Univariate_statistics_reach_the_certified_digits(string file, double mean, double deviation, double autocorrelation)
    {
        var lines = UncertaintyFile.Lines("nist", file);
        var certified = lines.Where(l => l.StartsWith("Sample Mean", StringComparison.Ordinal) || l.StartsWith("Sample Standard", StringComparison.Ordinal) || l.StartsWith("Sample Autocorrelation", StringComparison.Ordinal))
            .Select(l => UncertaintyFile.Number(l[(l.LastIndexOf(':') + 1)..].Trim())).ToArray();
        var start = Array.FindIndex(lines, l => l.StartsWith("---", StringComparison.Ordinal)) + 1;
        var sample = new Sample(lines[start..].Where(l => l.Trim().Length > 0).Select(UncertaintyFile.Number));
        Digits.AtLeast(mean, certified[0], sample.Mean, $"{file} mean");
        Digits.AtLeast(deviation, certified[1], sample.StandardDeviation, $"{file} deviation");
        Digits.AtLeast(autocorrelation, certified[2], sample.Autocorrelation!.Value, $"{file} autocorrelation");
    }

    // Analytical Methods Committee, Analyst 114 (1989) 1693-1697, copper in flour: 28.95 is the plain outlier; median 3.385 and deviation 0.526 are what R's mad prints for these data (from memory).
    [Fact]
    public void Copper_in_flour_has_its_outliers()
    {
        double[] copper = [.. UncertaintyFile.Column("amc1989_copper_flour.csv", 0)];
        var sample = new Sample(copper);
        Assert.Equal(3.385, sample.Median, 1e-12);
        Assert.Equal(0.5263, 1.4826 * sample.MedianAbsoluteDeviation, 0.00005);
        foreach (var k in new[] { 2.5, 3, 3.5 })
            Assert.Equal([5.28, 28.95], sample.Outliers(k).Select(i => copper[i]));
        Assert.Equal([28.95], sample.Outliers(4).Select(i => copper[i]));
    }

    // Rosner, Technometrics 25 (1983) 165-172: his test for up to ten outliers finds three at 5 %, as the table's last R above its lambda says. Hampel's rule with k = 3.5 finds the same; with 3 one more.
    [Fact]
    public void Rosners_series_has_his_three_outliers()
    {
        double[] series = [.. UncertaintyFile.Column("rosner_1983.csv", 0)];
        var table = UncertaintyFile.Rows("rosner_esd_table.csv");
        var count = table.Count(r => UncertaintyFile.Number(r[0]) <= table.Last(l => UncertaintyFile.Number(l[1]) > UncertaintyFile.Number(l[3])).Select(UncertaintyFile.Number).First());
        var removed = table.Take(count).Select(r => UncertaintyFile.Number(r[5])).Order();
        Assert.Equal(3, count);
        var sample = new Sample(series);
        Assert.Equal(removed, sample.Outliers(3.5).Select(i => series[i]));
        Assert.Equal([4.64, 5.34, 5.42, 6.01], sample.Outliers(3).Select(i => series[i]));
    }

    [Fact]
    public void Equal_readings_with_a_spike_need_to_be_told_their_rounding()
    {
        double[] readings = [10, 10, 10, 10, 20, 10, 10, 60];
        Assert.Empty(new Sample(readings).Outliers());
        Assert.Equal([7], new Sample(readings).Outliers(3, leastDeviation: 10 / Math.Sqrt(3)));
        Assert.Equal([4, 7], new Sample(readings).Outliers(3, leastDeviation: 10 / Math.Sqrt(12)));
        Assert.Null(new Sample([5, 5, 5]).Autocorrelation);
    }

    [Fact]
    public void Too_little_is_refused()
    {
        Assert.Throws<ArgumentException>(() => new Sample([1]));
        Assert.Throws<ArgumentException>(() => new Sample([1, double.NaN]));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Sample([1, 2]).Outliers(0));
        Assert.Equal("1.5", new Sample([1, 2]).Mean.ToString(CultureInfo.InvariantCulture));
    }
}
