using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;

namespace Waywright;

/// <summary>
/// The dial's own error as a function of the reading r: waves e(r) = c cos(2 pi r / P) + d sin(2 pi r / P) with c and d each anywhere between limits, averaged over the readings
/// of each station. So a rail levelled until the dial hardly moves shows almost none of it, passes at other stand heights average it, passes at the same height share it.
/// </summary>
/// <remarks>
/// The period of the shortest wave is a tenth of a turn, its peak to valley at most the limit over a tenth of a turn; readings further apart than that take in waves of half a
/// turn, a turn and their whole spread, each adding to the waves before it what the limit over that travel allows more: see <see cref="DialLimits.For"/>. A permissible error
/// +/- a without a dial's limits is taken as 2 a peak to valley, half of it within a tenth of a turn (common practice, no source: tables of dials allow a third to two thirds
/// there), a turn as 100 divisions or 200 um, whichever is more (common practice, no source). Root mean square of c cos + d sin at a random phase: a wave whose amplitude is
/// anywhere up to its limit.
/// </remarks>
internal static class DialWaves
{
    private const string Level = "level the rail until both ends read alike within 10 um, and set the stand to another height between passes";

    public static IEnumerable<ErrorShape> Of(Instrument dial, PooledSweep pooled, StationMeans means, double factor)
    {
        if (LimitsOf(dial) is not { } limits)
            yield break;
        var remedy = dial.Dial is null ? "check the dial against known values, or " + Level : Level;
        var passes = pooled.Sweep.Passes;
        var spread = passes.Max(p => p.ReadingsUm.Max()) - passes.Min(p => p.ReadingsUm.Min());
        (double Period, double PeakToValley, string Name)[] waves =
        [
            (limits.TurnUm / 10, limits.TenthTurnUm, "a tenth of a turn"),
            (limits.TurnUm / 2, limits.HalfTurnUm - limits.TenthTurnUm, "half a turn"),
            (limits.TurnUm, limits.OneTurnUm - limits.HalfTurnUm, "a turn"),
            (Math.Max(limits.TurnUm, spread), limits.FullRangeUm - limits.OneTurnUm, "all readings"),
        ];
        var allowed = limits.For(spread);
        var taken = 0.0;
        foreach (var (period, peakToValley, name) in waves)
        {
            // The limit that applies to this spread is filled up by the waves that are no longer than needed.
            var part = Math.Min(peakToValley, allowed - taken);
            taken += Math.Max(0, part);
            if (!(part > 0))
                continue;
            // Amplitudes reach sqrt 3 in each of two directions, sqrt 6 together: part / 2 there.
            var size = factor * part / 2 / Math.Sqrt(6);
            yield return Wave("cosine", Math.Cos);
            yield return Wave("sine", Math.Sin);

            ErrorShape Wave(string kind, Func<double, double> of) => new(
                string.Create(CultureInfo.InvariantCulture, $"dial {dial.Name}: wave of {name}, {kind}"),
                means.Of(k => [.. passes[k].ReadingsUm.Select(r => size * of(2 * Math.PI * (r / period)))]),
                double.PositiveInfinity,
                IsRectangular: true,
                AveragesOut.Relaying,
                remedy);
        }
    }

    private static DialLimits? LimitsOf(Instrument dial)
    {
        if (dial.Dial is not null)
            return dial.Dial;
        var turn = Math.Max(100 * dial.Division, 200);
        return dial.PermissibleError is { } a ? new DialLimits(turn, a, 2 * a, 2 * a, 2 * a, 0, 0) : null;
    }
}
