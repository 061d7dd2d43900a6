using System;
using MathNet.Numerics;
using MathNet.Numerics.Distributions;

namespace Waywright;

/// <summary>Student's t and the normal distribution as its limit: probabilities and quantiles for any degrees of freedom of 1 or more, infinite too.</summary>
internal static class StudentQuantile
{
    /// <summary>Degrees of freedom above which expansions for large ones are used: there the distribution function loses its digits.</summary>
    private const double Many = 1e4;

    /// <summary>t with P(T &lt; t) = p.</summary>
    /// <param name="p">Above 0 and below 1.</param>
    /// <param name="degreesOfFreedom">1 or more; may be infinite.</param>
    public static double Of(double p, double degreesOfFreedom)
    {
        if (p is not (> 0 and < 1))
            throw new ArgumentOutOfRangeException(nameof(p), p, "A probability above 0 and below 1 is needed.");
        CheckDegreesOfFreedom(degreesOfFreedom);
        if (p == 0.5)
            return 0;
        return degreesOfFreedom > Many ? Expansion(NormalQuantile.Of(p), degreesOfFreedom) : Polished(p, degreesOfFreedom);
    }

    /// <summary>P(T &lt; t).</summary>
    /// <param name="t">Any; may be infinite.</param>
    /// <param name="degreesOfFreedom">1 or more; may be infinite.</param>
    public static double Probability(double t, double degreesOfFreedom)
    {
        CheckDegreesOfFreedom(degreesOfFreedom);
        if (double.IsInfinity(t))
            return t > 0 ? 1 : 0;
        if (degreesOfFreedom <= Many)
            return StudentT.CDF(0, 1, degreesOfFreedom, t);
        return Normal(double.IsPositiveInfinity(degreesOfFreedom) ? t : Equivalent(t, degreesOfFreedom));
    }

    /// <summary>P(Z &lt; z) of the standard normal distribution, with its digits in both tails.</summary>
    public static double Normal(double z) => 0.5 * SpecialFunctions.Erfc(-z / Math.Sqrt(2));

    /// <summary>Density of the standard normal distribution.</summary>
    public static double NormalDensity(double z) => Math.Exp(-0.5 * z * z) / Math.Sqrt(2 * Math.PI);

    /// <summary>Refuses fewer than one, and what is no number.</summary>
    public static void CheckDegreesOfFreedom(double degreesOfFreedom)
    {
        if (degreesOfFreedom is not >= 1)
            throw new ArgumentOutOfRangeException(nameof(degreesOfFreedom), degreesOfFreedom, "At least one degree of freedom is needed.");
    }

    // Abramowitz and Stegun, Handbook of Mathematical Functions (1964), 26.7.5, first two terms.
    private static double Expansion(double z, double nu)
    {
        var first = ((z * z) + 1) * z / 4;
        var second = ((((5 * z * z) + 16) * z * z) + 3) * z / 96;
        return z + (first / nu) + (second / (nu * nu));
    }

    // The normal deviate of equal probability: Abramowitz and Stegun, 26.7.8, then the expansion solved for z where t is not so large that the probability is 0 or 1.
    private static double Equivalent(double t, double nu)
    {
        var z = t * (1 - (1 / (4 * nu))) / Math.Sqrt(1 + (t * t / (2 * nu)));
        for (var step = 0; step < 2 && Math.Abs(z) < 20; step++)
            z -= (Expansion(z, nu) - t) / (1 + (((3 * z * z) + 1) / (4 * nu)));
        return z;
    }

    // The root finder behind InvCDF stops at 1e-8: two Newton steps bring the digits that a rerun on another machine must repeat.
    private static double Polished(double p, double nu)
    {
        var t = StudentT.InvCDF(0, 1, nu, p);
        for (var step = 0; step < 2; step++)
            t -= (StudentT.CDF(0, 1, nu, t) - p) / StudentT.PDF(0, 1, nu, t);
        return t;
    }
}
