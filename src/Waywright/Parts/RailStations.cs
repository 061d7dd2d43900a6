using System;
using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>Where a dial is read along a rail: between the holes and near both ends, never over a hole, where a tip falls into the counterbore.</summary>
internal static class RailStations
{
    // About as far apart as a measuring plan takes stations by default, and no fewer than it does.
    private const double SpacingMm = 25;
    private const int Fewest = 8;

    // Off the chamfer of the end; common practice, no source.
    private const double FromEndMm = 4;

    // Nearer to the first hole than this share of its distance, a station would be in its counterbore.
    private const double MostOfEndDistance = 0.4;

    public static IReadOnlyList<double> Of(double lengthMm, double pitchMm, IReadOnlyList<double> holesMm)
    {
        var (first, last) = (holesMm[0], holesMm[^1]);
        var (nearEnd, farEnd) = (Math.Min(FromEndMm, MostOfEndDistance * first), Math.Min(FromEndMm, MostOfEndDistance * (lengthMm - last)));
        for (var parts = Math.Max(1, (int)Math.Round(pitchMm / SpacingMm)); ; parts++)
        {
            var step = pitchMm / parts;
            var stations = Ends(nearEnd, first, step).Concat(holesMm.SkipLast(1).SelectMany(hole => Enumerable.Range(0, parts).Select(i => hole + ((i + 0.5) * step))))
                .Concat(Ends(farEnd, lengthMm - last, step).Reverse().Select(x => lengthMm - x)).ToArray();
            if (stations.Length >= Fewest)
                return FixedList<double>.Own(stations);
        }
    }

    // From an end towards its hole: one near the end, and more at even steps where the hole is far.
    private static IEnumerable<double> Ends(double nearEnd, double toHole, double step)
    {
        yield return nearEnd;
        var places = (int)Math.Floor(toHole / step);
        for (var i = places; i >= 0; i--)
        {
            if (toHole - (step / 2) - (i * step) > nearEnd + (step / 3))
                yield return toHole - (step / 2) - (i * step);
        }
    }
}
