using System.Globalization;
using CsCheck;

namespace Waywright.Tests;

public abstract class BeltSpanTests
{
    private const double NewtonsPerPound = 4.4482216152605;
    private const double InchesPerMetre = 1 / 0.0254;

    public sealed class Invariant : BeltSpanTests;

    [UnderCulture("de-DE")]
    public sealed class German : BeltSpanTests;

    [UnderCulture("tr-TR")]
    public sealed class Turkish : BeltSpanTests;

    [UnderCulture("fa-IR")]
    public sealed class Persian : BeltSpanTests;

    // A string maker's printed tension chart (Reference/belts/README.md): T = UW (2 L F)2 / 386.4, to 0.1 lb.
    // It takes 386.4 in/s2 for gravity; standard gravity is 386.0886, so the chart's pounds are 0.081 % fewer than the definition's.
    [Fact]
    public void Tensions_agree_with_a_printed_string_chart()
    {
        var rows = Rows("string_chart.csv").ToArray();
        Assert.Equal(16, rows.Length);
        Assert.All(rows, row =>
        {
            var span = new BeltSpan(Double(row[1]).inch, (Double(row[0]) * 0.45359237 * InchesPerMetre).kg_per_m);
            var pounds = span.Tension(Double(row[3]).Hz).Tension.Si.Value / NewtonsPerPound;
            // Printed to 0.1 lb from pitches to 0.1 Hz.
            Assert.Equal(Double(row[4]), pounds * (9.80665 * InchesPerMetre) / 386.4, 0.05 + (2 * 0.05 / Double(row[3]) * pounds));
        });
    }

    // W. T. Thomson, Vibration Theory and Applications (1965), p. 264: 500 lb string, first note printed 74.708 Hz (Reference/belts/README.md).
    [Fact]
    public void Thomsons_string_sounds_as_printed()
    {
        var printed = Rows("string_thomson_vm53.csv").ToDictionary(r => r[0], r => Double(r[1]));
        var (area, density) = (0.00306796, 0.00073);
        Assert.Equal(printed["stress_psi"], 500 / area, 1.0);
        var span = new BeltSpan(100.inch, (density * area * NewtonsPerPound * InchesPerMetre * InchesPerMetre).kg_per_m);
        Assert.Equal(printed["f1_Hz"], span.Note(500.lbf).Frequency.Si.Value, 0.0005);
        Assert.Equal(printed["force_lb"], span.Tension(printed["f1_Hz"].Hz).Tension.Si.Value / NewtonsPerPound, 0.01);
    }

    // JCGM 100:2008, 5.1.6, equation 12: relative variances of a product of powers add, each times its power squared.
    [Fact]
    public void Relative_uncertainties_add_as_for_any_product_of_powers()
    {
        var span = new BeltSpan(180.mm.WithUncertainty(0.3.mm), 8.1.g_per_m.WithUncertainty(0.1.g_per_m));
        var tension = span.Tension(96.Hz.WithUncertainty(0.4.Hz)).Tension.Si;
        Assert.Equal(4 * 0.0081 * 0.18 * 0.18 * 96 * 96, tension.Value, 1e-12);
        Assert.Equal(Math.Sqrt(Sum(1, 0.1 / 8.1, 2, 0.3 / 180, 2, 0.4 / 96)), tension.StandardUncertainty / tension.Value, 1e-12);
        var note = span.Note(9.N.WithUncertainty(0.2.N)).Frequency.Si;
        Assert.Equal(Math.Sqrt(9 / 0.0081) / 0.36, note.Value, 1e-12);
        Assert.Equal(Math.Sqrt(Sum(0.5, 0.1 / 8.1, 1, 0.3 / 180, 0.5, 0.2 / 9)), note.StandardUncertainty / note.Value, 1e-12);

        static double Sum(params double[] powersAndU) => powersAndU.Chunk(2).Sum(c => c[0] * c[0] * c[1] * c[1]);
    }

    [Fact]
    public void A_note_and_its_tension_lead_back_to_each_other()
        => Gen.Select(Gen.Double[20, 2000], Gen.Double[1, 40], Gen.Double[10, 400]).Sample(
            (millimetres, grams, hertz) =>
            {
                var span = new BeltSpan(millimetres.mm.PlusMinus(0.5.mm), grams.g_per_m.PlusMinus(0.2.g_per_m));
                var heard = hertz.Hz.PlusMinus(0.5.Hz);
                var back = span.Note(span.Tension(heard).Tension).Frequency.Si;
                Assert.Equal(hertz, back.Value, 1e-12 * hertz);
                // Span and density went in and out again: only the note's own uncertainty is left.
                Assert.Equal(heard.Si.StandardUncertainty, back.StandardUncertainty, 1e-12);
            },
            threads: 1);

    [Fact]
    public void Tension_follows_density_and_the_squares_of_span_and_note()
        => Gen.Select(Gen.Double[20, 2000], Gen.Double[1, 40], Gen.Double[10, 400], Gen.Double[0.2, 5]).Sample(
            (millimetres, grams, hertz, c) =>
            {
                var tension = Newtons(millimetres, grams, hertz);
                Assert.Equal(c * tension, Newtons(millimetres, c * grams, hertz), 1e-12 * c * tension);
                Assert.Equal(c * c * tension, Newtons(c * millimetres, grams, hertz), 1e-12 * c * c * tension);
                Assert.Equal(c * c * tension, Newtons(millimetres, grams, c * hertz), 1e-12 * c * c * tension);
            },
            threads: 1);

    [Fact]
    public void The_verdict_says_what_the_model_leaves_out()
    {
        var span = BeltSpan.Read("180 +/- 0.5 mm", "8.1 g/m u 0.2 g/m");
        Assert.Equal(
            "The span is at 9.67 N (9.19 to 10.16), from its note of 96.00 Hz (95.43 to 96.57). Ideal string: stiffness, clamped ends and a hard pluck read high; state the bending stiffness and the ends to take them in.",
            span.Tension(96.Hz.PlusMinus(0.5.Hz)).Verdict);
        Assert.Equal(
            "Tune the span to 92.6 Hz (90.3 to 94.9) for 9 N. Ideal string: stiffness, clamped ends and a hard pluck read high; state the bending stiffness and the ends to take them in. Caution: motors off and unplugged, small steps, and never above what the belt, the motor shafts and their brackets bear.",
            span.Note(9.N).Verdict);
        Assert.StartsWith("The span is at 9.67 N (no uncertainty was stated), from its note of 96 Hz. Ideal string", BeltSpan.Read("180 mm", "8.1 g/m").Tension(96.Hz).Verdict, StringComparison.Ordinal);
    }

    // On a scale of 1 g divisions a piece and the empty pan are read to 1 / sqrt 12 g each: 0.408 g; 1 % of 8.4 g/m needs 0.408 / 0.084 = 4.86 m.
    [Theory]
    [InlineData("180 +/- 0.1 mm", "8.4 g/m u 2 %", "96 Hz", "Weigh twice the length of belt in one go (about 4.9 m on a scale read to 1 g): the density carries 100 % of the uncertainty, and half of its own would bring U from 0.39 to about 0.20 N.")]
    [InlineData("180 +/- 2 mm", "8.4 g/m u 0.5 %", "96 Hz", "Measure the span to +/- 1.0 mm: the span carries 87 % of the uncertainty, and half of its own would bring U from 0.27 to about 0.16 N.")]
    [InlineData("180 +/- 0.1 mm", "8.4 g/m", "96 Hz +/- 1 Hz", "Read the note to +/- 0.50 Hz: the frequency carries 100 % of the uncertainty, and half of its own would bring U from 0.24 to about 0.12 N.")]
    [InlineData("180 mm", "8.4 g/m", "96 Hz", "State how well span, density and frequency are known, such as 180 +/- 0.5 mm: nothing was, so there is no interval.")]
    public void The_budget_begins_with_what_to_do(string length, string density, string frequency, string remedy)
    {
        var budget = BeltSpan.Read(length, density).Tension(Quantity.Frequency(frequency, "frequency")).Budget;
        Assert.Equal(remedy, budget.Remedy);
        Assert.StartsWith(remedy + "\n", budget.ToString(), StringComparison.Ordinal);
        Assert.Equal(3, budget.Lines.Count);
    }

    [Fact]
    public void More_plucks_are_asked_for_where_scatter_decides()
    {
        var tension = BeltSpan.Read("180 mm", "8.4 g/m").Tension(96.Hz.WithUncertainty(0.5.Hz, 4));
        Assert.StartsWith("Pluck 15 more times: the frequency carries 100 % of the uncertainty", tension.Budget.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void The_budget_lists_shares_with_their_size()
        => Assert.EndsWith(
            "\n 93 %  density  +0.24 N\n  6 %  frequency  +0.058 N\n  2 %  span  +0.031 N",
            BeltSpan.Read("180 +/- 0.5 mm", "8.1 g/m u 0.2 g/m").Tension(96.Hz.PlusMinus(0.5.Hz)).Budget.ToString(),
            StringComparison.Ordinal);

    [Fact]
    public void Spans_of_equal_content_are_equal()
    {
        static BeltTension Make(string density) => BeltSpan.Read("180 +/- 0.5 mm", density).Tension(Quantity.Frequency("96 Hz", "frequency"));
        Assert.Equal(Make("8.1 g/m"), Make("8.1 g/m"));
        Assert.Equal(Make("8.1 g/m").GetHashCode(), Make("8.1 g/m").GetHashCode());
        Assert.NotEqual(Make("8.1 g/m"), Make("8.2 g/m"));
    }

    [Fact]
    public void What_is_not_above_zero_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new BeltSpan(0.mm, 8.1.g_per_m));
        Assert.Throws<ArgumentOutOfRangeException>(() => new BeltSpan(180.mm, (-8.1).g_per_m));
        var span = new BeltSpan(180.mm, 8.1.g_per_m);
        Assert.Throws<ArgumentOutOfRangeException>(() => span.Tension(0.Hz));
        Assert.Throws<ArgumentOutOfRangeException>(() => span.Note((-9).N));
        Assert.Equal("density: found '0 g/m', expected a linear density above 0", Assert.Throws<InputException>(() => BeltSpan.Read("180 mm", "0 g/m")).Message);
        Assert.Equal(
            "span: found '-180 mm', expected a length above 0\ndensity: found '8.1', expected a linear density with its unit, such as 8.1 g/m",
            Assert.Throws<InputException>(() => BeltSpan.Read("-180 mm", "8.1")).Message);
    }

    private static double Newtons(double millimetres, double grams, double hertz) => new BeltSpan(millimetres.mm, grams.g_per_m).Tension(hertz.Hz).Tension.Si.Value;

    private static IEnumerable<string[]> Rows(string file) => File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Reference", "belts", file)).Skip(1).Select(l => l.Split(','));

    private static double Double(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
