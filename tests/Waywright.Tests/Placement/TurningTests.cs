using CsCheck;
using Waywright.Placement;

namespace Waywright.Tests;

public class TurningTests
{
    // Stations of any place and number: turning and matching take no help from a symmetric grid.
    private static readonly Gen<Profile> Profiles = Gen.Select(Gen.Double[0, 320], Gen.Double[-50, 50]).Array[4, 20].Where(s => s.Select(p => Math.Round(p.Item1, 3)).Distinct().Count() == s.Length)
        .Select(s => new Profile([0, .. s.Select(p => Math.Round(p.Item1, 3)), 320], [1, .. s.Select(p => p.Item2), 2]));

    private static Profile Physically(Profile face, RailFace kind)
        => new([.. face.PositionsMm.Select(x => 320 - x)], [.. face.HeightsUm.Select(z => kind == RailFace.Side ? -z : z)]);

    [Theory]
    [InlineData(RailFace.Side)]
    [InlineData(RailFace.Top)]
    public void A_rail_and_its_mirror_image_match_when_one_is_turned(RailFace face)
        => Profiles.Sample(f => Shape.MismatchUm(Shape.Of(f), Shape.Of(Physically(f, face)).Turned(face, 320)) < 1e-6);

    [Theory]
    [InlineData(RailFace.Side)]
    [InlineData(RailFace.Top)]
    public void Turning_twice_changes_nothing(RailFace face)
        => Profiles.Sample(f => Shape.MismatchUm(Shape.Of(f), Shape.Of(f).Turned(face, 320).Turned(face, 320)) < 1e-6);

    [Theory]
    [InlineData(RailFace.Side)]
    [InlineData(RailFace.Top)]
    public void Turning_both_rails_of_a_pair_leaves_their_mismatch(RailFace face)
        => Gen.Select(Profiles, Profiles).Sample((f, g) =>
        {
            var (a, b) = (Shape.Of(f), Shape.Of(g));
            return Math.Abs(Shape.MismatchUm(a, b) - Shape.MismatchUm(a.Turned(face, 320), b.Turned(face, 320))) < 1e-6;
        });

    [Fact]
    public void A_bow_matches_itself_turned_at_the_top_and_stands_against_itself_turned_at_the_side()
    {
        // h 4 x (L - x) / L^2 is even about the middle: turned, a top is the same, a side the opposite, 2 h apart.
        double[] x = [.. Enumerable.Range(0, 33).Select(i => 10.0 * i)];
        var bow = Shape.Of(new Profile(x, [.. x.Select(at => 12 * 4 * at * (320 - at) / (320 * 320))]));
        Assert.Equal(0, Shape.MismatchUm(bow, bow.Turned(RailFace.Top, 320)), 1e-9);
        Assert.Equal(24, Shape.MismatchUm(bow, bow.Turned(RailFace.Side, 320)), 1e-9);
    }

    [Fact]
    public void An_even_bow_is_placed_straight_beside_its_like_and_turned_beside_its_opposite()
    {
        static double Bow(double x) => 12 * 4 * x * (320 - x) / (320 * 320);
        static double Flat(double x) => 0;
        var plan = PlacementScene.Plan(PlacementScene.Position("left", "\"pair\":\"right\",\"ends\":[\"front\",\"back\"]") + "," + PlacementScene.Position("right", "\"ends\":[\"front\",\"back\"]"));
        var alike = RailPlacement.Of(PlacementScene.Batch([("A", Bow, Flat), ("B", Bow, Flat)]), null, plan);
        Assert.Equal(["front", "front"], alike.Placed.Select(p => p.DotAt));
        var opposite = RailPlacement.Of(PlacementScene.Batch([("A", Bow, Flat), ("B", x => -Bow(x), Flat)]), null, plan);
        Assert.Equal(["front", "back"], opposite.Placed.Select(p => p.DotAt));
        Assert.Equal(0, opposite.Placed[0].MismatchUm!.Value, 1e-9);
        Assert.Equal("Side 12.0 um, grade gantry (z would do). With A: shapes 0.0 um apart, turned for it.", opposite.Placed[1].Why);
    }
}
