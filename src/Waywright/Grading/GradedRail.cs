using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>A feature of a rail beside the limit that decided it.</summary>
/// <param name="Feature">One of <see cref="RailFeature"/>.</param>
/// <param name="Value">As read, um, or % for the drag; null when it could not be judged (the face is not swept, or its stations are too far apart).</param>
/// <param name="Limit">The limit of the grade given, or of the lowest grade when none is met, in the same unit; null where it limits none: the figure is only told.</param>
/// <param name="Figure">The same with estimate, interval and noise floor; null when no set-up was given.</param>
public sealed record FeatureValue(string Feature, double? Value, double? Limit, UncertainFigure? Figure = null)
{
    /// <summary>What value and limit are in: um or %.</summary>
    public string Unit => RailFeature.UnitOf(Feature);
}

/// <summary>What is proven of a rail against one grade.</summary>
/// <param name="Grade">The grade's name.</param>
/// <param name="State"><c>meets</c>: every feature is within its limit; <c>fails</c>: some feature is beyond it; <c>undecided</c>: neither is proven.</param>
/// <param name="Confidence">The highest level at which that would still hold; null where undecided, and where no set-up was given.</param>
public sealed record GradeState(string Grade, string State, double? Confidence);

/// <summary>What to do with one rail, why, and the figures.</summary>
/// <param name="Rail">Its name.</param>
/// <param name="Grade">A grade of the rules, <c>measure again</c>, or <c>return</c>.</param>
/// <param name="Reason">One sentence: which feature decided, its value and limit.</param>
/// <param name="Next">One sentence: what to do.</param>
/// <param name="LimitingFeature">The feature that takes the largest share of its limit, by its upper bound where it has one; null when none could be judged.</param>
/// <param name="Features">Each feature with the limit that decided, those without one last.</param>
/// <param name="Side">The side face, combined; null when not swept.</param>
/// <param name="Top">The top, combined; null when not swept.</param>
/// <param name="Confidence">The highest level at which a grade or a return would still hold; null for <c>measure again</c>, for a rail that binds, and where no set-up was given.</param>
public sealed record GradedRail(
    string Rail,
    string Grade,
    string Reason,
    string Next,
    string? LimitingFeature,
    IReadOnlyList<FeatureValue> Features,
    PooledSweep? Side,
    PooledSweep? Top,
    double? Confidence = null)
{
    /// <summary>What is proven of it against each grade, best first.</summary>
    public IReadOnlyList<GradeState> States { get; internal init; } = FixedList<GradeState>.Empty;

    /// <summary>What carriages felt along it, with the builder's notes, which enter no figure; empty where the drag log doesn't have it.</summary>
    public IReadOnlyList<CarriageDrag> Drag { get; internal init; } = FixedList<CarriageDrag>.Empty;

    /// <summary>Places of higher drag along it.</summary>
    public IReadOnlyList<DragPlace> DragPlaces { get; internal init; } = FixedList<DragPlace>.Empty;

    /// <summary>The value of a feature, in its unit; null when it could not be judged.</summary>
    public double? ValueOf(string feature) => Features.FirstOrDefault(f => f.Feature == feature)?.Value;
}
