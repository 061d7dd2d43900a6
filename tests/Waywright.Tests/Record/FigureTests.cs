using System.Globalization;
using Waywright.Notebooks;

namespace Waywright.Tests.Record;

public sealed class FigureTests
{
    public static TheoryData<double> NotFinite => [double.NaN, double.PositiveInfinity, double.NegativeInfinity];

    [Theory]
    [MemberData(nameof(NotFinite))]
    public void A_number_that_is_not_finite_is_refused_wherever_it_stands(double bad)
    {
        Assert.Throws<ArgumentException>(() => new Figure("a", "a", bad, null, "mm"));
        Assert.Throws<ArgumentException>(() => new Figure("a", "a", 1, null, "mm", standardUncertainty: bad));
        Assert.Throws<ArgumentException>(() => new Figure("a", "a", 1, null, "mm", degreesOfFreedom: bad));
        Assert.Throws<ArgumentException>(() => new Figure("a", "a", 1, null, "mm", coverageFactor: bad));
        Assert.Throws<ArgumentException>(() => new Figure("a", "a", 1, null, "mm", low: bad, high: 2));
        Assert.Throws<ArgumentException>(() => new Figure("a", "a", 1, null, "mm", low: 0, high: bad));
        Assert.Throws<ArgumentException>(() => new Figure("a", "a", 1, null, "mm", relativeTolerance: bad));
        Assert.Throws<ArgumentException>(() => new Figure("a", "a", 1, null, "mm", absoluteTolerance: bad));
    }

    [Fact]
    public void A_figure_is_a_number_or_a_text_and_not_both()
    {
        Assert.Throws<ArgumentException>(() => new Figure("a", "a", null, null, "1"));
        Assert.Throws<ArgumentException>(() => new Figure("a", "a", 1, "one", "1"));
        Assert.Equal("gantry", new Figure("rails/R03/grade", "grade", null, "gantry", "1").Text);
    }

    [Theory]
    [InlineData("")]
    [InlineData("rails R03")]
    [InlineData("rails\nR03")]
    [InlineData("rails/R03\u0007")]
    public void An_id_with_blanks_or_invisible_characters_is_refused(string id)
        => Assert.Throws<ArgumentException>(() => new Figure(id, "name", 1, null, "1"));

    [Fact]
    public void An_interval_has_both_ends_in_order()
    {
        Assert.Throws<ArgumentException>(() => new Figure("a", "a", 1, null, "1", low: 0));
        Assert.Throws<ArgumentException>(() => new Figure("a", "a", 1, null, "1", high: 2));
        Assert.Throws<ArgumentException>(() => new Figure("a", "a", 1, null, "1", low: 2, high: 0));
    }

    [Fact]
    public void Uncertainties_are_not_negative_and_factors_are_above_zero()
    {
        Assert.Throws<ArgumentException>(() => new Figure("a", "a", 1, null, "1", standardUncertainty: -0.1));
        Assert.Throws<ArgumentException>(() => new Figure("a", "a", 1, null, "1", degreesOfFreedom: 0));
        Assert.Throws<ArgumentException>(() => new Figure("a", "a", 1, null, "1", coverageFactor: 0));
        Assert.Throws<ArgumentException>(() => new Figure("a", "a", 1, null, "1", absoluteTolerance: -1));
    }

    [Fact]
    public void A_message_writes_numbers_the_same_in_every_culture()
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = new CultureInfo("de-DE");
            var thrown = Assert.Throws<ArgumentException>(() => new Figure("a", "a", 1, null, "1", standardUncertainty: -0.5));
            Assert.Contains("-0.5", thrown.Message, StringComparison.Ordinal);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    // Codes and symbols: The Unified Code for Units of Measure, version 2.1, tables of base units, prefixes, derived and customary units (from memory).
    [Theory]
    [InlineData("um", "µm")]
    [InlineData("mm", "mm")]
    [InlineData("m", "m")]
    [InlineData("g/m", "g/m")]
    [InlineData("N", "N")]
    [InlineData("Hz", "Hz")]
    [InlineData("N.m2", "N·m²")]
    [InlineData("kg.m/s2", "kg·m/s²")]
    [InlineData("K-1", "K⁻¹")]
    [InlineData("/m", "1/m")]
    [InlineData("1/m", "1/m")]
    [InlineData("um/m", "µm/m")]
    [InlineData("Cel", "°C")]
    [InlineData("deg", "°")]
    [InlineData("%", "%")]
    [InlineData("[in_i]", "in")]
    [InlineData("1", "")]
    public void A_UCUM_code_has_the_symbol_that_a_reader_expects(string code, string symbol)
        => Assert.Equal(symbol, new Figure("a", "a", 1, null, code).UnitSymbol);

    [Theory]
    [InlineData("")]
    [InlineData("µm")]
    [InlineData("UM")]
    [InlineData("mm2.")]
    [InlineData("m//s")]
    [InlineData("N m")]
    [InlineData("inch")]
    [InlineData("2")]
    [InlineData("mdeg")]
    [InlineData("<b>")]
    public void Another_text_is_no_unit(string code)
        => Assert.Throws<ArgumentException>(() => new Figure("a", "a", 1, null, code));

    [Theory]
    [InlineData(100, 2, 0.2, 0, true)]
    [InlineData(100, 2, 0.21, 0, false)]
    [InlineData(100, 2, 0, 0.0021, false)]
    [InlineData(100, 0, 5, 0, true)]
    [InlineData(100, 1e-9, 0, 1e-9, true)]
    public void A_rerun_tolerance_above_a_tenth_of_u_is_refused_when_the_figure_is_kept(double value, double u, double absolute, double relative, bool taken)
    {
        var figure = new Figure("a", "a", value, null, "um", u, absoluteTolerance: absolute, relativeTolerance: relative);
        if (taken)
            Assert.Same(figure, OutputTypes.Checked(figure));
        else
            Assert.Contains("a tenth of its standard uncertainty", Assert.Throws<ArgumentException>(() => OutputTypes.Checked(figure)).Message, StringComparison.Ordinal);
    }
}
