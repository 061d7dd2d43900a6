using MathNet.Numerics.Interpolation;

namespace Waywright.Tests.Mounting;

/// <summary>The mounted top against a general library, closed forms, and what must not matter.</summary>
public class MountedShapeTests
{
    // 9 x 6.5 mm of steel: EI = 206 GPa x 9 x 6.5^3 / 12 mm4 = 42.4 N m2.
    private const double Stiffness = 42.4;

    private static readonly ScrewPattern Every = ScrewPattern.Every(350, 20, 5);

    [Fact]
    public void The_spline_through_the_screws_is_MathNet_s_natural_spline()
    {
        var random = new Random(320_025);
        for (var trial = 0; trial < 200; trial++)
        {
            var x = Enumerable.Range(0, random.Next(2, 30)).Select(i => (i * 20.0) + (random.NextDouble() * 15)).ToArray();
            var y = Array.ConvertAll(x, _ => 200 * (random.NextDouble() - 0.5));
            var peer = CubicSpline.InterpolateNaturalSorted(x, y);
            double[] places = [.. Enumerable.Range(0, 400).Select(i => x[0] + ((x[^1] - x[0]) * i / 399)).Order()];
            var heights = new double[places.Length];
            new NaturalSpline(x, y, new double[2 * x.Length]).Along(places, heights);
            for (var i = 0; i < places.Length; i++)
                Assert.Equal(peer.Interpolate(places[i]), heights[i], 1e-9 * Math.Max(1, y.Max(Math.Abs)));
        }
    }

    [Fact]
    public void Spline_and_forces_are_those_of_a_weightless_beam_on_supports_of_these_heights()
    {
        var random = new Random(7);
        for (var trial = 0; trial < 100; trial++)
        {
            var x = Enumerable.Range(0, random.Next(3, 20)).Select(i => 10 + (i * 17.0) + (random.NextDouble() * 12)).ToArray();
            var y = Array.ConvertAll(x, _ => 100 * (random.NextDouble() - 0.5));
            var line = new SupportedBeam(380, Stiffness, 0, x, y).Under();
            var spline = new NaturalSpline(x, y, new double[2 * x.Length]);
            for (var place = 0; place <= 380; place += 5)
                Assert.Equal(line.DeflectionUm(place), spline.At(place), 1e-9 * 400);
            for (var i = 0; i < x.Length; i++)
                Assert.Equal(line.ReactionsN[i], 1000 * Stiffness * spline.Jump(i), 1e-9 * line.ReactionsN.Max(Math.Abs));
        }
    }

    [Theory]
    // SciPy's natural spline, run for these tests on a parabola of 100 um without contact: range over the base, and minimum zone.
    [InlineData(100, 18, 0.3984, 0.3984)]
    [InlineData(-100, 18, 0.3984, 0.3984)]
    [InlineData(-100, 9, 4.4389, 4.0542)]
    public void Without_contact_a_bow_of_100_um_nearly_disappears_and_a_free_end_keeps_more(double bow, int screws, double range, double zone)
    {
        var pattern = screws == 18 ? Every : Every.EveryOther();
        // Stations every millimetre, since the natural spline through coarse ones is not quite a parabola near the ends.
        double[] x = [.. Enumerable.Range(0, 351)];
        var free = new Profile(x, Array.ConvertAll(x, v => bow * v * (350 - v) / 30_625));
        var shape = MountedShape.Of(new MountingCase(free, pattern, Stiffness, null, null, null), withContact: false);
        Assert.Equal(100, shape.FreeUm, 1e-6);
        Assert.Equal(range, shape.Mounted.HeightsUm.Max() - shape.Mounted.HeightsUm.Min(), 0.005);
        Assert.Equal(zone, shape.ResidualUm, 0.005);
        // The base helps: what may not enter it is bent less.
        Assert.InRange(MountedShape.Of(free, pattern, Stiffness).ResidualUm, 0, zone);
    }

    [Fact]
    public void Three_screws_on_an_arch_pull_with_the_force_of_a_beam_on_two_supports()
    {
        // Timoshenko: a beam on its ends yields F l^3 / (48 EI); the middle screw takes all of the bow over l = 340 mm.
        var shape = MountedShape.Of(new MountingCase(Parabola(100), ScrewPattern.Every(350, 170, 5), Stiffness, null, null, null), withContact: false);
        Assert.Equal(3, shape.PullsN.Count);
        var bow = 100e-6 * 4 * 170 * 170 / (350 * 350);
        var force = 48 * Stiffness * bow / Math.Pow(0.34, 3);
        // The spline through stations of 10 mm isn't quite a parabola.
        Assert.Equal(force, shape.PullsN[1], 1e-3 * force);
        Assert.Equal(-force / 2, shape.PullsN[0], 1e-3 * force);
    }

    [Fact]
    public void An_arch_under_two_screws_stands_on_its_heels_which_push_as_slopes_at_the_screws_demand()
    {
        // Closed form with the bar looked at in four places only, heels, screws h higher: slopes of stub e and span l agree at a screw for a curvature of
        // h / e / (l / 2 + e / 3) there, which the heel's force times e makes.
        const double e = 5;
        const double l = 340;
        const double h = 100 * e * (350 - e) / 30_625;
        var search = new ContactSearch([0, e, e + l, (2 * e) + l], [1, 2], [0, h, h, 0]);
        search.Solve(withBase: true);
        Assert.Equal(h / e / ((l / 2) + (e / 3)) / e, search.ForceAt(0), 1e-12);
        Assert.Equal(-search.ForceAt(0), search.ForceAt(1), 1e-12);
        Assert.True(search.IsContact(0) && search.IsContact(3));
    }

    [Fact]
    public void A_straight_rail_stays_straight_however_it_was_tilted()
    {
        foreach (var pattern in new[] { Every, Every.EveryOther(), Every.OfCount(2) })
        {
            var shape = MountedShape.Of(new Profile([5, 100, 340], [12, 12 + (0.3 * 95), 12 + (0.3 * 335)]), pattern, Stiffness);
            Assert.Equal(0, shape.ResidualUm, 1e-10);
            Assert.All(shape.PullsN, pull => Assert.Equal(0, pull, 1e-7));
            Assert.Equal(0, shape.WidestGapUm, 1e-10);
        }
    }

    [Fact]
    public void A_line_added_to_the_free_shape_changes_nothing()
    {
        foreach (var free in Shapes(12))
        {
            var plain = MountedShape.Of(free, Every.EveryOther(), Stiffness);
            var tilted = MountedShape.Of(new Profile(free.PositionsMm, [.. free.HeightsUm.Zip(free.PositionsMm, (z, x) => z + 40 + (0.7 * x))]), Every.EveryOther(), Stiffness);
            Assert.Equal(plain.ResidualUm, tilted.ResidualUm, 1e-9);
            Assert.All(plain.Mounted.HeightsUm.Zip(tilted.Mounted.HeightsUm), z => Assert.Equal(z.First, z.Second, 1e-9));
            Assert.All(plain.PullsN.Zip(tilted.PullsN), f => Assert.Equal(f.First, f.Second, 1e-6 * Math.Max(1, plain.PullsN.Max())));
        }
    }

    [Fact]
    public void Twice_the_shape_is_mounted_as_twice_the_residual_with_twice_the_forces()
    {
        foreach (var free in Shapes(12))
        {
            var once = MountedShape.Of(free, Every.OfCount(7), Stiffness);
            var twice = MountedShape.Of(new Profile(free.PositionsMm, [.. free.HeightsUm.Select(z => 2 * z)]), Every.OfCount(7), 3 * Stiffness);
            Assert.Equal(2 * once.ResidualUm, twice.ResidualUm, 1e-9);
            Assert.All(once.PullsN.Zip(twice.PullsN), f => Assert.Equal(6 * f.First, f.Second, 1e-6 * Math.Max(1, twice.PullsN.Max())));
        }
    }

    [Fact]
    public void Turned_end_for_end_the_mounted_shape_is_turned()
    {
        foreach (var free in Shapes(8))
        {
            var turned = new Profile([.. free.PositionsMm.Select(x => 350 - x)], free.HeightsUm);
            var (there, back) = (MountedShape.Of(free, Every.EveryOther(), Stiffness), MountedShape.Of(turned, Every.EveryOther().Reversed(), Stiffness));
            Assert.Equal(there.ResidualUm, back.ResidualUm, 1e-8);
            Assert.Equal(there.FarEndGapUm, back.DotEndGapUm, 1e-8);
        }
    }

    [Fact]
    public void A_rail_of_its_base_s_shape_follows_it_without_any_force()
    {
        foreach (var free in Shapes(6))
        {
            var shape = MountedShape.Of(free, Every, Stiffness, baseShape: free, baseStiffnessNm2: 400);
            Assert.Equal(shape.FreeUm, shape.ResidualUm, 1e-9);
            Assert.All(shape.PullsN, pull => Assert.Equal(0, pull, 1e-7));
            Assert.False(shape.Title.Contains("relative", StringComparison.Ordinal));
        }
    }

    [Fact]
    public void A_base_like_the_rail_meets_it_half_way_and_a_very_stiff_one_is_rigid()
    {
        var bow = Parabola(-100);
        var equal = MountedShape.Of(bow, Every, Stiffness, baseStiffnessNm2: Stiffness);
        var rigid = MountedShape.Of(bow, Every, Stiffness);
        Assert.Equal(50, equal.ResidualUm, 0.5);
        Assert.Equal(1, equal.StiffnessRatio);
        Assert.All(equal.PullsN.Zip(rigid.PullsN), f => Assert.Equal(f.Second / 2, f.First, 1e-9 * rigid.PullsN.Max()));
        Assert.Equal(rigid.ResidualUm, MountedShape.Of(bow, Every, Stiffness, baseStiffnessNm2: 1e12).ResidualUm, 1e-6);
        Assert.Equal("top, mounted, relative to the base", rigid.Title);
    }

    [Fact]
    public void Between_screws_the_rail_never_enters_the_base_and_contacts_only_push()
    {
        var touching = 0;
        foreach (var free in Shapes(60))
        {
            var shape = MountedShape.Of(free, Every.OfCount(2 + (touching % 8)), Stiffness);
            var size = free.HeightsUm.Max(Math.Abs);
            Assert.All(shape.Mounted.HeightsUm.Zip(shape.BentBase.HeightsUm), z => Assert.InRange(z.First - z.Second, -1e-8 * size, double.MaxValue));
            touching += shape.ContactsMm.Count > 0 ? 1 : 0;
        }

        Assert.InRange(touching, 30, 60);
    }

    [Fact]
    public void A_screw_that_can_not_pull_enough_is_named()
    {
        var free = MountedShape.Of(Shapes(1).Single(), Every.OfCount(5), Stiffness);
        var pulls = free.PullsN.Order().ToArray();
        var shape = MountedShape.Of(free.Free, free.Screws, Stiffness, clampLimitN: (pulls[^1] + pulls[^2]) / 2);
        Assert.Equal([free.Screws.Holes[free.PullsN.ToList().IndexOf(pulls[^1])]], shape.OverloadedHoles);
        Assert.Empty(MountedShape.Of(free.Free, free.Screws, Stiffness, clampLimitN: pulls[^1] * 1.01).OverloadedHoles);
        Assert.Empty(free.OverloadedHoles);
    }

    [Fact]
    public void What_does_not_fit_is_named_together()
    {
        var error = Assert.Throws<ArgumentException>(() => MountedShape.Of(new Profile([50, 360], [0, 1]), Every, double.NaN, new Profile([100, 200], [0, 1]), -1, 0));
        Assert.Equal(
            "The free shape has stations from 50 to 360 mm: they must lie on the rail, from 0 to 350 mm. The base is known from 100 to 200 mm only: it must reach the end screws at 5 and 345 mm within a pitch of 20 mm. "
            + "The bending stiffness of the rail is NaN N m2: it must be from 1E-06 to 1000000000000 N m2. The bending stiffness of the base is -1 N m2: it must be from 1E-06 to 1000000000000 N m2. The clamp limit is 0 N: it must be above 0 and at most 1000000000 N.",
            error.Message);
        var wave = new Profile([.. Enumerable.Range(0, 35).Select(i => 5 + (10.0 * i))], [.. Enumerable.Range(0, 35).Select(i => i % 3.0)]);
        Assert.Contains("filtered", Assert.Throws<ArgumentException>(() => MountedShape.Of(wave.Filter(80), Every, Stiffness)).Message);
        Assert.Throws<ArgumentOutOfRangeException>(() => MountedShape.Of(wave, Every, Stiffness).HeightUm(351));
    }

    internal static Profile Parabola(double um) => Stations(x => um * 4 * x * (350 - x) / (350 * 350.0));

    /// <summary>Invented shapes: bow, wave and noise of any sign at the places between holes.</summary>
    internal static IEnumerable<Profile> Shapes(int count)
    {
        var random = new Random(20_261_125);
        double Any(double size) => size * ((2 * random.NextDouble()) - 1);
        for (var i = 0; i < count; i++)
        {
            var (bow, wave, length, phase, noise) = (Any(80), Any(15), 50 + (100 * random.NextDouble()), Any(3), 2 * random.NextDouble());
            yield return Stations(x => (bow * x * (350 - x) / 30_625) + (wave * Math.Sin((6.28 * x / length) + phase)) + Any(noise));
        }
    }

    private static Profile Stations(Func<double, double> height)
    {
        double[] x = [0, .. Enumerable.Range(0, 34).Select(i => 10 + (10.0 * i)), 350];
        return new Profile(x, Array.ConvertAll(x, v => height(v)));
    }
}

[UnderCulture("de-DE")]
public sealed class MountedShapeTestsInGerman : MountedShapeTests;
