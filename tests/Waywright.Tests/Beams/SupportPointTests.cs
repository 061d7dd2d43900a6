using MathNet.Numerics.RootFinding;

namespace Waywright.Tests.Beams;

/// <summary>A uniform bar on two points placed alike: the published spacings follow from its elastic line.</summary>
public sealed class SupportPointTests
{
    public static TheoryData<string> Names => [.. Published.Spacings.Select(row => row.Name)];

    [Fact]
    public void The_table_has_its_eight_spacings() => Assert.Equal(8, Names.Count);

    [Theory]
    [MemberData(nameof(Names))]
    public void Sags_and_slopes_are_those_of_the_table(string name)
    {
        // Source: support_points_uniform_beam.csv, spacings to 6 and figures to 7 digits; the rounded spacing moves sags by up to 2e-8.
        var row = Published.Spacings.Single(row => row.Name == name).Figures;
        var bar = new UnitBar(row[0]);
        Assert.Equal(row[1], bar.Overhang, 6e-7);
        Assert.Equal(row[2], bar.CentreSag, 2e-8);
        Assert.Equal(row[3], bar.EndSag, 2e-8);
        Assert.Equal(row[4], bar.PeakToValley, 2e-8);
        if (bar.Overhang > 0)
            Assert.Equal(row[5], Math.Abs(bar.EndSlope), 2e-7);
    }

    [Fact]
    public void Sags_follow_the_closed_forms_at_every_spacing()
    {
        // Source: Reference README: centre b^2 (5 b^2 - 24 c^2)/384, end c (3 c^3 + 6 c^2 b - b^3)/24, in w/(EI).
        for (var i = 1; i <= 1000; i++)
        {
            var b = i / 1000.0;
            var bar = new UnitBar(b);
            var c = bar.Overhang;
            Assert.Equal(b * b * ((5 * b * b) - (24 * c * c)) / 384, bar.CentreSag, 1e-16);
            Assert.Equal(c * ((3 * c * c * c) + (6 * c * c * b) - (b * b * b)) / 24, bar.EndSag, 1e-16);
        }
    }

    // Sources of the spacings: support_points_full_precision.json and, where that is less precise than it is written, the roots in rational arithmetic of
    // support_points_exact.csv; the README beside them says by how much they differ.
    [Fact]
    public void On_the_Airy_points_the_ends_stand_square() => Assert.Equal(Published.Spacing("airy"), Root(bar => bar.EndSlope), 1e-15);

    [Fact]
    public void On_the_Bessel_points_the_ends_come_least_nearer()
    {
        var bessel = Least(bar => bar.Shortening);
        Assert.Equal(Published.ExactSpacing("bessel"), bessel, 1e-14);
        Assert.Equal(Published.Spacing("bessel"), bessel, 5e-7);
    }

    [Fact]
    public void Sag_is_least_where_centre_and_ends_sag_alike()
    {
        var alike = Root(bar => bar.CentreSag - bar.EndSag);
        Assert.Equal(Published.ExactSpacing("min_sag_centre_equals_ends"), alike, 1e-14);
        Assert.Equal(Published.Spacing("min_sag_centre_equals_ends"), alike, 1e-13);
        Assert.Equal(Published.Spacing("min_peak_to_valley"), alike, 2e-8);
        var least = new UnitBar(alike).PeakToValley;
        Assert.True(least < new UnitBar(alike - 1e-5).PeakToValley && least < new UnitBar(alike + 1e-5).PeakToValley);
    }

    [Fact]
    public void The_centre_lies_level_with_the_supports_at_one_spacing()
    {
        var level = Root(bar => bar.CentreSag);
        Assert.Equal(Published.ExactSpacing("zero_central_sag"), level, 1e-15);
        Assert.Equal(Published.Spacing("zero_central_sag"), level, 1e-15);
    }

    [Fact]
    public void Centre_and_supports_bear_equal_moments_at_one_spacing()
        => Assert.Equal(Published.Spacing("equal_moment"), Root(bar => bar.CentreMoment + bar.SupportMoment), 1e-14);

    [Fact]
    public void The_root_mean_square_is_least_at_one_spacing()
    {
        var least = Least(bar => bar.Variance);
        Assert.Equal(Published.ExactSpacing("min_rms"), least, 1e-14);
        Assert.Equal(Published.Spacing("min_rms"), least, 6e-6);
    }

    [Fact]
    public void Two_ninths_from_the_ends_is_neither_Airy_nor_least_sag()
    {
        // Source: Reference README, the trap of the '5/9 L' rule.
        var rule = new UnitBar(5 / 9.0);
        Assert.Equal(1.543210e-3, Math.Abs(rule.EndSlope), 1e-9);
        Assert.True(rule.PeakToValley > new UnitBar(Published.ExactSpacing("min_sag_centre_equals_ends")).PeakToValley * 1.05);
    }

    static double Root(Func<UnitBar, double> of) => Brent.FindRoot(b => of(new UnitBar(b)), 0.51, 0.62, 1e-16, 200);

    /// <summary>Where the polynomial in the spacing that the figure is has no slope; thirteen nodes are enough for degree 12.</summary>
    static double Least(Func<UnitBar, double> of)
    {
        double[] nodes = [.. Enumerable.Range(0, 13).Select(i => 0.55 + (0.1 * Math.Cos(Math.PI * i / 12)))];
        double[] values = [.. nodes.Select(b => of(new UnitBar(b)))];
        return Brent.FindRoot(b => Polynomial.Slope(nodes, values, b), 0.52, 0.58, 1e-16, 200);
    }
}
