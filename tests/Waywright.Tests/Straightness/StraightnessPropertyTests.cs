using CsCheck;

namespace Waywright.Tests.Straightness;

/// <summary>What follows from the definition of the lines for any profile, on generated ones.</summary>
public sealed class StraightnessPropertyTests
{
    private const long Turns = 2000;

    // A step between stations of at least 1 mm keeps the profile's conditioning, and so the tolerance, known.
    private static readonly Gen<Profile> Profiles =
        from steps in Gen.Double[1, 30].Array[1, 60]
        from heights in Gen.OneOf(Gen.Double[-50, 50], Gen.Int[-5, 5].Select(z => (double)z)).Array[steps.Length + 1]
        select new Profile(Positions(steps), heights);

    [Fact]
    public void A_line_added_changes_nothing_but_the_slope()
        => Gen.Select(Profiles, Gen.Double[-100, 100], Gen.Double[-1, 1]).Sample(
            (profile, height, slope) =>
            {
                var before = StraightnessFigures.Of(profile);
                var after = StraightnessFigures.Of(Mapped(profile, (x, z) => z + height + (slope * x)));
                AssertSame(before.EndPoints, after.EndPoints, slope);
                AssertSame(before.LeastSquares, after.LeastSquares, slope);
                AssertSame(before.MinimumZone.Line, after.MinimumZone.Line, slope);
            },
            iter: Turns);

    [Fact]
    public void Seen_from_the_other_end_the_figures_are_the_same_and_the_contacts_mirrored()
        => Profiles.Sample(
            profile =>
            {
                var before = StraightnessFigures.Of(profile);
                var after = StraightnessFigures.Of(profile.Reversed());
                Close(before.LeastSquares.STRpUm, after.LeastSquares.STRpUm);
                Close(before.LeastSquares.STRqUm, after.LeastSquares.STRqUm);
                Close(before.EndPoints.STRvUm, after.EndPoints.STRvUm);
                Close(before.MinimumZone.Line.STRtUm, after.MinimumZone.Line.STRtUm);
                Close(before.MinimumZone.Line.SlopeUmPerM, -after.MinimumZone.Line.SlopeUmPerM, 1e-6);
                var mirrored = after.MinimumZone.Contacts.Select(c => (profile.Count - 1 - c.Station, c.Side)).Order();
                Assert.Equal(before.MinimumZone.Contacts.Select(c => (c.Station, c.Side)).Order(), mirrored);
            },
            iter: Turns);

    [Fact]
    public void Scaled_heights_scale_the_figures_and_a_change_of_sign_swaps_peak_and_valley()
        => Gen.Select(Profiles, Gen.Double[0.001, 1000]).Sample(
            (profile, factor) =>
            {
                var before = StraightnessFigures.Of(profile).LeastSquares;
                var zone = StraightnessFigures.Of(profile).MinimumZone.Line;
                var after = StraightnessFigures.Of(Mapped(profile, (_, z) => -factor * z));
                Close(factor * before.STRpUm, after.LeastSquares.STRvUm, 1e-11 * factor);
                Close(factor * before.STRvUm, after.LeastSquares.STRpUm, 1e-11 * factor);
                Close(factor * before.STRqUm, after.LeastSquares.STRqUm, 1e-11 * factor);
                Close(factor * zone.STRtUm, after.MinimumZone.Line.STRtUm, 1e-11 * factor);
            },
            iter: Turns);

    [Fact]
    public void The_order_in_which_stations_are_given_changes_no_bit()
        => (from profile in RepeatedProfiles
            from order in Gen.Shuffle(Enumerable.Range(0, profile.Count).ToArray())
            select (profile, order)).Sample(
            (profile, order) => Assert.Equal(
                StraightnessFigures.Of(profile),
                StraightnessFigures.Of(new Profile([.. order.Select(i => profile.PositionsMm[i])], [.. order.Select(i => profile.HeightsUm[i])]))),
            iter: Turns);

    [Fact]
    public void No_line_gives_less_than_the_minimum_zone()
        => Gen.Select(RepeatedProfiles, Gen.Double[-5, 5]).Sample(
            (profile, slope) =>
            {
                var figures = StraightnessFigures.Of(profile);
                var least = figures.MinimumZone.Line.STRtUm - 1e-11;
                Assert.True(figures.LeastSquares.STRtUm >= least);
                Assert.True(figures.EndPoints.STRtUm >= least);
                var heights = profile.PositionsMm.Zip(profile.HeightsUm, (x, z) => z - (slope * x)).ToArray();
                Assert.True(heights.Max() - heights.Min() >= least);
            },
            iter: Turns);

    [Fact]
    public void The_zone_holds_all_stations_and_its_contacts_are_on_its_boundaries()
        => RepeatedProfiles.Sample(
            profile =>
            {
                var zone = StraightnessFigures.Of(profile).MinimumZone;
                var half = zone.Line.STRtUm / 2;
                for (var i = 0; i < profile.Count; i++)
                    Assert.InRange(profile.HeightsUm[i] - zone.Line.HeightUm(profile.PositionsMm[i]), -half - 1e-11, half + 1e-11);
                foreach (var contact in zone.Contacts)
                {
                    var height = profile.HeightsUm[contact.Station] - zone.Line.HeightUm(contact.PositionMm);
                    Close(contact.Side == ZoneSide.Upper ? half : -half, height, 1e-7);
                }
            },
            iter: Turns);

    [Fact]
    public void Three_contacts_alternate_between_the_sides_unless_the_width_is_zero()
        => Profiles.Where(p => p.Count > 2).Sample(
            profile =>
            {
                var zone = StraightnessFigures.Of(profile).MinimumZone;
                if (zone.Line.STRtUm < 1e-9)
                    return;
                var changes = zone.Contacts.Zip(zone.Contacts.Skip(1), (a, b) => a.Side != b.Side).Count(changed => changed);
                Assert.True(changes >= 2, string.Join(", ", zone.Contacts));
            },
            iter: Turns);

    [Fact]
    public void Straightness_of_a_sum_is_at_most_the_sum()
        => (from profile in Profiles
            from other in Gen.Double[-50, 50].Array[profile.Count]
            select (profile, other)).Sample(
            (profile, other) =>
            {
                var first = StraightnessFigures.Of(profile);
                var second = StraightnessFigures.Of(new Profile(profile.PositionsMm, other));
                var both = StraightnessFigures.Of(new Profile(profile.PositionsMm, [.. profile.HeightsUm.Zip(other, (a, b) => a + b)]));
                Assert.True(both.MinimumZone.Line.STRtUm <= first.MinimumZone.Line.STRtUm + second.MinimumZone.Line.STRtUm + 1e-11);
                Assert.True(both.LeastSquares.STRtUm <= first.LeastSquares.STRtUm + second.LeastSquares.STRtUm + 1e-11);
                Assert.True(both.EndPoints.STRtUm <= first.EndPoints.STRtUm + second.EndPoints.STRtUm + 1e-11);
            },
            iter: Turns);

    private static Gen<Profile> RepeatedProfiles { get; } =
        from positions in Gen.Int[0, 30].Array[1, 60]
        from heights in Gen.OneOf(Gen.Double[-50, 50], Gen.Int[-5, 5].Select(z => (double)z)).Array[positions.Length + 1]
        select new Profile([-10, .. positions.Select(p => 10.0 * p)], heights);

    private static double[] Positions(double[] steps)
    {
        var positions = new double[steps.Length + 1];
        for (var i = 0; i < steps.Length; i++)
            positions[i + 1] = positions[i] + steps[i];
        return positions;
    }

    private static Profile Mapped(Profile profile, Func<double, double, double> height)
        => new(profile.PositionsMm, [.. profile.PositionsMm.Zip(profile.HeightsUm, height)]);

    private static void AssertSame(ReferenceLine before, ReferenceLine after, double slope)
    {
        // The sum is rounded to some 1e-13 um; a slope between neighbours of 1 mm passes that on to the far end.
        const double rounding = 1e-9;
        Close(before.STRtUm, after.STRtUm, rounding);
        Close(before.STRpUm, after.STRpUm, rounding);
        Close(before.STRvUm, after.STRvUm, rounding);
        Close(before.STRqUm, after.STRqUm, rounding);
        Close(before.SlopeUmPerM + (1000 * slope), after.SlopeUmPerM, 1e-6);
    }

    private static void Close(double expected, double found, double tolerance = 1e-11)
        => Assert.True(Math.Abs(expected - found) <= tolerance, $"{expected:R} and {found:R}");
}
