using System;
using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>
/// Rail and guide told apart by two runs between which one of them was turned: a dial reads rail plus guide, and turning changes a sign. Neither needs to be known.
/// Each run has a height and a tilt of its own, so least-squares lines are taken off and both profiles are free of straight lines.
/// </summary>
/// <remarks>
/// Positions count from the rail's dot in both runs, so the two stand over the same stations. The guide's profile is what it added to a reading of the first run. On an upright
/// sweep take the sag off both runs first: rolling the rail turns its sign. Straightedge reversal: Evans, Hocken and Estler, CIRP Annals 45 (1996) 617-634 (from memory);
/// checked by invented rails and guides, which come back to rounding.
/// </remarks>
public sealed record Reversal
{
    private Reversal(string arrangement, Profile rail, ProfileErrors? railErrors, Profile guide, ProfileErrors? guideErrors, Profile? unresolved = null, double? mismatchUm = null)
        => (Arrangement, Rail, RailErrors, Guide, GuideErrors, Unresolved, MismatchUm) = (arrangement, rail, railErrors, guide, guideErrors, unresolved, mismatchUm);

    /// <summary><c>same face</c>, <c>opposite face</c> or <c>end for end</c>.</summary>
    public string Arrangement { get; }

    /// <summary>The rail's face as it met the dial in the first run, um; end for end: its even part alone.</summary>
    public Profile Rail { get; }

    /// <summary>What the guide added to a reading of the first run, um; end for end: its even part alone.</summary>
    public Profile Guide { get; }

    /// <summary>End for end: the odd part (S shapes) of rail and guide together, which this arrangement can't divide; null otherwise. Heights and tilts are never resolved.</summary>
    public Profile? Unresolved { get; }

    /// <summary>End for end: root mean square of what must vanish (the odd part of half the runs' difference), um: a check on the runs. Null otherwise.</summary>
    public double? MismatchUm { get; }

    /// <summary>
    /// What the rail's heights are uncertain by: how well the runs repeat, and from their set-ups all but the guide, which is taken out. Null where nothing was repeated and no
    /// set-up was given, and for profiles.
    /// </summary>
    public ProfileErrors? RailErrors { get; }

    /// <summary>The same for the guide's heights.</summary>
    public ProfileErrors? GuideErrors { get; }

    /// <summary>
    /// The guide's straightness with what the runs leave uncertain, um: for <c>guide_straightness_um</c> of a set-up. STRt about the minimum zone, and on top of it what noise stays
    /// below in 95 % (a zone is no wider than the range: studentized range) and the straightness of each shape at its limit (rectangular) or its 97.5 % point; a bound, for STRt of a
    /// sum is at most the sum. Null where no uncertainty is known, and end for end, where the guide's odd part is not.
    /// </summary>
    public double? GuideAtMostUm => Unresolved is null && GuideErrors is { } errors
        ? StrtOf(Guide.HeightsUm) + (StudentizedRange.Of(0.95, Guide.Count, errors.StationDegreesOfFreedom) * Math.Sqrt(errors.StationUm.Average(u => u * u)))
            + errors.Shapes.Sum(s => StrtOf(s.HeightsUm) * (s.IsRectangular ? Math.Sqrt(3) : StudentQuantile.Of(0.975, s.DegreesOfFreedom)))
        : null;

    /// <summary>
    /// The rail is rolled about its long axis and the dial moved across the guide, so that it meets the same face from the other side: rail = (m1 + m2) / 2,
    /// guide = (m1 - m2) / 2.
    /// </summary>
    /// <param name="first">m1, before.</param>
    /// <param name="second">m2, after.</param>
    /// <param name="isGuideTurned">
    /// Whether the guide was rolled and the rail stayed (the dial rides on the rail's carriage and touches a straightedge): then the two change places, and the rail's profile is
    /// what it added to a reading of the first run.
    /// </param>
    /// <exception cref="InputException">The runs don't match: other stations, fewer than 3, one of them twice, a filtered profile, another rail, face or guide.</exception>
    public static Reversal SameFace(PooledSweep first, PooledSweep second, bool isGuideTurned = false) => SameFace(ReversalRuns.Of(first, second), isGuideTurned);

    /// <inheritdoc cref="SameFace(PooledSweep, PooledSweep, bool)"/>
    public static Reversal SameFace(Profile first, Profile second, bool isGuideTurned = false) => SameFace(ReversalRuns.Of(first, second), isGuideTurned);

    /// <summary>
    /// The rail is rolled about its long axis and the dial stays, so that it meets the opposite face: rail = (m1 - m2 + dw) / 2, guide = (m1 + m2 - dw) / 2.
    /// </summary>
    /// <param name="first">m1, one face.</param>
    /// <param name="second">m2, the opposite face.</param>
    /// <param name="widthVariation">dw, the rail's width over the same stations, um, less any constant.</param>
    /// <param name="widthUncertaintyUm">Standard uncertainty of one width, um, 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">The uncertainty is negative or not finite.</exception>
    /// <exception cref="InputException">As for <see cref="SameFace(PooledSweep, PooledSweep, bool)"/>; the widths are held to the same stations too.</exception>
    public static Reversal OppositeFace(PooledSweep first, PooledSweep second, Profile widthVariation, double widthUncertaintyUm = 0)
        => OppositeFace(ReversalRuns.Of(first, second), widthVariation, widthUncertaintyUm);

    /// <inheritdoc cref="OppositeFace(PooledSweep, PooledSweep, Profile, double)"/>
    public static Reversal OppositeFace(Profile first, Profile second, Profile widthVariation, double widthUncertaintyUm = 0)
        => OppositeFace(ReversalRuns.Of(first, second), widthVariation, widthUncertaintyUm);

    /// <summary>
    /// The rail is turned end for end on its side face and the dial moved across, so that it meets the same face: m2(x) = rail(x) - guide(L - x). Only what is even about the middle
    /// comes apart: rail = even part of (m1 + m2) / 2, guide = even part of (m1 - m2) / 2. The odd part of (m1 + m2) / 2 is rail and guide together, unresolved.
    /// </summary>
    /// <param name="first">m1, before.</param>
    /// <param name="second">m2, after; positions still count from the dot.</param>
    /// <exception cref="InputException">
    /// As for <see cref="SameFace(PooledSweep, PooledSweep, bool)"/>; the stations are not symmetrical about their middle, or the face is a top (its bow keeps its sign and stays with the guide's).
    /// </exception>
    public static Reversal EndForEnd(PooledSweep first, PooledSweep second)
    {
        var runs = ReversalRuns.Of(first, second);
        ReversalRuns.CheckSide(first.Sweep);
        return EndForEnd(runs);
    }

    /// <inheritdoc cref="EndForEnd(PooledSweep, PooledSweep)"/>
    public static Reversal EndForEnd(Profile first, Profile second) => EndForEnd(ReversalRuns.Of(first, second));

    private double StrtOf(IReadOnlyList<double> heights) => StraightnessFigures.Of(new Profile(Guide.PositionsMm, heights)).MinimumZone.Line.STRtUm;

    private static Reversal SameFace(ReversalRuns runs, bool isGuideTurned)
    {
        var (rail, guide) = isGuideTurned ? (-1, 1) : (1, -1);
        return new Reversal("same face", runs.RailProfile(runs.Half(1, rail)), runs.Errors(1, rail), runs.GuideProfile(runs.Half(1, guide)), runs.Errors(1, guide));
    }

    private static Reversal OppositeFace(ReversalRuns runs, Profile widthVariation, double widthUncertaintyUm)
    {
        ArgumentNullException.ThrowIfNull(widthVariation);
        if (!(widthUncertaintyUm >= 0 && double.IsFinite(widthUncertaintyUm)))
            throw new ArgumentOutOfRangeException(nameof(widthUncertaintyUm), widthUncertaintyUm, "A standard uncertainty is 0 um or more.");
        runs.CheckWidths(widthVariation);
        return new Reversal("opposite face", runs.RailProfile(runs.Half(1, -1, widthVariation, 1)), runs.Errors(1, -1, widthUncertaintyUm), runs.GuideProfile(runs.Half(1, 1, widthVariation, -1)), runs.Errors(1, 1, widthUncertaintyUm));
    }

    private static Reversal EndForEnd(ReversalRuns runs)
    {
        runs.CheckSymmetry();
        var (sum, difference) = (runs.Half(1, 1), runs.Half(1, -1));
        var odd = ReversalRuns.Part(difference, -1);
        var mismatch = 0.0;
        foreach (var height in odd)
            mismatch += height * height / odd.Length;
        return new Reversal("end for end", runs.RailProfile(ReversalRuns.Part(sum, 1)), runs.Errors(1, 1, isEven: true), runs.GuideProfile(ReversalRuns.Part(difference, 1)), runs.Errors(1, -1, isEven: true),
            runs.SharedProfile(ReversalRuns.Part(sum, -1)), Math.Sqrt(mismatch));
    }
}
