using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>Which face of a rail the dial touched. x = 0 is the end with the paint dot; + is material towards the dial.</summary>
public enum RailFace
{
    /// <summary>A side face, left or right as seen from x = 0 along +x.</summary>
    Side,

    /// <summary>The top; a positive bow is crowned.</summary>
    Top,
}

/// <summary>One run of the dial along a face: readings in um at positions in mm, in rising position.</summary>
/// <param name="Pass">Its name in the file.</param>
/// <param name="Direction"><c>forward</c> (from the dot) or <c>back</c>.</param>
/// <param name="Lay">Which laying-down of the rail it belongs to; empty when not stated.</param>
/// <param name="PositionsMm">Distance from the dot, mm.</param>
/// <param name="ReadingsUm">What the dial said, um.</param>
public sealed record SweepPass(string Pass, string Direction, string Lay, IReadOnlyList<double> PositionsMm, IReadOnlyList<double> ReadingsUm)
{
    /// <summary>What a person calls it: <c>pass 2 back</c>.</summary>
    public override string ToString() => Pass.Length == 0 ? "the readings" : $"pass {Pass} {Direction}";
}

/// <summary>All passes over one face of one rail, as read: nothing cleaned, nothing combined.</summary>
/// <param name="Rail">The rail's name; null for a bare profile.</param>
/// <param name="Face">Which face; null for a bare profile.</param>
/// <param name="SetupId">The set-up's name in the file; null when none is given.</param>
/// <param name="Setup">The set-up, when a book of set-ups was given.</param>
/// <param name="Passes">At least one.</param>
/// <param name="Source">The file they come from.</param>
public sealed record Sweep(string? Rail, RailFace? Face, string? SetupId, Setup? Setup, IReadOnlyList<SweepPass> Passes, string Source)
{
    /// <summary>Which line along the face it follows, as the column <c>track</c> has it; null when not stated. Twist is read off two.</summary>
    public string? Track { get; init; }

    /// <summary>What a person calls it: <c>R07 side</c>.</summary>
    public string Name => Rail is null ? "profile" : $"{Rail} {FaceName}";

    /// <summary>Readings in all passes.</summary>
    public int ReadingCount => Passes.Sum(p => p.PositionsMm.Count);

    internal string? FaceName => Face switch
    {
        RailFace.Side => "side",
        RailFace.Top => "top",
        _ => null,
    };

    /// <summary>Aligns the passes and combines them into one profile: see <see cref="PooledSweep"/>.</summary>
    /// <exception cref="InputException">A pass shares fewer than two stations with the others, so it can't be aligned to them.</exception>
    public PooledSweep Pool() => PassAlignment.Pool(this);
}
