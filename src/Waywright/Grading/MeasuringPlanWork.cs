using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading;

namespace Waywright;

/// <summary>Works a plan out.</summary>
internal static class MeasuringPlanWork
{
    public const string Scatter = "scatter of the readings";
    public const string Rounding = "rounding of the readings";
    public const string Guide = "the guide's own error";
    public const string DialError = "the dial's own error";

    // Less than this share of the scatter is next to nothing.
    private const double Negligible = 0.001;

    public static MeasuringPlan Of(MeasuringPlanSweep plan, double limitUm, bool isGuideKnown, int count, ulong seed, CancellationToken cancel)
    {
        var trials = new MeasuringPlanTrials(count, seed, cancel);
        var search = new MeasuringPlanSearch(trials);
        var (mean, floor) = trials.Straight(plan);
        var plain = new MeasuringPlan(plan, limitUm, isGuideKnown, seed) { NoiseFloorUm = floor, StraightReadingUm = mean, LargestGuideUm = search.Guide(plan, limitUm), Budget = Budget(plan, limitUm / 2) };
        if (!isGuideKnown)
            return plain;
        var chance = trials.Chance(plan, limitUm);
        var decides = chance >= MeasuringPlan.WantedChance;
        var passes = decides && plan.Passes == plan.Lays ? plan.Passes : search.Passes(plan, limitUm, decides);
        var settles = decides || passes is not null;
        return plain with
        {
            ChanceHalfLimitAccepted = chance,
            SmallestDecidableLimitUm = search.SmallestLimit(plan, limitUm, decides),
            PassesNeeded = passes,
            LaysNeeded = settles ? null : search.Lays(plan, limitUm),
            FinerDial = settles ? null : search.FinerDial(plan, limitUm),
        };
    }

    // What repeating takes away and what it leaves of rounding are two lines: their remedies differ.
    private static FixedList<UncertaintyComponent> Budget(MeasuringPlanSweep plan, double bowUm)
    {
        var errors = plan.Errors(bowUm);
        var figure = new ZoneFigure(new PreparedStations(plan.PositionsMm));
        var widest = figure.WidestOfStations();
        var scatter = plan.Dial.Repeatability / Math.Sqrt(plan.Passes);
        var rounding = Math.Sqrt(errors.StationUm.Max(u => Math.Max(0, (u * u) - (scatter * scatter))));
        var shapes = ErrorBudget.Of(figure, errors).Where(c => c.Name != ErrorBudget.Stations);
        var lines = new List<UncertaintyComponent>(shapes.Select(c => c with { Name = c.Name.StartsWith("guide ", StringComparison.Ordinal) ? Guide : DialError }));
        if (scatter > 0)
            lines.Add(new(Scatter, widest * scatter, errors.StationDegreesOfFreedom, AveragesOut.Repeating, "take more passes"));
        if (rounding > Negligible * scatter)
            lines.Add(new(Rounding, widest * rounding, double.PositiveInfinity, AveragesOut.Relaying, plan.Dial.ReadTo == ReadTo.Tenth ? "use a finer dial" : "read between the marks, or use a finer dial"));
        return FixedList<UncertaintyComponent>.Copy(lines.OrderByDescending(c => c.StandardUncertainty));
    }
}
