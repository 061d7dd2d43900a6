using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;

namespace Waywright;

/// <summary>Holds the stations of sweeps against the rails they were swept on: on the rail, and on a top face out of the counterbores by the tip's radius.</summary>
internal static class StationCheck
{
    // Positions are read off a rule: a station that ends at the rail's end is on it.
    private const double SlackMm = 1e-6;

    public static void Check(SweepBatch batch, RailStock stock, double? tipRadiusMm)
    {
        if (tipRadiusMm is { } radius && !(radius >= 0 && double.IsFinite(radius)))
            throw new ArgumentOutOfRangeException(nameof(tipRadiusMm), radius, "The radius of a tip is 0 mm or more.");
        var problems = new ProblemList(batch.Source);
        var rails = stock.Rails.ToDictionary(r => r.Name, StringComparer.Ordinal);
        foreach (var sweep in batch.Sweeps.Where(s => s.Rail is not null))
        {
            if (rails.TryGetValue(sweep.Rail!, out var rail))
                Check(sweep, rail, stock.Source, tipRadiusMm, problems);
            else
                problems.Add(null, null, $"{sweep.Name}, a rail that {stock.Source} doesn't list", $"one of {Some([.. stock.Rails.Select(r => r.Name)])}");
        }

        problems.ThrowIfAny();
    }

    private static void Check(Sweep sweep, RailStock.Rail rail, string source, double? tipRadiusMm, ProblemList problems)
    {
        var stations = sweep.Passes.SelectMany(p => p.PositionsMm).Distinct().Order().ToArray();
        var off = stations.Where(x => x < -SlackMm || x > rail.LengthMm + SlackMm).ToArray();
        foreach (var x in off)
            problems.Add(null, null, $"{sweep.Name} at {NumberText.Plain(x)} mm ({Passes(sweep, x)})", $"a station on the rail: from 0 to {NumberText.Plain(rail.LengthMm)} mm");
        if (sweep.Face != RailFace.Top || tipRadiusMm is not { } tip)
            return;
        if (rail.CounterboreMm is not { } diameter)
        {
            problems.Add(null, null, $"{sweep.Name} and no counterbore_mm for {rail.Name} in {source}", "the diameter of its counterbores: stations on a top face are held against it");
            return;
        }

        foreach (var x in stations.Except(off))
        {
            var hole = rail.NearestHoleMm(x);
            if (Math.Abs(x - hole) < (diameter / 2) + tip - SlackMm)
            {
                problems.Add(null, null, $"{sweep.Name} at {NumberText.Plain(x)} mm ({Passes(sweep, x)}), in the counterbore of the hole at {NumberText.Plain(hole)} mm",
                    $"a station {NumberText.Plain((diameter / 2) + tip)} mm or more from a hole's middle (half of {NumberText.Plain(diameter)} mm and the tip's {NumberText.Plain(tip)} mm)");
            }
        }
    }

    private static string Passes(Sweep sweep, double position) => Some([.. sweep.Passes.Where(p => p.PositionsMm.Contains(position)).Select(SweepEdits.NameOf)]);

    private static string Some(IReadOnlyList<string> names)
        => names.Count <= 4 ? string.Join(", ", names) : string.Create(CultureInfo.InvariantCulture, $"{string.Join(", ", names.Take(3))} and {names.Count - 3} more");
}
