using System.Text.Json;

namespace Waywright.Tests;

public sealed class CalibrationLineTests
{
    private static readonly ILookup<string, string[]> Examples = UncertaintyFile.Rows("iso_ts_28037_data.csv").ToLookup(r => r[0]);

    // ISO/TS 28037:2010, 6.3, examples 1 and 2: a, u(a), b, u(b), cov(a, b), chi-squared as printed.
    [Theory]
    [InlineData("ISO/TS 28037 Ex1", 1.867, 0.465, 1.757, 0.120, -0.050, 1.665)]
    [InlineData("ISO/TS 28037 Ex2", 0.885, 0.530, 2.057, 0.178, -0.082, 4.131)]
    public void Weighted_lines_come_out_as_printed(string example, double a, double uncertaintyA, double b, double uncertaintyB, double covariance, double chiSquared)
    {
        var line = CalibrationLine.Of("gauge", Column(example, 1), Column(example, 3), Column(example, 4));
        AssertLine(line, a, uncertaintyA, b, uncertaintyB, covariance, chiSquared, 0.0005);
        Assert.Equal(4, line.ResidualDegreesOfFreedom);
        Assert.Equal(9.488, line.ChiSquaredLimit, 0.0005); // Chi-squared table, 4 degrees of freedom, 95 %.
        Assert.True(line.IsConsistent);
        Assert.Null(line.ScatterFromResiduals);
    }

    // 7.4, as printed (read in the documentation of the GUM Tree Calculator): a 0.5788, u(a) 0.4764, b 2.159, u(b) 0.1355, cov -0.0577, chi-squared 2.743;
    // a and b minimise the sum of squares (SciPy 1.10, Nelder and Mead: 0.57882211, 2.15965657).
    [Fact]
    public void A_line_with_both_coordinates_uncertain_comes_out_as_printed()
    {
        const string example = "ISO/TS 28037 Ex3";
        var line = CalibrationLine.Of("gauge", Column(example, 1), Column(example, 2), Column(example, 3), Column(example, 4));
        AssertLine(line, 0.5788, 0.4764, 2.1597, 0.1355, -0.0577, 2.743, 0.0005);
        Assert.Equal(0.57882211, line.Intercept, 1e-7);
        Assert.Equal(2.15965657, line.Slope, 1e-7);
        Assert.Equal(2.7426767897309614, line.ChiSquared!.Value, 1e-12);
        // Where x is exact the other way is met again.
        var exact = CalibrationLine.Of("gauge", Column(example, 1), [0, 0, 0, 0, 0, 0], Column(example, 3), Column(example, 4));
        var nearlyExact = CalibrationLine.Of("gauge", Column(example, 1), [1e-9, 0, 0, 0, 0, 0], Column(example, 3), Column(example, 4));
        Assert.Equal(exact.Slope, nearlyExact.Slope, 1e-12);
        Assert.Equal(exact.SlopeUncertainty, nearlyExact.SlopeUncertainty, 1e-12);
    }

    // Pearson's points with York's weights (York, Canadian Journal of Physics 44 (1966) 1079-1086): slope -0.480533, intercept 5.479910, chi-squared 11.866 (from memory),
    // the usual test of such fits.
    [Fact]
    public void Pearsons_points_with_Yorks_weights_have_their_known_line()
    {
        double[] weightX = [1000, 1000, 500, 800, 200, 80, 60, 20, 1.8, 1];
        double[] weightY = [1, 1.8, 4, 8, 20, 20, 70, 70, 100, 500];
        var line = CalibrationLine.Of(
            "gauge",
            [0, 0.9, 1.8, 2.6, 3.3, 4.4, 5.2, 6.1, 6.5, 7.4],
            [.. weightX.Select(w => 1 / Math.Sqrt(w))],
            [5.9, 5.4, 4.4, 4.6, 3.5, 3.7, 2.8, 2.8, 2.4, 1.5],
            [.. weightY.Select(w => 1 / Math.Sqrt(w))]);
        Assert.Equal(-0.480533, line.Slope, 5e-7);
        Assert.Equal(5.479910, line.Intercept, 5e-6);
        Assert.Equal(11.866, line.ChiSquared!.Value, 5e-4);
    }

    // 11.1, examples 1 and 2: readings 10.5 with u 0.5 and 1.0; 11.2: value 3.5 with u 0.2. Printed results read in the documentation of the GUM Tree Calculator.
    [Fact]
    public void Readings_and_values_are_predicted_as_printed()
    {
        var first = CalibrationLine.Of("gauge", Column("ISO/TS 28037 Ex1", 1), Column("ISO/TS 28037 Ex1", 3), Column("ISO/TS 28037 Ex1", 4));
        var value = first.ValueOf(Uncertain.Input("reading", 10.5, 0.5));
        Assert.Equal(4.91327913279133, value.Value, 1e-12);
        Assert.Equal(0.32203556012891, value.StandardUncertainty, 1e-12);
        var reading = first.ReadingOf(Uncertain.Input("value", 3.5, 0.2));
        Assert.Equal(8.01666666666667, reading.Value, 1e-12);
        Assert.Equal(0.406409531732455, reading.StandardUncertainty, 1e-12);
        var second = CalibrationLine.Of("gauge", Column("ISO/TS 28037 Ex2", 1), Column("ISO/TS 28037 Ex2", 3), Column("ISO/TS 28037 Ex2", 4));
        var other = second.ValueOf(Uncertain.Input("reading", 10.5, 1));
        Assert.Equal(4.67425641025641, other.Value, 1e-12);
        Assert.Equal(0.533180902231294, other.StandardUncertainty, 1e-12);
    }

    // Annex E, unknown equal uncertainties: 1.172 u 0.159, 1.964 u 0.041, cov -0.006, before the factor for 4 degrees of freedom; reading 10.5: 4.751 u 0.097.
    [Fact]
    public void A_scatter_estimated_from_the_residuals_brings_its_degrees_of_freedom()
    {
        const string example = "ISO/TS 28037 Ex4/Ex5";
        var line = CalibrationLine.FromScatter("gauge", Column(example, 1), Column(example, 3));
        Assert.Equal((1.172, 0.159, 1.964, 0.041, -0.006), (Math.Round(line.Intercept, 3), Math.Round(line.InterceptUncertainty, 3), Math.Round(line.Slope, 3), Math.Round(line.SlopeUncertainty, 3), Math.Round(line.Covariance, 3)));
        Assert.Null(line.ChiSquared);
        Assert.Null(line.IsConsistent);
        var value = line.ValueOf(Uncertain.Input("reading", 10.5, line.ScatterFromResiduals!.Value));
        Assert.Equal(4.751, value.Value, 0.0005);
        Assert.Equal(0.097, value.StandardUncertainty, 0.0005);
        Assert.Equal(4, line.ValueOf(10.5).DegreesOfFreedom, 4.1); // Two inputs of 4: between 4 and 8.
    }

    // JCGM 100:2008, H.3: thermometer, 20 degC taken off; full precision computed from table H.6, printed -0.1712(29), 0.00218(67), -0.930, 0.0035, -0.1494(41).
    [Fact]
    public void The_thermometer_of_the_GUM_comes_out_to_twelve_digits()
    {
        var expected = JsonDocument.Parse(string.Join('\n', UncertaintyFile.Lines("uncertainty", "gum_H3_full_precision.json"))).RootElement;
        double Of(string name) => expected.GetProperty(name).GetDouble();
        var line = CalibrationLine.FromScatter("thermometer", [.. UncertaintyFile.Column("gum_H3_table_H6.csv", 1).Select(t => t - Of("t0"))], UncertaintyFile.Column("gum_H3_table_H6.csv", 2));
        Assert.Equal(Of("y1"), line.Intercept, 1e-12);
        Assert.Equal(Of("y2"), line.Slope, 1e-13);
        Assert.Equal(Of("s_y1"), line.InterceptUncertainty, 1e-13);
        Assert.Equal(Of("s_y2"), line.SlopeUncertainty, 1e-14);
        Assert.Equal(Of("r"), line.Covariance / (line.InterceptUncertainty * line.SlopeUncertainty), 1e-12);
        Assert.Equal(Of("s"), line.ScatterFromResiduals!.Value, 1e-13);
        Assert.Equal(Of("dof"), line.ResidualDegreesOfFreedom);
        Assert.Equal(Of("b30"), line.ReadingOf(10.0).Value, 1e-12);
        Assert.Equal(Of("u_b30"), line.ReadingOf(10.0).StandardUncertainty, 1e-13);
        Assert.Equal(-0.1494, line.ReadingOf(10.0).Value, 5e-5);
        Assert.Equal(Of("u_single_new_obs_at_30 (not printed in GUM)"), (line.ReadingOf(10.0) + Uncertain.Input("one more", 0, Of("s"))).StandardUncertainty, 1e-13);
        foreach (var row in UncertaintyFile.Rows("gum_H3_table_H6.csv"))
            Assert.Equal(UncertaintyFile.Number(row[3]), line.ReadingOf(UncertaintyFile.Number(row[1]) - 20).Value, 6e-5);
    }

    // NIST/SEMATECH e-Handbook of Statistical Methods, calibration of line widths, 40 points: 0.2357623(243003), 0.9870377(34406), s 0.0620320; predictions and 95 % limits as in its file.
    [Fact]
    public void The_line_widths_come_out_as_published()
    {
        const string file = "nist_calibrationline_linewidth.csv";
        var line = CalibrationLine.FromScatter("microscope", UncertaintyFile.Column(file, 0), UncertaintyFile.Column(file, 1));
        Assert.Equal(0.2357623, line.Intercept, 5e-8);
        Assert.Equal(0.0243003, line.InterceptUncertainty, 5e-8);
        Assert.Equal(0.9870377, line.Slope, 5e-8);
        Assert.Equal(0.0034406, line.SlopeUncertainty, 5e-8);
        Assert.Equal(0.0620320, line.ScatterFromResiduals!.Value, 5e-8);
        foreach (var row in UncertaintyFile.Rows(file).Select(r => r.Select(UncertaintyFile.Number).ToArray()))
        {
            var predicted = line.ReadingOf(row[0]);
            Assert.Equal(row[2], predicted.Value, 1.1e-6);
            Assert.Equal(row[3], predicted.Value + (predicted.StandardUncertainty * CoverageFactor.Of(0.95, 38)), 1.1e-6);
            Assert.Equal(row[4], predicted.Value - (predicted.StandardUncertainty * CoverageFactor.Of(0.95, 38)), 1.1e-6);
            Assert.Equal(row[0], line.ValueOf(predicted.Value).Value, 1e-12);
        }
    }

    // The formula of 11.1 with a, b and their covariance, against the propagation by two uncorrelated inputs; Monte Carlo, which is not of first order, agrees within 3 % where the slope is known to 9 %.
    [Fact]
    public void The_uncertainty_of_a_corrected_value_is_that_of_the_formula()
    {
        var line = CalibrationLine.Of("gauge", Column("ISO/TS 28037 Ex2", 1), Column("ISO/TS 28037 Ex2", 3), Column("ISO/TS 28037 Ex2", 4));
        var value = line.ValueOf(Uncertain.Input("reading", 8, 0.3));
        var x = value.Value;
        var variance = (0.09 + Math.Pow(line.InterceptUncertainty, 2) + (x * x * Math.Pow(line.SlopeUncertainty, 2)) + (2 * x * line.Covariance)) / (line.Slope * line.Slope);
        Assert.Equal(Math.Sqrt(variance), value.StandardUncertainty, 1e-12);
        double[,] covariance = { { Math.Pow(line.InterceptUncertainty, 2), line.Covariance }, { line.Covariance, Math.Pow(line.SlopeUncertainty, 2) } };
        var trials = MonteCarlo.Run(
            v => (v[2] - v[0]) / v[1],
            [MonteCarloInput.Correlated(["a", "b"], [line.Intercept, line.Slope], covariance), ("reading", Distribution.Gaussian(8, 0.3))],
            200_000,
            seed: 1,
            cancel: TestContext.Current.CancellationToken);
        Assert.Equal(value.StandardUncertainty, trials.StandardUncertainty, 0.03 * value.StandardUncertainty);
    }

    [Fact]
    public void One_lines_error_does_not_average_out_between_readings()
    {
        var line = CalibrationLine.Of("gauge", Column("ISO/TS 28037 Ex1", 1), Column("ISO/TS 28037 Ex1", 3), Column("ISO/TS 28037 Ex1", 4));
        var mean = (line.ValueOf(10.5) + line.ValueOf(10.5)) / 2;
        Assert.Equal(line.ValueOf(10.5).StandardUncertainty, mean.StandardUncertainty, 1e-15);
        Assert.Equal(0, (line.ValueOf(10.5) - line.ValueOf(10.5)).StandardUncertainty, 1e-15);
    }

    [Fact]
    public void Points_that_scatter_more_than_they_may_are_found()
    {
        var line = CalibrationLine.Of("gauge", Column("ISO/TS 28037 Ex1", 1), Column("ISO/TS 28037 Ex1", 3), [.. Enumerable.Repeat(0.2, 6)]);
        Assert.Equal(1.665 * 6.25, line.ChiSquared!.Value, 0.005);
        Assert.False(line.IsConsistent);
    }

    [Fact]
    public void What_gives_no_line_is_refused()
    {
        double[] three = [1, 2, 3];
        Assert.Throws<ArgumentException>(() => CalibrationLine.Of("g", [1, 2], [1, 2], [1, 1]));
        Assert.Throws<ArgumentException>(() => CalibrationLine.Of("g", three, three, [1, 1]));
        Assert.Throws<ArgumentException>(() => CalibrationLine.Of("g", three, three, [1, 0, 1]));
        Assert.Throws<ArgumentException>(() => CalibrationLine.Of("g", three, three, [1, -1, 1]));
        Assert.Throws<ArgumentException>(() => CalibrationLine.Of("g", three, [1, double.NaN, 1], three));
        Assert.Throws<ArgumentException>(() => CalibrationLine.Of("g", [2, 2, 2], three, three));
        Assert.Throws<ArgumentException>(() => CalibrationLine.Of("g", three, three, [1e-200, 1e-200, 1e-200]));
        Assert.Throws<ArgumentException>(() => CalibrationLine.Of(" ", three, three, three));
        Assert.Throws<ArgumentException>(() => CalibrationLine.FromScatter("g", [1, 2], [1, 2]));
        var flat = CalibrationLine.Of("g", [1, 2, 3, 4], [5, 4, 6, 5], [1, 1, 1, 1]);
        var e = Assert.Throws<InvalidOperationException>(() => flat.ValueOf(5.0));
        Assert.Contains("not proven to differ from 0", e.Message, StringComparison.Ordinal);
    }

    private static void AssertLine(CalibrationLine line, double a, double uncertaintyA, double b, double uncertaintyB, double covariance, double chiSquared, double within)
    {
        Assert.Equal(a, line.Intercept, within);
        Assert.Equal(uncertaintyA, line.InterceptUncertainty, within);
        Assert.Equal(b, line.Slope, within);
        Assert.Equal(uncertaintyB, line.SlopeUncertainty, within);
        Assert.Equal(covariance, line.Covariance, within);
        Assert.Equal(chiSquared, line.ChiSquared!.Value, within);
    }

    private static double[] Column(string example, int column) => [.. Examples[example].Select(r => UncertaintyFile.Number(r[column]))];
}
