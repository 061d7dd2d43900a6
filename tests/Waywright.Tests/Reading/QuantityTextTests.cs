using UnitsNet;

namespace Waywright.Tests;

public abstract class QuantityTextTests
{
    public sealed class Invariant : QuantityTextTests;

    [UnderCulture("de-DE")]
    public sealed class German : QuantityTextTests;

    [UnderCulture("tr-TR")]
    public sealed class Turkish : QuantityTextTests;

    [UnderCulture("fa-IR")]
    public sealed class Persian : QuantityTextTests;

    [Theory]
    [InlineData("180mm", 0.18)]
    [InlineData("180 mm", 0.18)]
    [InlineData("  18 cm ", 0.18)]
    [InlineData("0.18 m", 0.18)]
    [InlineData("180\u00A0mm", 0.18)]
    [InlineData("180\u2009mm", 0.18)]
    [InlineData("1.8e2 mm", 0.18)]
    [InlineData("+180 mm", 0.18)]
    [InlineData("-5 mm", -0.005)]
    [InlineData("14 um", 14e-6)]
    [InlineData("14 \u00B5m", 14e-6)]
    [InlineData("14 \u03BCm", 14e-6)]
    [InlineData("1 in", 0.0254)]
    [InlineData("7in", 0.1778)]
    public void A_length_is_read_to_the_last_bit(string text, double metres)
        => Assert.Equal(metres, Quantity.Length(text, "span").Si.Value);

    // Exact by definition: NIST SP 811 (2008), appendix B.8: lbf 4.448 221 615 260 5 N, kgf 9.806 65 N; inch 25.4 mm.
    [Theory]
    [InlineData("1 lbf", 4.4482216152605)]
    [InlineData("1 kgf", 9.80665)]
    [InlineData("2.5 kN", 2500)]
    [InlineData("12 mN", 0.012)]
    public void A_force_is_read_with_exact_factors(string text, double newtons)
        => Assert.Equal(newtons, Quantity.Force(text, "pull").Si.Value);

    [Theory]
    [InlineData("8.1 g/m", 0.0081)]
    [InlineData("0.0081 kg/m", 0.0081)]
    [InlineData("8.1mg/mm", 0.0081)]
    public void A_linear_density_is_read(string text, double kilogramsPerMetre)
        => Assert.Equal(kilogramsPerMetre, Quantity.LinearDensity(text, "density").Si.Value);

    [Fact]
    public void Every_other_kind_is_read()
    {
        Assert.Equal(0.025, Quantity.Mass("25 g", "m").Si.Value);
        Assert.Equal(25e-6, Quantity.Mass("25 mg", "m").Si.Value);
        Assert.Equal(96000, Quantity.Frequency("96 kHz", "f").Si.Value);
        Assert.Equal(0.002, Quantity.Read<Duration>("2 ms", "t").Si.Value);
        Assert.Equal(Math.PI / 2, Quantity.Read<Angle>("90 deg", "a").Si.Value);
        Assert.Equal(Math.PI / 2, Quantity.Read<Angle>("90\u00B0", "a").Si.Value);
        Assert.Equal(0.0007, Quantity.Read<Angle>("0.7 mrad", "a").Si.Value);
    }

    // JCGM 100:2008, 4.3.7 (rectangular: a / sqrt 3) and 4.3.3 (U / k).
    [Theory]
    [InlineData("180 +/- 0.5 mm", 0.00028867513459481287)]
    [InlineData("180 mm +/- 0.5 mm", 0.00028867513459481287)]
    [InlineData("180mm+/-0.5mm", 0.00028867513459481287)]
    [InlineData("180 \u00B1 0.5 mm", 0.00028867513459481287)]
    [InlineData("180 mm \u00B1 500 um", 0.00028867513459481287)]
    [InlineData("180 +- 0.5 mm", 0.00028867513459481287)]
    [InlineData("180 mm u 0.2 mm", 0.0002)]
    [InlineData("180 u 0.2 mm", 0.0002)]
    [InlineData("180 mm u0.2mm", 0.0002)]
    [InlineData("180 mm U 0.4 mm k 2", 0.0002)]
    [InlineData("180 U 0.4 mm k2", 0.0002)]
    [InlineData("180.00 mm U 0.40 mm k 2 (95 %)", 0.0002)]
    [InlineData("180 mm u 1 %", 0.0018)]
    [InlineData("180 mm +/- 0 mm", 0)]
    public void An_uncertainty_is_taken_as_it_is_written(string text, double uMetres)
    {
        var span = Quantity.Length(text, "span");
        Assert.Equal(0.18, span.Si.Value);
        Assert.Equal(uMetres, span.Si.StandardUncertainty, 1e-15);
    }

    [Theory]
    [InlineData("180 mm", "180 mm, taken as exact: no uncertainty was given")]
    [InlineData("180 +/- 0.5 mm", "180 mm +/- 0.5 mm, taken as limits (rectangular): u = 0.5 mm / sqrt(3) = 0.29 mm")]
    [InlineData("180 mm u 0.2 mm", "180 mm, taken with the standard uncertainty u = 0.2 mm")]
    [InlineData("180 mm U 0.4 mm k 2", "180 mm, taken with the expanded uncertainty U = 0.4 mm for k = 2: u = 0.20 mm")]
    [InlineData("180 mm +/- 10 %", "180 mm +/- 18 mm, taken as limits (rectangular): u = 18 mm / sqrt(3) = 10 mm")]
    public void How_an_uncertainty_was_taken_is_said(string text, string takenAs)
        => Assert.Equal(takenAs, Quantity.Length(text, "span").TakenAs);

    [Theory]
    [InlineData("", "nothing", "a length with its unit, such as 180 mm")]
    [InlineData("   ", "nothing", "a length with its unit, such as 180 mm")]
    [InlineData("180", "'180'", "a length with its unit, such as 180 mm")]
    [InlineData("180 +/- 0.5", "'0.5'", "a length with its unit, such as 180 mm")]
    [InlineData("mm", "'mm'", "a length with its unit, such as 180 mm")]
    [InlineData("long", "'long'", "a length with its unit, such as 180 mm")]
    [InlineData("NaN mm", "'NaN mm'", "a length with its unit, such as 180 mm")]
    [InlineData("Infinity mm", "'Infinity mm'", "a length with its unit, such as 180 mm")]
    [InlineData("1e999 mm", "'1e999 mm'", "one finite number and a unit, such as 180 mm")]
    [InlineData("1.234,5 mm", "'1.234,5 mm'", "one finite number and a unit, such as 180 mm")]
    [InlineData("--180 mm", "'--180 mm'", "one finite number and a unit, such as 180 mm")]
    [InlineData("180,5 mm", "'180,5'", "a decimal point, such as 12.5")]
    [InlineData("180.5 +/- 0,5 mm", "'0,5'", "a decimal point, such as 12.5")]
    [InlineData("8.1 g/m", "'g/m'", "a length: mm, cm, m, um, in")]
    [InlineData("180 MM", "'MM'", "a length: mm, cm, m, um, in")]
    [InlineData("180 furlong", "'furlong'", "a length: mm, cm, m, um, in")]
    [InlineData("180 mm2", "'mm2'", "a length: mm, cm, m, um, in")]
    [InlineData("180 mm 5", "'5'", "nothing more or an uncertainty, such as 180 mm +/- 5 % (limits), u 5 % (standard), U 10 % k 2 (expanded)")]
    [InlineData("180 mm + 0.5 mm", "'+ 0.5 mm'", "nothing more or an uncertainty, such as 180 mm +/- 5 % (limits), u 5 % (standard), U 10 % k 2 (expanded)")]
    [InlineData("180 mm +/-", "nothing", "the uncertainty as a number, such as 0.5")]
    [InlineData("180 mm +/- NaN mm", "'NaN mm'", "the uncertainty as a number, such as 0.5")]
    [InlineData("180 mm +/- -0.5 mm", "'-0.5'", "an uncertainty of 0 or more")]
    [InlineData("180 mm u -0.5 mm", "'-0.5'", "an uncertainty of 0 or more")]
    [InlineData("180 mm +/- 0.5", "'0.5'", "the uncertainty with its unit, such as 0.5 mm")]
    [InlineData("180 mm +/- 0.5 Hz", "'Hz'", "a length: mm, cm, m, um, in")]
    [InlineData("180 +/- 5 %", "'180 +/- 5 %'", "the unit after the value, such as 180 mm +/- 5 %")]
    [InlineData("180 mm U 0.4 mm", "nothing", "k, the coverage factor of U, such as k 2")]
    [InlineData("180 mm U 0.4 mm k", "nothing", "the coverage factor as a number, such as k 2")]
    [InlineData("180 mm U 0.4 mm k 0", "'0'", "a coverage factor above 0, such as k 2")]
    [InlineData("180 mm U 0.4 mm k -2", "'-2'", "a coverage factor above 0, such as k 2")]
    [InlineData("180 mm U 0.4 mm k 2 (195 %)", "'(195 %)'", "the coverage probability between 0 and 100 %, such as (95 %)")]
    [InlineData("180 mm U 0.4 mm k 2 (95 %", "nothing", "a closing bracket")]
    [InlineData("180 mm u 0.2 mm k 2", "'k 2'", "nothing after the quantity")]
    [InlineData("180 mm +/- 0.5 mm!", "'mm!'", "a length: mm, cm, m, um, in")]
    [InlineData("1e16 m", "'1e16 m'", "a length of a size between 1e-15 and 1e15 m")]
    [InlineData("1e-300 m", "'1e-300 m'", "a length of a size between 1e-15 and 1e15 m")]
    [InlineData("1 m u 1e200 m", "'1 m u 1e200 m'", "an uncertainty of 0 or of a size between 1e-15 and 1e15 m")]
    public void A_bad_text_gets_one_plain_message(string text, string found, string expected)
    {
        var problem = Assert.Single(Assert.Throws<InputException>(() => Quantity.Length(text, "--span")).Problems);
        Assert.Equal($"--span: found {found}, expected {expected}", problem.ToString());
    }

    [Theory]
    [InlineData("0 Hz")]
    [InlineData("-96 Hz")]
    [InlineData("-0.0 Hz")]
    public void A_range_is_held_to(string text)
    {
        var problem = Assert.Throws<InputException>(() => Quantity.ReadPositive<Frequency>(text, "--frequency")).Message;
        Assert.Equal($"--frequency: found '{text}', expected a frequency above 0", problem);
    }

    [Fact]
    public void A_file_s_comma_is_read_and_handed_back()
    {
        var mark = DecimalMark.None;
        Assert.True(QuantityText.TryRead("180,5 +/- 0,5 mm", Dimension.Length, QuantityRange.Any, ref mark, out var reading, out _));
        Assert.Equal(DecimalMark.Comma, mark);
        Assert.Equal(180.5, reading!.Value);
    }

    [Fact]
    public void Both_marks_in_one_quantity_are_refused()
    {
        var mark = DecimalMark.None;
        Assert.False(QuantityText.TryRead("180,5 +/- 0.5 mm", Dimension.Length, QuantityRange.Any, ref mark, out _, out var fault));
        Assert.Equal(new QuantityFault("'0.5'", "a decimal comma as before it, such as 12,5"), fault);
    }
}
