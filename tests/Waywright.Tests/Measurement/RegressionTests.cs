using System.Text.RegularExpressions;

namespace Waywright.Tests;

/// <summary>NIST StRD, linear regression: certified values from the head of each file, digits that the refined QR reaches, a little below what was seen (plain QR: 11, 12, 9.6, 12.7, 9.8).</summary>
public sealed partial class RegressionTests
{
    [Theory]
    [InlineData("Longley.dat", 13, 14)]
    [InlineData("Pontius.dat", 13, 13.5)]
    [InlineData("Wampler1.dat", 14, 15)]
    [InlineData("Wampler2.dat", 13, 15)]
    [InlineData("Wampler3.dat", 10, 13.5)]
    public void Coefficients_and_their_uncertainties_reach_the_certified_digits(string file, double digits, double uncertaintyDigits)
    {
        var lines = UncertaintyFile.Lines("nist", file);
        var certified = lines.Select(l => Coefficient().Match(l)).Where(m => m.Success).Select(m => (Value: UncertaintyFile.Number(m.Groups[1].Value), Uncertainty: UncertaintyFile.Number(m.Groups[2].Value))).ToArray();
        var deviation = lines.Select(l => Deviation().Match(l)).Single(m => m.Success);
        var start = Array.FindIndex(lines, l => l.StartsWith("Data:  ", StringComparison.Ordinal) && l.Contains(" x", StringComparison.Ordinal)) + 1;
        var rows = lines[start..].Where(l => l.Trim().Length > 0).Select(l => l.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(UncertaintyFile.Number).ToArray()).ToArray();
        double[] y = [.. rows.Select(r => r[0])];
        var fit = file == "Longley.dat"
            ? Regression.Of([.. Enumerable.Range(1, 6).Select(k => rows.Select(r => r[k]).ToArray())], y)
            : Regression.Polynomial([.. rows.Select(r => r[1])], y, certified.Length - 1);

        Assert.Equal(certified.Length, fit.Coefficients.Count);
        for (var k = 0; k < certified.Length; k++)
            Digits.AtLeast(digits, certified[k].Value, fit.Coefficients[k], $"{file} B{k}");
        var residual = UncertaintyFile.Number(deviation.Groups[1].Value);
        if (residual == 0)
        {
            // Nothing is left over but rounding, 1e-13 of the largest value.
            Assert.InRange(fit.ResidualDeviation / y.Max(Math.Abs), 0, 1e-13);
            return;
        }

        Digits.AtLeast(uncertaintyDigits, residual, fit.ResidualDeviation, $"{file} residual deviation");
        for (var k = 0; k < certified.Length; k++)
            Digits.AtLeast(uncertaintyDigits, certified[k].Uncertainty, fit.Uncertainties[k], $"{file} u(B{k})");
    }

    [Fact]
    public void What_gives_no_plane_is_refused()
    {
        double[] y = [1, 2, 3, 5, 8];
        Assert.Throws<ArgumentException>(() => Regression.Of([[1, 2, 3, 4]], y));
        Assert.Throws<ArgumentException>(() => Regression.Of([[1, 1, 1, 1, 1]], y));
        Assert.Throws<ArgumentException>(() => Regression.Of([[1, 2, 3, 4, 5], [2, 4, 6, 8, 10]], y));
        Assert.Throws<ArgumentException>(() => Regression.Of([[1, 2, 3, 4, double.NaN]], y));
        Assert.Throws<ArgumentException>(() => Regression.Polynomial([1, 2, 3, 4, 5], y, 4));
        Assert.Null(Regression.Of([[1, 2, 3, 4, 5]], [2, 2, 2, 2, 2]).RSquared);
    }

    [GeneratedRegex(@"^\s+B\d\s+(\S+)\s+(\S+)\s*$")]
    private static partial Regex Coefficient();

    [GeneratedRegex(@"^\s+Standard Deviation\s+(\S+)\s*$")]
    private static partial Regex Deviation();
}
