using System;
using System.Globalization;
using System.Linq;

namespace Waywright;

/// <summary>Why a sweep does not show the free rail's shape, where the way it was held says so.</summary>
internal static class HiddenShape
{
    public static string? Of(PooledSweep pooled)
    {
        if (pooled.Sweep.Setup is not { Holding: { } holding } setup)
            return null;
        var top = pooled.Sweep.Face == RailFace.Top;
        switch (holding.Kind)
        {
            case HoldingKind.Plate when top:
                return $"Hidden by weight: on a plate the rail's own weight presses {Arch(setup.Rail)} flat. Lay it on two supports to see its top.";
            case HoldingKind.Clamped:
                return "As clamped: clamps bend a rail, so this is not its free shape. Lay it on two supports, or on a plate for the side.";
            case HoldingKind.Screwed:
                return "As screwed down: this is the mounted shape, not the free one. Take the rail off to grade it.";
        }

        var lifting = SweepCorrections.Lifting(pooled).ToArray();
        return lifting.Length == 0
            ? null
            : $"Lifted by the dial: at {string.Join(", ", lifting.Select(NumberText.Plain))} mm its force lifts the rail off a support. Use a lighter indicator, or move the supports outwards.";
    }

    // An arch of uniform load on its ends: 5 w L^4 / (384 EI).
    private static string Arch(RailSection? rail) => rail is null
        ? "a low arch (under 17 um for a steel rail of 9 x 6.5 mm and 350 mm)"
        : string.Create(CultureInfo.InvariantCulture, $"an arch of up to {5 * rail.WeightNPerM * Math.Pow(rail.LengthMm / 1000, 4) / (384 * rail.TopStiffnessNm2) * 1e6:0} um");
}
