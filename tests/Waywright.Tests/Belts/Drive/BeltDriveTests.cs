using Waywright.Tests.Reference;

namespace Waywright.Tests;

public sealed class BeltDriveTests
{
    // Reference/belts/carriage_frequency_checks.csv: k = EA (1 / L1 + 1 / L2), f = sqrt(k / m) / 2 pi.
    [Fact]
    public void A_carriage_swings_on_its_belt_as_tabled()
    {
        var rows = ReferenceFile.Rows("belts/carriage_frequency_checks.csv").Select(r => r.Select(ReferenceFile.Number).ToArray()).ToArray();
        Assert.Equal(24, rows.Length);
        Assert.All(rows, r =>
        {
            Assert.Equal(r[5], BeltStretch.SpringNPerM(r[0].N, r[2].m, r[3].m).Value, 0.001);
            Assert.Equal(r[6], BeltStretch.CarriageFrequency(r[0].N, r[2].m, r[3].m, r[4].kg).Si.Value, 5.1e-6);
        });
    }

    // Reference/belts/thermal_tension_change.csv with the expansions of thermal_expansion.csv (Callister Table B.6 and others); steel cord as steel frame, 11.7.
    [Fact]
    public void Warmth_changes_the_tension_as_tabled()
    {
        var alphas = new Dictionary<string, double> { ["E-glass"] = BeltStretch.GlassPerK, ["aramid"] = BeltStretch.AramidPerK, ["steel"] = BeltStretch.SteelPerK, ["aluminium"] = BeltStretch.AluminiumPerK };
        var rows = ReferenceFile.Rows("belts/thermal_tension_change.csv");
        Assert.Equal(6, rows.Count);
        Assert.All(rows, r => Assert.Equal(ReferenceFile.Number(r[4]), BeltStretch.TensionChange(ReferenceFile.Number(r[2]).N, alphas[r[1]], alphas[r[0]], ReferenceFile.Number(r[3])).Si.Value, 5.1e-5));
        var printed = ReferenceFile.Rows("belts/thermal_expansion.csv").ToDictionary(r => r[0] + r[^1], r => ReferenceFile.Number(r[1]));
        Assert.Equal(printed.Single(p => p.Key.StartsWith("Aluminium", StringComparison.Ordinal)).Value * 1e-6, alphas["aluminium"], 1e-12);
        Assert.Equal(printed.Single(p => p.Key.StartsWith("Carbon steel", StringComparison.Ordinal)).Value * 1e-6, alphas["steel"], 1e-12);
        Assert.All(printed.Where(p => p.Key.StartsWith("E-glass fibre", StringComparison.Ordinal)), p => Assert.Equal(p.Value * 1e-6, alphas["E-glass"], 1e-12));
    }

    // Reference/belts/sdpsi_allowable_tension_per_inch.csv: SDP/SI D265 Table 3, printed; the width factor's exponent 1.14 is ISO 5295's, from memory.
    [Theory]
    [InlineData("2 mm", "2mm curvilinear")]
    [InlineData("3 mm", "3mm curvilinear")]
    [InlineData("5 mm", "5mm curvilinear")]
    [InlineData("MXL", "MXL")]
    [InlineData("XL, neo", "XL")]
    [InlineData("HTD 3 mm", "HTD")]
    public void Allowable_tension_is_the_printed_one_for_an_inch_and_less_than_its_share_for_narrow_belts(string kind, string profile)
    {
        var belt = BeltKind.Of(kind);
        var row = ReferenceFile.Rows("belts/sdpsi_allowable_tension_per_inch.csv").First(r => r[1] == profile && r[0] == "Neoprene");
        var printed = ReferenceFile.Number(row[4]);
        Assert.Equal(printed, belt.AllowableN(1.inch)!.Value, 1e-9);
        Assert.Equal(2 * printed, belt.AllowableN(2.inch)!.Value, 1e-9);
        Assert.Equal(printed * Math.Pow(6 / 25.4, 1.14), belt.AllowableN(6.mm)!.Value, 1e-9);
        Assert.True(belt.AllowableN(6.mm) < printed * 6 / 25.4);
    }

    // Two springs on one carriage, solved as such: x = F / (EA / L1 + EA / L2) stretches one side and slackens the other.
    [Fact]
    public void Slack_and_tight_side_follow_from_two_springs()
    {
        const double ea = 45000, f = 12, longest = 0.9, shortest = 0.1;
        var x = f / ((ea / longest) + (ea / shortest));
        var drive = BeltDrive.Check(f.N, 20.N, 1.m, 100.mm);
        // Carriage pulled so that the short side tightens, or so that it slackens: the short side takes most of the force either way.
        Assert.Equal(20 + (ea / shortest * x), drive.TightMaximum.Si.Value, 1e-9);
        Assert.Equal(20 - (ea / shortest * x), drive.SlackMinimum.Si.Value, 1e-9);
        Assert.Equal(40, drive.ShaftLoad.Si.Value, 1e-12);
        Assert.Equal(20 + (ea / shortest * x) + 20 - (ea / longest * x), drive.PeakShaftLoad.Si.Value, 1e-9);
    }

    // Forbo Siegling, Calculation methods 202: pretension at least the peak effective force; then no place of the travel goes slack.
    [Fact]
    public void A_pretension_of_the_effective_force_covers_every_place()
    {
        var force = BeltDrive.Force(0.6.kg, 8, 3.N);
        Assert.Equal(7.8, force.Si.Value, 1e-12);
        var drive = BeltDrive.Check(force, null, 1.m, 50.mm, allowableN: 20.9, shaftLimitN: 30);
        Assert.True(drive.SlackMinimum.Si.Value > 0);
        Assert.Empty(drive.Objections);
        Assert.StartsWith("Set the belt to 7.8 N", drive.Verdict, StringComparison.Ordinal);
        Assert.Contains("Caution", drive.Verdict, StringComparison.Ordinal);
        var loose = BeltDrive.Check(force, 5.N, 1.m, 50.mm);
        Assert.StartsWith("Don't set the belt to 5 N: the slack side may hang", loose.Verdict, StringComparison.Ordinal);
        Assert.Contains("Ask what the belt is allowed and what motor shaft and brackets bear", loose.Verdict, StringComparison.Ordinal);
        var tight = BeltDrive.Check(force, 18.N, 1.m, 50.mm, allowableN: 20.9, shaftLimitN: 30);
        Assert.Equal(2, tight.Objections.Count);
        Assert.Equal(0.6 * 9.80665, BeltDrive.Force(0.6.kg, 0, 0.N, 90.deg).Si.Value, 1e-12);
    }

    [Fact]
    public void Bad_numbers_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => BeltDrive.Force(0.kg, 1, 1.N));
        Assert.Throws<ArgumentOutOfRangeException>(() => BeltDrive.Force(1.kg, -1, 1.N));
        Assert.Throws<ArgumentOutOfRangeException>(() => BeltDrive.Check(0.N, null, 1.m, 100.mm));
        Assert.Throws<ArgumentOutOfRangeException>(() => BeltDrive.Check(5.N, 0.N, 1.m, 100.mm));
        Assert.Throws<ArgumentOutOfRangeException>(() => BeltDrive.Check(5.N, null, 1.m, 600.mm));
        Assert.Throws<ArgumentOutOfRangeException>(() => BeltDrive.Check(5.N, null, 1.m, 100.mm, allowableN: 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => BeltStretch.SpringNPerM(0.N, 1.m, 1.m));
        Assert.Throws<ArgumentOutOfRangeException>(() => BeltStretch.CarriageFrequency(45.kN, 0.m, 1.m, 1.kg));
    }
}
