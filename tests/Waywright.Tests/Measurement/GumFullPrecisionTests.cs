using System.Text.Json;

namespace Waywright.Tests;

public sealed class GumFullPrecisionTests
{
    // JCGM 100:2008, H.1 and table H.1, with the unrounded components behind the printed ones: 13 / sqrt 5, 10 / 2.57, 20 / 3 nm, limits 1e-6 / degC and 0.05 degC of rectangles.
    // Expected values computed from these; printed u_c 32 nm, nu_eff 16, nu(d) 25.6, U99 93 nm.
    [Fact]
    public void The_end_gauge_comes_out_to_twelve_digits()
    {
        var expected = JsonDocument.Parse(string.Join('\n', UncertaintyFile.Lines("uncertainty", "gum_H1_full_precision.json"))).RootElement;
        double Of(string name) => expected.GetProperty(name).GetDouble();
        var difference = 215
            + Uncertain.Input("repeated observations", 0, 13 / Math.Sqrt(5), 24)
            + Uncertain.Input("comparator, random", 0, 10 / 2.57, 5)
            + Uncertain.Input("comparator, systematic", 0, 20.0 / 3, 8);
        // Table H.1 takes 50 mm for the length that expands.
        var standard = 50_000_000 + Uncertain.Input("calibration of the standard", 623, 25, 18);
        var expansion = Uncertain.Input("thermal expansion", 11.5e-6, 2e-6 / Math.Sqrt(3));
        var temperature = Uncertain.Input("mean temperature of the bed", -0.1, 0.2) + Uncertain.Input("cyclic variation", 0, 0.5 / Math.Sqrt(2));
        var expansionDifference = Uncertain.Input("difference in expansion", 0, 1e-6 / Math.Sqrt(3), 50);
        var temperatureDifference = Uncertain.Input("difference in temperature", 0, 0.05 / Math.Sqrt(3), 2);
        var length = standard + difference - (50_000_000 * ((expansionDifference * temperature) + (expansion * temperatureDifference)));

        Assert.Equal(Of("uc_unrounded_nm"), length.StandardUncertainty, 1e-11);
        Assert.Equal(Of("nu_eff_unrounded"), length.DegreesOfFreedom, 1e-11);
        Assert.Equal(Of("nu_eff_d_unrounded"), difference.DegreesOfFreedom, 1e-11);
        Assert.Equal(Of("l_mm"), length.Value * 1e-6, 5e-7);
    }
}
