using System.CommandLine;
using System.Text.Json.Nodes;
using UnitsNet;
using Waywright.Notebooks;

namespace Waywright.Cli;

/// <summary><c>waywright plan</c>: whether a dial and a set-up can decide a limit, before anything is swept.</summary>
internal static class PlanVerb
{
    private const string Unknown = "unknown";
    private const double UmPerM = 1e6;
    private const double MmPerM = 1e3;

    public static Command Create()
    {
        var dial = new Option<string>("--dial") { Description = "One division of the dial: '0.01 mm'.", Required = true };
        var length = new Option<string>("--length") { Description = "Length that is swept: '320 mm'.", Required = true };
        var limit = new Option<string>("--limit") { Description = "Limit on straightness that is to be decided: '30 um'.", Required = true };
        var readTo = new Option<string>("--read-to") { Description = "How finely it is read: whole, half or tenth of a division.", DefaultValueFactory = _ => "whole" };
        var repeatability = new Option<string?>("--repeatability") { Description = "Standard deviation of repeated readings: '2 um'; without it, repeats are taken as equal." };
        var stations = NumberOption.Whole("--stations", "Stations; default about every 25 mm, at least 8.");
        var passes = NumberOption.Whole("--passes", "Passes in all; default 1.");
        var lays = NumberOption.Whole("--lays", "How often the rail is laid down for them; default 1.");
        var guide = new Option<string?>("--guide") { Description = "Straightness of the guide: '4 um', or unknown; without it, the guide is left out." };
        var json = CommonOptions.Json();
        var command = new Command("plan", "Can this dial decide this limit, and if not, what would? Exit 1 when it can't.") { dial, length, limit, readTo, repeatability, stations, passes, lays, guide, json };
        command.SetAction((parsed, cancel) =>
        {
            var problems = new List<InputProblem>();
            var divisionUm = UmPerM * Read(parsed.GetRequiredValue(dial), "--dial", positive: true, problems);
            var lengthMm = MmPerM * Read(parsed.GetRequiredValue(length), "--length", positive: true, problems);
            var limitUm = UmPerM * Read(parsed.GetRequiredValue(limit), "--limit", positive: true, problems);
            var isGuideKnown = parsed.GetValue(guide) != Unknown;
            var guideUm = isGuideKnown && parsed.GetValue(guide) is { } straight ? UmPerM * Read(straight, "--guide", positive: false, problems, $", or {Unknown}") : (double?)null;
            var repeatabilityUm = parsed.GetValue(repeatability) is { } repeats ? UmPerM * Read(repeats, "--repeatability", positive: false, problems) : (double?)null;
            if (problems.Count > 0)
                throw new InputException(problems);
            return Task.FromResult(Answer(() => MeasuringPlan.Of(
                divisionUm, parsed.GetRequiredValue(readTo), lengthMm, limitUm, parsed.GetValue(stations), parsed.GetValue(passes) ?? 1, parsed.GetValue(lays) ?? 1, guideUm, isGuideKnown, repeatabilityUm, cancel: cancel), parsed.GetValue(json)));
        });
        return command;
    }

    private static int Answer(Func<MeasuringPlan> make, bool json)
    {
        var plan = WithOptionNames(make);
        if (json)
            JsonOutput.Print(Answer(plan));
        else
            Console.Out.WriteLine(Views.Text(plan));
        return plan.IsDecidable ? CommandLine.Done : CommandLine.Refused;
    }

    private static double Read(string text, string option, bool positive, List<InputProblem> problems, string orElse = "")
    {
        try
        {
            return (positive ? Quantity.ReadPositive<Length>(text, option) : Quantity.Read<Length>(text, option)).Si.Value;
        }
        catch (InputException e)
        {
            problems.AddRange(e.Problems.Select(p => p with { Expected = p.Expected + orElse }));
            return double.NaN;
        }
    }

    // The library names a value in words; here it is an option.
    private static MeasuringPlan WithOptionNames(Func<MeasuringPlan> make)
    {
        try
        {
            return make();
        }
        catch (InputException e)
        {
            throw new InputException(e.Problems.Select(p => p with { Source = "--" + p.Source.Replace(' ', '-') }));
        }
    }

    private static JsonObject Answer(MeasuringPlan plan) => new()
    {
        ["verdict"] = plan.Verdict,
        ["decidable"] = plan.IsDecidable,
        ["next"] = plan.Next,
        ["limit_um"] = plan.LimitUm,
        ["noise_floor_95_um"] = plan.NoiseFloorUm,
        ["mean_reading_of_a_straight_rail_um"] = plan.StraightReadingUm,
        ["smallest_decidable_limit_um"] = plan.SmallestDecidableLimitUm,
        ["chance_half_limit_accepted"] = plan.ChanceHalfLimitAccepted,
        ["passes_needed"] = plan.PassesNeeded,
        ["lays_needed"] = plan.LaysNeeded,
        ["largest_guide_um"] = plan.LargestGuideUm,
        ["stations"] = plan.Stations,
        ["passes"] = plan.Passes,
        ["lays"] = plan.Lays,
        ["guide_um"] = plan.GuideUm,
        ["guide_known"] = plan.IsGuideKnown,
        ["seed"] = plan.Seed,
        ["budget"] = new JsonArray(plan.Budget.Select(c => (JsonNode)new JsonObject { ["input"] = c.Name, ["standard_uncertainty_um"] = c.StandardUncertainty, ["remedy"] = c.Remedy }).ToArray()),
        ["assumptions"] = new JsonArray(plan.Assumptions.Select(a => (JsonNode)a).ToArray()),
    };
}
