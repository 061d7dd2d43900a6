using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;

namespace Waywright;

/// <summary>Difference between forward and back passes of a lay at the stations that both have: mean, and scatter about a line.</summary>
internal static class Retrace
{
    public static string Note(Sweep sweep)
    {
        if (Of(sweep) is not { } d)
            return "";
        var scatter = d.ScatterUm is { } s ? $", {NumberText.Rounded(s, 1)} um standard deviation about a line" : "";
        return string.Create(CultureInfo.InvariantCulture, $"{sweep.Name}: forward less back {NumberText.Rounded(d.MeanUm, 1)} um on average over {d.Stations} stations{scatter}.");
    }

    public static string Found(IReadOnlyList<Sweep> sweeps)
    {
        var all = sweeps.Select(s => (s.Name, Difference: Of(s))).Where(d => d.Difference is not null).Select(d => (d.Name, Difference: d.Difference!)).ToArray();
        if (all.Length == 0)
            return "Nothing changed: no face was swept forward and back in one lay, so retrace doesn't show.";
        var mean = Between(all.Min(d => d.Difference.MeanUm), all.Max(d => d.Difference.MeanUm));
        var worst = all.MaxBy(d => d.Difference.ScatterUm ?? -1);
        var scatter = worst.Difference.ScatterUm is { } s ? $", and scatters by up to {NumberText.Rounded(s, 1)} um about a line ({worst.Name})" : "";
        return $"Nothing changed: forward less back is {mean} um on average{scatter}; the average is retrace only where nothing was moved or set to zero between.";
    }

    private static string Between(double low, double high)
        => NumberText.Rounded(low, 1) is var a && NumberText.Rounded(high, 1) is var b && a == b ? a : $"{a} to {b}";

    private static DirectionDifference? Of(Sweep sweep)
    {
        if (sweep.Rail is null)
            return null;
        var (sum, count, squares, freedom) = (0.0, 0, 0.0, 0);
        foreach (var lay in sweep.Passes.GroupBy(p => p.Lay))
        {
            var (forward, back) = (Means(lay, "forward"), Means(lay, "back"));
            var x = forward.Keys.Where(back.ContainsKey).Order().ToArray();
            if (x.Length == 0)
                continue;
            var difference = Array.ConvertAll(x, at => forward[at] - back[at]);
            sum += difference.Sum();
            count += x.Length;
            squares += SweepEdits.Level(x, difference).Sum(v => v * v);
            freedom += Math.Max(0, x.Length - 2);
        }

        return count == 0 ? null : new DirectionDifference(sum / count, freedom > 0 ? Math.Sqrt(squares / freedom) : null, count);
    }

    private static Dictionary<double, double> Means(IEnumerable<SweepPass> passes, string direction)
        => passes.Where(p => p.Direction == direction).SelectMany(p => p.PositionsMm.Zip(p.ReadingsUm)).GroupBy(r => r.First).ToDictionary(g => g.Key, g => g.Average(r => r.Second));

    private sealed record DirectionDifference(double MeanUm, double? ScatterUm, int Stations);
}
