using System;

namespace Waywright;

/// <summary>k = t_p(nu), the two-sided quantile of Student's t (JCGM 100:2008, G.3 and table G.2).</summary>
internal static class CoverageFactor
{
    /// <summary>The factor; degrees of freedom need not be whole (JCGM 100:2008, G.4.1 allows to interpolate; this is that, exactly).</summary>
    /// <param name="coverage">p, from 0.5 to 0.998: table G.2 ends at 99.73 %.</param>
    /// <param name="degreesOfFreedom">1 or more; may be infinite.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside these.</exception>
    public static double Of(double coverage, double degreesOfFreedom)
    {
        if (coverage is not (>= 0.5 and <= 0.998))
            throw new ArgumentOutOfRangeException(nameof(coverage), coverage, "A coverage probability lies between 0.5 and 0.998.");
        return StudentQuantile.Of((1 + coverage) / 2, degreesOfFreedom);
    }
}
