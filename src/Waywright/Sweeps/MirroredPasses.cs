using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;

namespace Waywright;

/// <summary>
/// Finds passes recorded with the opposite sign: their shape, less its line, is the mirror image of the other passes'. Two passes hang together where the correlation of
/// their shapes over the stations they share is at least 0.5 in size and has a chance below 1e-4 for readings without a common shape (Student's t, n - 3 degrees of freedom).
/// </summary>
internal static class MirroredPasses
{
    private const double LeastCorrelation = 0.5;
    private const double Chance = 1e-4;
    private const int LeastStations = 5;

    public static SweepFinding Clean(Sweep sweep, bool flip)
    {
        var passes = sweep.Passes.Count;
        if (sweep.Rail is null || passes < 2)
            return SweepFinding.Nothing(sweep);
        var links = LinksOf(sweep);
        if (!links.Any(l => l.Correlation < 0))
            return SweepFinding.Nothing(sweep);
        var signs = SignsOf(passes, links);
        var mirrored = Mirrored(sweep, signs);
        if (mirrored is null)
            return SweepFinding.Nothing(sweep, $"{sweep.Name}: as many passes mirror the others as don't, so nothing tells which have the right sign. Look them up in your notes.");
        var readings = new List<CleanedReading>();
        var cleaned = sweep;
        foreach (var k in mirrored)
        {
            var r = links.Where(l => (l.A == k) != (l.B == k) && !mirrored.Contains(l.A == k ? l.B : l.A)).Select(l => l.Correlation).DefaultIfEmpty(-1).Min();
            var why = string.Create(CultureInfo.InvariantCulture, $"the pass mirrors the others: correlation {r:0.00}");
            var z = sweep.Passes[k].ReadingsUm;
            var turned = z.Select(v => 0 - v).ToArray();
            readings.AddRange(Enumerable.Range(0, z.Count).Select(i => SweepEdits.Reading(sweep, k, i, flip ? turned[i] : z[i], why)));
            if (flip)
                cleaned = SweepEdits.WithReadings(cleaned, k, turned);
        }

        return new SweepFinding(cleaned, flip ? readings : [], flip ? [] : readings, []);
    }

    /// <summary>Which passes have the wrong sign: the fewer; of equally many, those of the way back. Null where nothing tells.</summary>
    private static int[]? Mirrored(Sweep sweep, int[] signs)
    {
        var (plus, minus) = (With(1), With(-1));
        if (plus.Length != minus.Length)
            return plus.Length < minus.Length ? plus : minus;
        if (IsBack(minus) && plus.All(k => !IsBack([k])))
            return minus;
        return IsBack(plus) && minus.All(k => !IsBack([k])) ? plus : null;

        int[] With(int sign) => [.. Enumerable.Range(0, signs.Length).Where(k => signs[k] == sign)];

        bool IsBack(int[] group) => group.All(k => sweep.Passes[k].Direction == "back");
    }

    /// <summary>Signs of the passes against each other, along the strongest links; 0 for passes outside the largest group that hangs together.</summary>
    private static int[] SignsOf(int passes, List<Link> links)
    {
        var group = Enumerable.Range(0, passes).ToArray();
        var signs = Enumerable.Repeat(1, passes).ToArray();
        foreach (var link in links.OrderByDescending(l => Math.Abs(l.Correlation)))
        {
            var (from, to) = (group[link.B], group[link.A]);
            if (from == to)
                continue;
            var turn = Math.Sign(link.Correlation) * signs[link.A] * signs[link.B];
            for (var k = 0; k < passes; k++)
            {
                if (group[k] == from)
                    (group[k], signs[k]) = (to, turn * signs[k]);
            }
        }

        var largest = group.GroupBy(g => g).OrderByDescending(g => g.Count()).First().Key;
        return [.. signs.Select((s, k) => group[k] == largest ? s : 0)];
    }

    private static List<Link> LinksOf(Sweep sweep)
    {
        var links = new List<Link>();
        for (var a = 0; a < sweep.Passes.Count; a++)
        {
            for (var b = a + 1; b < sweep.Passes.Count; b++)
            {
                if (Correlation(sweep.Passes[a], sweep.Passes[b]) is { } r)
                    links.Add(new Link(a, b, r));
            }
        }

        return links;
    }

    /// <summary>Correlation of two shapes over the stations they share; null where it is no proof that they are alike or mirrored.</summary>
    private static double? Correlation(SweepPass a, SweepPass b)
    {
        var (x, za, zb) = (new List<double>(), new List<double>(), new List<double>());
        for (int i = 0, j = 0; i < a.PositionsMm.Count && j < b.PositionsMm.Count;)
        {
            var side = a.PositionsMm[i].CompareTo(b.PositionsMm[j]);
            if (side == 0)
            {
                x.Add(a.PositionsMm[i]);
                za.Add(a.ReadingsUm[i]);
                zb.Add(b.ReadingsUm[j]);
            }

            i += side <= 0 ? 1 : 0;
            j += side >= 0 ? 1 : 0;
        }

        if (x.Count < LeastStations)
            return null;
        var (la, lb) = (SweepEdits.Level(x, za), SweepEdits.Level(x, zb));
        var scale = Math.Sqrt(la.Sum(v => v * v)) * Math.Sqrt(lb.Sum(v => v * v));
        // Shapes that are nothing but rounding have no correlation.
        if (!(scale > 1e-12 * x.Count))
            return null;
        var r = la.Zip(lb, (p, q) => p * q).Sum() / scale;
        var freedom = x.Count - 3;
        var t = Math.Abs(r) * Math.Sqrt(freedom / Math.Max(1e-300, 1 - (r * r)));
        return Math.Abs(r) >= LeastCorrelation && t > StudentQuantile.Of(1 - Chance, freedom) ? r : null;
    }

    private sealed record Link(int A, int B, double Correlation);
}
