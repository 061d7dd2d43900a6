using Waywright.Tests.Reference;

namespace Waywright.Tests;

public sealed class DeflectionCheckTests
{
    // Reference/belts/sdpsi_deflection_force_checks.csv (SDP/SI technical section, p. T-3): without its bending term, Y = 0, the smallest force is 4 T d / t at d = t / 64.
    [Fact]
    public void The_law_is_that_of_a_makers_deflection_forces()
    {
        var rows = ReferenceFile.Rows("belts/sdpsi_deflection_force_checks.csv").Select(r => r.Select(ReferenceFile.Number).ToArray()).ToArray();
        Assert.Equal(4, rows.Length);
        foreach (var row in rows)
        {
            var check = DeflectionCheck.Of(new BeltSpan(row[1].inch, 8.4.g_per_m), row[7].lbf, row[6].inch);
            Assert.Equal(row[0], check.Tension.Si.Value / 4.4482216152605, 1e-9);
            // The maker's own formula, (T + (t / L) Y) / 16, has the belt's stiffness on top of it.
            Assert.Equal((row[0] + (row[1] / row[2] * row[3])) / 16, row[4], 1e-9);
            if (row[3] == 0)
                Assert.Equal(row[4], row[7], 1e-9);
        }
    }

    // Mid-span deflection of a simply supported beam, F L3 / (48 EI), and with axial tension F L / (4 T) (1 - tanh(xi/2) / (xi/2)): handbook statics, forward by hand here.
    [Fact]
    public void Stiffness_carries_its_share_of_the_push()
    {
        const double tension = 10, bending = 1e-4, length = 0.18, push = 0.8;
        var half = length * Math.Sqrt(tension / bending) / 2;
        var d = push * length / (4 * tension) * (1 - (Math.Tanh(half) / half));
        var span = new BeltSpan(180.mm, 8.4.g_per_m) { BendingStiffnessNm2 = bending };
        Assert.Equal(tension, DeflectionCheck.Of(span, push.N, (1000 * d).mm).Tension.Si.Value, 1e-10);
        Assert.True(DeflectionCheck.Of(new BeltSpan(180.mm, 8.4.g_per_m), push.N, (1000 * d).mm).Tension.Si.Value > tension * 1.03);
        Assert.Throws<ArgumentException>(() => DeflectionCheck.Of(span with { BendingStiffnessNm2 = 0.1 }, push.N, 4.mm));
    }

    // The belt is longer by 2 d2 / L on a fixed span: EA 2 d2 / L2 of tension that was not there before the push.
    [Fact]
    public void Stretch_is_taken_off()
    {
        var plain = new BeltSpan(200.mm, 8.4.g_per_m);
        var stretched = plain with { StretchStiffness = 45.kN, Loop = 2.m };
        var (a, b) = (DeflectionCheck.Of(plain, 0.5.N, 2.mm), DeflectionCheck.Of(stretched, 0.5.N, 2.mm));
        Assert.Equal(12.5, a.Tension.Si.Value, 1e-9);
        Assert.Equal(45000 * 2 * 0.002 * 0.002 / (0.2 * 2), a.Tension.Si.Value - b.Tension.Si.Value, 1e-9);
    }

    [Fact]
    public void Note_and_deflection_are_held_against_each_other_with_the_span_counted_once()
    {
        var span = new BeltSpan(180.mm.WithUncertainty(0.3.mm), 8.4.g_per_m.WithUncertainty(0.1.g_per_m));
        var note = span.Tension(96.Hz.WithUncertainty(0.4.Hz));
        var check = DeflectionCheck.Of(span, 1.N.WithUncertainty(0.02.N), 4.5.mm.WithUncertainty(0.1.mm), note);
        Assert.True(check.Agrees);
        Assert.Equal(1.0 * 0.18 / (4 * 0.0045), check.Tension.Si.Value, 1e-12);
        Assert.StartsWith("By deflection the belt is at 10.00 N (", check.Verdict, StringComparison.Ordinal);
        var wrong = DeflectionCheck.Of(span, 1.N.WithUncertainty(0.02.N), 4.5.mm.WithUncertainty(0.1.mm), span.Tension(192.Hz.WithUncertainty(0.4.Hz)));
        Assert.False(wrong.Agrees);
        Assert.StartsWith("Look for the reason", wrong.Verdict, StringComparison.Ordinal);
    }

    [Fact]
    public void Bad_numbers_are_refused()
    {
        var span = new BeltSpan(180.mm, 8.4.g_per_m);
        Assert.Throws<ArgumentOutOfRangeException>(() => DeflectionCheck.Of(span, 0.N, 4.mm));
        Assert.Throws<ArgumentOutOfRangeException>(() => DeflectionCheck.Of(span, 1.N, 0.mm));
        Assert.Throws<ArgumentOutOfRangeException>(() => DeflectionCheck.Of(span, 1.N, 50.mm));
        Assert.Contains("Push less", DeflectionCheck.Of(span, 1.N, 12.mm).Verdict, StringComparison.Ordinal);
    }
}
