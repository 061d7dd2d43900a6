using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>One rail against the rules.</summary>
internal static class RailGrader
{
    public static GradedRail Grade(RailFeatures rail, GradeRules rules)
    {
        // A limit on something that was not measured is not met.
        var met = rules.Grades.FirstOrDefault(g => Limited(rail, g).All(f => f.Read is not null && f.IsWithin(g.LimitOf(f.Feature)!.Value, rules.AcceptLevel)));
        var grade = GradeOf(rail, rules, met);
        foreach (var feature in rail.All)
            feature.Release();
        var shown = met ?? rules.Grades[^1];
        return new GradedRail(rail, grade, FixedList<FeatureValue>.Copy(rail.All.Select(f => new FeatureValue(f, shown.LimitOf(f.Feature))).OrderBy(f => f.Limit is null)), () => Answer(rail, rules, met), () => States(rail, rules));
    }

    // The grade of the answer below, without simulating what it tells.
    private static string GradeOf(RailFeatures rail, GradeRules rules, GradeRule? met)
    {
        var barred = Barred(rail);
        if ((barred is null && IsReturned(rail, rules)) || rail.Drag is { IsBound: true })
            return GradedBatch.Return;
        return (barred ?? Unswept(rail) ?? Sparse(rail, rules)) is not null || met is null || rail.Drag is { Open.Count: > 0 } ? GradedBatch.MeasureAgain : met.Grade;
    }

    private static GradeAnswer Answer(RailFeatures rail, GradeRules rules, GradeRule? met)
    {
        var shown = met ?? rules.Grades[^1];
        var limiting = Judged(rail, shown).MaxBy(f => f.ShareOf(shown.LimitOf(f.Feature)!.Value, rules.AcceptLevel));
        var barred = Barred(rail);
        // How hard a carriage is to push says of the rail what it says, whatever guided the dial.
        var answer = (barred is null ? Returned(rail, rules) : null) ?? DragAnswer.Bound(rail.Drag) ?? barred ?? Unswept(rail) ?? Sparse(rail, rules) ?? (met is null ? Again(rail, rules) : Kept(rail, rules, met, limiting));
        return DragAnswer.Beside(answer, rail.Drag) with { LimitingFeature = limiting?.Feature };
    }

    private static FixedList<GradeState> States(RailFeatures rail, GradeRules rules)
    {
        var isJudged = Barred(rail) is null || rail.Drag is { IsBound: true };
        return FixedList<GradeState>.Copy(rules.Grades.Select(g => isJudged ? GradeStates.Of(rail, g, rules) : new GradeState(g.Grade, GradeStates.Undecided, null)));
    }

    /// <summary>The features that a grade limits and that could be measured.</summary>
    private static IEnumerable<MeasuredFeature> Judged(RailFeatures rail, GradeRule grade) => Limited(rail, grade).Where(f => f.Read is not null);

    private static IEnumerable<MeasuredFeature> Limited(RailFeatures rail, GradeRule grade) => rail.All.Where(f => grade.LimitOf(f.Feature) is not null);

    // What was swept is not the free rail, or not the rail alone.
    private static GradeAnswer? Barred(RailFeatures rail)
    {
        foreach (var face in new[] { rail.Side, rail.Top })
        {
            if (face?.Sweep.Setup is { IsGuideKnown: false })
                return new(GradedBatch.MeasureAgain, "These are figures of the rail against its guide, and the guide's own straightness is unknown.", "Find out how straight the guide is (certificate or reversal), then grade again.");
            if (face?.Hidden is { } hidden)
                return new(GradedBatch.MeasureAgain, $"The {face.Sweep.FaceName} was not swept free. {hidden}", $"Sweep the {face.Sweep.FaceName} again on two supports.");
        }

        return null;
    }

    private static bool IsReturned(RailFeatures rail, GradeRules rules) => rail[RailFeature.Side].IsBeyond(rules.ReturnSideUm, rules.ClaimLevel);

    private static GradeAnswer? Returned(RailFeatures rail, GradeRules rules)
    {
        var side = rail[RailFeature.Side];
        if (!IsReturned(rail, rules))
            return null;
        var next = rail.Side!.Sweep.Setup is null
            ? "Sweep it once more against a guide that you know, with its set-up written down; if it stays, send it back."
            : "Send it back; keep the sweep as the proof.";
        return new(GradedBatch.Return, $"{GradeWords.Value(side)} is above {GradeWords.Um(rules.ReturnSideUm)}, the most that is kept.", next, side.Figure?.ConfidenceBeyond(rules.ReturnSideUm));
    }

    private static GradeAnswer? Unswept(RailFeatures rail)
    {
        if (rail is { Side: not null, Top: not null })
            return null;
        var missing = rail.Side is null ? "side" : "top";
        return new(GradedBatch.MeasureAgain, $"The {missing} was not swept, so the rail is not proven good.", $"Sweep the {missing}.");
    }

    private static GradeAnswer? Sparse(RailFeatures rail, GradeRules rules)
    {
        var missing = Limited(rail, rules.Grades[^1]).Where(f => f.Read is null).ToArray();
        return missing.Length == 0 ? null : new(GradedBatch.MeasureAgain, $"{Unjudged(missing)}, so the rail is not proven good.", string.Join(" ", missing.Select(f => f.Missing!.Remedy).Distinct()));
    }

    private static string Unjudged(IEnumerable<MeasuredFeature> missing)
        => $"Not judged: {string.Join("; ", missing.GroupBy(f => f.Missing!.Why).Select(g => $"{string.Join(", ", g.Select(f => f.Feature))} ({g.Key})"))}";

    private static GradeAnswer Kept(RailFeatures rail, GradeRules rules, GradeRule met, MeasuredFeature? limiting)
    {
        var keep = $"Keep it for {GradeWords.NameOf(met.Grade)}.";
        // Steps of 0.001: a grade is as sure as the least sure of its features.
        var confidence = Judged(rail, met).Min(f => f.Figure?.ConfidenceWithin(met.LimitOf(f.Feature)!.Value));
        if (ReferenceEquals(met, rules.Grades[0]))
            return new(met.Grade, limiting is null ? "" : $"{GradeWords.Value(limiting)} is nearest to its limit, {GradeWords.Limit(limiting, met.LimitOf(limiting.Feature)!.Value)}.", keep, confidence);
        var better = rules.Grades[IndexOf(rules, met) - 1];
        var worst = Judged(rail, better).Where(f => !f.IsWithin(better.LimitOf(f.Feature)!.Value, rules.AcceptLevel)).MaxBy(f => f.ShareOf(better.LimitOf(f.Feature)!.Value, rules.AcceptLevel));
        if (worst is null)
        {
            var missing = Limited(rail, better).Where(f => f.Read is null).ToArray();
            return new(met.Grade, $"{Unjudged(missing)}: {GradeWords.NameOf(better.Grade)} limits it.", $"{keep} To try for {GradeWords.NameOf(better.Grade)}: {string.Join(" ", missing.Select(f => f.Missing!.Remedy).Distinct())}", confidence);
        }

        var limit = better.LimitOf(worst.Feature)!.Value;
        var within = met.LimitOf(worst.Feature) is { } most ? $" It is within {GradeWords.Limit(worst, most)}, the limit for {GradeWords.NameOf(met.Grade)}." : "";
        if (worst.IsBeyond(limit, rules.ClaimLevel))
            return new(met.Grade, $"{GradeWords.Value(worst)} is over {GradeWords.Limit(worst, limit)}, the limit for {GradeWords.NameOf(better.Grade)}.{within}", keep, confidence);
        var settle = Settling.Of(worst, limit, rules.AcceptLevel);
        return new(met.Grade, $"{GradeWords.Value(worst)} is not proven to be within {GradeWords.Limit(worst, limit)}, the limit for {GradeWords.NameOf(better.Grade)}.{within}",
            $"{keep} To try for {GradeWords.NameOf(better.Grade)}: {settle}", confidence);
    }

    private static GradeAnswer Again(RailFeatures rail, GradeRules rules)
    {
        var lowest = rules.Grades[^1];
        var worst = Judged(rail, lowest).Where(f => !f.IsWithin(lowest.LimitOf(f.Feature)!.Value, rules.AcceptLevel)).MaxBy(f => f.ShareOf(lowest.LimitOf(f.Feature)!.Value, rules.AcceptLevel))!;
        var limit = lowest.LimitOf(worst.Feature)!.Value;
        var name = GradeWords.NameOf(lowest.Grade);
        if (worst.IsRefused(limit))
        {
            return new(GradedBatch.MeasureAgain, $"The limit for {name}, {GradeWords.Limit(worst, limit)}, lies under the noise floor: on a perfectly straight rail this set-up reads up to {GradeWords.Um(worst.Figure!.NoiseFloorUm)}.",
                $"{Sentence(Settling.Of(worst, limit, rules.AcceptLevel))}");
        }

        if (worst.IsBeyond(limit, rules.ClaimLevel))
        {
            return new(GradedBatch.MeasureAgain, $"{GradeWords.Value(worst)} is over {GradeWords.Limit(worst, limit)}, the limit for {name}, and {(worst.Feature == RailFeature.Drag ? "no place of it is proven to bind" : $"not over {GradeWords.Um(rules.ReturnSideUm)} at the side, the limit for a return")}.",
                Anew(worst.Feature));
        }

        return new(GradedBatch.MeasureAgain, $"{GradeWords.Value(worst)} is not proven to be within {GradeWords.Limit(worst, limit)}, the limit for {name}.", Sentence(Settling.Of(worst, limit, rules.AcceptLevel)));
    }

    private static string Anew(string feature) => feature switch
    {
        RailFeature.TopMounted => "Try more screws, or others (mount-rails). Else wipe the top clean and sweep it again after lifting and re-laying the rail, with closer stations around the worst place.",
        RailFeature.Drag => "Clean and grease the rail and its carriages, and run them along it again in both directions.",
        RailFeature.SideLocal or RailFeature.TopLocal => $"Wipe the {RailFeature.FaceOf(feature)} clean, sweep it again after lifting and re-laying the rail, with closer stations around the worst place.",
        _ => $"Wipe the {RailFeature.FaceOf(feature)} clean and sweep it again after lifting and re-laying the rail.",
    };

    private static int IndexOf(GradeRules rules, GradeRule grade) => rules.Grades.TakeWhile(g => !ReferenceEquals(g, grade)).Count();

    private static string Sentence(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
