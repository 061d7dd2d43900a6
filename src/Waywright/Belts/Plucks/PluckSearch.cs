using System;

namespace Waywright;

/// <summary>What is known before a take is analysed.</summary>
/// <param name="LowestHz">Lowest note that the span can have, 18 Hz or more.</param>
/// <param name="HighestHz">Highest, at least 1.2 times the lowest, up to 1 000 Hz. Narrow both where the tension is roughly known: a wrong partial is a factor 4 in tension.</param>
/// <param name="MainsHz">50 or 60 where it is known; else both are tried.</param>
/// <param name="Control">A take of the same pluck with a finger on the middle of the span: what still sounds then is the frame or hum.</param>
public sealed record PluckSearch(double LowestHz = 18, double HighestHz = 420, double? MainsHz = null, PluckTake? Control = null)
{
    /// <summary>Lowest note, Hz.</summary>
    public double LowestHz { get; } = LowestHz is >= 18 and <= 1000 ? LowestHz : throw new ArgumentOutOfRangeException(nameof(LowestHz), LowestHz, "A note of 18 to 1000 Hz is needed.");

    /// <summary>Highest note, Hz.</summary>
    public double HighestHz { get; } = HighestHz <= 1000 && HighestHz >= 1.2 * LowestHz ? HighestHz : throw new ArgumentOutOfRangeException(nameof(HighestHz), HighestHz, "A note at least 1.2 times the lowest and up to 1000 Hz is needed.");

    /// <summary>Frequency of the mains, Hz.</summary>
    public double? MainsHz { get; } = MainsHz is null or 50 or 60 ? MainsHz : throw new ArgumentOutOfRangeException(nameof(MainsHz), MainsHz, "The mains have 50 or 60 Hz.");
}
