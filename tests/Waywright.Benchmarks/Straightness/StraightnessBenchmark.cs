using System.Globalization;

namespace Waywright.Benchmarks;

/// <summary>Minimum zone and least squares of 351 stations, against SciPy and against looking at the readings once.</summary>
internal sealed class StraightnessBenchmark : Benchmark
{
    private const int Stations = 351;
    private const int Profiles = 8;
    private const int Rounds = 201;

    private double _kept;

    public override string Name => "straightness";

    public override string Title => "Minimum zone and least squares of 351 stations";

    public override Findings Run()
    {
        var positions = Enumerable.Range(0, Stations).Select(i => (double)i).ToArray();
        var heights = Enumerable.Range(0, Profiles).Select(Heights).ToArray();
        var profiles = heights.Select(h => new Profile(positions, h)).ToArray();
        var file = Path.GetTempFileName();
        try
        {
            File.WriteAllLines(file, heights.Prepend(positions).Select(row => string.Join(',', row.Select(v => v.ToString("R", CultureInfo.InvariantCulture)))));
            using var peer = new PythonPeer("Straightness/straightness_peer.py", file);
            Agree(profiles, peer);
            var contenders = Contenders(positions, heights, profiles, peer);
            var timings = Interleaved.Measure(contenders, Rounds);
            return new Findings(About(), timings, Ratios(), [peer.Ask("versions") + " (Debian)"]);
        }
        finally
        {
            File.Delete(file);
        }
    }

    private Contender[] Contenders(double[] positions, double[][] heights, Profile[] profiles, PythonPeer peer)
    {
        var room = new double[Lanes.Padded(Stations)];
        var residuals = new double[Lanes.Padded(Stations)];
        return
        [
            Contender.Here("one pass", "sum and sum of squares of the readings in one loop of 256-bit vectors, one accumulator each.", count => Repeat(count, i => OnePass.Plain(heights[i]))),
            Contender.Here("one unrolled pass", "the same with four accumulators each.", count => Repeat(count, i => OnePass.Unrolled(heights[i]))),
            Contender.Here("kernel, stations prepared", "least-squares line with its figures and minimum zone; positions centred and buffer made before, as a simulation does.", count =>
            {
                var axis = StationAxis.Prepare(positions, room);
                for (var i = 0; i < count; i++)
                {
                    var line = LeastSquaresKernel.Solve(axis, heights[i % Profiles], residuals);
                    _kept += ZoneKernel.Solve(axis, residuals, line).Width + line.Highest;
                }
            }),
            Contender.Here("kernel", "the same from plain positions and readings in arrays.", count => Repeat(count, i => ProfileKernel.Solve(positions, heights[i], out var line).Width + line.Highest)),
            Contender.Here("StraightnessFigures.Of", "all three lines with contacts and interval of slopes as immutable records, from a profile.", count => Repeat(count, i => StraightnessFigures.Of(profiles[i]).MinimumZone.Line.STRtUm)),
            peer.Contender("qhull", "SciPy Qhull", "scipy.spatial.ConvexHull of the points, then the vertical width over every sloped hull edge; points already in an array; no least squares."),
            peer.Contender("highs", "SciPy linear program", "scipy.optimize.linprog, HiGHS, three unknowns; matrix and bounds already in arrays; no least squares."),
        ];
    }

    private void Repeat(int count, Func<int, double> one)
    {
        for (var i = 0; i < count; i++)
            _kept += one(i % Profiles);
    }

    private static void Agree(Profile[] profiles, PythonPeer peer)
    {
        var ours = profiles.Sum(p => StraightnessFigures.Of(p).MinimumZone.Line.STRtUm);
        foreach (var route in new[] { "qhull", "highs" })
        {
            var theirs = peer.Answer(route);
            if (Math.Abs(ours - theirs) > 1e-6 * theirs)
                throw new InvalidOperationException($"The routes disagree, so their times mean nothing: {ours:R} and, by {route}, {theirs:R}.");
        }
    }

    private static string[] About() =>
    [
        $"Invented readings: {Profiles} profiles of {Stations} stations 1 mm apart, a bow of 15 um under noise of 1.7 um, in turn. All routes give the same widths (checked in the run to 1e-6, the tolerance of the linear program) before any is timed.",
        string.Create(CultureInfo.InvariantCulture, $"{Rounds} rounds; in each, every contender has a block of about {Interleaved.BlockSeconds} s, one after the other in one run. A ratio is the median of the ratios within rounds."),
    ];

    private static Ratio[] Ratios() =>
    [
        new("SciPy Qhull", "kernel", "at least 100, aim 150"),
        new("SciPy linear program", "kernel", "aim 1,000"),
        new("kernel", "one pass", "at most 30, aim 20"),
        new("kernel, stations prepared", "one pass", "no target"),
        new("kernel", "one unrolled pass", "no target"),
        new("SciPy Qhull", "StraightnessFigures.Of", "no target"),
        new("StraightnessFigures.Of", "one pass", "no target"),
    ];

    private static double[] Heights(int seed)
    {
        var random = new Random(seed + 1);
        return [.. Enumerable.Range(0, Stations).Select(i => (60.0 * i / (Stations - 1) * (1 - (i / (Stations - 1.0)))) + (1.7 * Gaussian(random)))];
    }

    private static double Gaussian(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
