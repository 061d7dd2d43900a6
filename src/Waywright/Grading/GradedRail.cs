using System;
using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>A feature of a rail beside the limit that decided it.</summary>
public sealed record FeatureValue
{
    private readonly MeasuredFeature _measured;

    internal FeatureValue(MeasuredFeature measured, double? limit) => (_measured, Limit) = (measured, limit);

    /// <summary>One of <see cref="RailFeature"/>.</summary>
    public string Feature => _measured.Feature;

    /// <summary>As read, um, or % for the drag; null when it could not be judged (the face is not swept, its stations are too far apart, or its holes are not known).</summary>
    public double? Value => _measured.Read;

    /// <summary>The limit of the grade given, or of the lowest grade when none is met, in the same unit; null where it limits none: the figure is only told.</summary>
    public double? Limit { get; }

    /// <summary>The same with estimate, interval and noise floor; null when no set-up was given. It is simulated when it is asked for.</summary>
    public UncertainFigure? Figure => _measured.Figure;

    /// <summary>What value and limit are in: um or %.</summary>
    public string Unit => RailFeature.UnitOf(Feature);

    /// <summary>The heights that it is a figure of, where these are not the face as swept.</summary>
    internal Profile? Predicted => _measured.Predicted?.Invoke();

    /// <summary>Length of the window of a short stretch, mm.</summary>
    internal double? WindowMm => _measured.WindowMm;

    /// <summary>Of <see cref="Figure"/>, um; not simulated again once it was.</summary>
    internal double? StandardUncertaintyUm => _measured.StandardUncertaintyUm;

    /// <summary>How often <see cref="Figure"/> was simulated.</summary>
    internal int Simulations => _measured.Simulations;

    /// <summary>Whether there is a figure with bounds, without simulating it.</summary>
    internal bool IsBounded => _measured.IsBounded;

    /// <summary>Equal when it is the same figure beside the same limit.</summary>
    public bool Equals(FeatureValue? other) => other is not null && Feature == other.Feature && Nullable.Equals(Value, other.Value) && Nullable.Equals(Limit, other.Limit);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Feature, Value, Limit);
}

/// <summary>What is proven of a rail against one grade.</summary>
/// <param name="Grade">The grade's name.</param>
/// <param name="State"><c>meets</c>: every feature is within its limit; <c>fails</c>: some feature is beyond it; <c>undecided</c>: neither is proven.</param>
/// <param name="Confidence">The highest level at which that would still hold; null where undecided, and where no set-up was given.</param>
public sealed record GradeState(string Grade, string State, double? Confidence);

/// <summary>
/// What to do with one rail, why, and the figures. The grade is settled; what tells of its figures (<see cref="Reason"/>, <see cref="Next"/>, <see cref="LimitingFeature"/>,
/// <see cref="Confidence"/>, <see cref="States"/>) is worked out when it is asked for, and is the same whenever that is.
/// </summary>
public sealed record GradedRail
{
    private readonly Lazy<GradeAnswer> _answer;
    private readonly Lazy<IReadOnlyList<GradeState>> _states;

    internal GradedRail(RailFeatures measured, string grade, IReadOnlyList<FeatureValue> features, Func<GradeAnswer> answer, Func<IReadOnlyList<GradeState>> states)
    {
        (Rail, Grade, Features, Side, Top) = (measured.Rail, grade, features, measured.Side, measured.Top);
        (Drag, DragPlaces) = (measured.Drag?.Carriages ?? FixedList<CarriageDrag>.Empty, measured.Drag?.Places ?? FixedList<DragPlace>.Empty);
        (_answer, _states) = (new(answer), new(states));
    }

    /// <summary>Its name.</summary>
    public string Rail { get; internal init; }

    /// <summary>A grade of the rules, <c>measure again</c>, or <c>return</c>.</summary>
    public string Grade { get; }

    /// <summary>Each feature with the limit that decided, those without one last.</summary>
    public IReadOnlyList<FeatureValue> Features { get; }

    /// <summary>The side face, combined; null when not swept.</summary>
    public PooledSweep? Side { get; }

    /// <summary>The top, combined; null when not swept.</summary>
    public PooledSweep? Top { get; }

    /// <summary>One sentence: which feature decided, its value and limit.</summary>
    public string Reason => _answer.Value.Reason;

    /// <summary>One sentence: what to do.</summary>
    public string Next => _answer.Value.Next;

    /// <summary>The feature that takes the largest share of its limit, by its upper bound where it has one; null when none could be judged.</summary>
    public string? LimitingFeature => _answer.Value.LimitingFeature;

    /// <summary>The highest level at which a grade or a return would still hold; null for <c>measure again</c>, for a rail that binds, and where no set-up was given.</summary>
    public double? Confidence => _answer.Value.Confidence;

    /// <summary>What is proven of it against each grade, best first.</summary>
    public IReadOnlyList<GradeState> States => _states.Value;

    /// <summary>What carriages felt along it, with the builder's notes, which enter no figure; empty where the drag log doesn't have it.</summary>
    public IReadOnlyList<CarriageDrag> Drag { get; }

    /// <summary>Places of higher drag along it.</summary>
    public IReadOnlyList<DragPlace> DragPlaces { get; }

    /// <summary>The value of a feature, in its unit; null when it could not be judged.</summary>
    public double? ValueOf(string feature) => Features.FirstOrDefault(f => f.Feature == feature)?.Value;

    /// <summary>Equal when equal sweeps were given the same grade.</summary>
    public bool Equals(GradedRail? other) => other is not null && Rail == other.Rail && Grade == other.Grade && Equals(Side, other.Side) && Equals(Top, other.Top) && Features.SequenceEqual(other.Features);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Rail, Grade);

    /// <summary>Rail and grade.</summary>
    public override string ToString() => $"{Rail}: {Grade}";
}
