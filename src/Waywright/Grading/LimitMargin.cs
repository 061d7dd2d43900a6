using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>A limit beside the expanded uncertainty of the figures that a set-up gave.</summary>
/// <param name="Setup">The set-up.</param>
/// <param name="Feature">One of <see cref="RailFeature"/>.</param>
/// <param name="Grade">Whose limit it is; <c>return</c> for the limit above which a rail goes back.</param>
/// <param name="LimitUm">The limit, um.</param>
/// <param name="ExpandedUm">The largest U of that feature with this set-up, k = 2, um.</param>
public sealed record LimitMargin(string Setup, string Feature, string Grade, double LimitUm, double ExpandedUm)
{
    // Common practice, no source: the uncertainty takes a third of a tolerance at most.
    private const double LeastTimes = 3;
    private const double Coverage = 2;

    /// <summary>Whether the limit is under three times U: few rails can then be decided by it.</summary>
    public bool IsNarrow => LimitUm < LeastTimes * ExpandedUm;

    internal static IReadOnlyList<LimitMargin> Of(IReadOnlyList<GradedRail> rails, GradeRules rules)
    {
        var measured = rails.SelectMany(r => r.Features.Where(f => f.IsBounded)
            .Select(f => (Setup: (RailFeature.FaceOf(f.Feature) == RailFeature.Side ? r.Side : r.Top)!.Sweep.Setup!.Id, f.Feature, Expanded: Coverage * f.StandardUncertaintyUm!.Value)));
        return FixedList<LimitMargin>.Copy(measured.GroupBy(m => (m.Setup, m.Feature)).SelectMany(group => LimitsOn(group.Key.Feature, rules)
            .Select(limit => new LimitMargin(group.Key.Setup, group.Key.Feature, limit.Grade, limit.Um, group.Max(m => m.Expanded)))));
    }

    private static IEnumerable<(string Grade, double Um)> LimitsOn(string feature, GradeRules rules)
    {
        foreach (var grade in rules.Grades)
        {
            if (grade.LimitOf(feature) is { } limit)
                yield return (grade.Grade, limit);
        }

        if (feature == RailFeature.Side)
            yield return (GradedBatch.Return, rules.ReturnSideUm);
    }
}
