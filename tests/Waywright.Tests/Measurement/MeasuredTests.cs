using CsCheck;
using UnitsNet;

namespace Waywright.Tests;

public abstract class MeasuredTests
{
    public sealed class Invariant : MeasuredTests;

    [UnderCulture("de-DE")]
    public sealed class German : MeasuredTests;

    [UnderCulture("tr-TR")]
    public sealed class Turkish : MeasuredTests;

    [UnderCulture("fa-IR")]
    public sealed class Persian : MeasuredTests;

    [Fact]
    public void Literals_read_as_they_are_said()
    {
        Assert.Equal(0.18, 180.mm.Si.Value);
        Assert.Equal(0.18, 18.cm.Si.Value);
        Assert.Equal(0.1805, 180.5.mm.Si.Value);
        Assert.Equal(0.18, 0.18.m.Si.Value);
        Assert.Equal(14e-6, 14.um.Si.Value);
        Assert.Equal(0.1778, 7.inch.Si.Value);
        Assert.Equal(0.0081, 8.1.g_per_m.Si.Value);
        Assert.Equal(0.0081, 8.1.mg_per_mm.Si.Value);
        Assert.Equal(0.0081, 0.0081.kg_per_m.Si.Value);
        Assert.Equal(96.0, 96.Hz.Si.Value);
        Assert.Equal(96000.0, 96.kHz.Si.Value);
        Assert.Equal(9.0, 9.N.Si.Value);
        Assert.Equal(0.009, 9.mN.Si.Value);
        Assert.Equal(9000.0, 9.kN.Si.Value);
        Assert.Equal(9.80665, 1.kgf.Si.Value);
        Assert.Equal(4.4482216152605, 1.lbf.Si.Value);
        Assert.Equal((0.025, 25.0, 25e-6), (25.g.Si.Value, 25.kg.Si.Value, 25.mg.Si.Value));
        Assert.Equal((2.0, 0.002), (2.s.Si.Value, 2.ms.Si.Value));
        Assert.Equal((Math.PI, 1.5, 0.0015), (180.deg.Si.Value, 1.5.rad.Si.Value, 1.5.mrad.Si.Value));
        Assert.Equal(-0.005, (-5).mm.Si.Value);
        Assert.Throws<ArgumentOutOfRangeException>(() => double.NaN.mm);
    }

    [Fact]
    public void The_typed_edge_gives_the_same_in_the_units_library()
    {
        var span = 180.mm.WithUncertainty(0.2.mm);
        Assert.Equal(180, span.Value.Millimeters, 1e-12);
        Assert.Equal(0.2, span.StandardUncertainty.Millimeters, 1e-12);
        Assert.Equal(8.1, 8.1.g_per_m.Value.GramsPerMeter, 1e-12);
        Assert.Equal(1, 1.lbf.Value.PoundsForce, 1e-12);
        Assert.Equal(25, 25.g.Value.Grams, 1e-12);
        Assert.Equal(2, 2.ms.Value.Milliseconds, 1e-12);
        Assert.Equal(90, 90.deg.Value.Degrees, 1e-12);
        Assert.Equal(96, 96.Hz.Value.Hertz);
    }

    [Fact]
    public void A_literal_and_its_text_say_the_same()
    {
        Assert.Equal(Quantity.Length("180 +/- 0.5 mm", "span"), 180.mm.PlusMinus(0.5.mm).Named("span"));
        Assert.Equal(Quantity.Length("180 +/- 0.5 mm", "span").TakenAs, 180.mm.PlusMinus(0.5.mm).TakenAs);
        Assert.Equal(Quantity.Length("180 mm u 0.2 mm", "span"), 180.mm.Named("span").WithUncertainty(0.2.mm));
        Assert.Equal(Quantity.Length("180 mm u 0.2 mm", "span"), 180.mm.WithUncertainty(200.um).Named("span"));
    }

    [Fact]
    public void Repeats_bring_their_degrees_of_freedom()
    {
        var note = 96.Hz.WithUncertainty(0.5.Hz, 4);
        Assert.Equal(4, note.Si.DegreesOfFreedom);
        Assert.Equal("96 Hz, taken with the standard uncertainty u = 0.5 Hz with 4 degrees of freedom", note.TakenAs);
    }

    [Fact]
    public void One_variable_is_one_input_and_two_that_read_alike_are_two()
    {
        var once = 180.mm.PlusMinus(0.5.mm);
        var again = 180.mm.PlusMinus(0.5.mm);
        Assert.Equal(0, (once.Si - once.Si).StandardUncertainty);
        Assert.Equal(Math.Sqrt(2) * once.Si.StandardUncertainty, (once.Si - again.Si).StandardUncertainty, 1e-15);
        Assert.Equal(0, (once.Named("tape").Si - again.Named("tape").Si).StandardUncertainty);
    }

    [Fact]
    public void An_uncertainty_is_given_once_and_plainly()
    {
        Assert.Throws<InvalidOperationException>(() => 180.mm.PlusMinus(0.5.mm).PlusMinus(0.5.mm));
        Assert.Throws<ArgumentException>(() => 180.mm.PlusMinus(0.5.mm.PlusMinus(0.1.mm)));
        Assert.Throws<ArgumentOutOfRangeException>(() => 180.mm.PlusMinus((-0.5).mm));
        Assert.Throws<ArgumentOutOfRangeException>(() => 180.mm.WithUncertainty((-0.5).mm));
        Assert.Throws<ArgumentOutOfRangeException>(() => 180.mm.WithUncertainty(0.5.mm, 0.5));
        var sum = Quantity.FromSi<Length>(180.mm.Si + 20.mm.Si, "sum");
        Assert.Throws<InvalidOperationException>(() => sum.Named("sum"));
        Assert.Throws<InvalidOperationException>(() => sum.PlusMinus(1.mm));
    }

    [Fact]
    public void Two_significant_digits_of_U_are_printed_with_k_and_coverage()
    {
        Assert.Equal("180.00 mm U 0.57 mm k 1.96 (95 %)", 180.mm.PlusMinus(0.5.mm).ToString());
        Assert.Equal("180.00 mm (179.43 to 180.57)", 180.mm.PlusMinus(0.5.mm).ToShortString());
        Assert.Equal("96.0 Hz U 1.4 Hz k 2.78 (95 %)", 96.Hz.WithUncertainty(0.5.Hz, 4).ToString());
        Assert.Equal("7.000 in (6.902 to 7.098)", Quantity.Length("7 in u 0.05 in", "span").ToShortString());
        Assert.Equal("1230 N U 340 N k 1.96 (95 %)", 1234.N.WithUncertainty(173.N).ToString());
        Assert.Equal("0.000 mm U 0.020 mm k 1.96 (95 %)", (-0.0001).mm.WithUncertainty(0.0102.mm).ToString());
        Assert.Equal("10.00 N U 0.10 N k 1.96 (95 %)", 10.N.WithUncertainty(0.0508.N).ToString());
        Assert.Equal("180 mm", 180.mm.ToString());
        Assert.Equal("-0.1234 mm", (-0.1234).mm.ToShortString());
        Assert.Equal("9.71 U 0.34 k 1.96 (95 %)", Uncertain.Input("T", 9.7123, 0.1734).ToString());
        Assert.Equal("9.71 (9.37 to 10.05)", Uncertain.Input("T", 9.7123, 0.1734).ToShortString());
    }

    [Fact]
    public void What_is_printed_is_read_back()
        => Gen.Select(Gen.Double[0.001, 1e5], Gen.Double[1e-4, 0.3], Gen.OneOf("mm", "cm", "m", "um", "in")).Sample(
            (value, relative, unit) =>
            {
                var text = FormattableString.Invariant($"{value:R} {unit} u {value * relative:R} {unit}");
                var written = Quantity.Length(text, "span");
                var read = Quantity.Length(written.ToString(), "span");
                var u = written.Si.StandardUncertainty;
                Assert.Equal(written.Si.Value, read.Si.Value, 0.1 * u * 1.01);
                Assert.Equal(u, read.Si.StandardUncertainty, 0.055 * u);
                Assert.Equal(written.ToString(), read.ToString());
            },
            threads: 1);

    [Fact]
    public void Equal_means_equal_in_SI_inputs_and_shown_unit()
    {
        Assert.Equal(180.mm, 180.mm);
        Assert.Equal(180.mm.PlusMinus(0.5.mm).GetHashCode(), 180.mm.PlusMinus(0.5.mm).GetHashCode());
        Assert.NotEqual(180.mm, 18.cm);
        Assert.NotEqual(180.mm, 180.mm.PlusMinus(0.5.mm));
    }

    [Fact]
    public void A_quantity_without_units_here_is_named()
    {
        var e = Assert.Throws<NotSupportedException>(() => Quantity.Read<Volume>("1 l", "tank"));
        Assert.StartsWith("Volume is not among the quantities read here", e.Message, StringComparison.Ordinal);
    }
}
