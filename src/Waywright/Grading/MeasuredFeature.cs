using System;

namespace Waywright;

/// <summary>Why a feature could not be judged, and what would help.</summary>
internal sealed record NotJudged(string Why, string Remedy);

/// <summary>A figure of a rail as read and, with a set-up, with its bounds.</summary>
/// <param name="Feature">One of <see cref="RailFeature"/>.</param>
/// <param name="Read">As read, um, or % for the drag; null when it could not be judged.</param>
/// <param name="Figure">With its bounds; null without a set-up.</param>
/// <param name="Face">The face that it is a figure of; null when not swept.</param>
internal sealed record MeasuredFeature(string Feature, double? Read, UncertainFigure? Figure, PooledSweep? Face)
{
    /// <summary>Why there is no figure; null where there is one, or where the face was not swept.</summary>
    public NotJudged? Missing { get; init; }

    /// <summary>Where its uncertainty comes from, largest first; empty without a set-up.</summary>
    public Func<UncertaintyComponent[]> Budget { get; init; } = () => [];

    /// <summary>The least that is proven of it where it has no bounds: a limit below it is one that it is beyond. The figure as read when not given.</summary>
    public double? Proven { get; init; }

    /// <summary>What would settle it where passes of a dial can't.</summary>
    public string? Remedy { get; init; }

    /// <summary>What it was read with, as a sentence names it.</summary>
    public string? With { get; init; }

    /// <summary>Whether it is within a limit: as read, or by its upper bound.</summary>
    public bool IsWithin(double limit, double level) => Figure is { } figure ? figure.NoiseFloorUm <= limit && figure.UpperBoundUm(level) <= limit : Read <= limit;

    /// <summary>Whether it is proven to be beyond a limit.</summary>
    public bool IsBeyond(double limit, double level) => Figure is { } figure ? figure.NoiseFloorUm <= limit && figure.LowerBoundUm(level) > limit : (Proven ?? Read) > limit;

    /// <summary>Whether the same set-up reads more than the limit on a perfectly straight rail in 5 of 100 sweeps.</summary>
    public bool IsRefused(double limit) => Figure?.NoiseFloorUm > limit;

    /// <summary>Its share of a limit.</summary>
    public double? ShareOf(double limit, double level) => (Figure?.UpperBoundUm(level) ?? Read) / limit;
}
