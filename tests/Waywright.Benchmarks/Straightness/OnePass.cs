using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Waywright.Benchmarks;

/// <summary>The least that any figure of a profile costs: its readings looked at once, sum and sum of squares.</summary>
internal static class OnePass
{
    /// <summary>One sum and one sum of squares at a time: each addition waits for the one before.</summary>
    public static double Plain(ReadOnlySpan<double> values)
    {
        ref var first = ref MemoryMarshal.GetReference(values);
        Vector256<double> sum = default, squares = default;
        var i = 0;
        for (; i <= values.Length - 4; i += 4)
        {
            var v = Vector256.LoadUnsafe(ref first, (nuint)i);
            sum += v;
            squares += v * v;
        }

        return Vector256.Sum(sum) + Vector256.Sum(squares) + Rest(values[i..]);
    }

    /// <summary>Four sums at a time, so that loads are the limit.</summary>
    public static double Unrolled(ReadOnlySpan<double> values)
    {
        ref var first = ref MemoryMarshal.GetReference(values);
        Vector256<double> sum0 = default, sum1 = default, sum2 = default, sum3 = default;
        Vector256<double> squares0 = default, squares1 = default, squares2 = default, squares3 = default;
        var i = 0;
        for (; i <= values.Length - 16; i += 16)
        {
            var v0 = Vector256.LoadUnsafe(ref first, (nuint)i);
            var v1 = Vector256.LoadUnsafe(ref first, (nuint)(i + 4));
            var v2 = Vector256.LoadUnsafe(ref first, (nuint)(i + 8));
            var v3 = Vector256.LoadUnsafe(ref first, (nuint)(i + 12));
            sum0 += v0;
            sum1 += v1;
            sum2 += v2;
            sum3 += v3;
            squares0 += v0 * v0;
            squares1 += v1 * v1;
            squares2 += v2 * v2;
            squares3 += v3 * v3;
        }

        return Vector256.Sum((sum0 + sum1) + (sum2 + sum3)) + Vector256.Sum((squares0 + squares1) + (squares2 + squares3)) + Rest(values[i..]);
    }

    private static double Rest(ReadOnlySpan<double> values)
    {
        double sum = 0, squares = 0;
        foreach (var value in values)
        {
            sum += value;
            squares += value * value;
        }

        return sum + squares;
    }
}
