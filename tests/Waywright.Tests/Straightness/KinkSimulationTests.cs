using System.Globalization;
using Waywright.Tests.Reference;

namespace Waywright.Tests.Straightness;

/// <summary>What the test promises over many sweeps, by simulation with fixed seeds, and its figures by NumPy and SciPy.</summary>
public sealed class KinkSimulationTests
{
    private static readonly double[] Rail = [4, .. Enumerable.Range(0, 12).Select(i => 22.5 + (25 * i)), 316];

    [Theory]
    // 1,000 sweeps: the share of false alarms has a standard deviation of 0.007.
    [InlineData(0, 24, 0, 0.03, 0.07)]
    [InlineData(0, 4, 0, 0.03, 0.07)]
    [InlineData(0.5, 24, 0, 0.03, 0.07)]
    // A surface rougher than the errors say: half as much again, and six times.
    [InlineData(0, 24, 0.5, 0.03, 0.09)]
    [InlineData(0, 24, 3, 0.03, 0.07)]
    public void Of_straight_rails_one_in_twenty_is_called_bent(double guideUm, int degreesOfFreedom, double roughnessUm, double lowest, double highest)
    {
        const int sweeps = 1000;
        var random = new Random(41);
        var found = Enumerable.Range(0, sweeps).Count(i => Test(random, Rail, guideUm, degreesOfFreedom, roughnessUm, _ => 0, (ulong)i, trials: 400).IsFound);
        Assert.InRange(found / (double)sweeps, lowest, highest);
    }

    [Theory]
    [InlineData(0.05, 0.05, 0.25)]
    [InlineData(0.2, 0.9, 1)]
    [InlineData(0.4, 1, 1)]
    public void The_sharper_the_bend_the_surer_it_is_found(double umPerMm, double least, double most)
    {
        const int sweeps = 200;
        var random = new Random(42);
        var found = Enumerable.Range(0, sweeps).Count(i => Test(random, Rail, 0.5, 24, 0.3, x => -umPerMm * Math.Max(0, x - 147.5), (ulong)i, trials: 400).IsFound);
        Assert.InRange(found / (double)sweeps, least, most);
    }

    [Theory]
    [InlineData(147.5, 0.4)]
    [InlineData(158, 0.4)]
    [InlineData(158, 2)]
    [InlineData(84, 1)]
    public void Position_and_angle_of_a_clear_bend_lie_in_their_intervals(double kneeMm, double umPerMm)
    {
        const int sweeps = 400;
        var random = new Random(43);
        var (positions, angles) = (0, 0);
        for (var i = 0; i < sweeps; i++)
        {
            var found = Test(random, Rail, 0.3, 24, 0, x => umPerMm * Math.Max(0, x - kneeMm), (ulong)i, trials: 100);
            positions += kneeMm >= found.FromMm && kneeMm <= found.ToMm ? 1 : 0;
            angles += Math.Abs(found.AngleUmPerM.Value - (1000 * umPerMm)) <= found.AngleUmPerM.Expanded().U ? 1 : 0;
        }

        // 95 % promised; scatter is known and not taken smaller where residuals happen to be small, so a little more is kept. Two standard deviations are 0.022.
        Assert.InRange(positions / (double)sweeps, 0.93, 1);
        Assert.InRange(angles / (double)sweeps, 0.93, 1);
    }

    [Fact]
    public void Statistic_position_and_angle_are_those_of_NumPy_and_SciPy()
    {
        DebianPython.RequireSciPy();
        var random = new Random(44);
        var profiles = Enumerable.Range(0, 40).Select(i =>
        {
            var x = Enumerable.Range(0, 9 + i).Select(k => (k * 12.0) + (6 * random.NextDouble())).ToArray();
            var (knee, angle) = (x[^1] * (0.25 + (0.5 * random.NextDouble())), random.NextDouble() - 0.5);
            return new Profile(x, [.. x.Select(at => (angle * Math.Max(0, at - knee)) + (0.001 * at * at) + Gaussian(random))]);
        }).ToArray();
        var errors = profiles.Select(p => new ProfileErrors([.. p.PositionsMm.Select(_ => 0.2 + random.NextDouble())], 24, [Guide(p.PositionsMm, 0.5)])).ToArray();
        var file = Path.GetTempFileName();
        try
        {
            File.WriteAllLines(file, profiles.SelectMany((p, i) => new[] { Row(p.PositionsMm), Row(p.HeightsUm), Row(errors[i].StationUm), Row(errors[i].Shapes[0].HeightsUm) }));
            var lines = DebianPython.Run("straightness/kink_by_numpy.py", file);
            Assert.Equal(profiles.Length, lines.Length);
            for (var i = 0; i < profiles.Length; i++)
            {
                var expected = lines[i].Split(' ').Select(ReferenceFile.Number).ToArray();
                var found = KinkTest.Of(profiles[i], errors[i], seed: 1, trials: 100);
                Assert.Equal(expected[0], found.Statistic, 1e-8 * expected[0]);
                // SciPy stops at the root of the rounding of a sum of squares.
                Assert.Equal(expected[1], found.PositionMm, 1e-4);
                Assert.Equal(expected[2], found.AngleUmPerM.Value, 1e-2);
            }
        }
        finally
        {
            File.Delete(file);
        }
    }

    private static KinkTest Test(Random random, double[] x, double guideUm, int degreesOfFreedom, double roughnessUm, Func<double, double> shape, ulong seed, int trials)
    {
        const double scatter = 0.35;
        var guide = Guide(x, guideUm);
        var moved = guideUm == 0 ? 0 : Math.Sqrt(3) * ((2 * random.NextDouble()) - 1);
        var heights = x.Select((at, i) => shape(at) + (moved * guide.HeightsUm[i]) + (scatter * Gaussian(random)) + (roughnessUm * ((2 * random.NextDouble()) - 1))).ToArray();
        // What repeated readings would give for the scatter.
        var squares = Enumerable.Range(0, degreesOfFreedom).Sum(_ => Math.Pow(Gaussian(random), 2));
        var estimate = scatter * Math.Sqrt(squares / degreesOfFreedom);
        return KinkTest.Of(new Profile(x, heights), new ProfileErrors([.. x.Select(_ => estimate)], degreesOfFreedom, guideUm == 0 ? [] : [guide]), seed, trials: trials);
    }

    private static ErrorShape Guide(IReadOnlyList<double> x, double um)
        => new("guide", [.. x.Select(at => um * Math.Sin(at / 40))], double.PositiveInfinity, true, AveragesOut.Nothing, "reverse the guide");

    private static double Gaussian(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());

    private static string Row(IReadOnlyList<double> values) => string.Join(' ', values.Select(v => v.ToString("R", CultureInfo.InvariantCulture)));
}
