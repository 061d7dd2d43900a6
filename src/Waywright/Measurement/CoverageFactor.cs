using System;
using MathNet.Numerics.Distributions;

namespace Waywright;

/// <summary>k = t_p(nu), the two-sided quantile of Student's t (JCGM 100:2008, G.3 and table G.2).</summary>
internal static class CoverageFactor
{
    /// <summary>Degrees of freedom above which the expansion for large ones is used: there the distribution function loses its digits.</summary>
    private const double Many = 1e4;

    /// <summary>The factor; degrees of freedom need not be whole (JCGM 100:2008, G.4.1 allows to interpolate; this is that, exactly).</summary>
    /// <param name="coverage">p, from 0.5 to 0.998: table G.2 ends at 99.73 %.</param>
    /// <param name="degreesOfFreedom">1 or more; may be infinite.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside these.</exception>
    public static double Of(double coverage, double degreesOfFreedom)
    {
        if (coverage is not (>= 0.5 and <= 0.998))
            throw new ArgumentOutOfRangeException(nameof(coverage), coverage, "A coverage probability lies between 0.5 and 0.998.");
        if (degreesOfFreedom is not >= 1)
            throw new ArgumentOutOfRangeException(nameof(degreesOfFreedom), degreesOfFreedom, "At least one degree of freedom is needed.");
        var upper = (1 + coverage) / 2;
        return degreesOfFreedom > Many ? Expansion(Normal.InvCDF(0, 1, upper), degreesOfFreedom) : Polished(upper, degreesOfFreedom);
    }

    // Abramowitz and Stegun, Handbook of Mathematical Functions (1964), 26.7.5, first two terms.
    private static double Expansion(double z, double nu)
    {
        var first = ((z * z) + 1) * z / 4;
        var second = ((((5 * z * z) + 16) * z * z) + 3) * z / 96;
        return z + (first / nu) + (second / (nu * nu));
    }

    // The root finder behind InvCDF stops at 1e-8: two Newton steps bring the digits that a rerun on another machine must repeat.
    private static double Polished(double upper, double nu)
    {
        var t = StudentT.InvCDF(0, 1, nu, upper);
        for (var step = 0; step < 2; step++)
            t -= (StudentT.CDF(0, 1, nu, t) - upper) / StudentT.PDF(0, 1, nu, t);
        return t;
    }
}
