using MathNet.Numerics.Distributions;
using Waywright.Tests.Reference;

namespace Waywright.Tests;

public sealed class BeltFitTests
{
    private const double Density = 0.0084;

    // Reference/belts/inharmonic_fit_check.csv (relation of Young, JASA 24 (1952)): f_0 80 Hz, B 0.0123 for n = 1 to 3, a little scatter above.
    [Fact]
    public void A_ladder_of_partials_gives_tension_and_stiffness()
    {
        var rows = ReferenceFile.Rows("belts/inharmonic_fit_check.csv").Select(r => r.Select(ReferenceFile.Number).ToArray()).ToArray();
        Assert.Equal(5, rows.Length);
        var span = new BeltSpan(300.mm, 8.4.g_per_m);
        var fit = PartialsFit.Of(span, [.. rows.Take(3).Select(r => ((int)r[0], r[1].Hz))]);
        Assert.Equal(4 * Density * 0.09 * 6400, fit.Tension.Si.Value, 1e-5);
        Assert.Equal(0.0123, fit.BendingStiffnessNm2.Value * Math.PI * Math.PI / (fit.Tension.Si.Value * 0.09), 1e-7);
        // Unweighted line of the file's third column through all five, by NumPy's polyfit: the weights of the fit keep it within a per cent.
        var all = PartialsFit.Of(span, [.. rows.Select(r => ((int)r[0], r[1].Hz))]);
        Assert.Equal(4 * Density * 0.09 * 6400, all.Tension.Si.Value, 0.01 * all.Tension.Si.Value);
        Assert.Equal(3, all.DegreesOfFreedom);
        Assert.True(all.IsFromScatter);
    }

    // Forward by the exact roots, back by the fit.
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void Clamped_ends_are_fitted_by_the_exact_notes(int clamps)
    {
        var span = new BeltSpan(180.mm, 8.4.g_per_m) { First = BeltEnd.Clamp, Second = clamps == 2 ? BeltEnd.Clamp : BeltEnd.Pulley };
        var fit = PartialsFit.Of(span, [.. Enumerable.Range(1, 5).Select(n => (n, TensionedBeam.FrequencyHz(n, 12, 6e-5, Density, 0.18, clamps).Hz.WithUncertainty(0.1.Hz)))]);
        Assert.Equal(12, fit.Tension.Si.Value, 1e-8);
        Assert.Equal(6e-5, fit.BendingStiffnessNm2.Value, 1e-11);
        Assert.True(fit.IsConsistent);
        Assert.True(fit.Correlation < -0.5);
        var wrong = PartialsFit.Of(span, [.. Enumerable.Range(1, 5).Select(n => (n, (TensionedBeam.FrequencyHz(n, 12, 6e-5, Density, 0.18, clamps) * (n == 3 ? 1.01 : 1)).Hz.WithUncertainty(0.1.Hz)))]);
        Assert.False(wrong.IsConsistent);
    }

    // 2,000 seeded repeats: the 95 % interval of T holds the truth in 95 % (+/- 3 standard errors of the share).
    [Fact]
    public void The_interval_of_a_ladder_holds_the_truth_as_often_as_it_says()
    {
        var random = new Random(20261125);
        var span = new BeltSpan(180.mm, 8.4.g_per_m);
        var held = 0;
        const int repeats = 2000;
        for (var r = 0; r < repeats; r++)
        {
            var fit = PartialsFit.Of(span, [.. Enumerable.Range(1, 4).Select(n => (n, (TensionedBeam.FrequencyHz(n, 12, 6e-5, Density, 0.18, 0) + Normal.Sample(random, 0, 0.3)).Hz.WithUncertainty(0.3.Hz)))]);
            var interval = fit.Tension.Si.Expanded();
            held += interval.Low <= 12 && interval.High >= 12 ? 1 : 0;
        }

        Assert.InRange(held / (double)repeats, 0.95 - 0.015, 0.95 + 0.015);
    }

    // A line by hand: T / mu = 1200, d = 3 mm; 1 / f = 2 (L + d) / sqrt(1200).
    [Fact]
    public void Notes_at_several_places_need_no_absolute_length()
    {
        (Measured<UnitsNet.Length> Length, Measured<UnitsNet.Frequency> Frequency)[] places = [.. new[] { 150.0, 200, 260, 330, 400 }.Select(l => (l.mm, (Math.Sqrt(1200) / (2 * (l + 3) / 1000)).Hz.WithUncertainty(0.05.Hz)))];
        var fit = TravelFit.Of(places, 8.4.g_per_m);
        Assert.Equal(1200, fit.TensionOverDensity.Value, 1e-8);
        Assert.Equal(0.003, fit.EndOffset.Si.Value, 1e-12);
        Assert.Equal(1200 * Density, fit.Tension!.Si.Value, 1e-10);
        Assert.False(fit.IsChangingAlongTravel);
        // The same with a scale that starts elsewhere: only d changes.
        var shifted = TravelFit.Of([.. places.Select(p => ((p.Length.Si.Value * 1000 - 120).mm, p.Frequency))], 8.4.g_per_m);
        Assert.Equal(fit.TensionOverDensity.Value, shifted.TensionOverDensity.Value, 1e-8);
        Assert.Equal(0.123, shifted.EndOffset.Si.Value, 1e-12);
        Assert.True(fit.Correlation > 0.5);
    }

    // On stiff belts over pulleys d stays and EI is taken out.
    [Fact]
    public void A_stated_stiffness_is_taken_out_of_the_line()
    {
        (Measured<UnitsNet.Length> Length, Measured<UnitsNet.Frequency> Frequency)[] places = [.. new[] { 120.0, 160, 220, 300 }.Select(l => (l.mm, TensionedBeam.FrequencyHz(1, 10, 1e-4, Density, (l + 2) / 1000, 0).Hz.WithUncertainty(0.05.Hz)))];
        var fit = TravelFit.Of(places, 8.4.g_per_m, 1e-4);
        Assert.Equal(10, fit.Tension!.Si.Value, 1e-7);
        Assert.Equal(0.002, fit.EndOffset.Si.Value, 1e-9);
        Assert.NotEqual(10, TravelFit.Of(places, 8.4.g_per_m).Tension!.Si.Value, 1e-3);
    }

    [Fact]
    public void A_tension_that_changes_along_the_travel_is_said()
    {
        (Measured<UnitsNet.Length> Length, Measured<UnitsNet.Frequency> Frequency)[] places = [.. new[] { 150.0, 200, 260, 330, 400 }.Select(l => (l.mm, (Math.Sqrt(1200 * (1 + ((l - 150) * (l - 150) / 625000))) / (2 * l / 1000)).Hz.WithUncertainty(0.1.Hz)))];
        var fit = TravelFit.Of(places, 8.4.g_per_m);
        Assert.True(fit.IsChangingAlongTravel);
        Assert.StartsWith("Look at the frame first: the tension changes along the travel", fit.Verdict, StringComparison.Ordinal);
        // Without stated uncertainties the curve alone shows it.
        Assert.True(TravelFit.Of([.. places.Select(p => (p.Length, p.Frequency.Si.Value.Hz))]).IsChangingAlongTravel);
    }

    // 2,000 seeded repeats: false alarms no more often than the two 5 % tests together allow, and intervals as often right as they say.
    [Fact]
    public void The_line_through_the_places_is_as_sure_as_it_says()
    {
        var random = new Random(7);
        var (held, alarms) = (0, 0);
        const int repeats = 2000;
        for (var r = 0; r < repeats; r++)
        {
            var fit = TravelFit.Of([.. new[] { 150.0, 200, 260, 330, 400 }.Select(l => ((l + Normal.Sample(random, 0, 0.2)).mm.WithUncertainty(0.2.mm), (Math.Sqrt(1200) / (2 * (l + 3) / 1000) + Normal.Sample(random, 0, 0.15)).Hz.WithUncertainty(0.15.Hz)))]);
            var interval = fit.TensionOverDensity.Expanded();
            held += interval.Low <= 1200 && interval.High >= 1200 ? 1 : 0;
            alarms += fit.IsChangingAlongTravel == true ? 1 : 0;
        }

        Assert.InRange(held / (double)repeats, 0.935, 0.965);
        Assert.InRange(alarms / (double)repeats, 0.04, 0.11);
    }

    [Fact]
    public void Bad_fits_are_refused()
    {
        var span = new BeltSpan(180.mm, 8.4.g_per_m);
        Assert.Throws<ArgumentException>(() => PartialsFit.Of(span, [(1, 96.Hz), (2, 193.Hz)]));
        Assert.Throws<ArgumentException>(() => PartialsFit.Of(span, [(1, 96.Hz), (1, 193.Hz), (2, 200.Hz)]));
        Assert.Throws<ArgumentException>(() => PartialsFit.Of(span, [(1, 96.Hz.WithUncertainty(1.Hz)), (2, 193.Hz), (3, 290.Hz)]));
        Assert.Throws<ArgumentException>(() => PartialsFit.Of(span, [(1, 10.Hz.WithUncertainty(1.Hz)), (2, 900.Hz.WithUncertainty(1.Hz))]));
        Assert.Throws<ArgumentException>(() => TravelFit.Of([(100.mm, 96.Hz), (200.mm, 48.Hz)]));
        Assert.Throws<ArgumentException>(() => TravelFit.Of([(100.mm, 48.Hz), (200.mm, 60.Hz), (300.mm, 96.Hz)]));
        Assert.Throws<ArgumentException>(() => TravelFit.Of([(100.mm, 96.Hz), (100.mm, 96.Hz), (100.mm, 96.Hz)]));
        Assert.Throws<ArgumentException>(() => TravelFit.Of([(100.mm, 96.Hz), (200.mm, 48.Hz), (300.mm, 32.Hz)], null, 1e-5));
    }
}
