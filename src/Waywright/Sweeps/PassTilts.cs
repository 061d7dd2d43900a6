using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>
/// Tilts of the passes. In a one-way pass read at an even pace, drift is a line over the position, which can't be told from tilt and goes with it; between forward and back
/// passes it changes sign, so half their difference is what drift alone would give.
/// </summary>
internal static class PassTilts
{
    public static string Note(Sweep sweep)
    {
        var tilts = Of(sweep);
        if (tilts.Length == 0)
            return "";
        var text = $"{sweep.Name}: tilts of the passes from {Tenth(tilts.Min(t => t.UmPerM))} to {Tenth(tilts.Max(t => t.UmPerM))} um/m";
        var (forward, back) = (tilts.Where(t => !t.IsBack).ToArray(), tilts.Where(t => t.IsBack).ToArray());
        if (sweep.Rail is null || forward.Length == 0 || back.Length == 0)
            return text + ".";
        var half = (forward.Average(t => t.UmPerM) - back.Average(t => t.UmPerM)) / 2;
        return text + $"; forward and back share {Tenth(half)} um/m with opposite signs, {Tenth(half * tilts.Average(t => t.LengthMm) / 1000)} um along a pass if it is drift.";
    }

    public static string Found(IReadOnlyList<Sweep> sweeps)
    {
        var all = sweeps.Select(s => (s.Name, Tilts: Of(s))).Where(s => s.Tilts.Length > 1).Select(s => (s.Name, Range: s.Tilts.Max(t => t.UmPerM) - s.Tilts.Min(t => t.UmPerM))).ToArray();
        if (all.Length == 0)
            return "Nothing changed: linear drift in an evenly timed pass is tilt and doesn't show in a single pass.";
        var worst = all.MaxBy(s => s.Range);
        return $"Nothing changed: tilts of the passes of a face differ by up to {Tenth(worst.Range)} um/m ({worst.Name}); linear drift in an evenly timed pass is tilt, and alignment takes it off.";
    }

    private static string Tenth(double value) => NumberText.Rounded(value, 1);

    private static Tilt[] Of(Sweep sweep) => [.. sweep.Passes.Where(p => p.PositionsMm.Count > 1 && p.PositionsMm[^1] > p.PositionsMm[0]).Select(p =>
    {
        SweepEdits.Level(p.PositionsMm, p.ReadingsUm, out var slope);
        return new Tilt(slope * 1000, p.PositionsMm[^1] - p.PositionsMm[0], p.Direction == "back");
    })];

    private sealed record Tilt(double UmPerM, double LengthMm, bool IsBack);
}
