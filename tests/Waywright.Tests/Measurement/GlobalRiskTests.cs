namespace Waywright.Tests;

/// <summary>Source: JCGM 106:2012, 9.5; printed figures to their last digit, further digits computed with SciPy 1.10.</summary>
public sealed class GlobalRiskTests
{
    // 9.5.3.2, resistors of 1500 Ohm.
    [Fact]
    public void The_resistors_come_out_as_printed()
    {
        var risk = GlobalRisk.Of(ToleranceLimits.Between(1499.8, 1500.2), ToleranceLimits.Between(1499.82, 1500.18), 0.04, 1500, 0.12);
        Assert.Equal((0.90, 0.01, 0.07), (Math.Round(risk.Conforming, 2), Math.Round(risk.ConsumerRisk, 2), Math.Round(risk.ProducerRisk, 2)));
        Assert.Equal(0.904419, risk.Conforming, 5e-7);
        Assert.Equal(0.00987829, risk.ConsumerRisk, 5e-9);
        Assert.Equal(0.0690265, risk.ProducerRisk, 5e-8);
    }

    // 9.5.4.1, roundness of ball bearings: gamma density with shape 4 and mean 1 um, limit 2 um, u 0.25 um, acceptance limit 1.675 um (printed 1.7).
    [Fact]
    public void The_ball_bearings_come_out_as_printed()
    {
        var risk = GlobalRisk.Of(ToleranceLimits.AtMost(2), ToleranceLimits.AtMost(1.675), 0.25, x => 256 * x * x * x * Math.Exp(-4 * x) / 6, 0, 20, 0.5);
        Assert.Equal(0.042, 1 - risk.Conforming, 0.0005);
        Assert.Equal(0.0423801, 1 - risk.Conforming, 5e-8);
        Assert.Equal(0.001, risk.ConsumerRisk, 0.0005);
        Assert.Equal(0.00102654, risk.ConsumerRisk, 5e-9);
        Assert.Equal(0.075, risk.ProducerRisk, 0.0005);
        Assert.Equal(0.0746497, risk.ProducerRisk, 5e-8);
    }

    // 9.5.6.2 and 9.5.6.3: no guard band, process deviation T/6, measurement capability 2 and 10; printed about 0.1 %, 1.5 %, 0.04 %, 0.07 %.
    [Theory]
    [InlineData(2, 0.000981581, 0.0146769)]
    [InlineData(10, 0.000408131, 0.000717413)]
    public void Better_measurement_brings_smaller_risks(double capability, double consumer, double producer)
    {
        var limits = ToleranceLimits.Between(-0.5, 0.5);
        var risk = GlobalRisk.Of(limits, limits, 1 / (4 * capability), 0, 1.0 / 6);
        Assert.Equal(consumer, risk.ConsumerRisk, 5e-10);
        Assert.Equal(producer, risk.ProducerRisk, 1e-7);
    }

    // Accepting everything: all that does not conform reaches the consumer, and nothing is lost.
    [Fact]
    public void Everything_is_counted_once()
    {
        var risk = GlobalRisk.Of(ToleranceLimits.AtMost(1), ToleranceLimits.AtMost(1e6), 0.1, 0, 1);
        Assert.Equal(StudentQuantile.Normal(1), risk.Conforming, 1e-12);
        Assert.Equal(1 - risk.Conforming, risk.ConsumerRisk, 1e-12);
        Assert.Equal(0, risk.ProducerRisk, 1e-12);
    }

    [Fact]
    public void Impossible_processes_are_refused()
    {
        var limits = ToleranceLimits.AtMost(1);
        Assert.Throws<ArgumentOutOfRangeException>(() => GlobalRisk.Of(limits, limits, 0, 0, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => GlobalRisk.Of(limits, limits, 0.1, double.NaN, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => GlobalRisk.Of(limits, limits, 0.1, 0, -1));
        Assert.Throws<ArgumentException>(() => GlobalRisk.Of(limits, limits, 0.1, _ => 1, 1, 0, 1));
        Assert.Throws<ArgumentException>(() => GlobalRisk.Of(limits, limits, 1e-9, _ => 1, 0, 1, 1));
    }
}
