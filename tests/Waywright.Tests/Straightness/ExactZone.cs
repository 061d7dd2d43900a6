namespace Waywright.Tests.Straightness;

/// <summary>
/// The minimum zone of whole-number readings by looking at every pair of stations, in whole-number arithmetic: the width as a fraction, all optimal
/// slopes, and the stations that touch. An optimal slope is always that of a pair, because w(b) bends nowhere else.
/// </summary>
internal sealed record ExactZone(double Width, double LowestSlope, double HighestSlope, IReadOnlyList<(int Station, ZoneSide Side)> Contacts)
{
    public static ExactZone Of(long[] x, long[] z)
    {
        var slopes = Pairs(x, z).ToArray();
        var best = slopes.Min(s => new Fraction(Span(x, z, s), s.Run));
        var optimal = slopes.Where(s => new Fraction(Span(x, z, s), s.Run).CompareTo(best) == 0).ToArray();
        var (lowest, highest) = (optimal.Min(), optimal.Max());
        // Half-way between them, over the common denominator.
        var middle = new Fraction((lowest.Rise * highest.Run) + (highest.Rise * lowest.Run), 2 * lowest.Run * highest.Run);
        return new ExactZone(best.Value, lowest.Value, highest.Value, [.. Touching(x, z, middle)]);
    }

    private static IEnumerable<Fraction> Pairs(long[] x, long[] z)
    {
        for (var i = 0; i < x.Length; i++)
        {
            for (var j = 0; j < x.Length; j++)
            {
                if (x[j] > x[i])
                    yield return new Fraction(z[j] - z[i], x[j] - x[i]);
            }
        }
    }

    private static long Span(long[] x, long[] z, Fraction slope) => Heights(x, z, slope).Max() - Heights(x, z, slope).Min();

    private static IEnumerable<(int, ZoneSide)> Touching(long[] x, long[] z, Fraction slope)
    {
        var heights = Heights(x, z, slope);
        for (var i = 0; i < x.Length; i++)
        {
            if (heights[i] == heights.Max())
                yield return (i, ZoneSide.Upper);
            if (heights[i] == heights.Min())
                yield return (i, ZoneSide.Lower);
        }
    }

    // Heights from a line through the origin, times the slope's denominator.
    private static long[] Heights(long[] x, long[] z, Fraction slope) => [.. x.Zip(z, (at, height) => (height * slope.Run) - (at * slope.Rise))];

    private readonly record struct Fraction(long Rise, long Run) : IComparable<Fraction>
    {
        public double Value => (double)Rise / Run;

        public int CompareTo(Fraction other) => (Rise * other.Run).CompareTo(other.Rise * Run);
    }
}
