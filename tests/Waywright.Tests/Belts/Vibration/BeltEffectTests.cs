using Waywright.Tests.Reference;

namespace Waywright.Tests;

public sealed class BeltEffectTests
{
    private const double Newtons = 20;

    // A 6 mm belt of 8.4 g/m, as the reference files assume.
    private static BeltSpan Span(double metres = 0.3) => new((metres * 1000).mm, 8.4.g_per_m);

    private static double Effect(BeltTension belt, string name) => belt.Effects.Single(e => e.Name == name).OnTension!.Value;

    // Reference/belts/stiff_string_ratios.csv, columns 'T overestimate if ideal': pinned and clamped.
    [Fact]
    public void Stiffness_and_clamped_ends_over_read_the_tension_as_tabled()
    {
        foreach (var row in ReferenceFile.Rows("belts/stiff_string_ratios.csv").Where(r => r[1] == "1"))
        {
            var xi = ReferenceFile.Number(row[0]);
            var stiff = Span() with { BendingStiffnessNm2 = Newtons * 0.09 / (xi * xi) };
            var onPulleys = stiff.Note(Newtons.N);
            Assert.Equal(ReferenceFile.Number(row[7]) / 100, Effect(stiff.Tension(onPulleys.Frequency), "bending stiffness"), 2e-6);
            var clamped = stiff with { First = BeltEnd.Clamp, Second = BeltEnd.Clamp };
            var heard = clamped.Note(Newtons.N).Frequency;
            var back = clamped.Tension(heard);
            Assert.Equal(Newtons, back.Tension.Si.Value, 1e-11);
            Assert.Equal(ReferenceFile.Number(row[8]) / 100, (back.IdealN.Value / Newtons) - 1, 2e-6);
        }
    }

    // Reference/belts/amplitude_effect.csv: Duffing, span held at both ends.
    [Fact]
    public void A_hard_pluck_over_reads_as_tabled()
    {
        var rows = ReferenceFile.Rows("belts/amplitude_effect.csv");
        Assert.Equal(25, rows.Count);
        Assert.All(rows.Select(r => r.Select(ReferenceFile.Number).ToArray()), row =>
        {
            var (metres, newtons, ea, mm, kappa) = (row[0], row[1], row[2], row[3], row[4]);
            Assert.Equal(kappa, ea * Math.Pow(Math.PI * mm / 1000 / metres, 2) / (4 * newtons), 6e-7);
            Assert.Equal(row[6] / 100, BeltModel.PluckFactor(ea * Math.Pow(Math.PI * mm / 1000 / metres, 2) / (4 * newtons)) - 1, 6e-7);
            var plucked = Span(metres) with { Amplitude = mm.mm, StretchStiffness = ea.N };
            var heard = plucked.Note(newtons.N);
            Assert.Equal(row[7] / 100, (heard.IdealN.Value / newtons) - 1, 2e-6);
            Assert.Equal(newtons, plucked.Tension(heard.Frequency).Tension.Si.Value, 1e-11);
        });
    }

    // MODEL of a loop on pulleys that turn: dT = EA pi2 a2 / (4 L L_loop), 3/4 of it in the reading (Duffing, first order).
    [Fact]
    public void On_pulleys_that_turn_the_whole_loop_shares_the_stretch()
    {
        var fixedEnds = Span() with { Amplitude = 0.25.mm, StretchStiffness = 45000.N };
        var loop = fixedEnds with { Loop = 3000.mm };
        var (held, shared) = (Effect(fixedEnds.Note(20.N), "hard pluck"), Effect(loop.Note(20.N), "hard pluck"));
        Assert.Equal(0.75 * 45000 * Math.Pow(Math.PI * 0.00025, 2) / (4 * 0.3 * 0.3) / 20, held, 1e-5);
        Assert.Equal(held / 10, shared, 1e-5);
    }

    // Reference/belts/air_added_mass.csv: rho pi w2 / 4 at 1.204 kg/m3.
    [Fact]
    public void Air_reads_low_as_tabled()
    {
        var rows = ReferenceFile.Rows("belts/air_added_mass.csv");
        Assert.Equal(5, rows.Count);
        Assert.All(rows.Select(r => r.Select(ReferenceFile.Number).ToArray()), row =>
        {
            var belt = new BeltSpan(300.mm, row[2].g_per_m) { Width = row[0].mm };
            var heard = belt.Note(20.N);
            // The mass that moves along, and what leaving it out costs: T reads low by share / (1 + share), the note by half of it.
            var share = row[4] / 100;
            Assert.Equal(-share / (1 + share), Effect(belt.Tension(heard.Frequency), "air"), 1e-6);
            Assert.Equal(row[5] / 100, (heard.Frequency.Si.Value / Span().With(belt.Length, belt.Density).Note(20.N).Frequency.Si.Value) - 1, 1e-6);
        });
    }

    // A string on two supports of stiffness k moves as one longer by T / k at each (static give of a string's end, first order).
    [Fact]
    public void Soft_ends_read_low()
    {
        var soft = Span() with { SupportStiffnessNPerM = 20_000 };
        Assert.Equal(1 / Math.Pow(1 + (2 * 20.0 / 20_000 / 0.3), 2), soft.Note(20.N).IdealN.Value / 20, 1e-12);
    }

    // One-sided, 0 to sqrt(EI / T) / L of the note at each pulley: root mean square 1 / sqrt 3 of it, and twice that in the tension.
    [Fact]
    public void Teeth_on_pulleys_are_a_stated_uncertainty_of_the_model()
    {
        var belt = (Span() with { BendingStiffnessNm2 = 1e-4 }).Tension(124.Hz);
        var share = Math.Sqrt(1e-4 / belt.Tension.Si.Value) / 0.3;
        Assert.Equal(2 * 2 * share / Math.Sqrt(3), belt.Tension.Si.StandardUncertainty / belt.Tension.Si.Value, share * 0.05);
        Assert.Equal(["hold of the teeth"], belt.Budget.Lines.Where(l => l.Share > 0).Select(l => l.Input));
        Assert.Contains("teeth", belt.Budget.Remedy, StringComparison.Ordinal);
        Assert.Equal(4 * share, Effect(belt, "teeth on two pulleys"), 4 * share * 0.05);
        var one = (Span() with { BendingStiffnessNm2 = 1e-4, Second = BeltEnd.Clamp }).Tension(124.Hz);
        Assert.Equal(2 * share / Math.Sqrt(3), one.Tension.Si.StandardUncertainty / one.Tension.Si.Value, share * 0.05);
    }

    [Fact]
    public void What_is_not_stated_is_named_and_not_corrected()
    {
        var belt = Span().Tension(96.Hz);
        Assert.Equal(["bending stiffness", "held ends", "hard pluck", "air", "soft ends"], belt.Effects.Select(e => e.Name));
        Assert.All(belt.Effects, e => Assert.True(e is { OnTension: null, IsCorrected: false } && e.Why.Length > 20));
        var known = new BeltSpan(180.mm, 8.4.g_per_m) { BendingStiffnessNm2 = 4e-5, Width = 6.mm, Amplitude = 0.5.mm, StretchStiffness = 45.kN, Loop = 1.m, SupportStiffnessNPerM = 1e5 };
        Assert.Equal("Stiffness, ends, pluck and air are in it.", BeltTension.LeftOut(known));
    }

    [Fact]
    public void A_note_below_what_stiffness_alone_gives_is_refused()
    {
        var bar = Span(0.1) with { BendingStiffnessNm2 = 1e-2, First = BeltEnd.Clamp, Second = BeltEnd.Clamp };
        var problem = Assert.Throws<InputException>(() => bar.Tension(50.Hz)).Problems.Single();
        Assert.StartsWith("frequency: found 50.00 Hz, expected a note above 389 Hz, which the stated bending stiffness gives without any tension", problem.ToString(), StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => Span() with { BendingStiffnessNm2 = 0.0 });
        Assert.Throws<ArgumentException>(() => (Span() with { Amplitude = 1.mm }).Tension(96.Hz));
        Assert.Contains("offsets of -400 mm in all, expected some of the span's 300.0 mm", Assert.Throws<InputException>(() => (Span() with { First = BeltEnd.FreeForm((-400).mm) }).Tension(96.Hz)).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => Span().Tension(96.Hz, partial: 0));
    }

    // However little is known, there is a figure with its uncertainty and no number that is not finite.
    [Fact]
    public void Wide_uncertainties_still_give_a_figure()
    {
        var vague = new BeltSpan(180.mm.WithUncertainty(2.m), 8.4.g_per_m.WithUncertainty(100.g_per_m)) { BendingStiffnessNm2 = Uncertain.Input("bending stiffness", 4e-5, 1), Second = BeltEnd.Unknown, Width = 6.mm.WithUncertainty(60.mm) };
        var tension = vague.Tension(96.Hz.WithUncertainty(900.Hz)).Tension.Si;
        Assert.InRange(tension.Value, 9, 10.1);
        Assert.True(double.IsFinite(tension.StandardUncertainty) && tension.StandardUncertainty > 100);
    }

    // A span that was calculated (axes, a checked tape, two places of a scale) is an uncertain input as any other, and what two belts share of it cancels.
    [Fact]
    public void A_span_may_come_from_the_axes_from_a_checked_tape_or_from_the_carriages_scale()
    {
        var axes = 180.mm.WithUncertainty(0.3.mm).Named("axes of the bench");
        var wheel = BeltPulley.Toothed(20, 2);
        var open = BeltPath.OpenSpan(axes, wheel, wheel);
        var pair = BeltPair.Compare(new BeltSpan(open, 8.4.g_per_m).Tension(96.Hz.WithUncertainty(0.4.Hz)), new BeltSpan(BeltPath.OpenSpan(axes, wheel, wheel), 8.4.g_per_m).Tension(97.Hz.WithUncertainty(0.4.Hz)));
        Assert.Contains("axes of the bench", pair.Cancelled);

        // A tape that reads 0.5 mm in 500 too long, by three known lengths: 180.18 reads as 180 (ISO/TS 28037:2010, 11.1).
        var tape = CalibrationLine.Of("tape", [0.1, 0.3, 0.5], [0.1001, 0.3003, 0.5005], [5e-5, 5e-5, 5e-5]);
        var taped = Quantity.FromSi<UnitsNet.Length>(tape.ValueOf(Uncertain.Input("reading", 0.18018, 1e-4)), "checked tape");
        Assert.Equal(0.18, taped.Si.Value, 1e-9);
        Assert.Contains(new BeltSpan(taped, 8.4.g_per_m).Tension(96.Hz).Budget.Lines, l => l.Input.StartsWith("tape: ", StringComparison.Ordinal));

        var zero = Uncertain.Input("zero of the carriage's scale", 0.042, 5e-4);
        BeltTension At(double metres) => new BeltSpan(Quantity.FromSi<UnitsNet.Length>(metres - zero, "place less zero"), 8.4.g_per_m).Tension(96.Hz);
        Assert.InRange(At(0.222).Tension.Si.CorrelationWith(At(0.262).Tension.Si), 0.999, 1);
    }

    [Theory]
    [InlineData("pulley,clamp", "pulley", "clamp")]
    [InlineData(" clamp , clamp ", "clamp", "clamp")]
    [InlineData("free-form,pulley", "free-form", "pulley")]
    [InlineData("pulley,free-form 0.4 mm u 0.2 mm", "pulley", "free-form")]
    public void Ends_are_read_from_words(string text, string first, string second)
    {
        var ends = BeltEnd.ReadPair(text, "--ends");
        Assert.Equal((first, second), (ends.First.Kind, ends.Second.Kind));
    }

    [Theory]
    [InlineData("pulley")]
    [InlineData("pulley,clamp,clamp")]
    [InlineData("pulley,Clamp")]
    [InlineData("")]
    [InlineData("pulley,free-form 4 g")]
    public void Other_ends_are_refused(string text) => Assert.Throws<InputException>(() => BeltEnd.ReadPair(text, "--ends"));

    [Theory]
    [InlineData("40 Nmm2", 4e-5, 0)]
    [InlineData("4e-5 N m2 u 1e-5 N m2", 4e-5, 1e-5)]
    [InlineData("40 N\u00B7mm\u00B2 U 10 % k 2", 4e-5, 2e-6)]
    [InlineData("4e-5 N*m^2", 4e-5, 0)]
    [InlineData("4e-5 N.m2", 4e-5, 0)]
    public void A_bending_stiffness_is_read_as_people_write_it(string text, double value, double u)
    {
        var read = Quantity.BendingStiffnessNm2(text, "--stiffness");
        Assert.Equal(value, read.Value, 1e-18);
        Assert.Equal(u, read.StandardUncertainty, 1e-18);
    }
}
