using System;
using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>What a mounted top departs from its prediction by: one place that is raised or lowered, or a bow.</summary>
internal static class MountedCheckCauses
{
    // Of two causes that explain nearly as much, the one that is quicker to put right is named: by a factor of e in likelihood.
    private const double AboutAsGood = 2;
    private const double AboutOne = 0.3;

    /// <summary>Fits each and takes the one that explains most.</summary>
    public static MountedCause Best(MountedShape predicted, Profile swept, MountedCheckFit fit, double degreesOfFreedom)
    {
        double[] at = [.. swept.PositionsMm];
        var fitted = new List<(MountedCandidate Cause, double Size, double U, double Fall)>();
        foreach (var cause in Loose(predicted, at).Concat(Raised(predicted, at)).Append(Bow(predicted.Screws.LengthMm, at)))
        {
            // A screw that doesn't pull lifts the rail by as much as it lies higher without it: once, not three times.
            if (fit.Share(cause.Shape) is var (size, u, fall) && (!cause.IsLoose || Math.Abs((size / cause.Lift) - 1) <= Math.Max(AboutOne, 2 * u / cause.Lift)))
                fitted.Add((cause, size, u, fall));
        }

        if (fitted.Count == 0)
            return new(MountedDeparture.Unexplained, predicted.Screws.LengthMm / 2, null, Uncertain.Exact(0), false);
        var most = fitted.Max(f => f.Fall);
        var best = fitted.Where(f => f.Fall >= most - (f.Cause.IsLoose ? AboutAsGood : 0)).OrderByDescending(f => f.Cause.IsLoose).ThenByDescending(f => f.Fall).First();
        var explained = fit.Chance(degreesOfFreedom, (best.Fall, 2)) >= MountedCheck.DoubtBelow;
        var kind = !explained ? MountedDeparture.Unexplained
            : best.Cause.IsLoose ? MountedDeparture.LooseScrew
            : best.Cause.IsBow ? MountedDeparture.BentBase
            : best.Size > 0 ? MountedDeparture.Chip : MountedDeparture.LowBase;
        return new(kind, best.Cause.AtMm, best.Cause.Hole, Uncertain.Input(new object(), "difference of sweep and prediction", best.Size, best.U, degreesOfFreedom), explained);
    }

    // Each screw taken out in turn, as far as the rail rises there; the shape is 1 um high at its screw.
    private static IEnumerable<MountedCandidate> Loose(MountedShape shape, double[] at)
    {
        var screws = shape.Screws;
        for (var i = 0; i < screws.Holes.Count && screws.Holes.Count > 2; i++)
        {
            var x = screws.ScrewsMm[i];
            var without = MountedShape.Of(shape.Free, screws.InHoles([.. screws.Holes.Where((_, k) => k != i)]), shape.BendingStiffnessNm2, shape.Base, shape.BaseStiffnessNm2);
            var lift = without.HeightUm(x) - shape.HeightUm(x);
            if (lift > 0)
                yield return new(x, screws.Holes[i], Array.ConvertAll(at, p => (without.HeightUm(p) - shape.HeightUm(p)) / lift)) { Lift = lift };
        }
    }

    // At each screw and half-way to the next. What is raised there lifts the rail off the base on both sides, up to the next screws at least.
    private static IEnumerable<MountedCandidate> Raised(MountedShape shape, double[] at)
    {
        var screws = shape.Screws.ScrewsMm.ToArray();
        foreach (var x in screws.Concat(screws.Zip(screws.Skip(1), (a, b) => (a + b) / 2)))
        {
            var hole = Array.IndexOf(screws, x) is >= 0 and var i ? shape.Screws.Holes[i] : (int?)null;
            var (low, high) = (screws.LastOrDefault(s => s < x, double.NegativeInfinity), screws.FirstOrDefault(s => s > x, double.PositiveInfinity));
            yield return new(x, hole, Peak(screws, x, at));
            if (shape.ContactsMm.Any(c => c < low || c > high))
                yield return new(x, hole, Peak([.. screws.Concat(shape.ContactsMm.Where(c => c < low || c > high)).Order()], x, at));
        }
    }

    private static MountedCandidate Bow(double length, double[] at)
        => new(length / 2, null, Array.ConvertAll(at, x => 4 * x * (length - x) / (length * length))) { IsBow = true };

    // The spline that is 1 at a place and 0 at the screws and contacts around it.
    private static double[] Peak(double[] knots, double place, double[] at)
    {
        double[] x = [.. knots.Where(k => Math.Abs(k - place) > MountedShape.JointMm).Append(place).Order()];
        var y = Array.ConvertAll(x, k => k == place ? 1.0 : 0);
        var along = new double[at.Length];
        new NaturalSpline(x, y, new double[2 * x.Length]).Along(at, along);
        return along;
    }
}

/// <summary>A cause that may be fitted: its place, and what 1 um of it does at the stations.</summary>
internal sealed record MountedCandidate(double AtMm, int? Hole, double[] Shape)
{
    /// <summary>How much the rail rises where its screw is taken out, um; 0 for other causes.</summary>
    public double Lift { get; init; }

    public bool IsLoose => Lift > 0;

    public bool IsBow { get; init; }
}

/// <summary>One cause with its place and size.</summary>
internal sealed record MountedCause(MountedDeparture Kind, double AtMm, int? Hole, Uncertain SizeUm, bool IsExplained);
