using System;
using System.Collections.Generic;

namespace Waywright;

/// <summary>
/// The worst short stretch of a profile: the widest minimum zone of the stations in any window of the given length. A short wave that the whole
/// length's figure hides under its bow shows here.
/// </summary>
/// <param name="WindowMm">Length of the window, mm.</param>
/// <param name="STRtUm">Minimum-zone straightness of the worst stretch, um.</param>
/// <param name="FromMm">First station of that stretch, mm.</param>
/// <param name="ToMm">Last station of that stretch, mm.</param>
public sealed record LocalStraightness(double WindowMm, double STRtUm, double FromMm, double ToMm)
{
    private const int FewestStations = 4;

    // Ten stations of 25.4 mm are 228.6 mm and must fit a window of 228.6 mm however the sum was rounded.
    private const double Slack = 1e-9;

    internal static LocalStraightness? Of(Profile profile, double windowMm)
    {
        LocalStraightness? worst = null;
        foreach (var (from, to) in Windows(profile, windowMm))
        {
            var width = ProfileKernel.Solve(profile.Positions[from..to], profile.Heights[from..to], out _).Width;
            if (worst is null || width > worst.STRtUm)
                worst = new LocalStraightness(windowMm, width, profile.Positions[from], profile.Positions[to - 1]);
        }

        return worst;
    }

    /// <summary>First station, and the one after the last, of each window that can hold the worst stretch.</summary>
    internal static (int From, int To)[] Windows(Profile profile, double windowMm)
    {
        if (!double.IsFinite(windowMm) || windowMm <= 0)
            throw new ArgumentOutOfRangeException(nameof(windowMm), windowMm, "A window is a length above zero, mm.");
        var windows = new List<(int From, int To)>();
        var positions = profile.Positions;
        var end = 0;
        for (var start = 0; start < positions.Length; start++)
        {
            if (start > 0 && positions[start] == positions[start - 1])
                continue;
            var before = end;
            while (end < positions.Length && positions[end] - positions[start] <= windowMm * (1 + Slack))
                end++;
            // A window that ends where the one before it ended holds fewer of the same stations, so its zone is no wider.
            if (end > before && Different(positions[start..end]) >= FewestStations)
                windows.Add((start, end));
        }

        return [.. windows];
    }

    private static int Different(ReadOnlySpan<double> positions)
    {
        var different = 1;
        for (var i = 1; i < positions.Length; i++)
            different += positions[i] == positions[i - 1] ? 0 : 1;
        return different;
    }
}
