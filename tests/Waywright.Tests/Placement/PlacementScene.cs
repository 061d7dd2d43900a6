using System.Globalization;
using System.Text;

namespace Waywright.Tests;

/// <summary>Invented rails and positions for tests of placement.</summary>
internal static class PlacementScene
{
    public const double LengthMm = 320;
    public static readonly double[] Stations = [.. Enumerable.Range(0, 17).Select(i => 20.0 * i)];

    /// <summary>Two bows, a wave and a kink of random size; the side stays below 30 um where <paramref name="size"/> is 1.</summary>
    public static Func<double, double> Shape(Random random, double size)
    {
        var (bow, skew, wave) = (size * 20 * (random.NextDouble() - 0.5), size * 6 * (random.NextDouble() - 0.5), size * 3 * (random.NextDouble() - 0.5));
        return x =>
        {
            var t = x / LengthMm;
            return Math.Round((bow * 4 * t * (1 - t)) + (skew * Math.Sin(2 * Math.PI * t)) + (wave * Math.Cos(3 * Math.PI * t)), 2);
        };
    }

    public static GradedBatch Batch(IEnumerable<(string Rail, Func<double, double> Side, Func<double, double> Top)> rails)
    {
        var text = new StringBuilder("rail,face,pass,direction,position_mm,reading_um\n");
        foreach (var (rail, side, top) in rails)
        {
            foreach (var (face, height) in new[] { ("side", side), ("top", top) })
            {
                foreach (var x in Stations)
                    text.Append(CultureInfo.InvariantCulture, $"{rail},{face},1,forward,{x},{height(x)}\n");
            }
        }

        return SweepBatch.Parse(text.ToString(), "s.csv").Grade(stock: Holes.Of(rails.Select(r => r.Rail)));
    }

    public static GradedBatch RandomBatch(int rails, int seed, double size = 1)
    {
        var random = new Random(seed);
        return Batch(Enumerable.Range(1, rails).Select(i => (string.Create(CultureInfo.InvariantCulture, $"R{i:000}"), Shape(random, size), Shape(random, size))).ToArray());
    }

    public static MachinePlan Plan(string positions, int machines = 1)
        => MachinePlan.Parse(string.Create(CultureInfo.InvariantCulture, $$"""{"machines":{{machines}},"positions":[{{positions}}]}"""), "positions.json");

    public static string Position(string name, string more = "", string grade = "z", string face = "side")
        => $$"""{"name":"{{name}}","width_mm":9,"length_mm":320,"grade":"{{grade}}","face":"{{face}}"{{(more.Length == 0 ? "" : "," + more)}}}""";
}
