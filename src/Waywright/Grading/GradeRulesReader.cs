using System;
using System.Collections.Generic;
using System.Linq;
using System.Text.Json;

namespace Waywright;

/// <summary>Reads grades and their limits; every wrong value is noted where it stands.</summary>
internal static class GradeRulesReader
{
    private const double MostUm = 100_000;
    private const double LeastUm = 0.001;
    private const double MostPercent = 10_000;
    private const double LeastPercent = 0.1;
    private const int LongestName = 64;
    private const double LeastLevel = 0.5;
    private const double MostLevel = 0.9999;

    public static GradeRules Read(string json, string source)
    {
        var problems = new ProblemList(source);
        var root = JsonPlace.Read(json, problems);
        if (root.Kind != JsonTokenType.StartObject)
        {
            root.Reject("an object with return_above_side_um and grades");
            problems.ThrowIfAny();
        }

        root.OnlyMembers("grades", "return_above_side_um", "accept_level", "claim_level", "note", "$schema");
        var returns = root.Number("return_above_side_um", LeastUm, MostUm, required: true);
        var accept = root.Number("accept_level", LeastLevel, MostLevel) ?? GradeRules.UsualLevel;
        var claim = root.Number("claim_level", LeastLevel, MostLevel) ?? GradeRules.UsualLevel;
        var list = root.Member("grades", required: true);
        if (list is not null && (list.Kind != JsonTokenType.StartArray || list.Items.Count == 0))
            list.Reject("a list of at least one grade, best first");
        var grades = new List<GradeRule>();
        foreach (var place in list?.Items ?? [])
        {
            if (ReadGrade(place, grades) is { } grade)
                grades.Add(grade);
        }

        if (grades.LastOrDefault()?.LimitOf(RailFeature.Side) > returns)
            root.Member("return_above_side_um")!.Reject("no less than the lowest grade's limit on the side");
        problems.ThrowIfAny();
        return new GradeRules(FixedList<GradeRule>.Copy(grades), returns!.Value, accept, claim);
    }

    private static GradeRule? ReadGrade(JsonPlace place, List<GradeRule> better)
    {
        if (place.Kind != JsonTokenType.StartObject)
        {
            place.Reject("an object with grade and limits");
            return null;
        }

        place.OnlyMembers("grade", "limits", "note");
        var name = place.Text("grade", required: true);
        if (name is not null && !IsName(name))
            place.Member("grade")!.Reject("a name of 1 to 64 printable characters, without blanks at its ends");
        else if (IsSame(name, GradedBatch.Return) || IsSame(name, GradedBatch.MeasureAgain))
            place.Member("grade")!.Reject("a name other than return and measure again, which are answers of their own");
        else if (better.Any(g => IsSame(name, g.Grade)))
            place.Member("grade")!.Reject("a name that no other grade has, in capitals or not");
        var list = place.Member("limits", required: true);
        if (list is not null && (list.Kind != JsonTokenType.StartArray || list.Items.Count == 0))
            list.Reject("a list of at least one limit");
        var limits = new List<FeatureLimit>();
        foreach (var item in list?.Items ?? [])
        {
            if (ReadLimit(item, limits, better) is { } limit)
                limits.Add(limit);
        }

        return name is null || limits.Count == 0 ? null : new GradeRule(name, FixedList<FeatureLimit>.Copy(limits));
    }

    private static FeatureLimit? ReadLimit(JsonPlace place, List<FeatureLimit> others, List<GradeRule> better)
    {
        if (place.Kind != JsonTokenType.StartObject)
        {
            place.Reject("an object with feature and limit_um (limit_percent for the drag)");
            return null;
        }

        place.OnlyMembers("feature", "limit_um", "limit_percent", "note");
        var feature = place.OneOf("feature", true, RailFeature.Side, RailFeature.SideLocal, RailFeature.TopMounted, RailFeature.TopLocal, RailFeature.TopFree, RailFeature.Drag);
        if (feature is null)
            return null;
        var (member, other) = feature == RailFeature.Drag ? ("limit_percent", "limit_um") : ("limit_um", "limit_percent");
        var limit = feature == RailFeature.Drag ? place.Number(member, LeastPercent, MostPercent, required: true) : place.Number(member, LeastUm, MostUm, required: true);
        place.Member(other)?.Reject($"left out: the limit of {feature} is {member}");
        if (limit is null)
            return null;
        if (others.Any(l => l.Feature == feature))
            place.Member("feature")!.Reject("a feature that this grade does not limit already");
        // A rail that meets a better grade has to meet every lower one.
        if (better.LastOrDefault(g => g.LimitOf(feature) is not null) is { } above && limit < above.LimitOf(feature))
            place.Member(member)!.Reject(FormattableString.Invariant($"no less than {above.LimitOf(feature)}, the limit of {above.Grade}: grades are listed best first"));
        else if (better.LastOrDefault() is { } open && open.LimitOf(feature) is null)
            place.Member("feature")!.Reject($"one that {open.Grade} limits as well: a rail could miss this grade and meet the better one");
        return new FeatureLimit(feature, limit.Value);
    }

    private static bool IsSame(string? name, string other) => string.Equals(name, other, StringComparison.OrdinalIgnoreCase);

    private static bool IsName(string name) => name.Length is > 0 and <= LongestName && name.Trim().Length == name.Length && PrintableText.Is(name);
}
