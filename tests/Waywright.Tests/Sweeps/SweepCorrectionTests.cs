using Waywright.Tests.Beams;

namespace Waywright.Tests;

public class SweepCorrectionTests
{
    private const double Top = 42.4;
    private const double Mass = 0.38;

    private static readonly double[] Flat = new double[Simulated.Stations.Length];

    [Fact]
    public void Nothing_is_corrected_that_the_set_up_does_not_state()
    {
        var pooled = Simulated.Sweep(Simulated.Setup(more: ",\"force_n\":1"), RailFace.Top, ("", "forward", Flat)).Pool();
        Assert.Empty(pooled.Corrections);
        Assert.Same(pooled.Profile, pooled.Uncorrected);
        Assert.Null(pooled.Hidden);
    }

    // Sources: Reference/beams, support_points_uniform_beam.csv and support_points_full_precision.json: peak to valley in w L^4 / (EI).
    [Theory]
    [InlineData("airy")]
    [InlineData("bessel")]
    [InlineData("min_sag_centre_equals_ends")]
    public void A_straight_tops_sag_on_published_points_is_taken_out(string points)
    {
        var spacing = Published.Spacing(points);
        var published = Published.Spacings.Single(row => Math.Abs(row.Figures[0] - spacing) < 1e-6).Figures[4];
        var c = 320 * (1 - spacing) / 2;
        var setup = Setup(c, 320 - c, 320);
        double weight = 9.80665 * Mass, length = 0.32;
        var unit = weight * Math.Pow(length, 4) / Top * 1e6;
        // Readings of a straight rail: only its sag, from a closed form between the supports and the table at centre and ends.
        var pooled = Simulated.Sweep(setup, RailFace.Top, ("", "forward", Flat)).Pool();
        var sag = Assert.Single(pooled.Corrections);
        Assert.Equal("self-weight", sag.Name);
        // Stations every 20 mm may miss the supports, the highest places, by 10 mm: up to 3 % of the size.
        Assert.InRange(sag.SizeUm / (published * unit), 0.9, 1 + 1e-5);
        var b = spacing;
        var o = (1 - b) / 2;
        Assert.Equal(b * b * ((5 * b * b) - (24 * o * o)) / 384 * unit, sag.HeightsUm[8], 1e-5);
        Assert.Equal(o * ((3 * o * o * o) + (6 * o * o * b) - (b * b * b)) / 24 * unit, sag.HeightsUm[0], 1e-5);
        Assert.Equal(pooled.Profile.HeightsUm, sag.HeightsUm);
        Assert.Equal(Flat, pooled.Uncorrected.HeightsUm);
    }

    // Closed forms: L^3 / (48 EI) on the ends; on supports b apart b^3 / (48 EI). MODEL of the kit: 21 um and 3.7 um for 1 N.
    [Theory]
    [InlineData(0, 350, 21.07)]
    [InlineData(77.085, 272.915, 3.69)]
    public void One_newton_bends_the_rail_where_it_presses(double first, double second, double expected)
    {
        var setup = Setup(first, second, 350, ",\"force_n\":1");
        double[] stations = [first, 175, second];
        var force = new Sweep("R", RailFace.Top, "bench", setup, [new SweepPass("1", "forward", "", stations, new double[3])], "test").Pool().Corrections.Single(c => c.Name == "measuring force");
        var b = (second - first) / 1000;
        Assert.Equal(b * b * b / (48 * Top) * 1e6, force.HeightsUm[1], 1e-9);
        Assert.Equal(expected, force.HeightsUm[1], 0.01);
        Assert.Equal([0, 0], [Math.Round(force.HeightsUm[0], 9), Math.Round(force.HeightsUm[2], 9)]);
        Assert.Contains("Caution: that is more than 2.5 um, a quarter of the smallest starting limit", force.Note);
    }

    [Fact]
    public void A_side_yields_to_the_dial_by_its_own_stiffness_and_does_not_sag()
    {
        var force = Assert.Single(Simulated.Sweep(Setup(70, 250, 320, ",\"force_n\":0.1"), RailFace.Side, ("", "forward", Flat)).Pool().Corrections);
        Assert.Equal(0.1 * Math.Pow(0.18, 3) / (48 * 81.3) * 1e6, force.HeightsUm[8], 1e-9);
        Assert.Contains("set stops there", force.Note);
        Assert.DoesNotContain("Caution", force.Note);
    }

    [Fact]
    public void A_corrected_profile_is_what_a_weightless_rail_would_show()
    {
        var setup = Setup(70, 250, 320, ",\"force_n\":0.1");
        var beam = new SupportedBeam(320, Top, 9.80665 * Mass, [70, 250]);
        var truth = Simulated.Stations.Select(x => 12 * Math.Sin(x / 50)).ToArray();
        var read = Simulated.Stations.Select((x, i) => truth[i] + beam.Under([new PointForce(x, 0.1)]).DeflectionUm(x)).ToArray();
        var pooled = Simulated.Sweep(setup, RailFace.Top, ("", "forward", read), ("", "back", read)).Pool();
        Assert.All(truth.Zip(pooled.Profile.HeightsUm), pair => Assert.Equal(pair.First, pair.Second, 1e-9));
        Assert.All(pooled.Passes, p => Assert.All(truth.Zip(p.HeightsUm), pair => Assert.Equal(pair.First, pair.Second, 1e-9)));
        Assert.Equal(0, pooled.RepeatabilityUm!.Value, 1e-9);
    }

    [Fact]
    public void A_levers_angle_shortens_its_readings_as_published()
    {
        // Source: cosine_effect.csv of a maker's manual, factors to two digits, that of 10 degrees printed as 0.98 (0.985 exactly).
        (double Angle, double Factor)[] published = [(10, 0.98), (20, 0.94), (30, 0.87), (40, 0.77), (50, 0.64), (60, 0.50)];
        var readings = Simulated.Stations.Select(x => x / 3.2).ToArray();
        foreach (var (angle, factor) in published)
        {
            var pooled = Simulated.Sweep(Simulated.Setup(more: FormattableString.Invariant($",\"lever_angle_deg\":{angle},\"lever_angle_u_deg\":2")), RailFace.Side, ("", "forward", readings)).Pool();
            Assert.Equal(factor, pooled.Profile.HeightsUm[16] / 100, 0.006);
            Assert.Equal(100 * (1 - factor), Assert.Single(pooled.Corrections).SizeUm, 0.6);
            // The change of the factor over 2 degrees, by differences.
            var change = 100 * (Math.Cos((angle + 1) * Math.PI / 180) - Math.Cos((angle - 1) * Math.PI / 180));
            Assert.Equal(change, pooled.Errors!.Shapes.Single(s => s.Input == "set-up bench: lever angle").HeightsUm[16], 0.01);
        }
    }

    [Fact]
    public void A_stiffness_that_is_known_to_ten_percent_leaves_a_tenth_of_the_bending_uncertain()
    {
        var setup = Setup(70, 250, 320, ",\"force_n\":0.1", ",\"stiffness_u_percent\":10");
        var pooled = Simulated.Sweep(setup, RailFace.Top, ("", "forward", Flat)).Pool();
        var shape = pooled.Errors!.Shapes.Single(s => s.Input == "set-up bench: bending stiffness of the rail");
        Assert.All(shape.HeightsUm.Select((h, i) => (h, i)), s => Assert.Equal(-0.1 * pooled.Corrections.Sum(c => c.HeightsUm[s.i]), s.h, 1e-12));
    }

    [Theory]
    [InlineData("on a plate", RailFace.Top, "Hidden by weight: on a plate the rail's own weight presses an arch of up to 12 um flat.")]
    [InlineData("on a plate", RailFace.Side, null)]
    [InlineData("clamped at 20 mm, 300 mm", RailFace.Side, "As clamped")]
    [InlineData("screwed to base", RailFace.Top, "As screwed down")]
    public void A_shape_that_the_holding_hides_is_called_so(string held, RailFace face, string? expected)
    {
        // The arch: 5 w L^4 / (384 EI) = 12.0 um for 320 mm; 17 um for 350 mm.
        var setup = Simulated.Setup(held: held, more: Rail(320));
        var hidden = Simulated.Sweep(setup, face, ("", "forward", Flat)).Pool().Hidden;
        if (expected is null)
            Assert.Null(hidden);
        else
            Assert.StartsWith(expected, hidden);
    }

    [Fact]
    public void A_force_that_lifts_the_rail_off_a_support_is_named_with_its_stations()
    {
        // Moments about the nearer support: F x 70 mm against the rail's weight x 90 mm, so from F = 9/7 of 0.32 m x 0.38 kg/m x 9.80665 m/s2 = 1.533 N on.
        Assert.Null(HiddenAt("1.53"));
        Assert.StartsWith("Lifted by the dial: at 0, 320 mm its force", HiddenAt("1.54"));

        static string? HiddenAt(string newtons) => Simulated.Sweep(Setup(70, 250, 320, $",\"force_n\":{newtons}"), RailFace.Top, ("", "forward", Flat)).Pool().Hidden;
    }

    [Fact]
    public void A_station_beyond_the_rails_end_is_refused()
        => Assert.Equal(
            "test: found a station of R top at 320 mm, expected stations on the rail, which is 300 mm long by its set-up 'bench'",
            Assert.Throws<InputException>(() => Simulated.Sweep(Setup(70, 250, 300), RailFace.Top, ("", "forward", Flat)).Pool()).Message);

    private static Setup Setup(double first, double second, double length, string more = "", string section = "")
        => Simulated.Setup(held: FormattableString.Invariant($"two supports at {first} mm, {second} mm"), more: more + Rail(length, section));

    private static string Rail(double length, string section = "")
        => FormattableString.Invariant($",\"rail\":{{\"length_mm\":{length},\"bending_stiffness_top_nm2\":{Top},\"bending_stiffness_side_nm2\":81.3,\"mass_kg_per_m\":{Mass}{section}}}");
}
