using System;
using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>A batch of rails, each with what to do next.</summary>
/// <param name="Batch">The sweeps that were graded.</param>
/// <param name="Rules">The limits that were used.</param>
/// <param name="Rails">By what to do next: return, measure again, then the grades, best first; within one, nearest to its limit first.</param>
public sealed record GradedBatch(SweepBatch Batch, GradeRules Rules, IReadOnlyList<GradedRail> Rails)
{
    /// <summary>The grade of a rail that no rule places.</summary>
    public const string MeasureAgain = "measure again";

    /// <summary>The grade of a rail to send back.</summary>
    public const string Return = "return";

    /// <summary>What these grades leave out.</summary>
    public const string Caveat = "Graded by comparing each figure with its limit; how likely the figure is to be off is not in it yet.";

    /// <summary>How many rails have each grade, in the order of <see cref="Rails"/>.</summary>
    public IReadOnlyList<KeyValuePair<string, int>> Counts
        => FixedList<KeyValuePair<string, int>>.Copy(Rails.GroupBy(r => r.Grade).Select(g => KeyValuePair.Create(g.Key, g.Count())));

    /// <summary>The rail of that name, or null.</summary>
    public GradedRail? Find(string rail) => Rails.FirstOrDefault(r => r.Rail == rail);
}

/// <summary>Grades a batch.</summary>
public static class GradingExtensions
{
    /// <summary>
    /// Gives each rail the best grade whose limits its figures are all within; <c>return</c> when its side STRt is above <see cref="GradeRules.ReturnSideUm"/>
    /// and the guide isn't unknown; otherwise <c>measure again</c>: not proven good is not proven bad.
    /// </summary>
    /// <param name="batch">Sweeps with rail and face.</param>
    /// <param name="rules">The limits; <see cref="GradeRules.Starting"/> when not given.</param>
    /// <exception cref="InputException">The batch is a bare profile, or passes of a face can't be aligned.</exception>
    public static GradedBatch Grade(this SweepBatch batch, GradeRules? rules = null)
    {
        ArgumentNullException.ThrowIfNull(batch);
        rules ??= GradeRules.Starting;
        if (batch.Rails.Count == 0)
            throw new InputException(new InputProblem(batch.Source, 1, null, "a profile without rail and face", "the columns rail,face,pass,direction,position_mm,reading_um"));
        var order = rules.Grades.Select(g => g.Grade).Prepend(GradedBatch.MeasureAgain).Prepend(GradedBatch.Return).ToArray();
        var rails = batch.Pool()
            .GroupBy(p => p.Sweep.Rail!)
            .Select(faces => RailGrader.Grade(faces.Key, Pooled(faces, RailFace.Side), Pooled(faces, RailFace.Top), rules))
            .OrderBy(r => Array.IndexOf(order, r.Grade))
            .ThenByDescending(r => r.Features.Max(f => f.ValueUm / f.Limit) ?? 0)
            .ThenBy(r => r.Rail, StringComparer.Ordinal);
        return new GradedBatch(batch, rules, FixedList<GradedRail>.Copy(rails));
    }

    private static PooledSweep? Pooled(IEnumerable<PooledSweep> faces, RailFace face) => faces.FirstOrDefault(p => p.Sweep.Face == face);
}
