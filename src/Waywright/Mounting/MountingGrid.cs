using System;
using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>Where a mounted rail is looked at: its holes, its stations, and about every millimetre between them.</summary>
internal static class MountingGrid
{
    private const double StepMm = 1;
    private const int MostSteps = 1000;

    // Two places much closer than a step would tell nothing more and cost the search its digits.
    private const double ClosestOfStep = 0.25;

    /// <summary>Rising places from end to end of the rail, the same for all patterns of its holes.</summary>
    public static double[] Of(ScrewPattern screws, Profile free, Profile? under)
    {
        var step = Math.Max(StepMm, screws.LengthMm / MostSteps);
        var steps = (int)Math.Ceiling(screws.LengthMm / step);
        var places = new SortedSet<double>(screws.HolesMm);
        var stations = under is null ? free.PositionsMm : free.PositionsMm.Concat(under.PositionsMm);
        foreach (var place in stations.Where(x => x >= 0 && x <= screws.LengthMm).Append(0).Append(screws.LengthMm).Concat(Enumerable.Range(1, steps - 1).Select(i => screws.LengthMm * i / steps)))
        {
            if (places.GetViewBetween(place - (ClosestOfStep * step), place + (ClosestOfStep * step)).Count == 0)
                places.Add(place);
        }

        return [.. places];
    }
}
