using System.Collections.Generic;

namespace Waywright;

/// <summary>One of the two boundaries of a minimum zone.</summary>
public enum ZoneSide
{
    /// <summary>The boundary above all stations.</summary>
    Upper,

    /// <summary>The boundary below all stations.</summary>
    Lower,
}

/// <summary>A station that touches a boundary of the minimum zone.</summary>
/// <param name="Station">Its index in the profile, from 0.</param>
/// <param name="PositionMm">Where it is, mm.</param>
/// <param name="Side">Which boundary it touches.</param>
public sealed record ZoneContact(int Station, double PositionMm, ZoneSide Side);

/// <summary>
/// The two parallel lines, vertically closest to each other, between which all stations lie: width = min over b of max(z - b x) - min(z - b x).
/// Exact, not iterated to a tolerance.
/// </summary>
/// <param name="Line">The line half-way between the boundaries, so STRp = STRv = STRt / 2, and STRt is the width of the zone.</param>
/// <param name="LowestSlopeUmPerM">Smallest slope of a zone of that width, um/m.</param>
/// <param name="HighestSlopeUmPerM">
/// Largest slope of a zone of that width, um/m. It is the same as the smallest unless the width is what one repeated station spans; then
/// <paramref name="Line"/> has the middle one.
/// </param>
/// <param name="Contacts">
/// All stations on a boundary, in order of position, the upper before the lower one of the same station. On a boundary means within 1e-10 of the width
/// plus four units in the last place of the largest reading and of the tilt over the positions. Some three that alternate between the sides prove that
/// no zone is narrower. They are not the places of a fault: another sweep of the same rail often rests on others.
/// </param>
public sealed record MinimumZone(
    ReferenceLine Line,
    double LowestSlopeUmPerM,
    double HighestSlopeUmPerM,
    IReadOnlyList<ZoneContact> Contacts)
{
    /// <summary>All stations on a boundary, in order of position.</summary>
    public IReadOnlyList<ZoneContact> Contacts { get; } = FixedList<ZoneContact>.Copy(Contacts);
}
