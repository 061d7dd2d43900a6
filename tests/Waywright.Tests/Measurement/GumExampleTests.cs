namespace Waywright.Tests;

public sealed class GumExampleTests
{
    // JCGM 100:2008, H.1, table H.1 and text: end gauge of 50 mm, lengths in nm. Printed: l = 50.000838 mm, u_c = 32 nm, nu_eff = 16, t99(16) = 2.92, U99 = 93 nm.
    [Fact]
    public void The_end_gauge_comes_out_as_printed()
    {
        var standard = Uncertain.Input("calibration of the standard", 50.000623e6, 25, 18);
        var difference = 215
            + Uncertain.Input("repeated observations", 0, 5.8, 24)
            + Uncertain.Input("comparator, random", 0, 3.9, 5)
            + Uncertain.Input("comparator, systematic", 0, 6.7, 8);
        var expansion = Uncertain.Input("thermal expansion", 11.5e-6, 1.2e-6);
        var temperature = Uncertain.Input("mean temperature of the bed", -0.1, 0.2) + Uncertain.Input("cyclic variation", 0, 0.35);
        var expansionDifference = Uncertain.Input("difference in expansion", 0, 0.58e-6, 50);
        var temperatureDifference = Uncertain.Input("difference in temperature", 0, 0.029, 2);
        var length = standard + difference - (standard * ((expansionDifference * temperature) + (expansion * temperatureDifference)));

        Assert.Equal(50.000838e6, length.Value, 0.5);
        Assert.Equal(9.7, difference.StandardUncertainty, 0.05);
        Assert.Equal(25.6, difference.DegreesOfFreedom, 0.5);
        Assert.Equal(32, length.StandardUncertainty, 0.5);
        Assert.Equal(16, Math.Floor(length.DegreesOfFreedom));
        Assert.Equal(16.6, length.Contributions.Select(c => Math.Abs(c.Signed)).Order().ElementAt(^2), 0.1);
        Assert.Equal(2.92, CoverageFactor.Of(0.99, 16), 0.005);
        // Printed from the rounded 2.92 x 32 nm; unrounded degrees of freedom and u give 91.9 nm.
        Assert.Equal(93, length.Expanded(0.99).U, 1.5);
    }

    // JCGM 100:2008, H.2, tables H.2 to H.4: five simultaneous readings of V (V), I (mA), phi (rad); the printed results below from memory.
    // Mean and scatter of each are printed in table H.2: 4.9990 (0.0032), 19.6610 (0.0095), 1.04446 (0.00075), r -0.36, 0.86, -0.65.
    [Fact]
    public void Resistance_and_reactance_from_correlated_readings_come_out_as_printed()
    {
        var voltage = Mean([5.007, 4.994, 5.005, 4.990, 4.999]);
        var current = Mean([19.663, 19.639, 19.640, 19.685, 19.678]);
        var phase = Mean([1.0456, 1.0438, 1.0468, 1.0428, 1.0433]);
        Assert.Equal(0.0032, voltage.StandardUncertainty, 0.00005);
        Assert.Equal(0.0095, current.StandardUncertainty, 0.00005);
        Assert.Equal(0.00075, phase.StandardUncertainty, 0.000005);
        Assert.Equal(-0.36, voltage.CorrelationWith(current), 0.005);
        Assert.Equal(0.86, voltage.CorrelationWith(phase), 0.005);
        Assert.Equal(-0.65, current.CorrelationWith(phase), 0.005);

        var impedance = 1000 * voltage / current;
        var resistance = impedance * Uncertain.Of(p => Math.Cos(p[0]), [phase]);
        var reactance = impedance * Uncertain.Of(p => Math.Sin(p[0]), [phase]);
        Assert.Equal((127.732, 219.847, 254.260), (Math.Round(resistance.Value, 3), Math.Round(reactance.Value, 3), Math.Round(impedance.Value, 3)));
        Assert.Equal(0.071, resistance.StandardUncertainty, 0.0005);
        Assert.Equal(0.2955, reactance.StandardUncertainty, 0.001); // Printed 0.295, and 0.296 in the example's second way.
        Assert.Equal(0.236, impedance.StandardUncertainty, 0.0005);
        Assert.Equal(-0.588, resistance.CorrelationWith(reactance), 0.001);
        Assert.Equal(-0.485, resistance.CorrelationWith(impedance), 0.001);
        Assert.Equal(0.993, reactance.CorrelationWith(impedance), 0.001);
    }

    // Five independent inputs, one for each joint observation, give the means their scatter and their covariances: sum of (x_k - x)(y_k - y) / (n (n - 1)).
    private static Uncertain Mean(double[] readings)
    {
        var mean = readings.Average();
        var observations = readings.Select((_, k) => Uncertain.Input($"observation {k + 1}", 0, 1)).ToArray();
        var n = readings.Length;
        return Uncertain.Of(mean, observations, [.. readings.Select(r => (r - mean) / Math.Sqrt(n * (n - 1)))]);
    }
}
