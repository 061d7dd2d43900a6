using System;

namespace Waywright;

/// <summary>
/// Standard uncertainty of each station's height from what differs from reading to reading: u² = s²/n + h/L for n readings in L lays, with the scatter s that repeats show and
/// h of <see cref="RoundingLeft"/>: equal repeats so have q / sqrt 12, however many, until the rail is laid anew. Without repeats u is max(s, q / sqrt 12), s then being the
/// instrument's repeatability.
/// </summary>
/// <remarks>Degrees of freedom by Welch and Satterthwaite (JCGM 100:2008, G.4.1), the fewest of all stations.</remarks>
internal static class StationScatter
{
    /// <param name="means">The readings behind the stations.</param>
    /// <param name="step">Step q that readings were rounded to, um.</param>
    /// <param name="s">Standard deviation of a single reading, um; 0 where not tried.</param>
    /// <param name="degrees">Its degrees of freedom.</param>
    /// <param name="isRepeated">Whether s is what these readings showed.</param>
    public static (double[] Um, double DegreesOfFreedom) Of(StationMeans means, double step, double s, double degrees, bool isRepeated)
    {
        var stays = isRepeated ? RoundingLeft.Variance(step, s) : Math.Max(0, (step * step / 12) - (s * s));
        var um = new double[means.Counts.Length];
        var fewest = double.PositiveInfinity;
        for (var i = 0; i < um.Length; i++)
        {
            var scatter = s * s / means.Counts[i];
            var variance = scatter + (stays / means.Lays[i]);
            um[i] = Math.Sqrt(variance);
            if (scatter > 0)
                fewest = Math.Min(fewest, variance * variance * degrees / (scatter * scatter));
        }

        return (um, fewest);
    }
}
