namespace Waywright.Tests;

public sealed class InstrumentTests
{
    // JCGM 100:2008, F.2.2.1: the resolution of an indication contributes its step / sqrt 12.
    [Theory]
    [InlineData("whole", 10)]
    [InlineData("half", 5)]
    [InlineData("tenth", 1)]
    public void Equal_repeats_are_not_zero_uncertainty(string readTo, double step)
    {
        var dial = Instrument.Create("D1", "um", 10, readTo, repeatability: 0);
        var reading = Assert.Single(dial.Components());
        Assert.Equal(step, dial.ReadingStep);
        Assert.Equal(step / Math.Sqrt(12), reading.StandardUncertainty, 1e-14);
        Assert.Equal(AveragesOut.Relaying, reading.AveragesOut);
    }

    [Fact]
    public void Scatter_above_the_rounding_averages_out_by_repeating()
    {
        var reading = Assert.Single(Instrument.Create("D1", "um", 10, "tenth", repeatability: 1.7, repeatabilityDegreesOfFreedom: 9).Components());
        Assert.Equal(new UncertaintyComponent("reading", 1.7, 9, AveragesOut.Repeating, "take more readings"), reading);
    }

    // JIS B 7503:2011 as printed in a maker's catalogue of 2016, every row.
    [Fact]
    public void The_limits_of_dial_indicators_are_those_of_the_printed_table()
    {
        foreach (var row in UncertaintyFile.Rows("jis_b7503_2011_dial_mpe.csv"))
        {
            var range = UncertaintyFile.Number(row[2].TrimStart('<', '>', '=').Split('-')[^1]);
            var limits = DialLimits.Jis7503(UncertaintyFile.Number(row[1]), range, 1, isSmall: row[0].StartsWith('<'));
            double[] printed = [.. row[3..].Select(UncertaintyFile.Number)];
            Assert.Equal(new DialLimits(1000, printed[2], printed[3], printed[4], printed[5], printed[0], printed[1]), limits);
        }

        Assert.Null(DialLimits.Jis7503(0.02, 1, 1));
        Assert.Null(DialLimits.Jis7503(0.01, 101, 1));
        Assert.Null(DialLimits.Jis7503(0.01, 0, 1));
    }

    [Fact]
    public void A_dial_shows_less_of_its_error_over_less_of_its_travel()
    {
        var dial = Instrument.Create("D1", "um", 10, "tenth", dial: DialLimits.Jis7503(0.01, 10, 1));
        double Error(double spread) => dial.Components(spread).Single(c => c.AveragesOut == AveragesOut.Relaying).StandardUncertainty * Math.Sqrt(3);
        Assert.Equal((5, 9, 10, 15), (Math.Round(Error(100), 9), Math.Round(Error(101), 9), Math.Round(Error(1000), 9), Math.Round(Error(1001), 9)));
        Assert.Equal(15, Error(double.PositiveInfinity), 1e-9);
        // Half of the largest retrace, 3 um, as +/-; the largest difference of repeats, 3 um, as a full width: both 1.5 / sqrt 3.
        Assert.Equal(["permissible error of the dial", "reading", "retrace"], dial.Components().Select(c => c.Name));
        Assert.Equal(1.5 / Math.Sqrt(3), dial.Components()[1].StandardUncertainty, 1e-12);
        Assert.Equal(1.5 / Math.Sqrt(3), dial.Components()[2].StandardUncertainty, 1e-12);
        Assert.Throws<ArgumentOutOfRangeException>(() => dial.Components(-1));
    }

    [Fact]
    public void An_instruments_error_is_shared_by_all_that_it_measures()
    {
        var caliper = Instrument.Create("C1", "mm", 0.02, "whole", permissibleError: 0.03);
        var (a, b) = (caliper.Read(25, "pitch A"), caliper.Read(26, "pitch B"));
        var reading = 0.02 / Math.Sqrt(12);
        Assert.Equal(25, a.Value);
        Assert.Equal(Math.Sqrt((reading * reading) + (0.0009 / 3)), a.StandardUncertainty, 1e-12);
        Assert.Equal(Math.Sqrt(2) * reading, (b - a).StandardUncertainty, 1e-12);
        Assert.Equal(AveragesOut.Nothing, caliper.Components()[0].AveragesOut);
        Assert.Equal(0, (a - caliper.Read(25, "pitch A")).StandardUncertainty, 1e-15);
    }

    // ISO/TS 28037:2010, 11.1, example 1: the line's part of u(x) = 0.322 and the reading's, 0.5 / 1.757.
    [Fact]
    public void A_check_against_known_values_corrects_and_replaces_the_limit()
    {
        var check = CalibrationLine.Of("scale", [1, 2, 3, 4, 5, 6], [3.3, 5.6, 7.1, 9.3, 10.7, 12.1], [.. Enumerable.Repeat(0.5, 6)]);
        var scale = Instrument.Create("scale", "g", 0.1, "whole", permissibleError: 5, repeatability: 0.5, check: check);
        var mass = scale.Read(10.5, "belt piece");
        Assert.Equal(4.913, mass.Value, 0.0005);
        Assert.Equal(0.322, mass.StandardUncertainty, 0.0005);
        Assert.Equal(["check against known values", "reading"], scale.Components().Select(c => c.Name).Order());
    }

    [Fact]
    public void Everything_impossible_is_listed_at_once()
    {
        var e = Assert.Throws<InputException>(() => Instrument.Create(
            "D1", "mm", 0, "third", permissibleError: -1, dial: new DialLimits(0, 5, 4, 10, 15, -1, 3), repeatability: double.NaN, repeatabilityDegreesOfFreedom: 0, retrace: -3, source: "instruments.json"));
        Assert.Equal(
            [
                "instruments.json: found division 0, expected a number above 0",
                "instruments.json: found read to 'third', expected whole, half or tenth",
                "instruments.json: found permissible error -1, expected a number of 0 or more",
                "instruments.json: found repeatability NaN, expected a number of 0 or more",
                "instruments.json: found retrace -3, expected a number of 0 or more",
                "instruments.json: found degrees of freedom 0, expected 1 or more: repeats less 1",
                "instruments.json: found unit 'mm', expected um, the unit of a dial's limits",
                "instruments.json: found a dial's limits and a permissible error, expected one of them",
                "instruments.json: found travel of one turn 0, expected a number above 0",
                "instruments.json: found retrace of the dial -1, expected a number of 0 or more",
                "instruments.json: found a dial's limit that is larger over less travel, expected limits that grow with the travel",
            ],
            e.Problems.Select(p => p.ToString()));
        Assert.Equal(2, Assert.Throws<InputException>(() => Instrument.Create("", "", 1, "whole")).Problems.Count);
        var flat = CalibrationLine.Of("g", [1, 2, 3, 4], [5, 4, 6, 5], [1, 1, 1, 1]);
        Assert.Contains("slope", Assert.Single(Assert.Throws<InputException>(() => Instrument.Create("g", "g", 1, "whole", check: flat)).Problems).Found, StringComparison.Ordinal);
    }

    [Fact]
    public void Equal_descriptions_are_equal()
        => Assert.Equal(Instrument.Create("D1", "um", 10, "half", dial: DialLimits.Jis7503(0.01, 10, 1)), Instrument.Create("D1", "um", 10, "half", dial: DialLimits.Jis7503(0.01, 10, 1)));
}
