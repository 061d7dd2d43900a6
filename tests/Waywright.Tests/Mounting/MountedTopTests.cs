using MathNet.Numerics.Interpolation;
using Waywright.Tests.Straightness;

namespace Waywright.Tests.Mounting;

/// <summary>The mounted residual that a top is graded by: the map, its errors, and how often its bounds hold the truth.</summary>
public class MountedTopTests
{
    private const double Length = 320;

    // Holes every 25 mm from 10 mm on, stations midway between them and near both ends.
    private static readonly ScrewPattern Every = ScrewPattern.Every(new RailStock.Rail("R", 9, Length, 25, 10, null, null, ""));
    private static readonly double[] Stations = [4, .. Enumerable.Range(0, 12).Select(i => 22.5 + (25.0 * i)), 316];

    private static readonly Dictionary<string, Func<double, double>> Shapes = new()
    {
        ["straight"] = _ => 0,
        ["bow of 90 um"] = x => 90 * 4 * x * (Length - x) / (Length * Length),
        ["S of 20 um"] = x => 20 * Math.Sin(2 * Math.PI * x / Length),
        ["wave of 200 mm"] = x => 12 * Math.Sin((2 * Math.PI * x / 200) + 0.4),
        ["wave of 90 mm"] = x => 6 * Math.Sin((2 * Math.PI * x / 90) + 1),
        ["wave of 60 mm"] = x => 5 * Math.Sin(2 * Math.PI * x / 60),
        ["bump"] = x => 8 * Math.Exp(-Math.Pow((x - 141) / 22, 2)),
    };

    public static TheoryData<string, bool> Cases => new(from shape in Shapes.Keys from other in new[] { false, true } select (shape, other));

    /// <summary>What the shape itself would keep, at every half millimetre, by a general library's natural spline.</summary>
    private static double TrueResidual(Func<double, double> shape, ScrewPattern screws)
    {
        double[] held = [.. screws.ScrewsMm];
        var spline = CubicSpline.InterpolateNaturalSorted(held, Array.ConvertAll(held, x => shape(x)));
        var (first, last) = (held[0], held[^1]);
        double Line(double x) => x < first ? spline.Interpolate(first) + (spline.Differentiate(first) * (x - first)) : x > last ? spline.Interpolate(last) + (spline.Differentiate(last) * (x - last)) : spline.Interpolate(x);
        double[] x = [.. Enumerable.Range(0, 641).Select(i => i / 2.0)];
        return StraightnessFigures.Of(new Profile(x, Array.ConvertAll(x, at => shape(at) - Line(at)))).MinimumZone.Line.STRtUm;
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void The_bounds_hold_the_residual_of_the_whole_shape_in_95_of_100_sweeps(string name, bool everyOther)
    {
        const int sweeps = 100;
        var screws = everyOther ? Every.EveryOther() : Every;
        var shape = Shapes[name];
        var truth = TrueResidual(shape, screws);
        var (within, below, above) = (0, 0, 0);
        Parallel.For(0, sweeps, seed =>
        {
            var random = new Random(seed + 1);
            var bow = Sweeps.Gaussian(random);
            double Bow(double x) => 0.5 * bow * 4 * x * (Length - x) / (Length * Length);
            var read = new Profile(Stations, Array.ConvertAll(Stations, x => shape(x) + Bow(x) + (0.4 * Sweeps.Gaussian(random))));
            var errors = new ProfileErrors([.. Stations.Select(_ => 0.4)], double.PositiveInfinity, [new ErrorShape("guide", Array.ConvertAll(Stations, x => 0.5 * 4 * x * (Length - x) / (Length * Length)), double.PositiveInfinity, false, AveragesOut.Nothing, "")]);
            var top = MountedTop.Of(read, errors, screws);
            var figure = top.Figure(() => StraightnessUncertainty.SetOf(top.Held, top.Errors!, 1000, 7, default), 1000, 7);
            lock (Shapes)
            {
                within += figure.LowUm <= truth && truth <= figure.HighUm ? 1 : 0;
                above += figure.UpperBoundUm(0.95) >= truth ? 1 : 0;
                below += figure.LowerBoundUm(0.95) <= truth ? 1 : 0;
            }
        });
        Assert.InRange(within, 94, sweeps);
        Assert.InRange(above, 94, sweeps);
        Assert.InRange(below, 94, sweeps);
    }

    [Fact]
    public void The_map_gives_what_the_mounted_shape_gives_without_contact_and_follows_the_heights_linearly()
    {
        foreach (var screws in new[] { Every, Every.EveryOther(), Every.OfCount(5) })
        {
            var (one, other) = (Noise(1), Noise(2));
            var map = new MountedMap(Stations, screws);
            var shape = MountedShape.Of(new MountingCase(new Profile(Stations, one), screws, 42.4, null, null, null), withContact: false);
            var mounted = map.Mounted(one);
            for (var i = 0; i < mounted.Length; i++)
                Assert.Equal(shape.HeightUm(map.Places[i]), mounted[i], 1e-9);
            // Between stations, holes and ends the curve rises by a few parts in a hundred at most.
            var residual = StraightnessFigures.Of(new Profile(map.Places, mounted)).MinimumZone.Line.STRtUm;
            Assert.InRange(residual, 0.95 * shape.ResidualUm, shape.ResidualUm + 1e-9);
            var sum = map.Mounted([.. one.Zip(other, (a, b) => a - (3 * b))]);
            var (first, second) = (map.Mounted(one), map.Mounted(other));
            for (var i = 0; i < sum.Length; i++)
            {
                Assert.Equal(first[i] - (3 * second[i]), sum[i], 1e-10);
                Assert.Equal(mounted[i], map.Columns.Select((c, k) => c[i] * one[k]).Sum(), 1e-10);
            }
        }
    }

    [Fact]
    public void A_face_between_stations_varies_as_a_beam_that_is_held_at_them_gives_way()
    {
        // Timoshenko, from memory: a beam on two supports l apart yields l³ / (48 EI) under 1 N in its middle, and c² (l + c) / (3 EI) at an end that stands over by c.
        const double l = 100;
        const double c = 30;
        var modes = new StationRoughness([0, l]).Modes([-c, 0, l / 2, l]);
        Assert.Equal(l * l * l / 48, modes.Sum(m => m[2] * m[2]), 1e-9 * l * l * l);
        Assert.Equal(c * c * (l + c) / 3, modes.Sum(m => m[0] * m[0]), 1e-9 * l * l * l);
        Assert.All(modes, m => Assert.Equal((0, 0), (m[1], m[3])));
    }

    [Fact]
    public void The_roughness_of_a_random_face_is_found_and_that_of_mere_noise_is_not()
    {
        // A walk in slope: curvature is white noise of unit size, sampled finely; 2,000 faces.
        var random = new Random(9);
        var square = 0.0;
        for (var face = 0; face < 500; face++)
        {
            double[] heights = new double[321];
            var slope = 0.0;
            for (var x = 1; x <= 320; x++)
            {
                heights[x] = heights[x - 1] + slope;
                slope += Sweeps.Gaussian(random);
            }

            var positions = Enumerable.Range(0, 17).Select(i => 20.0 * i).ToArray();
            var sigma = new StationRoughness(positions).Sigma(Array.ConvertAll(positions, x => heights[(int)x]), null);
            square += sigma * sigma / 500;
        }

        // Its own scatter: sqrt(2 / 15 / 500) is 1.6 %.
        Assert.Equal(1, square, 0.06);
        var even = new ProfileErrors([.. Stations.Select(_ => 1.0)], double.PositiveInfinity, []);
        var roughness = new StationRoughness(Stations);
        Assert.InRange(Enumerable.Range(0, 100).Count(seed => roughness.Sigma(Noise(seed), even) == 0), 35, 75);
    }

    [Fact]
    public void The_base_s_push_leaves_less_than_the_screws_alone_unless_they_are_far_apart()
    {
        foreach (var (screws, raises, factor) in new[] { (Every, false, 0.5), (Every.EveryOther(), false, 0.7), (Every.InHoles(1, 5, 9, 13), true, 1.6) })
        {
            var map = new MountedMap(Stations, screws);
            int[] at = [.. screws.ScrewsMm.Select(x => Array.BinarySearch(map.Places, x))];
            var more = 0;
            for (var seed = 0; seed < 400; seed++)
            {
                var rail = Shapes.Values.ElementAt(seed % Shapes.Count);
                var (free, error) = (map.Mounted([.. Stations.Select(rail).Zip(Noise(seed), (z, e) => z + e)]), map.Mounted([.. Noise(seed + 1000).Select(e => e * (1 + (seed % 3)))]));
                var (pressed, moved) = (Pressed(map, at, free), Pressed(map, at, [.. free.Zip(error, (z, e) => z + e)]));
                more += pressed > Zone(map, free) ? 1 : 0;
                Assert.InRange(Math.Abs(moved - pressed), 0, factor * Zone(map, error));
                Assert.True(raises == MountedTop.Of(new Profile(Stations, Noise(seed)), null, screws).MayBePressed);
            }

            Assert.Equal(raises, more > 0);
        }
    }

    private static double[] Noise(int seed)
    {
        var random = new Random(seed);
        return Array.ConvertAll(Stations, _ => Sweeps.Gaussian(random));
    }

    private static double Pressed(MountedMap map, int[] screws, double[] free)
    {
        var contact = new ContactSearch(map.Places, screws, free);
        contact.Solve(withBase: true);
        return Zone(map, contact.Open.ToArray());
    }

    private static double Zone(MountedMap map, double[] heights) => StraightnessFigures.Of(new Profile(map.Places, heights)).MinimumZone.Line.STRtUm;
}
