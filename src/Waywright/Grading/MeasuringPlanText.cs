using System.Collections.Generic;
using System.Globalization;
using System.Linq;

namespace Waywright;

/// <summary>A plan in words: the action first.</summary>
internal static class MeasuringPlanText
{
    public static string Verdict(MeasuringPlan plan)
    {
        if (!plan.IsGuideKnown)
            return $"Find out how straight the guide is before grading: against an unknown guide figures rank and pair rails, they decide no limit, {Limit(plan)} or any other.";
        var chance = $"a rail at half of it is accepted in {Percent(plan.ChanceHalfLimitAccepted!.Value)} of sweeps";
        if (plan.IsDecidable)
            return $"Go ahead: {Way(plan)} {Verb(plan)} a limit of {Limit(plan)}{Condition(plan)}; {chance}.";
        return $"Don't sweep like this: {Way(plan)} can't decide a limit of {Limit(plan)}; {chance}, and the smallest that can be decided is {Um(plan.SmallestDecidableLimitUm!.Value)}.";
    }

    public static string Next(MeasuringPlan plan)
    {
        if (!plan.IsGuideKnown)
            return $"Sweep the guide and a rail both ways round (reversal), or use a guide with a certificate; then plan again with its straightness{(plan.LargestGuideUm is { } most ? $": {Um(most)} or less will do" : "")}.";
        if (plan.IsDecidable)
            return Sweep(plan);
        if (plan.PassesNeeded is { } passes)
            return $"Take {Count(passes, "pass", "passes")}{(plan.Lays > 1 ? $" in {Count(plan.Lays, "lay", "lays")}" : "")} instead of {Number(plan.Passes)}.";
        if (plan.Budget[0].AveragesOut == AveragesOut.Repeating)
            return $"Not even {Number(MeasuringPlan.MostPasses)} passes settle this: the largest input is {plan.Budget[0].Name}. Find out why readings scatter so much (a loose stand, a sticking plunger, dirt), then plan again.";
        var largest = plan.Budget.FirstOrDefault(c => c.AveragesOut != AveragesOut.Repeating);
        var why = largest is null ? "" : $" The largest input that passes don't reduce is {largest.Name}: {largest.Remedy}.";
        return $"No number of passes settles this.{why}{Instead(plan)}";
    }

    public static IReadOnlyList<string> Assumptions(MeasuringPlan plan)
    {
        var dial = plan.Dial;
        var list = new List<string>
        {
            string.Create(CultureInfo.InvariantCulture, $"A limit counts as decided when a rail with a bow of half of it is found within it at 95 % (one-sided) with a chance of {MeasuringPlan.WantedChance:0.0} or more (common practice, no source); simulated, seed {plan.Seed}."),
            $"{Number(plan.Stations)} stations over {NumberText.Plain(plan.LengthMm)} mm, {NumberText.Rounded(plan.LengthMm / (plan.Stations - 1), 1)} mm apart; {Passes(plan)}, all at one stand height, levelled until both ends read alike within 10 um.",
            dial.Repeatability > 0
                ? $"Readings repeat with a standard deviation of {NumberText.Significant(dial.Repeatability, 2)} um."
                : $"How readings repeat was not stated: repeats are taken as equal, so rounding to {NumberText.Plain(dial.ReadingStep)} um stays until the rail is laid anew.",
        };
        if (plan.GuideUm is null)
            list.Add(plan.IsGuideKnown ? "The guide's own error was not stated and is left out; no number of passes takes it out of a sweep." : "The guide's own error isn't known and is in none of these figures.");
        if (dial is { Dial: null, PermissibleError: null })
            list.Add("The dial's own error was not stated and is left out.");
        list.Add("What laying the rail anew does to its bow, and short waves of the rail, are not foreseen.");
        return FixedList<string>.Copy(list);
    }

    private static string Sweep(MeasuringPlan plan)
    {
        var fewer = plan.PassesNeeded < plan.Passes ? $" {(plan.PassesNeeded == 1 ? "One pass" : $"{Number(plan.PassesNeeded.Value)} passes")} would do." : "";
        if (plan.GuideUm is null)
            return $"Make sure that the guide is straight to {Um(plan.LargestGuideUm!.Value)} or better (certificate or reversal), then sweep.{fewer}";
        return $"Sweep{(plan.Lays > 1 ? " as planned" : "; take one pass more after lifting the rail and laying it anew, so that what laying does to its bow shows")}.{fewer}";
    }

    private static string Way(MeasuringPlan plan) => $"{Passes(plan)} with a {plan.Dial.Name} {Read(plan.Dial.ReadTo)} at {Number(plan.Stations)} stations";

    private static string Verb(MeasuringPlan plan) => plan.Passes == 1 ? "decides" : "decide";

    private static string Condition(MeasuringPlan plan) => plan.GuideUm is null ? $" against a guide known to be straight to {Um(plan.LargestGuideUm!.Value)}" : "";

    private static string Passes(MeasuringPlan plan) => plan.Passes == 1 ? "one pass" : $"{Number(plan.Passes)} passes in {(plan.Lays == 1 ? "one lay" : Count(plan.Lays, "lay", "lays"))}";

    private static string Instead(MeasuringPlan plan)
    {
        var finer = plan.FinerDial is { } dial ? $" {(IsWhole(plan.Dial) ? "The" : "As far as is stated of the dial, the")} same sweep with a {dial.Name} {Read(dial.ReadTo)} decides it." : "";
        if (plan.LaysNeeded is { } lays)
            return $"{finer} So do {Count(lays, "pass", "passes")}, each after lifting the rail and laying it anew at a new stand height.";
        if (finer.Length > 0)
            return finer;
        return plan.LargestGuideUm is { } guide && plan.GuideUm is not null ? $" With this dial the guide has to be straight to {Um(guide)}." : "";
    }

    private static string Read(ReadTo readTo) => readTo switch
    {
        ReadTo.Whole => "read to whole divisions",
        ReadTo.Half => "read to half divisions",
        _ => "read to tenths of a division",
    };

    private static string Count(int count, string one, string many) => count == 1 ? $"one {one}" : $"{Number(count)} {many}";

    private static string Number(int count) => count.ToString(CultureInfo.InvariantCulture);

    private static bool IsWhole(Instrument dial) => dial.Repeatability > 0 && (dial.Dial is not null || dial.PermissibleError is not null);

    private static string Limit(MeasuringPlan plan) => $"{NumberText.Plain(plan.LimitUm)} um";

    private static string Um(double um) => $"{NumberText.Significant(um, 2)} um";

    // A simulation is never sure of all or none.
    private static string Percent(double share) => share switch
    {
        > 0.995 => "more than 99 %",
        < 0.005 => "fewer than 1 %",
        _ => $"{NumberText.Rounded(100 * share, 0)} %",
    };
}
