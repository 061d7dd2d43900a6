using CsCheck;

namespace Waywright.Tests.Beams;

/// <summary>What follows from the theory of the elastic beam for any beam, on generated ones.</summary>
public sealed class BeamPropertyTests
{
    const long Turns = 20000;

    [Fact]
    public void A_finite_element_model_gives_the_same_deflections_and_reactions()
        => RandomBeams.Cases.Sample(
            (beam, forces, stations) =>
            {
                var line = beam.Under(forces);
                var (deflections, reactions) = HermiteModel.Solve(beam, forces, stations);
                Same(deflections, line.DeflectionsUm(stations), 1e-13 * RandomBeams.ScaleUm(line));
                Same(reactions, line.ReactionsN, 1e-12 * Newtons(line));
            },
            iter: 4000);

    [Fact]
    public void A_force_here_moves_there_as_a_force_there_moves_here()
        => RandomBeams.Cases.Sample(
            (beam, _, stations) =>
            {
                // Maxwell's theorem; and G(x, x) bounds them: |G(x, y)|^2 <= G(x, x) G(y, y).
                var (x, y) = (stations[0], stations[1]);
                var there = beam.InfluenceUmPerN(x, y);
                var (atX, atY) = (beam.InfluenceUmPerN(x, x), beam.InfluenceUmPerN(y, y));
                var roundOff = 1e-13 * Compliance(beam);
                Assert.Equal(there, beam.InfluenceUmPerN(y, x), roundOff);
                Assert.True(atX >= -roundOff && atY >= -roundOff);
                Assert.True(Math.Abs(there) <= Math.Sqrt(Math.Max(0, atX * atY)) + roundOff);
            },
            iter: Turns);

    [Fact]
    public void Weight_heights_and_forces_add_up()
        => RandomBeams.Cases.Sample(
            (beam, forces, stations) =>
            {
                var whole = beam.Under(forces);
                var light = new SupportedBeam(beam.LengthMm, beam.BendingStiffnessNm2, 0, beam.SupportsMm, beam.SupportHeightsUm).Under();
                var sag = new SupportedBeam(beam.LengthMm, beam.BendingStiffnessNm2, beam.WeightNPerM, beam.SupportsMm).Under();
                var sum = stations.Select(x => light.DeflectionUm(x) + sag.DeflectionUm(x) - forces.Sum(f => f.DownwardN * beam.InfluenceUmPerN(x, f.PositionMm)));
                Same(sum, whole.DeflectionsUm(stations), 1e-12 * RandomBeams.ScaleUm(whole));
            },
            iter: Turns);

    [Fact]
    public void Supports_bear_all_loads_and_all_their_moments()
        => RandomBeams.Cases.Sample(
            (beam, forces, _) =>
            {
                var line = beam.Under(forces);
                var weight = beam.WeightNPerM * beam.LengthMm / 1000;
                var roundOff = 1e-12 * Newtons(line);
                Assert.Equal(weight + forces.Sum(f => f.DownwardN), line.ReactionsN.Sum(), roundOff);
                var moments = line.ReactionsN.Zip(beam.SupportsMm, (r, x) => r * x).Sum();
                Assert.Equal((weight * beam.LengthMm / 2) + forces.Sum(f => f.DownwardN * f.PositionMm), moments, roundOff * beam.LengthMm);
            },
            iter: Turns);

    [Fact]
    public void At_a_support_the_beam_lies_as_high_as_the_support()
        => RandomBeams.Cases.Sample(
            (beam, forces, _) => Same(beam.SupportHeightsUm, beam.Under(forces).DeflectionsUm(beam.SupportsMm), 1e-12),
            iter: Turns);

    [Fact]
    public void Seen_from_the_other_end_the_line_is_mirrored()
        => RandomBeams.Cases.Sample(
            (beam, forces, stations) =>
            {
                double Mirrored(double x) => beam.LengthMm - x;
                var line = beam.Under(forces);
                var turned = new SupportedBeam(beam.LengthMm, beam.BendingStiffnessNm2, beam.WeightNPerM, [.. beam.SupportsMm.Select(Mirrored)], beam.SupportHeightsUm)
                    .Under([.. forces.Select(f => f with { PositionMm = Mirrored(f.PositionMm) })]);
                Same(line.DeflectionsUm(stations), turned.DeflectionsUm([.. stations.Select(Mirrored)]), 1e-11 * RandomBeams.ScaleUm(line));
                Same(line.ReactionsN, turned.ReactionsN.Reverse(), 1e-10 * Newtons(line));
            },
            iter: Turns);

    [Fact]
    public void Lengths_enter_as_the_third_and_fourth_power_and_stiffness_divides()
        => Gen.Select(RandomBeams.Cases, Gen.Double[0.3, 3], Gen.Double[0.1, 10]).Sample(
            (@case, longer, stiffer) =>
            {
                var (beam, _, stations) = @case;
                var small = new SupportedBeam(beam.LengthMm, beam.BendingStiffnessNm2, beam.WeightNPerM, beam.SupportsMm);
                var large = new SupportedBeam(longer * beam.LengthMm, stiffer * beam.BendingStiffnessNm2, beam.WeightNPerM, [.. beam.SupportsMm.Select(x => longer * x)]);
                var (x, y) = (stations[0], stations[1]);
                var factor = Math.Pow(longer, 3) / stiffer;
                Assert.Equal(factor * small.InfluenceUmPerN(x, y), large.InfluenceUmPerN(longer * x, longer * y), 1e-12 * factor * Compliance(small));
                Assert.Equal(factor * longer * small.Under().DeflectionUm(x), large.Under().DeflectionUm(longer * x), 1e-12 * factor * longer * RandomBeams.ScaleUm(small.Under()));
            },
            iter: Turns);

    [Fact]
    public void One_more_support_never_makes_a_beam_yield_more()
        => RandomBeams.Cases.Where((beam, _, stations) => !beam.SupportsMm.Contains(stations[1])).Sample(
            (beam, _, stations) =>
            {
                // Rayleigh's theorem on constraints.
                var x = stations[0];
                var stiffer = new SupportedBeam(beam.LengthMm, beam.BendingStiffnessNm2, 0, [.. beam.SupportsMm, stations[1]]);
                Assert.True(stiffer.InfluenceUmPerN(x, x) <= beam.InfluenceUmPerN(x, x) + (1e-13 * Compliance(stiffer)));
            },
            iter: Turns);

    [Fact]
    public void Between_screws_a_light_beam_is_the_natural_cubic_spline()
        => RandomBeams.Cases.Where((beam, _, _) => beam.SupportsMm.Count > 2).Sample(
            (beam, _, stations) =>
            {
                // Source: MathNet.Numerics' natural cubic spline; beyond the end screws a beam without load is straight.
                var line = new SupportedBeam(beam.LengthMm, beam.BendingStiffnessNm2, 0, beam.SupportsMm, beam.SupportHeightsUm).Under();
                var spline = MathNet.Numerics.Interpolation.CubicSpline.InterpolateNatural(beam.SupportsMm, beam.SupportHeightsUm);
                double Expected(double x)
                {
                    var inside = Math.Clamp(x, beam.SupportsMm[0], beam.SupportsMm[^1]);
                    return spline.Interpolate(inside) + ((x - inside) * spline.Differentiate(inside));
                }

                Same(stations.Select(Expected), line.DeflectionsUm(stations), 1e-11 * RandomBeams.ScaleUm(line));
            },
            iter: Turns);

    [Fact]
    public void The_order_in_which_supports_are_given_changes_no_bit()
        => RandomBeams.Cases.Sample(
            (beam, forces, _) =>
            {
                var turned = new SupportedBeam(beam.LengthMm, beam.BendingStiffnessNm2, beam.WeightNPerM, [.. beam.SupportsMm.Reverse()], [.. beam.SupportHeightsUm.Reverse()]);
                Assert.Equal(beam, turned);
                Assert.Equal(beam.Under(forces), turned.Under(forces));
            },
            iter: Turns);

    /// <summary>um/N of the whole length as a cantilever: what influences of a beam on supports are small against.</summary>
    static double Compliance(SupportedBeam beam)
        => 1e6 * Math.Pow(beam.LengthMm / 1000, 3) / beam.BendingStiffnessNm2 * beam.LengthMm / RandomBeams.ClosestMm(beam);

    static double Newtons(BeamLine line) => Math.Max(1e-3, line.ReactionsN.Sum(Math.Abs) + line.Forces.Sum(f => Math.Abs(f.DownwardN)));

    static void Same(IEnumerable<double> expected, IEnumerable<double> found, double tolerance)
    {
        foreach (var (e, f) in expected.Zip(found, (e, f) => (e, f)))
            Assert.Equal(e, f, tolerance);
    }
}
