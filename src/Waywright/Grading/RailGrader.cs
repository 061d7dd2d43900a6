using System.Collections.Generic;
using System.Globalization;
using System.Linq;

namespace Waywright;

/// <summary>One rail against the rules, by simple comparison.</summary>
internal static class RailGrader
{
    public static GradedRail Grade(string rail, PooledSweep? side, PooledSweep? top, GradeRules rules)
    {
        var values = new (string Feature, double? Um)[]
        {
            (RailFeature.Side, side?.Straightness.MinimumZone.Line.STRtUm),
            (RailFeature.SideLocal, side?.Profile.Local(GradeRules.LocalWindowMm)?.STRtUm),
            (RailFeature.TopLocal, top?.Profile.Local(GradeRules.LocalWindowMm)?.STRtUm),
        };
        var met = rules.Grades.FirstOrDefault(g => values.All(v => v.Um is not { } um || g.LimitOf(v.Feature) is not { } limit || um <= limit));
        var shown = met ?? rules.Grades[^1];
        var features = FixedList<FeatureValue>.Copy(values.Where(v => shown.LimitOf(v.Feature) is not null).Select(v => new FeatureValue(v.Feature, v.Um, shown.LimitOf(v.Feature)!.Value)));
        var limiting = features.Where(f => f.ValueUm is not null).MaxBy(f => f.ValueUm / f.Limit);
        var (grade, reason, next) = Decide(side, top, rules, met, limiting, features);
        return new GradedRail(rail, grade, reason, next, limiting?.Feature, features, side, top);
    }

    private static (string Grade, string Reason, string Next) Decide(PooledSweep? side, PooledSweep? top, GradeRules rules, GradeRule? met, FeatureValue? limiting, IReadOnlyList<FeatureValue> features)
    {
        var unknownGuide = new[] { side, top }.Any(p => p?.Sweep.Setup is { IsGuideKnown: false });
        if (unknownGuide)
            return (GradedBatch.MeasureAgain, "These are figures of the rail against its guide, and the guide's own straightness is unknown.", "Find out how straight the guide is (certificate or reversal), then grade again.");
        var sideUm = side?.Straightness.MinimumZone.Line.STRtUm;
        if (sideUm > rules.ReturnSideUm)
            return (GradedBatch.Return, $"Side {Um(sideUm.Value)} is above {Um(rules.ReturnSideUm)}, the most that is kept.", Returning(side!));
        if (side is null || top is null)
        {
            var missing = side is null ? "side" : "top";
            return (GradedBatch.MeasureAgain, $"The {missing} was not swept, so the rail is not proven good.", $"Sweep the {missing}.");
        }

        var unjudged = features.Where(f => f.ValueUm is null).Select(f => f.Feature).ToArray();
        var note = unjudged.Length == 0 ? "" : $" Not judged: {string.Join(", ", unjudged)} (fewer than 4 stations within {GradeRules.LocalWindowMm.ToString(CultureInfo.InvariantCulture)} mm).";
        if (met is not null)
        {
            var reason = ReferenceEquals(met, rules.Grades[0]) ? Nearest(limiting) : Missed(rules.Grades[0], met, features);
            return (met.Grade, reason + note, $"Keep it for {NameOf(met.Grade)}.");
        }

        return (GradedBatch.MeasureAgain, $"{Sentence(limiting!.Feature)} {Um(limiting.ValueUm!.Value)} is over {Um(limiting.Limit)}, the limit for {NameOf(rules.Grades[^1].Grade)}, and not over {Um(rules.ReturnSideUm)} at the side, the limit for a return.{note}",
            Again(limiting.Feature));
    }

    private static string Nearest(FeatureValue? limiting)
        => limiting is null ? "" : $"{Sentence(limiting.Feature)} {Um(limiting.ValueUm!.Value)} is nearest to its limit, {Um(limiting.Limit)}.";

    private static string Missed(GradeRule best, GradeRule met, IReadOnlyList<FeatureValue> features)
    {
        var worst = features.Where(f => f.ValueUm > best.LimitOf(f.Feature)).MaxBy(f => f.ValueUm / best.LimitOf(f.Feature))!;
        return $"{Sentence(worst.Feature)} {Um(worst.ValueUm!.Value)} is over {Um(best.LimitOf(worst.Feature)!.Value)}, the limit for {NameOf(best.Grade)}, and within {Um(worst.Limit)}, the limit for {NameOf(met.Grade)}.";
    }

    private static string Returning(PooledSweep side)
        => side.Sweep.Setup is null
            ? "Sweep it once more against a guide that you know, with its set-up written down; if it stays, send it back."
            : "Send it back; keep the sweep as the proof.";

    private static string Again(string feature) => feature switch
    {
        RailFeature.SideLocal or RailFeature.TopLocal => $"Wipe the {feature.Split(' ')[0]} clean, sweep it again after lifting and re-laying the rail, with closer stations around the worst place.",
        _ => "Wipe the side clean and sweep it again after lifting and re-laying the rail.",
    };

    // The grade's id is lower case; the axis is Z.
    private static string NameOf(string grade) => grade == "z" ? "Z" : grade;

    private static string Sentence(string feature) => char.ToUpperInvariant(feature[0]) + feature[1..];

    private static string Um(double um) => string.Create(CultureInfo.InvariantCulture, $"{um:0.#} um");
}
