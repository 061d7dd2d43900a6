using Waywright.Publishing;

namespace Waywright.Tests.Publishing;

public sealed class FigureTextTests
{
    // JCGM 100:2008, 7.2.4: a mass of 100.021 47 g with U = 0.000 79 g, from u = 0.35 mg and k = 2.26.
    [Fact]
    public void The_guides_own_example_is_written_as_the_guide_writes_it()
    {
        var mass = new Figure("m", "mass", 100.02147, null, "g", 0.00035, 9, 2.26);
        Assert.Equal("100.02147", FigureText.Value(mass));
        Assert.Equal("± 0.00079 (k = 2.26)", FigureText.Uncertainty(mass));
    }

    // Two significant digits of U, the value to the same place; worked by hand.
    [Theory]
    [InlineData(14.237, 1.3, "14.2", "± 2.6 (k = 2)")]
    [InlineData(14.237, 0.0498, "14.24", "± 0.10 (k = 2)")]
    [InlineData(-0.4, 5.4, "0", "± 11 (k = 2)")]
    [InlineData(-4.26, 1.2, "−4.3", "± 2.4 (k = 2)")]
    [InlineData(12345.6, 61.7, "12350", "± 120 (k = 2)")]
    [InlineData(0, 0.00062, "0.0000", "± 0.0012 (k = 2)")]
    public void The_value_has_the_digits_that_its_uncertainty_allows(double value, double u, string shown, string uncertainty)
    {
        var figure = new Figure("a", "a", value, null, "um", u, coverageFactor: 2);
        Assert.Equal(shown, FigureText.Value(figure));
        Assert.Equal(uncertainty, FigureText.Uncertainty(figure));
    }

    [Fact]
    public void An_interval_of_its_own_stands_in_place_of_U()
    {
        var figure = new Figure("a", "a", 14.3137, null, "um", 2.6, coverageFactor: 2, low: 8.04, high: 19.2);
        Assert.Equal("14.3", FigureText.Value(figure));
        Assert.Equal("8.0 to 19.2", FigureText.Uncertainty(figure));
    }

    [Fact]
    public void A_count_is_written_whole()
    {
        Assert.Equal("13", FigureText.Value(new Figure("n", "stations", 13, null, "1")));
        Assert.Equal("", FigureText.Uncertainty(new Figure("n", "stations", 13, null, "1")));
        Assert.Equal("", FigureText.Uncertainty(new Figure("n", "stations", 13, null, "1", standardUncertainty: 0)));
    }
}
