using System;
using MathNet.Numerics;
using MathNet.Numerics.Integration;
using MathNet.Numerics.RootFinding;

namespace Waywright;

/// <summary>
/// Range of n independent normal values over an estimate of their standard deviation:
/// P(q) = integral over s of f(s) W(q s), W(w) = n integral of phi(x) (Phi(x + w) - Phi(x))^(n - 1), s the square root of chi squared over its degrees of freedom.
/// </summary>
/// <remarks>Checked by the printed tables of upper 5 % and 1 % points (Pearson and Hartley, Biometrika Tables, from memory) and by SciPy.</remarks>
internal static class StudentizedRange
{
    private const double Reach = 8;

    private static readonly GaussLegendreRule Inner = new(-Reach, Reach, 80);
    private static readonly GaussLegendreRule Outer = new(0, 1, 48);

    /// <summary>The point that the range stays below with probability p.</summary>
    /// <param name="p">Above 0 and below 1.</param>
    /// <param name="count">How many values, 2 or more.</param>
    /// <param name="degreesOfFreedom">1 or more; infinite for a known standard deviation.</param>
    public static double Of(double p, int count, double degreesOfFreedom)
    {
        var (low, high) = (0.0, 8.0);
        while (Probability(high, count, degreesOfFreedom) < p && high < 1e5)
            (low, high) = (high, 2 * high);
        return Brent.FindRoot(q => Probability(q, count, degreesOfFreedom) - p, low, high, 1e-9, 100);
    }

    public static double Probability(double q, int count, double degreesOfFreedom)
    {
        if (degreesOfFreedom > 1e5)
            return Known(q, count);
        // s lies within 9 of its standard deviations, about 1 / sqrt(2 nu), of 1.
        var width = 9 / Math.Sqrt(2 * degreesOfFreedom);
        var (from, to) = (Math.Max(0, 1 - width), 1 + width);
        var half = degreesOfFreedom / 2;
        var scale = (half * Math.Log(half)) - SpecialFunctions.GammaLn(half);
        var sum = 0.0;
        for (var i = 0; i < Outer.Order; i++)
        {
            var s = from + ((to - from) * Outer.GetAbscissa(i));
            sum += Outer.GetWeight(i) * (to - from) * 2 * Math.Exp(scale + ((degreesOfFreedom - 1) * Math.Log(s)) - (half * s * s)) * Known(q * s, count);
        }

        return sum;
    }

    private static double Known(double w, int count)
    {
        var sum = 0.0;
        for (var i = 0; i < Inner.Order; i++)
        {
            var x = Inner.GetAbscissa(i);
            sum += Inner.GetWeight(i) * StudentQuantile.NormalDensity(x) * Math.Pow(Math.Max(0, StudentQuantile.Normal(x + w) - StudentQuantile.Normal(x)), count - 1);
        }

        return Math.Min(1, count * sum);
    }
}
