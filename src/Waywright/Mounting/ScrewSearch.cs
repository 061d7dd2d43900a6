using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading;

namespace Waywright;

/// <summary>Tries patterns of screws on one rail: the regular ones, one screw after another dropped where it is missed least, and screws moved.</summary>
internal sealed class ScrewSearch(MountingCase given, double limitUm, CancellationToken cancel)
{
    // A search is to take a fraction of a second.
    private const int MostMoves = 150;

    private readonly LaidRail _laid = new(given);
    private readonly ScrewPattern _all = given.Screws;
    private int _moves;

    /// <summary>How good a pattern is; <paramref name="Excess"/> is by how much the most loaded screw is beyond the clamp limit, N.</summary>
    private readonly record struct Trial(ScrewPattern Pattern, bool IsRegular, double ResidualUm, double Excess);

    /// <summary>From two screws to all.</summary>
    public IReadOnlyList<ScrewPattern> BestOfEachCount()
    {
        var count = _all.HolesMm.Count;
        var trials = Regular().Concat(Dropping()).ToLookup(t => t.Pattern.Holes.Count);
        var best = Enumerable.Range(2, count - 1).Select(n => trials[n].MinBy(Rank)).ToArray();
        var fewest = Array.FindIndex(best, Meets);
        // One screw fewer than what is known to do: moving screws may still make it do.
        while (fewest > 0 && Moved(best[fewest - 1]) is var moved && Meets(moved))
            best[--fewest] = moved;
        return [.. best.Select(t => t.Pattern)];
    }

    private bool Meets(Trial trial) => trial.Excess == 0 && trial.ResidualUm <= limitUm;

    private (double Excess, bool Misses, bool IsOdd, double ResidualUm) Rank(Trial trial)
        => (trial.Excess, trial.ResidualUm > limitUm, trial.ResidualUm <= limitUm && !trial.IsRegular, trial.ResidualUm);

    /// <summary>One screw at a time moved to the empty hole where that helps most, until none does or it is good enough.</summary>
    private Trial Moved(Trial best)
    {
        while (!Meets(best) && _moves < MostMoves)
        {
            var empty = _all.Holes.Except(best.Pattern.Holes).ToArray();
            var moves = best.Pattern.Holes.SelectMany(from => empty.Select(to => best.Pattern.Holes.Where(h => h != from).Append(to)));
            var next = moves.Select(holes => Try(_all.Chosen(holes, "chosen holes"), isRegular: false)).MinBy(t => (t.Excess, t.ResidualUm));
            _moves += best.Pattern.Holes.Count * empty.Length;
            if ((next.Excess, next.ResidualUm).CompareTo((best.Excess, best.ResidualUm)) >= 0)
                break;
            best = next;
        }

        return best;
    }

    private IEnumerable<Trial> Regular()
    {
        var count = _all.HolesMm.Count;
        var patterns = Enumerable.Range(2, count - 1).Select(_all.OfCount);
        if (count > 2)
            patterns = patterns.Append(_all.EveryOther()).Append(_all.EveryOtherFromFarEnd()).Append(_all.EveryOtherFromBothEnds());
        return patterns.Select(p => Try(p, isRegular: true));
    }

    private IEnumerable<Trial> Dropping()
    {
        var left = _all.Holes.ToArray();
        while (left.Length > 2)
        {
            var best = left.Select(h => Try(_all.Chosen(left.Where(other => other != h), "chosen holes"), isRegular: false))
                .MinBy(t => (t.Excess, t.ResidualUm));
            yield return best;
            left = [.. best.Pattern.Holes];
        }
    }

    private Trial Try(ScrewPattern pattern, bool isRegular)
    {
        cancel.ThrowIfCancellationRequested();
        var screws = _laid.IndicesOf(pattern);
        var pressed = _laid.Press(screws, withContact: true);
        var residual = ProfileKernel.Solve(_laid.Places, _laid.Mounted(pressed, given.BaseShare), out _).Width;
        var pull = screws.Max(i => -pressed.ForceAt(i)) * MountedShape.NewtonPerUm * given.BendingStiffnessNm2 * given.BaseShare;
        return new Trial(pattern, isRegular, residual, given.ClampLimitN is { } limit && pull > limit ? pull - limit : 0);
    }
}
