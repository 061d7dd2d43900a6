using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading;

namespace Waywright;

/// <summary>A batch of rails, each with what to do next.</summary>
/// <param name="Batch">The sweeps that were graded.</param>
/// <param name="Rules">The limits that were used.</param>
/// <param name="Rails">By what to do next: return, measure again, then the grades, best first; within one, nearest to its limit as read first.</param>
public sealed record GradedBatch(SweepBatch Batch, GradeRules Rules, IReadOnlyList<GradedRail> Rails)
{
    /// <summary>The grade of a rail that no rule places.</summary>
    public const string MeasureAgain = "measure again";

    /// <summary>The grade of a rail to send back.</summary>
    public const string Return = "return";

    /// <summary>The drag log that the grades took in; null when none was given.</summary>
    public DragLog? Drag { get; internal init; }

    /// <summary>What the grades rest on, in some sentences.</summary>
    public string Basis => GradeWords.Basis(Rails, Rules, Drag);

    /// <summary>Each limit beside what each set-up is uncertain by: under three times its U few rails can be decided.</summary>
    public IReadOnlyList<LimitMargin> Margins => LimitMargin.Of(Rails, Rules);

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
    /// Gives each rail the best grade that it is proven to meet: the upper bounds of all its features are within their limits at <see cref="GradeRules.AcceptLevel"/>.
    /// <c>return</c> when the guide is known and the lower bound of its side is above <see cref="GradeRules.ReturnSideUm"/> at <see cref="GradeRules.ClaimLevel"/>;
    /// otherwise <c>measure again</c>: not proven good is not proven bad. A limit under the noise floor of the set-up decides nothing.
    /// Sweeps without a set-up have no bounds: their figures are compared as read, and the grade says so.
    /// </summary>
    /// <param name="batch">Sweeps with rail and face.</param>
    /// <param name="rules">The limits; <see cref="GradeRules.Starting"/> when not given.</param>
    /// <param name="stock">The rails with their holes: without it the mounted top is not judged, and the answer says so.</param>
    /// <param name="screws">Which holes of a rail get a screw; every one when not given.</param>
    /// <param name="drag">How hard carriages are to push: a rail that is proven to bind goes back, one that seems to is measured again, and the spread has its limits. Without it the drag is not judged.</param>
    /// <param name="trials">Simulations for each face, 1,000 or more.</param>
    /// <param name="seed">Of their random numbers.</param>
    /// <param name="progress">Told the share of rails that are graded, 0 to 1, from any thread; may be null.</param>
    /// <param name="cancel">Stops it.</param>
    /// <exception cref="InputException">
    /// The batch is a bare profile, passes of a face can't be aligned, or the drag log has none of its rails or writes one with other capitals.
    /// </exception>
    public static GradedBatch Grade(this SweepBatch batch, GradeRules? rules = null, RailStock? stock = null, Func<RailStock.Rail, ScrewPattern>? screws = null, DragLog? drag = null, int trials = 10_000, ulong seed = 1, IProgress<double>? progress = null, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(batch);
        rules ??= GradeRules.Starting;
        if (batch.Rails.Count == 0)
            throw new InputException(new InputProblem(batch.Source, 1, null, "a profile without rail and face", "the columns rail,face,pass,direction,position_mm,reading_um"));
        if (drag is not null)
            RailDrag.Check(drag, [.. batch.Rails]);
        ArgumentOutOfRangeException.ThrowIfLessThan(trials, StraightnessUncertainty.FewestTrials);
        var order = rules.Grades.Select(g => g.Grade).Prepend(GradedBatch.MeasureAgain).Prepend(GradedBatch.Return).ToArray();
        var held = new RailScrews(stock, screws ?? ScrewPattern.Every);
        var faces = batch.Pool().GroupBy(p => p.Sweep.Rail!).ToArray();
        var shelf = new TrialShelf(faces.Length, trials, seed, cancel);
        var drags = RailDrag.ByRail(drag, rules);
        var rails = OnAllCores.Select(faces, f => RailGrader.Grade(RailFeatures.Of(f.Key, Pooled(f, RailFace.Side), Pooled(f, RailFace.Top), held, drags.GetValueOrDefault(f.Key), shelf), rules), cancel, progress);
        return new GradedBatch(batch, rules, FixedList<GradedRail>.Copy(rails
            .OrderBy(r => Array.IndexOf(order, r.Grade))
            .ThenByDescending(r => r.Features.Max(f => f.Value / f.Limit) ?? 0)
            .ThenBy(r => r.Rail, StringComparer.Ordinal)))
        {
            Drag = drag,
        };
    }

    private static PooledSweep? Pooled(IEnumerable<PooledSweep> faces, RailFace face) => faces.FirstOrDefault(p => p.Sweep.Face == face);
}
