using System;
using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Waywright;

/// <summary>
/// Quantile of the standard normal distribution, relative error about 1e-16: Wichura, Algorithm AS 241, PPND16, Applied Statistics 37 (1988) 477-484.
/// Only additions, products, quotients, square roots and fused multiply-adds are used (the logarithm of the tails is summed here), all correctly rounded by
/// IEEE 754: the same bits on every machine and for every vector width, whatever its mathematics library does.
/// </summary>
internal static class NormalQuantile
{
    private const double CentralHalfWidth = 0.425;
    private const int LanesOfMask = 64 / 8;
    private const double Root2 = 1.4142135623730951;

    // ln 2 in two parts: a whole exponent times the first is exact.
    private const double Ln2High = 0.693147180369123816490;
    private const double Ln2Low = 1.90821492927058770002e-10;

    /// <summary>z with P(Z &lt; z) = p.</summary>
    /// <param name="p">From 1e-307 to the largest number below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside these.</exception>
    public static double Of(double p)
    {
        if (p is not (>= 1e-307 and < 1))
            throw new ArgumentOutOfRangeException(nameof(p), p, "A probability above 0 and below 1 is needed.");
        var lanes = Vector512.Create(p);
        return (Math.Abs(p - 0.5) <= CentralHalfWidth ? Central(lanes) : Tail(lanes)).ToScalar();
    }

    /// <summary>Replaces each probability, above 0 and below 1, by its quantile.</summary>
    /// <param name="values">At most <see cref="RandomDraws.MostAtOnce"/>.</param>
    public static void Replace(Span<double> values)
    {
        var lanes = MemoryMarshal.Cast<double, Vector512<double>>(values);
        Span<double> tails = stackalloc double[values.Length + Vector512<double>.Count];
        Span<int> places = stackalloc int[values.Length + 1];
        var count = 0;
        // Three draws in twenty are in the tails: gathered, so that they too go through in full vectors; 64 at a time, as the end of each search for them is a surprise to the processor.
        for (var from = 0; from < lanes.Length; from += LanesOfMask)
        {
            var group = lanes[from..Math.Min(from + LanesOfMask, lanes.Length)];
            for (var tail = Tails(group); tail != 0; tail &= tail - 1)
            {
                places[count] = (from * Vector512<double>.Count) + BitOperations.TrailingZeroCount(tail);
                tails[count] = values[places[count]];
                count++;
            }

            for (var i = 0; i < group.Length; i++)
                group[i] = Central(group[i]);
        }

        for (var i = lanes.Length * Vector512<double>.Count; i < values.Length; i++)
            values[i] = Of(values[i]);
        tails.Slice(count, Vector512<double>.Count).Fill(0.01);
        var tailLanes = MemoryMarshal.Cast<double, Vector512<double>>(tails);
        for (var i = 0; i * Vector512<double>.Count < count; i++)
            tailLanes[i] = Tail(tailLanes[i]);
        for (var i = 0; i < count; i++)
            values[places[i]] = tails[i];
    }

    /// <summary>A bit for each value outside the central part.</summary>
    private static ulong Tails(ReadOnlySpan<Vector512<double>> group)
    {
        ulong tails = 0;
        for (var i = 0; i < group.Length; i++)
        {
            var isTail = Vector512.GreaterThan(Vector512.Abs(group[i] - Vector512.Create(0.5)), Vector512.Create(CentralHalfWidth));
            tails |= isTail.ExtractMostSignificantBits() << (i * Vector512<double>.Count);
        }

        return tails;
    }

    private static Vector512<double> Central(Vector512<double> p)
    {
        var q = p - Vector512.Create(0.5);
        var r = Vector512.FusedMultiplyAdd(-q, q, Vector512.Create(0.180625));
        return q * CentralRatio(r);
    }

    private static Vector512<double> Tail(Vector512<double> p)
    {
        var isUpper = Vector512.GreaterThan(p, Vector512.Create(0.5));
        var r = Vector512.Sqrt(-Log(Vector512.ConditionalSelect(isUpper, Vector512<double>.One - p, p)));
        var near = r - Vector512.Create(1.6);
        var z = TailRatio(near);
        var isFar = Vector512.GreaterThan(r, Vector512.Create(5.0));
        if (isFar != Vector512<double>.Zero)
        {
            var far = r - Vector512.Create(5.0);
            z = Vector512.ConditionalSelect(isFar, FarTailRatio(far), z);
        }

        return Vector512.ConditionalSelect(isUpper, z, -z);
    }

    private static Vector512<double> CentralRatio(Vector512<double> r) =>
        Polynomial(
            r,
            3.3871328727963666080e0, 1.3314166789178437745e+2, 1.9715909503065514427e+3, 1.3731693765509461125e+4,
            4.5921953931549871457e+4, 6.7265770927008700853e+4, 3.3430575583588128105e+4, 2.5090809287301226727e+3)
        / Polynomial(
            r,
            1, 4.2313330701600911252e+1, 6.8718700749205790830e+2, 5.3941960214247511077e+3,
            2.1213794301586595867e+4, 3.9307895800092710610e+4, 2.8729085735721942674e+4, 5.2264952788528545610e+3);

    private static Vector512<double> TailRatio(Vector512<double> r) =>
        Polynomial(
            r,
            1.42343711074968357734e0, 4.63033784615654529590e0, 5.76949722146069140550e0, 3.64784832476320460504e0,
            1.27045825245236838258e0, 2.41780725177450611770e-1, 2.27238449892691845833e-2, 7.74545014278341407640e-4)
        / Polynomial(
            r,
            1, 2.05319162663775882187e0, 1.67638483018380384940e0, 6.89767334985100004550e-1,
            1.48103976427480074590e-1, 1.51986665636164571966e-2, 5.47593808499534494600e-4, 1.05075007164441684324e-9);

    private static Vector512<double> FarTailRatio(Vector512<double> r) =>
        Polynomial(
            r,
            6.65790464350110377720e0, 5.46378491116411436990e0, 1.78482653991729133580e0, 2.96560571828504891230e-1,
            2.65321895265761230930e-2, 1.24266094738807843860e-3, 2.71155556874348757815e-5, 2.01033439929228813265e-7)
        / Polynomial(
            r,
            1, 5.99832206555887937690e-1, 1.36929880922735805310e-1, 1.48753612908506148525e-2,
            7.86869131145613259100e-4, 1.84631831751005468180e-5, 1.42151175831644588870e-7, 2.04426310338993978564e-15);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector512<double> Polynomial(Vector512<double> x, double c0, double c1, double c2, double c3, double c4, double c5, double c6, double c7)
    {
        var sum = Vector512.FusedMultiplyAdd(Vector512.Create(c7), x, Vector512.Create(c6));
        sum = Vector512.FusedMultiplyAdd(sum, x, Vector512.Create(c5));
        sum = Vector512.FusedMultiplyAdd(sum, x, Vector512.Create(c4));
        sum = Vector512.FusedMultiplyAdd(sum, x, Vector512.Create(c3));
        sum = Vector512.FusedMultiplyAdd(sum, x, Vector512.Create(c2));
        sum = Vector512.FusedMultiplyAdd(sum, x, Vector512.Create(c1));
        return Vector512.FusedMultiplyAdd(sum, x, Vector512.Create(c0));
    }

    // x = m 2^e with m from 1/root 2 to root 2; ln m = 2 artanh s = 2 (s + s3/3 + s5/5 + ...), s = (m - 1)/(m + 1), |s| < 0.172: the first term left out is 6e-19 of the sum.
    private static Vector512<double> Log(Vector512<double> x)
    {
        var bits = x.AsInt64();
        var m = ((bits & Vector512.Create(0x000FFFFFFFFFFFFF)) | Vector512.Create(0x3FF0000000000000)).AsDouble();
        var e = Vector512.ConvertToDouble((bits >>> 52) - Vector512.Create(1023L));
        var isLarge = Vector512.GreaterThan(m, Vector512.Create(Root2));
        m = Vector512.ConditionalSelect(isLarge, m * Vector512.Create(0.5), m);
        e = Vector512.ConditionalSelect(isLarge, e + Vector512<double>.One, e);
        var s = (m - Vector512<double>.One) / (m + Vector512<double>.One);
        var square = s * s;
        var sum = Vector512.FusedMultiplyAdd(Vector512.Create(1.0 / 21), square, Vector512.Create(1.0 / 19));
        sum = Vector512.FusedMultiplyAdd(sum, square, Vector512.Create(1.0 / 17));
        sum = Vector512.FusedMultiplyAdd(sum, square, Vector512.Create(1.0 / 15));
        sum = Vector512.FusedMultiplyAdd(sum, square, Vector512.Create(1.0 / 13));
        sum = Vector512.FusedMultiplyAdd(sum, square, Vector512.Create(1.0 / 11));
        sum = Vector512.FusedMultiplyAdd(sum, square, Vector512.Create(1.0 / 9));
        sum = Vector512.FusedMultiplyAdd(sum, square, Vector512.Create(1.0 / 7));
        sum = Vector512.FusedMultiplyAdd(sum, square, Vector512.Create(1.0 / 5));
        sum = Vector512.FusedMultiplyAdd(sum, square, Vector512.Create(1.0 / 3));
        var small = Vector512.FusedMultiplyAdd(e, Vector512.Create(Ln2Low), (s + s) * square * sum);
        return Vector512.FusedMultiplyAdd(e, Vector512.Create(Ln2High), (s + s) + small);
    }
}
