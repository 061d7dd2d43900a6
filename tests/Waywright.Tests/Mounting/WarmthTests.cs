using Waywright.Tests.Reference;

namespace Waywright.Tests.Mounting;

public sealed class WarmthTests
{
    private static readonly ScrewPattern Nine = ScrewPattern.Every(350, 20, 5).OfCount(9);

    // 9 x 6.5 mm steel rail on a 20 mm aluminium extrusion; the extrusion's section is assumed: 180 mm2, 6800 mm4.
    private static readonly BarSection Rail = BarSection.Rectangle(206, 9, 6.5, 11.5);
    private static readonly BarSection Extrusion = new(70, 180, 6800, 10, 23.1);

    [Theory]
    [InlineData(0, 3000, 150, 200, 5, 10, 50)]
    [InlineData(1, 254, 1.27, 206.84271879, 0, 18, 55.5555555555556)]
    [InlineData(2, 10_000, 50, 200, 10, 20, 100)]
    public void Printed_bimetal_cantilevers_have_four_times_the_bow_over_the_chord(int row, double length, double layer, double modulusGPa, double first, double second, double kelvin)
    {
        // bimetal_examples.csv; a cantilever's tip kappa L2 / 2 is four times the bow kappa L2 / 8 over its chord. Inch, psi and F turned into mm, GPa and K: 1e-5/F is 18e-6/K, 100 F is 55.56 K.
        var printed = ReferenceFile.Number(ReferenceFile.Rows("warmth/bimetal_examples.csv")[row][^2]) * new[] { 1, 25.4, 1000 }[row];
        var (rail, under) = (BarSection.Rectangle(modulusGPa, 100, layer, first), BarSection.Rectangle(modulusGPa, 100, layer, second));
        var warmth = Warmth.Of(rail, under, 20, 20 + kelvin, ScrewPattern.Every(length, length / 4, 1), 1);
        Assert.Equal(printed, -4e-3 * warmth.BondedUm, 1e-9 * printed);
    }

    [Theory]
    // Wood 140 x 400 and steel 200 x 8 (a textbook's 'Example 3' as seen on the web): I 1477939200 mm4 in wood of 12.5 GPa.
    [InlineData(140, 400, 12.5, 200, 8, 200, 1477939200.0, 12.5)]
    // Hibbeler, Mechanics of Materials: wood 150 x 150 over steel 150 x 20 (from memory): I 9.357974137931034e6 mm4 in steel of 200 GPa.
    [InlineData(150, 150, 12, 150, 20, 200, 9.357974137931034e6, 200)]
    public void Fully_bonded_and_held_ends_bear_kappa_times_the_stiffness_of_a_printed_composite_section(double w1, double h1, double e1, double w2, double h2, double e2, double transformedMm4, double inGPa)
    {
        Assert.Contains(ReferenceFile.Rows("warmth/composite_section_examples.csv"), r => Math.Abs((ReferenceFile.Number(r[^1]) * (r[^3].Contains("1e-6 m4") ? 1e6 : 1)) - transformedMm4) < 1e-6 * transformedMm4);
        var (rail, under, screws) = (BarSection.Rectangle(e1, w1, h1, 5), BarSection.Rectangle(e2, w2, h2, 12), ScrewPattern.Every(1000, 100, 10));
        var kappa = 8 * -Warmth.Of(rail, under, 20, 30, screws, 1).BondedUm * 1e-6;
        var held = Warmth.Of(rail, under, 20, 30, screws, 1, endsHeld: true);
        Assert.Equal(transformedMm4 * inGPa * 1e-3, held.BondedEndMomentNm / kappa, 1e-9 * transformedMm4 * inGPa);
        Assert.Equal(0, held.BondedUm, 1e-9);
    }

    [Theory]
    [InlineData(0, 0)]
    [InlineData(1, 1)]
    [InlineData(2, 2)]
    public void A_curvature_that_grows_along_the_beam_bends_it_by_the_handbook_coefficient(int row, int power)
    {
        // thermal_gradient_bow.csv, simply supported beams; with alpha, T0, h and L 1, curvature x^power bends by the coefficient.
        var expected = ReferenceFile.Number(ReferenceFile.Rows("warmth/thermal_gradient_bow.csv")[row] is [.., var coefficient, _] ? coefficient : "");
        double[] nodes = [.. Enumerable.Range(0, 2001).Select(i => i / 2000.0)];
        var line = new WarmthCurve(nodes, [.. nodes.SkipLast(1).Zip(nodes.Skip(1), (from, to) => (Math.Pow(from, power), 2000 * (Math.Pow(to, power) - Math.Pow(from, power))))]);
        Assert.Equal(-expected, line.Farthest().Height, power < 2 ? 1e-12 : 1e-7);
    }

    [Fact]
    public void Thirty_kelvin_bend_the_rail_on_its_extrusion_by_what_the_model_says_for_a_full_bond_and_by_less_where_friction_holds()
    {
        // The design's 287 um within 10 %; its 177 um with 9 screws follow from the clamp force, which it doesn't state: 740 N here.
        var warmth = Warmth.Of(Rail, Extrusion, 20, 50, Nine, 740);
        Assert.InRange(Math.Abs(warmth.BondedUm), 0.9 * 287, 1.1 * 287);
        Assert.InRange(Math.Abs(warmth.HeldUm), 0.5 * Math.Abs(warmth.BondedUm), 0.9 * Math.Abs(warmth.BondedUm));
        Assert.True(warmth.HeldUm < 0, "a base that grows more makes the top hollow");
    }

    [Fact]
    public void No_clamp_force_leaves_it_straight_and_enough_of_it_is_a_full_bond()
    {
        Assert.Equal(0, Warmth.Of(Rail, Extrusion, 20, 50, Nine, 0).HeldUm);
        var firm = Warmth.Of(Rail, Extrusion, 20, 50, ScrewPattern.Every(350, 20, 5), 1e6);
        // Outside the end screws nothing is held: 5 mm at either end.
        Assert.Equal(firm.BondedUm, firm.HeldUm, 0.02 * Math.Abs(firm.BondedUm));
        Assert.Equal(0, Warmth.Of(Rail, Extrusion, 20, 20, Nine, 1000).BondedUm);
    }

    [Fact]
    public void Cooling_bends_the_other_way_and_the_base_outgrows_the_rail()
    {
        var warm = Warmth.Of(Rail, Extrusion, 20, 50, Nine, 740);
        var cold = Warmth.Of(Rail, Extrusion, 50, 20, Nine, 740);
        Assert.Equal(warm.HeldUm, -cold.HeldUm, 1e-9);
        // dAlpha dT L worked by hand: 11.6e-6 x 30 x 350 mm = 121.8 um.
        Assert.Equal(121.8, warm.ApartUm, 1e-9);
    }

    [Fact]
    public void Held_ends_keep_heights_and_slopes_of_both_ends_at_zero_and_leave_a_bow_where_screws_slide()
    {
        var (held, free) = (Warmth.Of(Rail, Extrusion, 20, 50, Nine, 1000, endsHeld: true), Warmth.Of(Rail, Extrusion, 20, 50, Nine, 1000));
        Assert.InRange(Math.Abs(held.HeldUm), 1, 0.5 * Math.Abs(free.HeldUm));
        // A slope of 0 at the end leaves heights that grow with the square of the distance: over 0.5 mm next to nothing.
        Assert.InRange(Math.Abs(held.Held.HeightsUm[1]), 0, 0.02 * Math.Abs(free.Held.HeightsUm[1]));
        Assert.InRange(Math.Abs(held.Held.HeightsUm[^2]), 0, 0.02 * Math.Abs(free.Held.HeightsUm[^2]));
        Assert.All(held.EndMomentsNm, m => Assert.InRange(m, 0.1, held.BondedEndMomentNm));
        Assert.Empty(free.EndMomentsNm);
        Assert.Equal(0, free.BondedEndMomentNm);
    }

    [Fact]
    public void Free_ends_carry_in_each_gap_what_the_screws_to_the_nearer_end_hold_and_no_more_than_the_bond()
    {
        // Worked by hand: 9 screws hold 150 N each; gaps carry 150, 300, 450, 600, 600, 450, 300, 150 N, the bond asks for more. v'' = N d / sum EI, N from 5 to 325 mm; the bow by sums.
        var warmth = Warmth.Of(Rail, Extrusion, 20, 50, Nine, 1000);
        Assert.InRange(warmth.BondForceN, 601, 1000);
        var (d, stiffness) = (13.25, 1e6 * (Rail.BendingStiffnessNm2 + Extrusion.BendingStiffnessNm2));
        double Sum(double to) => Enumerable.Range(0, 350_000).Select(i => (i + 0.5) / 1000).TakeWhile(s => s < to).Sum(s => Carried(s) * d / stiffness * (to - s) / 1000);
        double Carried(double s) => 150 * Math.Min(Nine.ScrewsMm.Count(x => x < s), Nine.ScrewsMm.Count(x => x > s));
        Assert.Equal(1000 * (Sum(175) - (Sum(350) / 2)), warmth.Held.HeightsUm[350], 0.001);
    }

    [Fact]
    public void A_second_rail_on_the_opposite_face_bends_it_back()
    {
        // Nothing bends, so each rail is pulled by dAlpha dT / (1/E1A1 + 2/E2A2), worked by hand from equal lengths.
        var both = Warmth.Of(Rail, Extrusion, 20, 50, Nine, 1000, hasOppositeRail: true);
        Assert.Equal((0, 0, 0), (both.HeldUm, both.BondedUm, both.StaysUm));
        Assert.Equal(11.6e-6 * 30 / ((1 / (206e3 * 58.5)) + (2 / (70e3 * 180))), both.BondForceN, 1e-6);
    }

    [Fact]
    public void Once_it_has_cooled_again_a_bow_of_the_other_sign_stays()
    {
        var warmth = Warmth.Of(Rail, Extrusion, 20, 50, Nine, 1000);
        Assert.InRange(warmth.StaysUm, 0.1 * -warmth.HeldUm, -warmth.HeldUm);
        // So firm that nothing slides: nothing stays.
        Assert.Equal(0, Warmth.Of(Rail, Extrusion, 20, 50, Nine, 1e6).StaysUm, 1e-9);
        Assert.Equal(0, Warmth.Of(Rail, Extrusion, 20, 50, Nine, 0).StaysUm);
    }

    [Fact]
    public void Temperatures_come_with_their_unit_and_both_are_looked_at()
    {
        Assert.Equal(Warmth.Of(Rail, Extrusion, 20, 50, Nine, 740), Warmth.Of(Rail, Extrusion, "68 °F", "323.15 K", Nine, 740) with { });
        Assert.Equal(35, Warmth.Of(Rail, Extrusion, "20degC", " 35 °C ", Nine, 740).ToC);
        var refused = Assert.Throws<InputException>(() => Warmth.Of(Rail, Extrusion, "20", "35 deg", Nine, 740));
        Assert.Equal("temperature when screwed down: found '20' without a unit, expected a temperature with its unit, such as 20 °C (°C, degC, °F, degF or K)", refused.Problems[0].ToString());
        Assert.Equal("temperature asked about: found '35 deg', expected a temperature with its unit, such as 20 °C (°C, degC, °F, degF or K)", refused.Problems[1].ToString());
        Assert.Contains("'350 °C', expected -50 °C to 150 °C", Assert.Throws<InputException>(() => Warmth.Of(Rail, Extrusion, "20 °C", "350 °C", Nine, 740)).Message);
    }

    [Fact]
    public void Impossible_values_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Warmth.Of(Rail, Extrusion, 20, 500, Nine, 740));
        Assert.Throws<ArgumentOutOfRangeException>(() => Warmth.Of(Rail, Extrusion, double.NaN, 50, Nine, 740));
        Assert.Throws<ArgumentOutOfRangeException>(() => Warmth.Of(Rail, Extrusion, 20, 50, Nine, -1));
        Assert.Throws<ArgumentOutOfRangeException>(() => new BarSection(70, -1, 1, 1, 23));
    }
}
