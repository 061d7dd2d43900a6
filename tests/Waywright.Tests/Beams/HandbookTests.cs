namespace Waywright.Tests.Beams;

/// <summary>Beam tables that engineers look up; spans of 1 m, loads of 1 N or 1 N/m and EI 1 N m2, so the printed factors come out as they stand.</summary>
public sealed class HandbookTests
{
    const double UmPerM = 1e6;

    [Theory]
    [InlineData(0.5)]
    [InlineData(0.3)]
    [InlineData(0.01)]
    public void A_point_force_bends_a_beam_on_its_ends_by_P_a2_b2_over_3EIL_where_it_presses(double a)
    {
        // Source: AISC Steel Construction Manual, table 3-23, simple beam, concentrated load at any point (from memory).
        var beam = new SupportedBeam(1000, 1, 0, [0, 1000]);
        Assert.Equal(a * a * (1 - a) * (1 - a) / 3, Influence(beam, a, a), 1e-15);
        // For x < a: P b x (L^2 - b^2 - x^2)/(6 EI L).
        var (b, x) = (1 - a, a / 2);
        Assert.Equal(b * x * (1 - (b * b) - (x * x)) / 6, Influence(beam, x, a), 1e-15);
        var line = beam.Under(new PointForce(1000 * a, 1));
        Assert.Equal(b, line.ReactionsN[0], 1e-14);
        Assert.Equal(a, line.ReactionsN[1], 1e-14);
        Assert.False(line.Lifts);
    }

    [Fact]
    public void A_force_at_the_end_of_an_overhang_lifts_the_other_support()
    {
        // Source: AISC Manual, table 3-23, beam overhanging one support, load at end of overhang (formulas read in two web copies of it):
        // R1 = -P a/L, R2 = P (L + a)/L, end P a^2 (L + a)/(3 EI), upwards P a L^2/(9 sqrt(3) EI) at L/sqrt(3).
        const double a = 0.4;
        var line = new SupportedBeam(1400, 1, 0, [0, 1000]).Under(new PointForce(1400, 1));
        Assert.Equal(-a, line.ReactionsN[0], 1e-14);
        Assert.Equal(1 + a, line.ReactionsN[1], 1e-14);
        Assert.Equal(a * a * (1 + a) / 3, Down(line, 1.4), 1e-14);
        Assert.Equal(-a / (9 * Math.Sqrt(3)), Down(line, 1 / Math.Sqrt(3)), 1e-14);
        Assert.True(line.Lifts);
        Assert.Equal([0.0], line.LiftsAtMm);
    }

    [Fact]
    public void Two_equal_spans_under_their_weight_are_those_of_the_table()
    {
        // Source: M. R. Lindeburg, Civil Engineering Reference Manual, 15th ed. (as quoted on the web): R 3/8 wl, 10/8 wl, 3/8 wl, that is 3/16 and 5/8 of
        // the whole; v = w (l^3 x - 3 l x^3 + 2 x^4)/(48 EI); most 0.00541 wl^4/(EI) at 0.4215 l, cut after the last digit; other tables print wl^4/(185 EI).
        var line = new SupportedBeam(2000, 1, 1, [0, 1000, 2000]).Under();
        Assert.Equal([0.375, 1.25, 0.375], line.ReactionsN.Select(r => Math.Round(r, 14)));
        for (var i = 0; i <= 100; i++)
        {
            var x = i / 100.0;
            var expected = (x - (3 * x * x * x) + (2 * x * x * x * x)) / 48;
            Assert.Equal(expected, Down(line, x), 1e-15);
            Assert.Equal(expected, Down(line, 2 - x), 1e-15);
        }

        Assert.Equal(0.00541, Down(line, 0.4215), 0.00001);
        Assert.Equal(185, 1 / Down(line, 0.4215), 0.5);
    }

    [Theory]
    [InlineData(0.5)]
    [InlineData(0.2)]
    [InlineData(0.85)]
    public void A_force_on_one_of_two_equal_spans_lifts_the_far_end(double a)
    {
        // Source: AISC Manual, table 3-23, two equal spans, load at any point (formulas read in a web copy of it):
        // R1 = P b (4 l^2 - a (l + a))/(4 l^3), R2 = P a (2 l^2 + b (l + a))/(2 l^3), R3 = -P a b (l + a)/(4 l^3).
        var b = 1 - a;
        var line = new SupportedBeam(2000, 1, 0, [0, 1000, 2000]).Under(new PointForce(1000 * a, 1));
        Assert.Equal(b * (4 - (a * (1 + a))) / 4, line.ReactionsN[0], 1e-14);
        Assert.Equal(a * (2 + (b * (1 + a))) / 2, line.ReactionsN[1], 1e-14);
        Assert.Equal(-a * b * (1 + a) / 4, line.ReactionsN[2], 1e-14);
        Assert.Equal([2000.0], line.LiftsAtMm);
    }

    [Fact]
    public void A_force_at_the_centre_of_one_of_two_spans_is_that_of_the_table()
    {
        // Source: AISC Manual, table 3-23, two equal spans, load at the centre of one (read in a web copy): 13/32, 11/16, -3/32 P; most 0.015 P l^3/(EI),
        // at 0.480 l (from memory: the copy prints 0.408).
        var line = new SupportedBeam(2000, 1, 0, [0, 1000, 2000]).Under(new PointForce(500, 1));
        Assert.Equal([13 / 32.0, 11 / 16.0, -3 / 32.0], line.ReactionsN.Select(r => Math.Round(r, 14)));
        Assert.Equal(0.015, Down(line, 0.480), 0.0005);
        Assert.True(Down(line, 0.480) > Down(line, 0.475) && Down(line, 0.480) > Down(line, 0.485));
    }

    [Fact]
    public void Three_and_four_equal_spans_under_their_weight_are_those_of_the_table()
    {
        // Source: AISC Manual, tables of continuous beams (from memory): three spans 0.4, 1.1 wl, most 0.0069 wl^4/(EI) at 0.446 l;
        // four spans 0.393, 1.143, 0.929 wl, most 0.0065 wl^4/(EI) at 0.440 l.
        var three = new SupportedBeam(3000, 1, 1, [0, 1000, 2000, 3000]).Under();
        Assert.Equal([0.4, 1.1, 1.1, 0.4], three.ReactionsN.Select(r => Math.Round(r, 14)));
        Assert.Equal(0.0069, Down(three, 0.446), 0.00005);

        var four = new SupportedBeam(4000, 1, 1, [0, 1000, 2000, 3000, 4000]).Under();
        Assert.Equal([0.393, 1.143, 0.929, 1.143, 0.393], four.ReactionsN.Select(r => Math.Round(r, 3)));
        Assert.Equal(0.0065, Down(four, 0.440), 0.00005);
    }

    [Fact]
    public void A_middle_support_that_has_settled_takes_48EI_over_L3_times_its_settlement_less()
    {
        // Source: the mid-span stiffness of a beam on its ends, 48 EI/L^3 (any handbook; from memory). L = 2, settlement 1 mm = 0.001 m.
        var level = new SupportedBeam(2000, 1, 1, [0, 1000, 2000]).Under();
        var settled = new SupportedBeam(2000, 1, 1, [0, 1000, 2000], [0, -1000, 0]).Under();
        Assert.Equal(48 / 8.0 * 0.001, level.ReactionsN[1] - settled.ReactionsN[1], 1e-14);
        Assert.Equal(-1000, settled.DeflectionUm(1000));
    }

    [Fact]
    public void A_newton_on_a_350_mm_rail_bends_it_21_um_on_its_ends_and_3_7_um_on_Bessel_points()
    {
        // Source: the design's own figures for a 9 x 6.5 mm steel rail, EI 42.4 N m2; computed there, and L^3/(48 EI) = 21.07 by hand.
        var onEnds = new SupportedBeam(350, 42.4, 0, [0, 350]);
        var overhang = 175 * (1 - Published.ExactSpacing("bessel"));
        var onBessel = new SupportedBeam(350, 42.4, 0, [overhang, 350 - overhang]);
        Assert.Equal(21, onEnds.InfluenceUmPerN(175, 175), 0.5);
        Assert.Equal(1e6 * Math.Pow(0.35, 3) / (48 * 42.4), onEnds.InfluenceUmPerN(175, 175), 1e-12);
        Assert.Equal(3.7, onBessel.InfluenceUmPerN(175, 175), 0.05);
    }

    [Fact]
    public void A_dial_near_the_end_of_a_light_rail_tips_it_only_when_it_presses_hard()
    {
        // Statics alone: about the near support, the overhang c with force F against the weight W at mid-span.
        var rail = new SupportedBeam(350, 42.4, 3.73, [77, 273]);
        var tips = 350 * 0.00373 * (175 - 77) / 77;
        Assert.False(rail.Under(new PointForce(0, 0.99 * tips)).Lifts);
        Assert.Equal([273.0], rail.Under(new PointForce(0, 1.01 * tips)).LiftsAtMm);
    }

    static double Influence(SupportedBeam beam, double x, double at) => beam.InfluenceUmPerN(1000 * x, 1000 * at) / UmPerM;

    static double Down(BeamLine line, double x) => -line.DeflectionUm(1000 * x) / UmPerM;
}
