using System;

namespace Waywright;

/// <summary>
/// Standard uncertainty of each station's height from what differs from reading to reading: u² = s²/n + h²/L for n readings in L lays, with the scatter s that repeats
/// show and what rounding to a step q adds where s is below it, h² = max(0, q²/12 - s²). One reading so has max(s, q / sqrt 12), and equal repeats are not without uncertainty.
/// </summary>
/// <remarks>
/// Readings that scatter by more than q / sqrt 12 carry their rounding in s, and it averages out with it. Where they scatter less, a place gives the same rounded reading
/// again and again until the rail is laid anew; passes of one lay then don't help. Degrees of freedom by Welch and Satterthwaite (JCGM 100:2008, G.4.1), the fewest of all stations.
/// </remarks>
internal static class StationScatter
{
    /// <param name="means">The readings behind the stations.</param>
    /// <param name="step">Step q that readings were rounded to, um.</param>
    /// <param name="s">Standard deviation of a single reading, um; 0 where not tried.</param>
    /// <param name="degrees">Its degrees of freedom.</param>
    public static (double[] Um, double DegreesOfFreedom) Of(StationMeans means, double step, double s, double degrees)
    {
        var hidden = Math.Max(0, (step * step / 12) - (s * s));
        var um = new double[means.Counts.Length];
        var fewest = double.PositiveInfinity;
        for (var i = 0; i < um.Length; i++)
        {
            var scatter = s * s / means.Counts[i];
            var variance = scatter + (hidden / means.Lays[i]);
            um[i] = Math.Sqrt(variance);
            if (scatter > 0)
                fewest = Math.Min(fewest, variance * variance * degrees / (scatter * scatter));
        }

        return (um, fewest);
    }
}
