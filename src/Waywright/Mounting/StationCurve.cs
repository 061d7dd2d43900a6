using System;
using System.Globalization;
using System.Linq;

namespace Waywright;

/// <summary>A profile between its stations: the natural cubic spline through them, straight beyond the outer ones. Readings of one station are averaged.</summary>
internal sealed class StationCurve
{
    private readonly double[] _x;
    private readonly double[] _z;
    private readonly double[] _room;

    public StationCurve(Profile profile)
    {
        var stations = profile.PositionsMm.Zip(profile.HeightsUm, (x, z) => (x, z)).GroupBy(s => s.x).Select(g => (g.Key, Mean: g.Average(s => s.z))).ToArray();
        _x = Array.ConvertAll(stations, s => s.Key);
        _z = Array.ConvertAll(stations, s => s.Mean);
        _room = new double[2 * _x.Length];
    }

    public void Along(ReadOnlySpan<double> places, Span<double> heights) => new NaturalSpline(_x, _z, _room).Along(places, heights);

    /// <summary>What keeps a profile from being laid along a rail, or null.</summary>
    /// <param name="profile">Positions from the dot.</param>
    /// <param name="screws">Screws of the rail.</param>
    /// <param name="what">What to call it.</param>
    /// <param name="within">Whether its stations have to lie on the rail.</param>
    public static string? Problem(Profile profile, ScrewPattern screws, string what, bool within)
    {
        var (first, last) = (profile.PositionsMm[0], profile.PositionsMm[^1]);
        if (within && (first < -1e-9 || last > screws.LengthMm + 1e-9))
            return Plain($"{what} has stations from {first} to {last} mm: they must lie on the rail, from 0 to {screws.LengthMm} mm.");
        var pitch = screws.HolesMm[1] - screws.HolesMm[0];
        var (dot, far) = (screws.ScrewsMm[0], screws.ScrewsMm[^1]);
        return first - dot > pitch * (1 + 1e-9) || far - last > pitch * (1 + 1e-9)
            ? Plain($"{what} is known from {first} to {last} mm only: it must reach the end screws at {dot} and {far} mm within a pitch of {pitch} mm.")
            : null;
    }

    private static string Plain(FormattableString sentence) => sentence.ToString(CultureInfo.InvariantCulture);
}
