using System;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Waywright;

/// <summary>Sums of products, in an order that does not depend on the machine: four lanes, multiplied and added apart.</summary>
internal static class Products
{
    public static double Sum(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        var (first, second) = (Vector256<double>.Zero, Vector256<double>.Zero);
        ref var x = ref MemoryMarshal.GetReference(a);
        ref var y = ref MemoryMarshal.GetReference(b[..a.Length]);
        nuint i = 0;
        var pairs = (nuint)(a.Length & ~7);
        for (; i < pairs; i += 8)
        {
            first += Vector256.LoadUnsafe(ref x, i) * Vector256.LoadUnsafe(ref y, i);
            second += Vector256.LoadUnsafe(ref x, i + 4) * Vector256.LoadUnsafe(ref y, i + 4);
        }

        var sum = Vector256.Sum(first + second);
        for (var rest = (int)i; rest < a.Length; rest++)
            sum += a[rest] * b[rest];
        return sum;
    }

    /// <summary>to += factor * column.</summary>
    public static void Add(Span<double> to, double factor, ReadOnlySpan<double> column)
    {
        ref var x = ref MemoryMarshal.GetReference(to);
        ref var y = ref MemoryMarshal.GetReference(column[..to.Length]);
        nuint i = 0;
        var whole = (nuint)(to.Length & ~3);
        var factors = Vector256.Create(factor);
        for (; i < whole; i += 4)
            (Vector256.LoadUnsafe(ref x, i) + (factors * Vector256.LoadUnsafe(ref y, i))).StoreUnsafe(ref x, i);
        for (var rest = (int)i; rest < to.Length; rest++)
            to[rest] += factor * column[rest];
    }
}
