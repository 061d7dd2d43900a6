using System.Globalization;
using Waywright.Tests.Reference;

namespace Waywright.Tests.Measurement;

/// <summary>Sources: NIST StRD files kept whole in Reference/nist, JCGM 100:2008 H.3 in Reference/jcgm100.</summary>
public abstract class LineFitChecks
{
    [Fact]
    public void Norris_agrees_with_its_certified_values_to_thirteen_digits()
    {
        var (certified, x, y) = Certified.Read("nist/Norris.dat");
        var fit = LineFit.Of(x, y);
        AssertDigits(13, certified["B0"], fit.Intercept);
        AssertDigits(14, certified["B1"], fit.Slope);
        AssertDigits(13, certified["B0 deviation"], fit.InterceptUncertainty);
        AssertDigits(13, certified["B1 deviation"], fit.SlopeUncertainty);
        AssertDigits(13, certified["Residual deviation"], fit.ResidualDeviation);
        AssertDigits(14, certified["R-Squared"], fit.RSquared!.Value);
        Assert.Equal(certified["Residual degrees of freedom"], fit.DegreesOfFreedom);
    }

    [Fact]
    public void NoInt1_agrees_with_its_certified_values_to_fourteen_digits()
    {
        var (certified, x, y) = Certified.Read("nist/NoInt1.dat");
        var fit = LineFit.ThroughOrigin(x, y);
        AssertDigits(14, certified["B1"], fit.Slope);
        AssertDigits(14, certified["B1 deviation"], fit.SlopeUncertainty);
        AssertDigits(14, certified["Residual deviation"], fit.ResidualDeviation);
        AssertDigits(14, certified["R-Squared"], fit.RSquared!.Value);
        Assert.Equal(certified["Residual degrees of freedom"], fit.DegreesOfFreedom);
        Assert.Equal((0.0, 0.0, 0.0), (fit.Intercept, fit.InterceptUncertainty, fit.Covariance));
    }

    [Fact]
    public void The_thermometer_calibration_of_the_GUM_has_its_printed_line_and_uncertainties()
    {
        // JCGM 100:2008, H.3: y1 = -0.1712(29), y2 = 0.00218(67), r = -0.930, s = 0.0035, b(30) = -0.1494(41); t0 = 20 degC.
        var rows = ReferenceFile.Rows("jcgm100/gum_H3_table_H6.csv");
        var fit = LineFit.Of([.. rows.Select(row => ReferenceFile.Number(row[1]) - 20)], [.. rows.Select(row => ReferenceFile.Number(row[2]))]);
        Assert.Equal(-0.1712, fit.Intercept, 5e-5);
        Assert.Equal(0.0029, fit.InterceptUncertainty, 5e-5);
        Assert.Equal(0.00218, fit.Slope, 5e-6);
        Assert.Equal(0.00067, fit.SlopeUncertainty, 5e-6);
        Assert.Equal(-0.930, fit.Covariance / (fit.InterceptUncertainty * fit.SlopeUncertainty), 5e-4);
        Assert.Equal(0.0035, fit.ResidualDeviation, 5e-5);
        Assert.Equal(-0.1494, fit.At(10), 5e-5);
        Assert.Equal(0.0041, fit.UncertaintyAt(10), 5e-5);
        foreach (var row in rows)
            Assert.Equal(ReferenceFile.Number(row[3]), fit.At(ReferenceFile.Number(row[1]) - 20), 6e-5);
    }

    [Fact]
    public void Points_on_a_line_leave_nothing_over()
    {
        var fit = LineFit.Of([1, 2, 3, 5], [5, 7, 9, 13]);
        Assert.Equal((3.0, 2.0, 0.0, 0.0, 0.0, 1.0), (fit.Intercept, fit.Slope, fit.InterceptUncertainty, fit.SlopeUncertainty, fit.ResidualDeviation, fit.RSquared));
    }

    [Fact]
    public void Equal_values_leave_nothing_for_a_slope_to_explain()
    {
        Assert.Null(LineFit.Of([1, 2, 3], [0.1, 0.1, 0.1]).RSquared);
        Assert.Null(LineFit.ThroughOrigin([1, 2], [0, 0]).RSquared);
    }

    [Fact]
    public void A_far_offset_costs_no_digits()
    {
        // Closed form: x = c + (-1, 0, 1), y = (1, 0, 2): b = 1/2, residuals 1/2, -1, 1/2, s^2 = 3/2, u(b)^2 = 3/4.
        var fit = LineFit.Of([1e12 - 1, 1e12, 1e12 + 1], [1, 0, 2]);
        Assert.Equal(0.5, fit.Slope);
        Assert.Equal(Math.Sqrt(1.5), fit.ResidualDeviation);
        Assert.Equal(Math.Sqrt(0.75), fit.SlopeUncertainty);
        Assert.Equal(Math.Sqrt(0.5), fit.UncertaintyAt(1e12));
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Values_that_are_not_finite_are_refused(double bad)
    {
        var error = Assert.Throws<ArgumentException>(() => LineFit.Of([1, 2, bad], [1, 2, 3]));
        Assert.Contains("Point 2", error.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => LineFit.ThroughOrigin([1, 2, 3], [1, bad, 3]));
    }

    [Fact]
    public void Too_few_points_or_no_spread_are_refused()
    {
        Assert.Throws<ArgumentException>(() => LineFit.Of([1, 2], [1, 2]));
        Assert.Throws<ArgumentException>(() => LineFit.Of([1, 2, 3], [1, 2]));
        Assert.Throws<ArgumentException>(() => LineFit.Of([4, 4, 4], [1, 2, 3]));
        Assert.Throws<ArgumentException>(() => LineFit.ThroughOrigin([1], [1]));
        Assert.Throws<ArgumentException>(() => LineFit.ThroughOrigin([0, 0], [1, 2]));
    }

    [Theory]
    [InlineData(1e200)]
    [InlineData(1e-200)]
    public void Sums_that_leave_the_range_of_numbers_are_refused_rather_than_given_as_no_number(double scale)
        => Assert.Throws<ArgumentException>(() => LineFit.Of([1 * scale, 2 * scale, 3 * scale], [1, 2, 4]));

    // The log relative error of NIST StRD: how many leading digits agree.
    private static void AssertDigits(double least, double certified, double found)
    {
        var digits = found == certified ? 15 : Math.Min(15, -Math.Log10(Math.Abs(found - certified) / Math.Abs(certified)));
        TestContext.Current.TestOutputHelper?.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{digits:F1} digits: {found:R}, certified {certified:R}"));
        Assert.True(digits >= least, string.Create(CultureInfo.InvariantCulture, $"{digits:F1} digits: {found:R}, certified {certified:R}"));
    }

    /// <summary>The head of a StRD file and its data, y before x.</summary>
    private sealed record Certified(Dictionary<string, double> Values, double[] X, double[] Y)
    {
        public static Certified Read(string name)
        {
            var values = new Dictionary<string, double>();
            var points = new List<double[]>();
            var afterResidual = false;
            var inData = false;
            foreach (var line in ReferenceFile.Lines(name))
            {
                var fields = line.Split(' ', StringSplitOptions.RemoveEmptyEntries);
                if (inData && fields.Length == 2)
                    points.Add(Array.ConvertAll(fields, ReferenceFile.Number));
                else if (fields is [['B', _], var estimate, var deviation])
                    (values[fields[0]], values[fields[0] + " deviation"]) = (ReferenceFile.Number(estimate), ReferenceFile.Number(deviation));
                else if (afterResidual && fields is ["Standard", "Deviation", var residual])
                    values["Residual deviation"] = ReferenceFile.Number(residual);
                else if (fields is ["R-Squared", var squared])
                    values["R-Squared"] = ReferenceFile.Number(squared);
                else if (fields is ["Residual", var freedom, _, _])
                    values["Residual degrees of freedom"] = ReferenceFile.Number(freedom);
                afterResidual = fields is ["Residual"];
                inData |= fields is ["Data:", "y", "x"];
            }

            return new Certified(values, [.. points.Select(p => p[1])], [.. points.Select(p => p[0])]);
        }
    }
}

[UnderCulture("de-DE")]
public sealed class LineFitTestsInGerman : LineFitChecks;

[UnderCulture("tr-TR")]
public sealed class LineFitTestsInTurkish : LineFitChecks;

[UnderCulture("fa-IR")]
public sealed class LineFitTestsInPersian : LineFitChecks;
