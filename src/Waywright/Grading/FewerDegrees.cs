using System;

namespace Waywright;

/// <summary>
/// Degrees of freedom rounded down to a few values, so that rails can share trials: fewer make the quantiles of 90 % and above larger, so a bound is never too small.
/// </summary>
internal static class FewerDegrees
{
    /// <summary>Below this confidence fewer degrees of freedom could make a quantile smaller.</summary>
    public const double LeastConfidence = 0.9;

    private static readonly double[] Steps = [1, 2, 3, 4, 5, 6, 8, 10, 13, 16, 20, 25, 32, 40, 60, 100];

    public static double Of(double degreesOfFreedom)
    {
        if (double.IsInfinity(degreesOfFreedom))
            return degreesOfFreedom;
        var at = Array.BinarySearch(Steps, degreesOfFreedom);
        return Steps[at >= 0 ? at : ~at - 1];
    }
}
