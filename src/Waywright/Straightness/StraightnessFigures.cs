using System;

namespace Waywright;

/// <summary>
/// The straightness of one profile about the three usual lines, side by side so that none is taken for another. For the same profile the minimum zone
/// gives the smallest STRt of the three.
/// </summary>
/// <param name="Profile">What was measured.</param>
/// <param name="EndPoints">Line through the first and the last station; the mean of the readings where one of them is repeated.</param>
/// <param name="LeastSquares">Line of least squares.</param>
/// <param name="MinimumZone">Narrowest zone.</param>
/// <remarks>
/// These are figures of the readings: noise never makes them smaller, so without their floor and interval they are not yet an answer about the rail.
/// Two stations always lie on a line: all figures are zero.
/// </remarks>
public sealed record StraightnessFigures(Profile Profile, ReferenceLine EndPoints, ReferenceLine LeastSquares, MinimumZone MinimumZone)
{
    /// <summary>All three lines of a profile.</summary>
    /// <param name="profile">At least two stations at different positions, which every profile has.</param>
    public static StraightnessFigures Of(Profile profile)
    {
        ArgumentNullException.ThrowIfNull(profile);
        if (profile.Count == 2)
            return OfTwo(profile);
        var zone = ProfileKernel.Solve(profile.Positions, profile.Heights, out var line);
        return new StraightnessFigures(
            profile,
            ReferenceLines.ThroughEnds(profile, line),
            ReferenceLines.LeastSquares(profile, line),
            ZoneBuilder.Of(profile, zone, line));
    }

    // Division leaves a residual of an ulp at the second station, and there is nothing to be measured in it.
    private static StraightnessFigures OfTwo(Profile profile)
    {
        var (x, z) = (profile.PositionsMm, profile.HeightsUm);
        var slope = (z[1] - z[0]) / (x[1] - x[0]);
        ReferenceLine Line(ReferenceLineKind kind) => ReferenceLines.Line(kind, slope, x[0], z[0], 0, 0, 0);
        var zone = Line(ReferenceLineKind.MinimumZone);
        ZoneContact[] contacts = [new(0, x[0], ZoneSide.Upper), new(0, x[0], ZoneSide.Lower), new(1, x[1], ZoneSide.Upper), new(1, x[1], ZoneSide.Lower)];
        return new StraightnessFigures(
            profile,
            Line(ReferenceLineKind.EndPoints),
            Line(ReferenceLineKind.LeastSquares),
            new MinimumZone(zone, zone.SlopeUmPerM, zone.SlopeUmPerM, contacts));
    }
}
