using System.Collections.Generic;

namespace Waywright;

/// <summary>
/// Whether the rail lay differently each time it was laid: F of the lays' bows, (RSS0 - RSS1) / (L - 1) over RSS1 / df, where the model with a parabola of its own for each of L
/// lays leaves RSS1 and the model without leaves RSS0. If so, the bow between lays is an input that falls with lays, not with passes.
/// </summary>
/// <remarks>
/// An exact F test for Gaussian scatter (linear hypothesis; Rao, Linear Statistical Inference, 4a, from memory); the variance between lays by equating the mean square to its
/// expectation. Simulated batches without a bow between lays are called significant in 5 % of cases; a test holds that.
/// </remarks>
/// <param name="Lays">Their names, in the file's order.</param>
/// <param name="BowUm">The combined profile's bow as each lay shows it, um, crowned positive; empty where it can't be told.</param>
/// <param name="F">Test statistic; null where it was not tested.</param>
/// <param name="DegreesBetween">Lays less 1.</param>
/// <param name="DegreesWithin">Readings less all that was fitted.</param>
/// <param name="P">Chance of such an F or a larger one when the rail lay alike; null where it was not tested.</param>
/// <param name="WithinUm">Standard deviation of a single reading within lays, um; null where it was not tested.</param>
/// <param name="ExtraUm">Standard deviation of the bow from lay to lay, beyond what scatter explains, um; 0 where not significant.</param>
/// <param name="Verdict">In a sentence.</param>
public sealed record LaysTest(
    IReadOnlyList<string> Lays,
    IReadOnlyList<double> BowUm,
    double? F,
    int DegreesBetween,
    int DegreesWithin,
    double? P,
    double? WithinUm,
    double ExtraUm,
    string Verdict)
{
    /// <summary>Chance of a false alarm that is accepted.</summary>
    public const double Level = 0.05;

    /// <summary>Mean square of the lays' bows and what scatter alone would make of it, um2; null where it was not tested.</summary>
    internal (double Shown, double ByScatter)? Squares { get; init; }

    /// <summary>Whether the bow varies between lays by more than scatter explains.</summary>
    public bool IsSignificant => P < Level;
}
