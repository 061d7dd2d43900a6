using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;

namespace Waywright;

/// <summary>
/// Finds readings that don't belong (Hampel's identifier, see <see cref="Sample.Outliers"/>): over the residuals of the aligned passes, or, where nothing was repeated, over
/// the distances of readings from the line through their neighbours. The furthest is set aside first and the rest judged again, for a spike pulls on its whole pass.
/// </summary>
internal static class Spikes
{
    private const int LeastResiduals = 8;

    // More than a fifth of a face's readings are no spikes: a loose dial, or passes over another rail.
    private const int MostShare = 5;

    // Of two readings at a station that differ, one is the spike if it stands this much further from its own neighbours than the other.
    private const double Decided = 2;

    private const double LeastDeviationUm = 1e-6;

    public static SweepFinding Clean(Sweep sweep, CleaningOptions options)
    {
        // A pass that mirrors the others would hide every spike; it is judged as if it had their sign.
        var rest = MirroredPasses.Clean(sweep, flip: true).Sweep;
        var places = sweep.Passes.Select(p => Enumerable.Range(0, p.PositionsMm.Count).ToList()).ToArray();
        var aside = new List<Spike>();
        while (Next(rest, options.SpikeLimit) is { Count: > 0 } next)
        {
            // From the back, so that no index moves before its turn.
            foreach (var suspect in next.OrderByDescending(s => s.Index))
            {
                aside.Add(new Spike(suspect.Pass, places[suspect.Pass][suspect.Index], suspect.Why, suspect.CanDrop));
                places[suspect.Pass].RemoveAt(suspect.Index);
                rest = SweepEdits.Without(rest, suspect.Pass, suspect.Index);
            }

            if (aside.Count * MostShare > sweep.ReadingCount)
                return SweepFinding.Nothing(sweep, $"{sweep.Name}: more than a fifth of the readings stand out, so they are no spikes; none is flagged. Look for a loose dial, or for passes over another rail.");
        }

        return aside.Count == 0 ? SweepFinding.Nothing(sweep) : Told(sweep, aside, options.DropSpikes);
    }

    private static SweepFinding Told(Sweep sweep, List<Spike> spikes, bool drop)
    {
        var dropped = drop ? spikes.Where(s => s.CanDrop).OrderByDescending(s => s.Index).ToList() : [];
        var cleaned = dropped.Aggregate(sweep, (s, spike) => SweepEdits.Without(s, spike.Pass, spike.Index));
        string[] notes = [];
        if (dropped.Count > 0 && !CanPool(cleaned))
        {
            notes = [$"{sweep.Name}: without its spikes the passes can't be aligned, so none is dropped. Sweep it again."];
            (dropped, cleaned) = ([], sweep);
        }

        return new SweepFinding(cleaned, [.. Readings(dropped, isGone: true)], [.. Readings(spikes.Except(dropped), isGone: false)], notes);

        IEnumerable<CleanedReading> Readings(IEnumerable<Spike> which, bool isGone)
            => which.OrderBy(s => s.Pass).ThenBy(s => s.Index).Select(s => SweepEdits.Reading(sweep, s.Pass, s.Index, isGone ? null : sweep.Passes[s.Pass].ReadingsUm[s.Index], s.Why));
    }

    /// <summary>The furthest reading beyond the limit; both of a station where nothing tells which; empty for none.</summary>
    private static List<Spike> Next(Sweep sweep, double limit)
    {
        var residuals = (sweep.Rail is null || sweep.Passes.Count < 2 ? null : FromPasses(sweep)) ?? FromNeighbours(sweep);
        if (residuals.Count < LeastResiduals)
            return [];
        var sample = new Sample(residuals.Select(r => r.Um));
        var beyond = sample.Outliers(limit, RoundingUm(sweep));
        if (beyond.Count == 0)
            return [];
        var worst = residuals[beyond.MaxBy(i => Math.Abs(residuals[i].Um - sample.Median))];
        if (worst.OfStation != 2)
            return [Suspected(worst, limit, null)];
        // Two readings lie at one distance from their mean: their own neighbours tell which it is.
        var other = residuals.First(r => r != worst && sweep.Passes[r.Pass].PositionsMm[r.Index] == sweep.Passes[worst.Pass].PositionsMm[worst.Index]);
        var (first, second) = (FromOwnNeighbours(sweep, worst), FromOwnNeighbours(sweep, other));
        if (first >= Decided * second)
            return [Suspected(worst, limit, true)];
        return second >= Decided * first ? [Suspected(other, limit, true)] : [Suspected(worst, limit, false), Suspected(other, limit, false)];
    }

    private static Spike Suspected(Residual r, double limit, bool? isTold)
    {
        var against = r.OfStation == 0 ? "its neighbours; a single pass can't tell a spike from a bump on the rail, so it is kept" : isTold switch
        {
            false => "the other passes; of two readings nothing tells which is wrong, so both are kept",
            true => "the other pass, and its neighbours",
            _ => "the other passes",
        };
        var why = string.Create(CultureInfo.InvariantCulture, $"more than {limit:0.#} standard deviations from {against}");
        return new Spike(r.Pass, r.Index, why, r.OfStation != 0 && isTold != false);
    }

    /// <summary>Residuals of the aligned passes from the mean of their station, all brought to one variance; null where the passes can't be aligned.</summary>
    private static List<Residual>? FromPasses(Sweep sweep)
    {
        PooledSweep pooled;
        try
        {
            pooled = PassAlignment.Align(sweep);
        }
        catch (InputException)
        {
            return null;
        }

        if (pooled.DegreesOfFreedom < LeastResiduals / 2)
            return null;
        var stations = new Dictionary<double, (double Sum, int Count)>();
        foreach (var (x, z) in pooled.Passes.SelectMany(p => p.Pass.PositionsMm.Zip(p.HeightsUm)))
        {
            var before = stations.GetValueOrDefault(x);
            stations[x] = (before.Sum + z, before.Count + 1);
        }

        var residuals = new List<Residual>();
        for (var k = 0; k < sweep.Passes.Count; k++)
        {
            var pass = sweep.Passes[k];
            for (var i = 0; i < pass.PositionsMm.Count; i++)
            {
                var (sum, count) = stations[pass.PositionsMm[i]];
                if (count > 1)
                    residuals.Add(new Residual(k, i, (pooled.Passes[k].HeightsUm[i] - (sum / count)) / Math.Sqrt(1 - (1.0 / count)), count));
            }
        }

        return residuals;
    }

    private static List<Residual> FromNeighbours(Sweep sweep)
    {
        var residuals = new List<Residual>();
        for (var k = 0; k < sweep.Passes.Count; k++)
        {
            for (var i = 1; i < sweep.Passes[k].PositionsMm.Count - 1; i++)
                residuals.Add(new Residual(k, i, FromLine(sweep.Passes[k], i, i - 1, i + 1), 0));
        }

        return residuals;
    }

    /// <summary>Distance of a reading from the line through two others, over the standard deviation it has for readings of deviation 1.</summary>
    private static double FromLine(SweepPass pass, int i, int a, int b)
    {
        var (x, z) = (pass.PositionsMm, pass.ReadingsUm);
        var share = x[b] > x[a] ? (x[i] - x[a]) / (x[b] - x[a]) : 0.5;
        return (z[i] - z[a] - (share * (z[b] - z[a]))) / Math.Sqrt(1 + (share * share) + ((1 - share) * (1 - share)));
    }

    private static double FromOwnNeighbours(Sweep sweep, Residual r)
    {
        var pass = sweep.Passes[r.Pass];
        var last = pass.PositionsMm.Count - 1;
        if (last < 2)
            return 0;
        return Math.Abs(r.Index == 0 ? FromLine(pass, 0, 1, 2) : r.Index == last ? FromLine(pass, last, last - 2, last - 1) : FromLine(pass, r.Index, r.Index - 1, r.Index + 1));
    }

    /// <summary>Standard deviation that the step of the readings alone gives: the smallest step between two of them over sqrt 12.</summary>
    private static double RoundingUm(Sweep sweep)
    {
        var steps = sweep.Passes.SelectMany(p => p.ReadingsUm).Distinct().Order().ToArray();
        var step = double.PositiveInfinity;
        for (var i = 1; i < steps.Length; i++)
            step = steps[i] - steps[i - 1] is var s && s > LeastDeviationUm ? Math.Min(step, s) : step;
        return double.IsFinite(step) ? Math.Max(LeastDeviationUm, step / Math.Sqrt(12)) : LeastDeviationUm;
    }

    private static bool CanPool(Sweep sweep)
    {
        try
        {
            return sweep.Passes.All(p => p.PositionsMm.Count > 1) && PassAlignment.Align(sweep).Profile.Count > 1;
        }
        catch (InputException)
        {
            return false;
        }
    }

    /// <param name="Pass">Which pass.</param>
    /// <param name="Index">Which reading of it.</param>
    /// <param name="Um">Scaled residual.</param>
    /// <param name="OfStation">Readings at its station; 0 where it was judged by its neighbours.</param>
    private sealed record Residual(int Pass, int Index, double Um, int OfStation);

    private sealed record Spike(int Pass, int Index, string Why, bool CanDrop);
}
