using System;
using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>
/// What the side face of a mounted rail can be counted on to be. Tightening doesn't straighten a side: screws have clearance in their holes, and friction keeps
/// what was set before. So the rail keeps its free shape, unless it was pushed to an edge, the edge could be reached, and friction holds it there.
/// </summary>
/// <remarks>
/// Set: z = f - S f + S h, f the free side, h the edge, S the natural cubic spline through the screws. Reachable: |f - h| over its own minimum-zone line is
/// within the clearance at each screw. Kept: the elastic force at each screw is at most mu F / 2 (mu 0.15: common practice, no source).
/// </remarks>
public sealed record SideMounting
{
    /// <summary>Friction of dry steel on aluminium or steel: common practice, no source.</summary>
    public const double UsualFriction = 0.15;

    private readonly FixedList<double> _shifts;
    private readonly FixedList<double> _forces;

    private SideMounting(Profile free, ScrewPattern screws, string? setTo, Profile? edge, double clearanceUm, double holdingN, double stiffness)
    {
        (Free, Screws, SetTo, Edge, ClearanceUm, HoldingN) = (free, screws, setTo, edge, clearanceUm, holdingN);
        var given = new MountingCase(free, screws, stiffness, edge, null, null);
        var laid = new LaidRail(given);
        FreeUm = Width(laid.Places, laid.Free);
        (_shifts, _forces) = (FixedList<double>.Empty, FixedList<double>.Empty);
        if (setTo is null)
            return;
        var at = laid.IndicesOf(screws);
        var pressed = laid.Press(at, withContact: false);
        SetUm = Width(laid.Places, laid.Mounted(pressed, share: 1));
        var shifts = new Profile(screws.ScrewsMm, [.. at.Select(i => laid.Under[i] - laid.Free[i])]);
        var line = StraightnessFigures.Of(shifts).MinimumZone.Line;
        _shifts = FixedList<double>.Copy(shifts.PositionsMm.Zip(shifts.HeightsUm, (x, z) => z - line.HeightUm(x)));
        _forces = FixedList<double>.Copy(at.Select(i => MountedShape.NewtonPerUm * stiffness * pressed.ForceAt(i)));
    }

    /// <summary>The side as it was swept unmounted, mm from the dot; + is towards the dial.</summary>
    public Profile Free { get; }

    /// <summary>Where it is screwed down.</summary>
    public ScrewPattern Screws { get; }

    /// <summary>What it was set to at each screw while they were tightened: <c>the straightedge</c>, <c>the other rail</c>; null where it was laid down only.</summary>
    public string? SetTo { get; }

    /// <summary>The edge that it was set to; null for a straight one, or for none.</summary>
    public Profile? Edge { get; }

    /// <summary>How far a screw lets the rail move to either side from the middle of its hole, um; 0 as laid.</summary>
    public double ClearanceUm { get; }

    /// <summary>What friction holds at one screw, mu F / 2, N; 0 as laid.</summary>
    public double HoldingN { get; }

    /// <summary>STRt of the free side from end to end, minimum zone, um.</summary>
    public double FreeUm { get; }

    /// <summary>STRt once set, minimum zone, um, if it could be reached and is kept; null as laid.</summary>
    public double? SetUm { get; }

    /// <summary>How far each screw's place has to move to reach the edge, the rail as a whole laid as well as it can be, um; empty as laid.</summary>
    public IReadOnlyList<double> ShiftsUm => _shifts;

    /// <summary>What the bent rail pushes each screw's place with, N; empty as laid.</summary>
    public IReadOnlyList<double> ForcesN => _forces;

    /// <summary>Holes whose clearance is too small for the shift.</summary>
    public IReadOnlyList<int> UnreachedHoles => FixedList<int>.Copy(Screws.Holes.Where((_, i) => i < _shifts.Count && Math.Abs(_shifts[i]) > ClearanceUm));

    /// <summary>Holes where friction doesn't hold the rail.</summary>
    public IReadOnlyList<int> SlippingHoles => FixedList<int>.Copy(Screws.Holes.Where((_, i) => i < _forces.Count && Math.Abs(_forces[i]) > HoldingN));

    /// <summary>Whether the setting can be counted on: it was set, every screw reaches, and friction holds at every screw.</summary>
    public bool IsHeld => SetTo is not null && UnreachedHoles.Count == 0 && SlippingHoles.Count == 0;

    /// <summary>What the side can be counted on to be, um: <see cref="SetUm"/> where the setting holds, else the free shape.</summary>
    public double ResidualUm => IsHeld ? SetUm ?? FreeUm : FreeUm;

    /// <summary>Laid down and tightened: it keeps its free shape.</summary>
    /// <param name="free">The side swept free, on the rail, reaching each end screw within a pitch.</param>
    /// <param name="screws">The screws.</param>
    /// <exception cref="ArgumentException">The profile doesn't fit the rail or was filtered.</exception>
    public static SideMounting AsLaid(Profile free, ScrewPattern screws) => new(free, screws, null, null, 0, 0, 1);

    /// <summary>Pushed to a straightedge at each screw.</summary>
    /// <param name="free">The side swept free, on the rail, reaching each end screw within a pitch.</param>
    /// <param name="screws">The screws.</param>
    /// <param name="bendingStiffnessNm2">EI of the rail for bending sideways, N m2, 1e-6 to 1e12.</param>
    /// <param name="clearanceMm">Half of what the holes are wider than the screws, mm, 0 to 100.</param>
    /// <param name="clampForceN">Force that a tightened screw clamps with, N, above 0.</param>
    /// <param name="edge">The straightedge's own shape, + the same way as the side; none takes it as straight.</param>
    /// <param name="friction">mu, 0 to 2.</param>
    /// <exception cref="ArgumentException">A profile doesn't fit the rail or was filtered, or a value is out of its range; all that is wrong with the values is listed.</exception>
    public static SideMounting ToStraightedge(Profile free, ScrewPattern screws, double bendingStiffnessNm2, double clearanceMm, double clampForceN, Profile? edge = null, double friction = UsualFriction)
        => Set("the straightedge", free, screws, bendingStiffnessNm2, clearanceMm, clampForceN, edge, friction);

    /// <summary>Set at each screw from a rail that is already tight, with a gauge of constant width.</summary>
    /// <param name="free">The side swept free.</param>
    /// <param name="screws">The screws.</param>
    /// <param name="bendingStiffnessNm2">EI for bending sideways, N m2.</param>
    /// <param name="clearanceMm">Half of what the holes are wider than the screws, mm, 0 to 100.</param>
    /// <param name="clampForceN">Force that a tightened screw clamps with, N, above 0.</param>
    /// <param name="otherRail">The other rail's side as it is mounted, mm from this rail's dot, + the same way as this side; none leaves the figures relative to it.</param>
    /// <param name="friction">mu, 0 to 2.</param>
    /// <exception cref="ArgumentException">As for <see cref="ToStraightedge"/>.</exception>
    public static SideMounting FromOtherRail(Profile free, ScrewPattern screws, double bendingStiffnessNm2, double clearanceMm, double clampForceN, Profile? otherRail = null, double friction = UsualFriction)
        => Set("the other rail", free, screws, bendingStiffnessNm2, clearanceMm, clampForceN, otherRail, friction);

    private static SideMounting Set(string setTo, Profile free, ScrewPattern screws, double stiffness, double clearanceMm, double clampForceN, Profile? edge, double friction)
    {
        string?[] problems =
        [
            MountingCase.Outside(clearanceMm, 0, 100, "The clearance of the holes", "mm"),
            MountingCase.Outside(clampForceN, double.Epsilon, 1e9, "The clamp force", "N"),
            MountingCase.Outside(friction, 0, 2, "The friction", "(no unit)"),
        ];
        if (problems.Any(p => p is not null))
            throw new ArgumentException(string.Join(' ', problems.OfType<string>()));
        return new SideMounting(free, screws, setTo, edge, 1000 * clearanceMm, friction * clampForceN / 2, stiffness);
    }

    private static double Width(double[] x, double[] z) => StraightnessFigures.Of(new Profile(x, z)).MinimumZone.Line.STRtUm;
}
