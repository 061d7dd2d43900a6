using System.Globalization;
using Waywright.Tests.Reference;

namespace Waywright.Tests.Mounting;

/// <summary>Contact between rail and base against SciPy's bounded least squares (BVLS) over a beam finite-element model.</summary>
public sealed class ContactTests
{
    private const double Stiffness = 42.4;

    [Fact]
    public void Rails_pressed_on_rigid_and_on_bending_bases_lie_where_a_quadratic_program_puts_them()
    {
        DebianPython.RequireSciPy();
        var cases = Cases().ToArray();
        Assert.InRange(cases.Count(c => c.ContactsMm.Count > 0), cases.Length / 2, cases.Length);
        var file = Path.GetTempFileName();
        try
        {
            File.WriteAllLines(file, cases.SelectMany(Lines));
            var lines = DebianPython.Run("mounting/contact_by_quadratic_program.py", file);
            Assert.Equal(cases.Length, lines.Length);
            foreach (var (shape, line) in cases.Zip(lines))
            {
                var expected = Array.ConvertAll(line.Split(' '), ReferenceFile.Number);
                var n = shape.Mounted.Count;
                var (x, z) = (shape.Mounted.PositionsMm, shape.Mounted.HeightsUm);
                var (first, last) = (shape.Screws.ScrewsMm[0], shape.Screws.ScrewsMm[^1]);
                var size = shape.Free.HeightsUm.Max(Math.Abs);
                for (var i = 0; i < n; i++)
                {
                    var level = shape.HeightUm(first) + ((shape.HeightUm(last) - shape.HeightUm(first)) * (x[i] - first) / (last - first));
                    Assert.Equal(expected[i], z[i] - level, 1e-6 * size);
                }

                // What pulls at a screw and what pushes within 3 mm of it count together.
                var pulls = shape.Screws.ScrewsMm.Select(at => x.Index().Where(p => Math.Abs(p.Item - at) <= MountedShape.JointMm).Sum(p => expected[n + p.Index]));
                Assert.All(shape.PullsN.Zip(pulls), f => Assert.Equal(f.Second, f.First, 1e-4 * Math.Max(0.1, shape.PullsN.Max(Math.Abs))));
            }
        }
        finally
        {
            File.Delete(file);
        }
    }

    /// <summary>Invented: a short rail, so that the program has about 100 nodes.</summary>
    private static IEnumerable<MountedShape> Cases()
    {
        var random = new Random(11);
        double Any(double size) => size * ((2 * random.NextDouble()) - 1);
        var every = ScrewPattern.Every(90, 20, 5);
        double[] x = [0, 15, 25, 35, 45, 55, 65, 75, 90];
        ScrewPattern[] patterns = [every, every.EveryOther(), every.OfCount(2), every.EveryOtherFromFarEnd(), every.OfCount(3), every.InHoles(2, 3)];
        for (var i = 0; i < 12; i++)
        {
            var free = new Profile(x, Array.ConvertAll(x, v => (Any(1) * 3) + Any(0.2) + (i % 3 == 0 ? 20 : -20) * v * (90 - v) / 2025));
            var under = i % 2 == 0 ? null : new Profile(x, Array.ConvertAll(x, _ => Any(4)));
            yield return MountedShape.Of(free, patterns[i % patterns.Length], Stiffness, under, i % 4 < 2 ? null : 40 + (300 * random.NextDouble()));
        }
    }

    private static IEnumerable<string> Lines(MountedShape shape)
    {
        var places = shape.Mounted.PositionsMm;
        yield return Row(places);
        yield return Row(Heights(shape.Free, places));
        yield return Row(shape.Base is { } under ? Heights(under, places) : new double[places.Count]);
        yield return string.Join(' ', shape.Screws.ScrewsMm.Select(s => places.Index().MinBy(p => Math.Abs(p.Item - s)).Index.ToString(CultureInfo.InvariantCulture)));
        yield return shape.BendingStiffnessNm2.ToString("R", CultureInfo.InvariantCulture);
        yield return shape.BaseStiffnessNm2?.ToString("R", CultureInfo.InvariantCulture) ?? "inf";
    }

    private static double[] Heights(Profile profile, IReadOnlyList<double> places)
    {
        var spline = MathNet.Numerics.Interpolation.CubicSpline.InterpolateNaturalSorted([.. profile.PositionsMm], [.. profile.HeightsUm]);
        return [.. places.Select(spline.Interpolate)];
    }

    private static string Row(IReadOnlyList<double> values) => string.Join(' ', values.Select(v => v.ToString("R", CultureInfo.InvariantCulture)));

    // With a screw at every station the spline through the screws is the free rail itself: nothing but rounding is left between the two.
    [Fact]
    public void A_rail_with_a_screw_at_every_station_lies_as_it_did()
    {
        var every = ScrewPattern.Every(350, 20, 5);
        for (var seed = 1; seed <= 24; seed++)
        {
            var random = new Random(seed);
            var free = new Profile(every.HolesMm, [.. every.HolesMm.Select(x => (60 * 4 * x * (350 - x) / 122_500) + random.NextDouble())]);
            var mounted = MountedShape.Of(free, every, bendingStiffnessNm2: 42.4);
            Assert.Empty(mounted.ContactsMm);
            Assert.InRange(mounted.ResidualUm, 0, 1e-9);
        }
    }
}
