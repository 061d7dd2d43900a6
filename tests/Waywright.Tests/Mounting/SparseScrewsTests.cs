using Waywright.Tests.Straightness;

namespace Waywright.Tests.Mounting;

/// <summary>A top on few screws, where the base's push may decide: how often the bounds that it is graded by hold what the whole shape keeps.</summary>
public class SparseScrewsTests
{
    private const double Length = 320;
    private const double Noise = 0.8;

    private static readonly ScrewPattern Every = ScrewPattern.Every(Length, 25, 10);
    private static readonly double[] Stations = [4, .. Enumerable.Range(0, 12).Select(i => 22.5 + (25.0 * i)), 316];
    private static readonly double[] Guide = Array.ConvertAll(Stations, x => 0.5 * 4 * x * (Length - x) / (Length * Length));

    private static readonly Dictionary<string, Func<double, double>> Shapes = new()
    {
        ["straight"] = _ => 0,
        ["hollow by 4 um"] = x => -4 * 4 * x * (Length - x) / (Length * Length),
        ["crowned by 90 um"] = x => 90 * 4 * x * (Length - x) / (Length * Length),
        ["S of 20 um"] = x => 20 * Math.Sin(2 * Math.PI * x / Length),
        ["bump"] = x => 8 * Math.Exp(-Math.Pow((x - 141) / 22, 2)),
    };

    private static readonly Dictionary<string, ScrewPattern> Screws = new()
    {
        ["two"] = Every.InHoles(1, 13),
        ["three"] = Every.InHoles(1, 7, 13),
        ["60 mm free at the far end"] = Every.InHoles(1, 3, 5, 7, 9, 11),
    };

    public static TheoryData<string, string> Cases => new(from screws in Screws.Keys from shape in Shapes.Keys select (screws, shape));

    // With the base's push, and by the screws alone: what is more counts. At every millimetre.
    private static double Kept(Func<double, double> shape, ScrewPattern screws)
    {
        double[] x = [.. Enumerable.Range(0, 321).Select(i => (double)i)];
        var whole = new Profile(x, Array.ConvertAll(x, at => shape(at)));
        var given = new MountingCase(whole, screws, 42.4, null, null, null);
        return Math.Max(MountedShape.Of(given).ResidualUm, MountedShape.Of(given, withContact: false).ResidualUm);
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void The_bounds_that_grade_a_top_on_few_screws_hold_in_95_of_100_sweeps(string pattern, string name)
    {
        const int sweeps = 100;
        var (screws, shape) = (Screws[pattern], Shapes[name]);
        var truth = Kept(shape, screws);
        var errors = new ProfileErrors([.. Stations.Select(_ => Noise)], double.PositiveInfinity, [new ErrorShape("guide", Guide, double.PositiveInfinity, false, AveragesOut.Nothing, "")]);
        var (within, below, above) = (0, 0, 0);
        Parallel.For(0, sweeps, seed =>
        {
            var random = new Random(seed + 1);
            var bow = Sweeps.Gaussian(random);
            var top = MountedTop.Of(new Profile(Stations, [.. Stations.Select((x, i) => shape(x) + (bow * Guide[i]) + (Noise * Sweeps.Gaussian(random)))]), errors, screws);
            var figure = top.Figure(() => throw new InvalidOperationException("The screws' map alone decided."), trials: 400, seed: 7);
            lock (Shapes)
            {
                within += figure.LowUm <= truth + 1e-9 && truth <= figure.HighUm ? 1 : 0;
                below += figure.LowerBoundUm(0.95) <= truth + 1e-9 ? 1 : 0;
                above += figure.UpperBoundUm(0.95) >= truth - 1e-9 ? 1 : 0;
            }
        });
        Assert.InRange(within, 95, sweeps);
        Assert.InRange(below, 95, sweeps);
        Assert.InRange(above, 95, sweeps);
    }

    [Fact]
    public void Screws_in_every_or_every_other_hole_leave_the_screws_map_to_decide_and_the_same_seed_gives_the_same_bounds()
    {
        var errors = new ProfileErrors([.. Stations.Select(_ => Noise)], double.PositiveInfinity, []);
        var free = new Profile(Stations, Array.ConvertAll(Stations, x => Shapes["bump"](x)));
        foreach (var screws in new[] { Every, Every.EveryOther() })
            Assert.False(MountedTop.Of(free, errors, screws).MayBePressed);
        foreach (var screws in Screws.Values)
        {
            var top = MountedTop.Of(free, errors, screws);
            UncertainFigure Of(ulong seed) => top.Figure(() => throw new InvalidOperationException(), trials: 300, seed);
            Assert.Equal(Of(3), Of(3));
            Assert.NotEqual(Of(3).HighUm, Of(4).HighUm);
        }
    }
}
