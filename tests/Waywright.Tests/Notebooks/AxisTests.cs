using CsCheck;
using Waywright.Notebooks;

namespace Waywright.Tests.Notebooks;

public class AxisTests
{
    [Fact]
    public void Ticks_are_round_steps_that_cover_every_value()
        => Gen.Select(Gen.Double[-1e6, 1e6], Gen.Double[1e-3, 1e6]).Sample((low, range) =>
        {
            var axis = Axis.Covering("height", "µm", [low, low + range]);
            Assert.True(axis.Low <= low + (range * 1e-6) && axis.High >= low + range - (range * 1e-6));
            Assert.InRange(axis.Ticks.Count, 3, 12);
            var digits = axis.Step / Math.Pow(10, Math.Floor(Math.Log10(axis.Step) + 1e-9));
            Assert.Contains(new[] { 1, 2, 2.5, 5 }, d => Math.Abs(d - digits) < 1e-6);
            Assert.All(axis.Ticks, t => Assert.Equal(Math.Round(t / axis.Step), t / axis.Step, 1e-6));
        });

    [Fact]
    public void An_axis_over_one_value_has_a_length()
    {
        Assert.True(Axis.Covering("height", "µm", [0]).Range > 0);
        Assert.True(Axis.Covering("height", "µm", [42, 42]).Range > 0);
    }

    [Theory]
    [InlineData(-0.04, 1, "0.0")]
    [InlineData(-2.5, 1, "−2.5")]
    [InlineData(1500, 0, "1500")]
    public void Numbers_are_written_with_a_true_minus_and_zero_without_one(double value, int decimals, string written)
        => Assert.Equal(written, Axis.Written(value, decimals));

    [Fact]
    public void A_longer_axis_keeps_its_ticks_where_the_data_is()
    {
        var axis = Axis.Covering("position", "mm", [0, 320], 6).Reaching(-16, 392, new Interval(0, 320));
        Assert.Equal([0, 50, 100, 150, 200, 250, 300], axis.Ticks);
        Assert.Equal((-16, 392), (axis.Low, axis.High));
    }

    [Theory]
    [InlineData(60, 2)]
    [InlineData(1, 3)]
    [InlineData(5000, 0)]
    public void A_figure_carries_digits_down_to_a_thousandth_of_the_axis(double range, int decimals)
        => Assert.Equal(decimals, Axis.Covering("x", "", [0, range]).Reaching(0, range).Decimals);

    [Fact]
    public void What_is_not_finite_is_refused()
    {
        Assert.Throws<ArgumentException>(() => Axis.Covering("x", "", [0, double.NaN]));
        Assert.Throws<ArgumentException>(() => Axis.Covering("x", "", []));
        Assert.Throws<ArgumentException>(() => Axis.Covering("x", "", [0, 1]).Reaching(1, 1));
    }
}
