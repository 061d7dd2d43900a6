using System;
using System.Linq;
using System.Threading;

namespace Waywright;

/// <summary>Simulated sweeps of a plan, judged by the bounds that a grade is given by.</summary>
internal sealed class MeasuringPlanTrials(int trials, ulong seed, CancellationToken cancel)
{
    // Trials behind each bound, and how many of the doubtful sweeps are bounded in full: they are picked evenly in order of their figure.
    private const int BoundTrials = 1000;
    private const int MostBounds = 24;

    // The upper bound of a figure stakes between 5 and 10 % on its one comparison: see UncertainFigure.
    private const double LeastStake = 0.05;
    private const double LargestStake = 0.10;

    /// <summary>What the set-up reads on a straight rail: the average, and the 95 % point.</summary>
    public (double Mean, double Floor) Straight(MeasuringPlanSweep plan)
    {
        var noise = FigureWork.Noise(FigureOf(plan), Draw(plan, 0, trials, seed), cancel);
        var at = 0.95 * (noise.Length - 1);
        var below = noise[(int)at];
        return (noise.Average(), below + ((at - (int)at) * (noise[Math.Min(noise.Length - 1, (int)at + 1)] - below)));
    }

    /// <summary>Chance that a rail at half the limit is found within the limit at 95 %, one-sided.</summary>
    public double Chance(MeasuringPlanSweep plan, double limitUm) => Accepted(plan, limitUm, least: null);

    /// <summary>Whether that chance is at least <see cref="MeasuringPlan.WantedChance"/>.</summary>
    public bool Decides(MeasuringPlanSweep plan, double limitUm) => Accepted(plan, limitUm, MeasuringPlan.WantedChance) >= MeasuringPlan.WantedChance;

    // With a least chance it stops as soon as that is sure or out of reach.
    private double Accepted(MeasuringPlanSweep plan, double limitUm, double? least)
    {
        cancel.ThrowIfCancellationRequested();
        var figure = FigureOf(plan);
        var sweeps = Draw(plan, limitUm / 2, trials, seed);
        var widest = WidestError.Of(figure, sweeps.Errors);
        var surely = limitUm - (StudentQuantile.Of(1 - LeastStake, widest.DegreesOfFreedom) * widest.Um);
        var perhaps = limitUm - (StudentQuantile.Of(1 - LargestStake, widest.DegreesOfFreedom) * widest.Um);
        var rail = figure.Stations.Residuals(plan.Bow(limitUm / 2));
        var read = Enumerable.Range(0, sweeps.Trials).Select(t => (Trial: t, Um: figure.At(Sum(rail, sweeps.All(t)), rail).Value)).OrderBy(r => r.Um).ToArray();
        var sure = read.Count(r => r.Um <= surely);
        var doubtful = read.Where(r => r.Um > surely && r.Um <= perhaps).ToArray();
        var (low, high) = ((double)sure / read.Length, (double)(sure + doubtful.Length) / read.Length);
        if (doubtful.Length == 0 || low >= least)
            return low;
        if (high < least)
            return high;
        var bounds = Draw(plan, limitUm / 2, BoundTrials, seed + 1);
        var picked = Math.Min(MostBounds, doubtful.Length);
        var within = Enumerable.Range(0, picked).Count(i => UpperBound(figure, Sum(rail, sweeps.All(doubtful[((2 * i) + 1) * doubtful.Length / (2 * picked)].Trial)), bounds) <= limitUm);
        return (sure + ((double)within / picked * doubtful.Length)) / read.Length;
    }

    private double UpperBound(ZoneFigure figure, double[] heights, ErrorTrials bounds)
        => new UncertainFigure(ReferenceLineKind.MinimumZone, StraightnessParameter.STRt, FigureTrials.Of(figure, heights.AsSpan(0, figure.Stations.Count), bounds, null, cancel)).UpperBoundUm(1 - LeastStake);

    private ErrorTrials Draw(MeasuringPlanSweep plan, double bowUm, int count, ulong own) => ErrorTrials.Draw(new PreparedStations(plan.PositionsMm), plan.Errors(bowUm), count, own, cancel);

    private static ZoneFigure FigureOf(MeasuringPlanSweep plan) => new(new PreparedStations(plan.PositionsMm));

    private static double[] Sum(double[] rail, ReadOnlySpan<double> errors)
    {
        var sum = rail.ToArray();
        for (var i = 0; i < sum.Length; i++)
            sum[i] += errors[i];
        return sum;
    }
}
