using System;

namespace Waywright;

/// <summary>Why a feature could not be judged, and what would help.</summary>
internal sealed record NotJudged(string Why, string Remedy);

/// <summary>A figure of a rail as read and, with a set-up, with its bounds.</summary>
/// <param name="Feature">One of <see cref="RailFeature"/>.</param>
/// <param name="ReadUm">As read, um; null when it could not be judged.</param>
/// <param name="Figure">With its bounds; null without a set-up.</param>
/// <param name="Face">The face that it is a figure of; null when not swept.</param>
internal sealed record MeasuredFeature(string Feature, double? ReadUm, UncertainFigure? Figure, PooledSweep? Face)
{
    /// <summary>Why there is no figure; null where there is one, or where the face was not swept.</summary>
    public NotJudged? Missing { get; init; }

    /// <summary>Where its uncertainty comes from, largest first; empty without a set-up.</summary>
    public Func<UncertaintyComponent[]> Budget { get; init; } = () => [];

    /// <summary>Whether it is within a limit: as read, or by its upper bound.</summary>
    public bool IsWithin(double limitUm, double level) => Figure is { } figure ? figure.NoiseFloorUm <= limitUm && figure.UpperBoundUm(level) <= limitUm : ReadUm <= limitUm;

    /// <summary>Whether it is proven to be beyond a limit.</summary>
    public bool IsBeyond(double limitUm, double level) => Figure is { } figure ? figure.NoiseFloorUm <= limitUm && figure.LowerBoundUm(level) > limitUm : ReadUm > limitUm;

    /// <summary>Whether the same set-up reads more than the limit on a perfectly straight rail in 5 of 100 sweeps.</summary>
    public bool IsRefused(double limitUm) => Figure?.NoiseFloorUm > limitUm;

    /// <summary>Its share of a limit.</summary>
    public double? ShareOf(double limitUm, double level) => (Figure?.UpperBoundUm(level) ?? ReadUm) / limitUm;
}
