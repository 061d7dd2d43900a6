using System.Text;
using Waywright.Notebooks;

namespace Waywright.Tests;

/// <summary>What a cell shows of belts, at its largest: small enough for a page, with the action first, in every culture the same.</summary>
public abstract class BeltViewTests
{
    // Invented readings.
    private static readonly BeltSpan Span = new(180.mm.WithUncertainty(0.3.mm), 8.4.g_per_m.WithUncertainty(0.1.g_per_m)) { BendingStiffnessNm2 = Uncertain.Input("bending stiffness", 4e-5, 1e-5), Width = 6.mm, Second = BeltEnd.Clamp };

    public sealed class Invariant : BeltViewTests;

    [UnderCulture("fa-IR")]
    public sealed class Persian : BeltViewTests;

    private static BeltTension Belt(double hertz) => Span.Tension(hertz.Hz.WithUncertainty(0.4.Hz));

    private static (object Result, string Begins)[] Results =>
    [
        (Belt(96), "The span is at 9.8"),
        (Span.Note(10.N), "Tune the span to 96.8"),
        (BeltPair.Compare(Belt(96), Belt(104), "left", "right"), "Tighten left by about 1.7"),
        (BeltPitch.Identify(50, 100.02.mm.PlusMinus(0.05.mm), 0.75.mm, "round"), "Take the belt as 2 mm"),
        (BeltDensity.Weigh([(42.g, 5.m), (25.g, 3.m)], 1.g, 100.g, 99.g), "The belt weighs 8.4"),
        (BeltDensity.Hang([(2.kg, 600.mm, 41.Hz), (0.5.kg, 120.mm, 108.Hz)]), "The belt weighs "),
        (PartialsFit.Of(Span, [.. Enumerable.Range(1, 5).Select(n => (n, TensionedBeam.FrequencyHz(n, 12, 6e-5, 0.0084, 0.18, 1).Hz.WithUncertainty(0.1.Hz)))]), "The span is at 12.0"),
        (TravelFit.Of([.. new[] { 150.0, 200, 260, 330, 400 }.Select(l => (l.mm, (Math.Sqrt(1200) / (2 * (l + 3) / 1000)).Hz.WithUncertainty(0.05.Hz)))], 8.4.g_per_m), "The belt is at 10.08"),
        (ScrewGain.Measure(Belt(96), Belt(100), 0.5, 0.1.N), "A turn gives 1.70"),
        (ScrewGain.Measure(Belt(96), Belt(100), 0.5, 0.1.N).Match(BeltPair.Compare(Belt(96), Belt(104), "left", "right")), "Tighten left by 1.0"),
        (DeflectionCheck.Of(Span, 1.N.WithUncertainty(0.02.N), 4.4.mm.WithUncertainty(0.1.mm), Belt(96)), "By deflection the belt is at "),
        (BeltDrive.Check(BeltDrive.Force(0.6.kg, 8, 3.N), 10.N, 900.mm, 80.mm, BeltKind.Of("2 mm").AllowableN(6.mm), 30), "Set the belt to 10 N"),
        (BeltPath.Around(BeltPulley.Toothed(20, 2).At(0, 0), BeltPulley.Smooth(12, 0.9).At(60, 2, isOutside: true), BeltPulley.Toothed(20, 2).At(120, 0), BeltPulley.Toothed(30, 2).At(60, 80)), "The belt is "),
        (BeltKind.Of("2 mm"), "2 mm curvilinear"),
        (PluckTake.Analyse(WavReader.Read(DemoTakes.All[0].Wav, "left.wav")), "The span sounds 95."),
        (PluckTake.Analyse(WavReader.Read(DemoTakes.All[2].Wav, "left-finger.wav")), "Not usable: "),
        (PluckNote.Of([.. DemoTakes.All.Take(1).Select(t => PluckTake.Analyse(WavReader.Read(t.Wav, t.File)))]), "The span sounds 95."),
    ];

    [Fact]
    public void Every_belt_result_says_what_to_do_first_in_text_and_in_html_of_under_30_kB()
        => Assert.All(Results, shown =>
        {
            var (text, html) = (Views.Text(shown.Result), Waywright.Publishing.CellOutputs.WithoutLive(Views.Html(shown.Result)));
            Assert.StartsWith(shown.Begins, text, StringComparison.Ordinal);
            Assert.Contains(System.Net.WebUtility.HtmlEncode(shown.Begins), html, StringComparison.Ordinal);
            Assert.InRange(Encoding.UTF8.GetByteCount(html), 200, 30_000);
            Assert.DoesNotContain("NaN", text + html, StringComparison.Ordinal);
            Assert.DoesNotContain("\u06F0", text, StringComparison.Ordinal);
        });
}
