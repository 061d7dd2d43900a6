using System.Collections.Generic;
using UnitsNet;

namespace Waywright;

/// <summary>One pluck of a take and the note that it proves. Made by <see cref="PluckTake"/>.</summary>
/// <remarks>
/// The frequency is that of the first mode at amplitude zero. Its u is the root of the squares of: the fit under the noise that it leaves; the scatter of the partials about their ladder;
/// a recorder's clock, 0.17 cents; a twelfth of the square of any change of pitch; and 1.5 cents by which a real string's own first mode is no sharper (recorded strings of known pitch: docs/plucks.md).
/// </remarks>
public sealed record Pluck
{
    internal Pluck(double startSeconds, double usedFromSeconds, double usedToSeconds)
        => (StartSeconds, UsedFromSeconds, UsedToSeconds) = (startSeconds, usedFromSeconds, usedToSeconds);

    /// <summary>When it starts, s from the first sample.</summary>
    public double StartSeconds { get; }

    /// <summary>Where the part that was used starts: 30 ms after the pluck, whose noise is over by then.</summary>
    public double UsedFromSeconds { get; }

    /// <summary>Where it ends: 1 s on, 25 dB down, at the noise, or at the next pluck.</summary>
    public double UsedToSeconds { get; }

    /// <summary>The note; null where none stands out.</summary>
    public Measured<Frequency>? Frequency { get; internal init; }

    /// <summary>The part of its u that noise and the partials' scatter make, Hz.</summary>
    public double FitUncertaintyHz { get; internal init; }

    /// <summary>How stiff the span acts: B of f_k = k f_1 sqrt((1 + B k^2) / (1 + B)).</summary>
    public double Inharmonicity { get; internal init; }

    /// <summary>How far the partials scatter about that ladder, cents.</summary>
    public double ScatterCents { get; internal init; }

    /// <summary>How much higher the note starts than the amplitude-free one, cents; 0 where no such fall was seen.</summary>
    public double GlideCents { get; internal init; }

    /// <summary>The partials that were fitted.</summary>
    public IReadOnlyList<PluckPartial> Partials { get; internal init; } = FixedList<PluckPartial>.Empty;

    /// <summary>The next best notes, with how well their ladders fit beside the best's.</summary>
    public IReadOnlyList<PluckCandidate> RunnersUp { get; internal init; } = FixedList<PluckCandidate>.Empty;

    /// <summary>Why it is not to be used, and what to do; none where it is.</summary>
    public IReadOnlyList<string> Reasons { get; internal init; } = FixedList<string>.Empty;

    /// <summary>Whether its note is to be used.</summary>
    public bool IsUsable => Frequency is not null && Reasons.Count == 0;
}

/// <summary>A partial of a pluck.</summary>
/// <param name="Number">1 for the lowest.</param>
/// <param name="FrequencyHz">Its own frequency, Hz.</param>
/// <param name="StandardUncertaintyHz">From the noise, Hz.</param>
/// <param name="LevelDb">Below the strongest, dB, at the start of the part that was used.</param>
public sealed record PluckPartial(int Number, double FrequencyHz, double StandardUncertaintyHz, double LevelDb);
