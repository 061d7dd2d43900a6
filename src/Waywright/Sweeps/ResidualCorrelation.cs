using System.Linq;

namespace Waywright;

/// <summary>
/// Lag-1 correlation of what the readings of a pass differ from the combined profile by: (C + s² B) / (s² N), with C the sum over passes of products of neighbours, N their number
/// times (1 - 1/K) for what the mean of K passes takes off, and s² B = s² (1 - 1/K) Σ h the products that taking a line off each pass makes out of independent scatter, h the
/// neighbour entries of the line's projection.
/// </summary>
internal static class ResidualCorrelation
{
    /// <summary>Null where nothing was repeated, all repeats are equal, or a pass has fewer than three readings throughout.</summary>
    public static double? Of(PooledSweep pooled, StationMeans means)
    {
        if (pooled is not { RepeatabilityUm: > 0, Passes.Count: > 1 })
            return null;
        double squares = 0, products = 0, pairs = 0, lines = 0;
        var residuals = means.Residuals(pooled);
        var first = 0;
        foreach (var x in pooled.Sweep.Passes.Select(p => p.PositionsMm))
        {
            var middle = x.Average();
            var spread = x.Sum(p => (p - middle) * (p - middle));
            for (var i = 0; i < x.Count; i++)
            {
                squares += residuals[first + i] * residuals[first + i];
                if (i == 0 || spread <= 0)
                    continue;
                products += residuals[first + i - 1] * residuals[first + i];
                lines += (1.0 / x.Count) + ((x[i - 1] - middle) * (x[i] - middle) / spread);
                pairs++;
            }

            first += x.Count;
        }

        var variance = squares / pooled.DegreesOfFreedom;
        var share = 1 - (1.0 / pooled.Passes.Count);
        return pairs > pooled.Passes.Count && variance > 0 ? (products + (variance * share * lines)) / (variance * share * pairs) : null;
    }
}
