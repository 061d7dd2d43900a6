using System.Linq;

namespace Waywright;

/// <summary>What is proven of a rail against a grade.</summary>
internal static class GradeStates
{
    public const string Meets = "meets";
    public const string Fails = "fails";
    public const string Undecided = "undecided";

    public static GradeState Of(RailFeatures rail, GradeRule grade, GradeRules rules)
    {
        if (rail.Drag is { IsBound: true })
            return new GradeState(grade.Grade, Fails, null);
        var limited = rail.All.Where(f => grade.LimitOf(f.Feature) is not null).ToArray();
        double Limit(MeasuredFeature feature) => grade.LimitOf(feature.Feature)!.Value;
        // One feature beyond its limit is enough, whatever was not measured.
        var beyond = limited.Where(f => f.Read is not null && f.IsBeyond(Limit(f), rules.ClaimLevel)).ToArray();
        if (beyond.Length > 0)
            return new GradeState(grade.Grade, Fails, beyond.Max(f => f.Figure?.ConfidenceBeyond(Limit(f))));
        return rail.Drag is not { Open.Count: > 0 } && limited.All(f => f.Read is not null && f.IsWithin(Limit(f), rules.AcceptLevel))
            ? new GradeState(grade.Grade, Meets, limited.Min(f => f.Figure?.ConfidenceWithin(Limit(f))))
            : new GradeState(grade.Grade, Undecided, null);
    }
}
