using System;
using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>
/// What the top face of a rail will be once it is screwed down: z = f - r S (f - g), f its free shape, g the base's, S the natural cubic spline through
/// screws and contacts (straight beyond the outer ones), r = EI_base / (EI_rail + EI_base), 1 on a rigid base. Where rail and base would enter each other
/// between screws they touch instead, and the base pushes.
/// </summary>
/// <remarks>
/// Screws are taken as points that bring rail and base together; weight, shear, and the rail's own change of height from its bottom to its top face are left
/// out. The base bends as the rail does, between the same screws, and rests on no more than two other points. A prediction: sweep the rail once it is mounted.
/// </remarks>
public sealed record MountedShape
{
    /// <summary>um/mm3 times N m2.</summary>
    internal const double NewtonPerUm = 1000;

    // About the radius of a small screw's head: common practice, no source.
    internal const double JointMm = 3;

    private readonly FixedList<double> _forces;
    private readonly FixedList<double> _contacts;

    private MountedShape(MountingCase given, LaidRail laid, ContactSearch found, int[] screws, ProfileErrors? errors)
    {
        (Free, Screws, Base, BendingStiffnessNm2, BaseStiffnessNm2, ClampLimitN) = (given.Free, given.Screws, given.Base, given.BendingStiffnessNm2, given.BaseStiffnessNm2, given.ClampLimitN);
        var places = laid.Places;
        var mounted = laid.Mounted(found, given.BaseShare);
        Mounted = new Profile(places, mounted, Title);
        BentBase = new Profile(places, mounted.Select((z, i) => z - found.Open[i]).ToArray(), given.Base?.Name ?? "base");
        FreeUm = StraightnessFigures.Of(new Profile(places, laid.Free)).MinimumZone.Line.STRtUm;
        Zone = StraightnessFigures.Of(Mounted).MinimumZone.Line;
        BaseUm = given.Base is null ? null : StraightnessFigures.Of(BentBase).MinimumZone.Line.STRtUm;
        var widest = 0;
        for (var i = 0; i < places.Length; i++)
            widest = found.Open[i] > found.Open[widest] ? i : widest;
        (WidestGapUm, WidestGapAtMm, DotEndGapUm, FarEndGapUm) = (Math.Max(0, found.Open[widest]), places[widest], Math.Max(0, found.Open[0]), Math.Max(0, found.Open[^1]));
        var stiffness = NewtonPerUm * given.BendingStiffnessNm2 * given.BaseShare;
        // A base that pushes right beside a screw has next to no lever: its force grows without bound as the grid gets finer, the resultant of the joint doesn't.
        _forces = FixedList<double>.Copy(screws.Select(i => 0.0 - (stiffness * Enumerable.Range(0, places.Length)
            .Where(j => j == i || (found.IsContact(j) && Math.Abs(places[j] - places[i]) <= JointMm)).Sum(found.ForceAt))));
        _contacts = FixedList<double>.Copy(Enumerable.Range(0, places.Length).Where(found.IsContact).Select(i => places[i]));
        Figure = errors is null ? null : MountedFigure.Of(given, ResidualUm, errors).Complete();
    }

    /// <summary>The rail's top as it was swept unmounted, mm from the dot.</summary>
    public Profile Free { get; }

    /// <summary>Where it is screwed down.</summary>
    public ScrewPattern Screws { get; }

    /// <summary>The base's face as it was swept, mm from the rail's dot; null when it wasn't.</summary>
    public Profile? Base { get; }

    /// <summary>EI of the rail about the axis that its top bends about, N m2.</summary>
    public double BendingStiffnessNm2 { get; }

    /// <summary>EI of the base, N m2; null for a rigid one.</summary>
    public double? BaseStiffnessNm2 { get; }

    /// <summary>What one screw can pull, N; null when not given.</summary>
    public double? ClampLimitN { get; }

    /// <summary>What the figures are about; without the base's shape they count from the base, whatever that is.</summary>
    public string Title => $"{(Free.Name.Length == 0 ? "top" : Free.Name)}, mounted{(Base is null ? ", relative to the base" : "")}";

    /// <summary>The mounted top at about every millimetre, um.</summary>
    public Profile Mounted { get; }

    /// <summary>The base's face once the rail is on it; flat where its shape isn't known and it is rigid.</summary>
    public Profile BentBase { get; }

    /// <summary>The mounted top at the stations of the free one, um; straight lines between the places of <see cref="Mounted"/>, which holds nearly all of them.</summary>
    public Profile AtStations => new(Free.PositionsMm, [.. Free.PositionsMm.Select(HeightUm)], Title);

    /// <summary>The minimum zone of the mounted top, from end to end of the rail.</summary>
    public ReferenceLine Zone { get; }

    /// <summary>Predicted mounted residual: STRt of <see cref="Mounted"/>, minimum zone, um.</summary>
    public double ResidualUm => Zone.STRtUm;

    /// <summary>
    /// The same with estimate, 95 % interval and noise floor, from what the free top's heights are uncertain by and that nobody read it between the stations; null where that wasn't given.
    /// The screws and, where it was swept, the base's shape are taken as exact. The interval is the residual -/+ what such errors move it by, the base's push solved anew; the estimate is as read.
    /// </summary>
    public UncertainFigure? Figure { get; }

    /// <summary>STRt of the free top over the same places, minimum zone, um.</summary>
    public double FreeUm { get; }

    /// <summary>STRt of the base's face once the rail is on it, minimum zone, um: what a better rail would still follow; null without the base's shape.</summary>
    public double? BaseUm { get; }

    /// <summary>The most that stands open between rail and base, um.</summary>
    public double WidestGapUm { get; }

    /// <summary>Where that is, mm.</summary>
    public double WidestGapAtMm { get; }

    /// <summary>How far the end with the dot stands off the base, um.</summary>
    public double DotEndGapUm { get; }

    /// <summary>How far the far end stands off the base, um.</summary>
    public double FarEndGapUm { get; }

    /// <summary>Places between or beyond the screws where the base pushes the rail up, mm.</summary>
    public IReadOnlyList<double> ContactsMm => _contacts;

    /// <summary>What each screw pulls the rail down with, N, in the order of the pattern's holes, from the jumps of shear, less what the base pushes within 3 mm of it; below 0 the base pushes up there and the screw only keeps its place.</summary>
    public IReadOnlyList<double> PullsN => _forces;

    /// <summary>Holes whose screw would have to pull more than <see cref="ClampLimitN"/>; empty when none or no limit was given.</summary>
    public IReadOnlyList<int> OverloadedHoles => FixedList<int>.Copy(Screws.Holes.Where((_, i) => _forces[i] > ClampLimitN));

    /// <summary>EI of the rail over EI of the base; 0 on a rigid base.</summary>
    public double StiffnessRatio => BaseStiffnessNm2 is { } under ? BendingStiffnessNm2 / under : 0;

    /// <summary>Height of the mounted top at a place of the rail, um.</summary>
    /// <param name="xMm">mm from the dot, 0 to the rail's length.</param>
    /// <exception cref="ArgumentOutOfRangeException">The place is off the rail.</exception>
    public double HeightUm(double xMm)
    {
        var places = Mounted.Positions;
        if (!(xMm >= places[0] - 1e-9 && xMm <= places[^1] + 1e-9))
            throw new ArgumentOutOfRangeException(nameof(xMm), xMm, "The place is off the rail.");
        var at = places.BinarySearch(xMm);
        if (at >= 0)
            return Mounted.Heights[at];
        var right = Math.Clamp(~at, 1, places.Length - 1);
        var share = (xMm - places[right - 1]) / (places[right] - places[right - 1]);
        return Mounted.Heights[right - 1] + (share * (Mounted.Heights[right] - Mounted.Heights[right - 1]));
    }

    /// <summary>Predicts the mounted top.</summary>
    /// <param name="free">The top swept free, at least two stations on the rail, reaching each end screw within a pitch; + is up.</param>
    /// <param name="screws">The screws.</param>
    /// <param name="bendingStiffnessNm2">EI of the rail for bending up and down, N m2, 1e-6 to 1e12.</param>
    /// <param name="baseShape">The base swept free, mm from the rail's dot, reaching each end screw within a pitch; none leaves the figures relative to the base.</param>
    /// <param name="baseStiffnessNm2">EI of the base, N m2, 1e-6 to 1e12; none takes it as rigid. From 1/20 of the base's EI on a rail bends its base noticeably.</param>
    /// <param name="clampLimitN">What a screw can pull, N, above 0.</param>
    /// <param name="errors">What the free top's heights are uncertain by, for <see cref="Figure"/>.</param>
    /// <exception cref="ArgumentException">A profile doesn't fit the rail or was filtered, errors don't fit the profile, or a value is out of its range.</exception>
    /// <remarks>
    /// Checked against MathNet's natural spline, the supported beam of this library, a beam finite-element model and a quadratic program in SciPy, and closed
    /// forms: a bow of 100 um on a 350 mm rail leaves 0.4 um under all 18 screws.
    /// </remarks>
    public static MountedShape Of(Profile free, ScrewPattern screws, double bendingStiffnessNm2, Profile? baseShape = null, double? baseStiffnessNm2 = null, double? clampLimitN = null, ProfileErrors? errors = null)
    {
        var given = new MountingCase(free, screws, bendingStiffnessNm2, baseShape, baseStiffnessNm2, clampLimitN);
        ErrorInputs.CheckFit(free, errors);
        return Of(given, errors: errors);
    }

    /// <param name="given">Rail, screws, base.</param>
    /// <param name="withContact">False lets rail and base enter each other between screws, for comparison with formulas that do.</param>
    /// <param name="errors">Of the free top.</param>
    internal static MountedShape Of(MountingCase given, bool withContact = true, ProfileErrors? errors = null)
    {
        var laid = new LaidRail(given);
        var screws = laid.IndicesOf(given.Screws);
        return new MountedShape(given, laid, laid.Press(screws, withContact), screws, errors);
    }
}
