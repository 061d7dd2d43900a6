using System.Globalization;

namespace Waywright.Benchmarks;

/// <summary>The mounted shape of one rail with contact, and the search for the fewest screws, against SciPy's quadratic program of the same contact.</summary>
internal sealed class MountingBenchmark : Benchmark
{
    private const int Rails = 6;
    private const int Rounds = 31;
    private const double Stiffness = 42.4;
    private const double LimitUm = 5;

    private double _kept;

    public override string Name => "mounting";

    public override string Title => "Mounted shape and fewest screws of one rail";

    public override Findings Run()
    {
        var every = ScrewPattern.Every(350, 20, 5);
        var screws = every.EveryOther();
        var frees = Enumerable.Range(0, Rails).Select(Free).ToArray();
        var shapes = frees.Select(f => MountedShape.Of(f, screws, Stiffness)).ToArray();
        var file = Path.GetTempFileName();
        try
        {
            File.WriteAllLines(file, shapes.SelectMany(Lines).Prepend(Text(Stiffness)));
            using var peer = new PythonPeer("Mounting/mounting_peer.py", file);
            var (ours, theirs) = (shapes.Sum(s => s.WidestGapUm), peer.Answer("quadratic"));
            if (Math.Abs(ours - theirs) > 1e-4 * theirs)
                throw new InvalidOperationException($"The routes disagree, so their times mean nothing: {ours:R} and {theirs:R}.");
            Contender[] contenders =
            [
                Contender.Here("mounted shape", "MountedShape.Of: checks, splines, contact, forces, zones, as an immutable record.", count => Repeat(count, i => MountedShape.Of(frees[i], screws, Stiffness).ResidualUm)),
                Contender.Here("fewest screws", "ScrewChoice.Fewest over all 18 holes, with the best of each count as a mounted shape.", count => Repeat(count, i => ScrewChoice.Fewest(frees[i], every, LimitUm, Stiffness).BestOfEachCount[0].ResidualUm)),
                peer.Contender("quadratic", "SciPy quadratic program", "scipy.optimize.nnls over the gaps at the same nodes alone; stiffness matrix, its root and the free shape's load made before."),
            ];
            var contacts = string.Join(", ", shapes.Select(s => s.ContactsMm.Count.ToString(CultureInfo.InvariantCulture)));
            var timings = Interleaved.Measure(contenders, Rounds);
            string[] about =
            [
                $"Invented rails: {frees.Length} of 350 mm with 18 holes and 18 stations, a bow of 60 um either way and noise, in turn; every other hole screwed, looked at in {shapes[0].Mounted.Count} places of which these many are contacts: {contacts}. Both routes find the same widest gaps (checked in the run to 1e-4) before either is timed.",
                $"Wanted of one rail: mounted shape at most 2 ms, fewest screws at most 0.2 s. {Rounds} rounds; in each, every contender has a block, one after the other in one run. A ratio is the median of the ratios within rounds.",
            ];
            return new Findings(about, timings, [new("SciPy quadratic program", "mounted shape", "no target"), new("fewest screws", "mounted shape", "no target"), new("SciPy quadratic program", "fewest screws", "no target")], [peer.Ask("versions") + " (Debian)"]);
        }
        finally
        {
            File.Delete(file);
        }
    }

    private void Repeat(int count, Func<int, double> one)
    {
        for (var i = 0; i < count; i++)
            _kept += one(i % Rails);
    }

    private static Profile Free(int seed)
    {
        var random = new Random(seed + 1);
        double[] x = [.. Enumerable.Range(0, 18).Select(i => 5 + (20.0 * i))];
        return new Profile(x, [.. x.Select(v => ((seed % 2 == 0 ? 60 : -60) * 4 * v * (350 - v) / 122_500) + random.NextDouble())]);
    }

    private static IEnumerable<string> Lines(MountedShape shape)
    {
        var places = shape.Mounted.PositionsMm.ToArray();
        var heights = new double[places.Length];
        new StationCurve(shape.Free).Along(places, heights);
        yield return string.Join(',', places.Select(Text));
        yield return string.Join(',', heights.Select(Text));
        yield return string.Join(',', shape.Screws.ScrewsMm.Select(s => Array.BinarySearch(places, s).ToString(CultureInfo.InvariantCulture)));
    }

    private static string Text(double value) => value.ToString("R", CultureInfo.InvariantCulture);
}
