namespace Waywright.Placement;

/// <summary>A rail in its place.</summary>
/// <param name="Machine">Which machine, from 1.</param>
/// <param name="Position">The position; with its number where a machine has several of them (<c>lift 2</c>).</param>
/// <param name="Rail">The rail.</param>
/// <param name="IsTurned">Whether it lies end for end: the end with the dot at the far end of the place.</param>
/// <param name="DotAt">Where the end with the dot comes: <c>near end</c>, <c>far end</c>, or what the plan calls them.</param>
/// <param name="Feature">Which straightness counts here.</param>
/// <param name="ResidualUm">Its estimate, um: what noise adds is taken off where the set-up is known, as read otherwise.</param>
/// <param name="Partner">The rail in the other place of the pair; null without one.</param>
/// <param name="MismatchUm">Between the shapes of the pair as they lie: STRt of the difference about its least-squares line, um, as read.</param>
/// <param name="Why">One sentence.</param>
public sealed record PlacedRail(
    int Machine,
    string Position,
    string Rail,
    bool IsTurned,
    string DotAt,
    string Feature,
    double ResidualUm,
    string? Partner,
    double? MismatchUm,
    string Why);

/// <summary>A position that can't be filled.</summary>
/// <param name="Position">The position.</param>
/// <param name="Missing">How many rails it lacks over all machines.</param>
/// <param name="Needs">What would fill it, a sentence.</param>
public sealed record UnfilledPosition(string Position, int Missing, string Needs);
