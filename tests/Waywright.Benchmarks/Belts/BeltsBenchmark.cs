using System.Globalization;

namespace Waywright.Benchmarks;

/// <summary>A clamped note of a tensioned beam, and what a tension with all its terms costs.</summary>
internal sealed class BeltsBenchmark : Benchmark
{
    private const int Rounds = 101;

    private double _kept;

    public override string Name => "belts";

    public override string Title => "A note between clamped ends";

    public override Findings Run()
    {
        (int N, double Xi)[] cases = [.. from xi in new[] { 0.5, 3.0, 8, 20, 50, 120, 500, 3000 } from n in new[] { 1, 2, 3, 6 } select (n, xi)];
        var span = new BeltSpan(180.mm.WithUncertainty(0.3.mm), 8.4.g_per_m.WithUncertainty(0.1.g_per_m)) { BendingStiffnessNm2 = Uncertain.Input("bending stiffness", 4e-5, 1e-5), Second = BeltEnd.Clamp, Width = 6.mm };
        var note = 96.Hz.WithUncertainty(0.4.Hz);
        var file = Path.GetTempFileName();
        try
        {
            File.WriteAllLines(file, cases.Select(c => string.Create(CultureInfo.InvariantCulture, $"{c.N},{c.Xi:R}")));
            using var peer = new PythonPeer("Belts/belts_peer.py", file);
            var (ours, theirs) = (cases.Sum(c => TensionedBeam.Ratio(c.N, c.Xi, 2)), peer.Answer("brentq"));
            if (Math.Abs(ours - theirs) > 1e-12 * theirs)
                throw new InvalidOperationException($"The routes disagree, so their times mean nothing: {ours:R} and, by SciPy, {theirs:R}.");
            Contender[] contenders =
            [
                Contender.Here("clamped note", "TensionedBeam.Ratio with both ends clamped: the exact root to rounding.", count =>
                {
                    for (var i = 0; i < count; i++)
                        _kept += TensionedBeam.Ratio(cases[i % cases.Length].N, cases[i % cases.Length].Xi, 2);
                }),
                Contender.Here("BeltSpan.Tension", "tension of a note between a pulley and a clamp with stiffness, air and teeth, with its uncertainty and budget: sensitivities to seven inputs by solving again.", count =>
                {
                    for (var i = 0; i < count; i++)
                        _kept += span.Tension(note).Tension.Si.Value;
                }),
                peer.Contender("brentq", "SciPy brentq", "scipy.optimize.brentq over the bracket of that note, to 1e-12."),
            ];
            var timings = Interleaved.Measure(contenders, Rounds);
            return new Findings(
                [
                    "32 cases, the first, second, third and sixth note from a nearly plain beam (xi 0.5) to a nearly limp string (xi 3,000), in turn. Both routes give the same sum (checked in the run to 1e-12) before any is timed.",
                    string.Create(CultureInfo.InvariantCulture, $"{Rounds} rounds; in each, every contender has a block of about {Interleaved.BlockSeconds} s, one after the other in one run. A ratio is the median of the ratios within rounds. Wanted of a clamped note: at most 2 us."),
                ],
                timings,
                [new("SciPy brentq", "clamped note", "no target"), new("BeltSpan.Tension", "clamped note", "no target")],
                [peer.Ask("versions") + " (Debian)"]);
        }
        finally
        {
            File.Delete(file);
        }
    }
}
