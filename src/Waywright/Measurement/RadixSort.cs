using System;
using System.Buffers;
using System.Numerics;
using System.Runtime.InteropServices;

namespace Waywright;

/// <summary>
/// Sorts many finite numbers: digit after digit from the last to the first, each pass keeping the order of the one before (Knuth, The Art of Computer
/// Programming 3, 5.2.5), over so many leading bits of their spread that few stay equal; those are put in order by insertion. Where values crowd so that
/// insertion would be long, over all bits. -0 becomes 0.
/// </summary>
internal static class RadixSort
{
    private const int DigitBits = 11;
    private const int Digits = 1 << DigitBits;
    private const int MostPasses = (64 + DigitBits - 1) / DigitBits;

    public static void Sort(double[] values)
    {
        // The bits of doubles are ordered like whole numbers once those of negative ones are turned round.
        var keys = MemoryMarshal.Cast<double, ulong>(values.AsSpan());
        var (least, most) = (ulong.MaxValue, ulong.MinValue);
        for (var i = 0; i < keys.Length; i++)
        {
            var bits = BitConverter.DoubleToUInt64Bits(values[i] + 0.0);
            var key = bits ^ (Signs(bits) | 0x8000000000000000UL);
            keys[i] = key;
            (least, most) = (Math.Min(least, key), Math.Max(most, key));
        }

        if (most > least)
        {
            var rented = ArrayPool<ulong>.Shared.Rent(values.Length);
            var used = 64 - BitOperations.LeadingZeroCount(most - least);
            // Sixteen places for each value, were they spread evenly.
            var wanted = DigitBits * (1 + ((BitOperations.Log2((uint)keys.Length) + 4) / DigitBits));
            if (wanted >= used || !Order(keys, rented, least, used - wanted, wanted))
                Order(keys, rented, least, 0, used);
            ArrayPool<ulong>.Shared.Return(rented);
        }

        for (var i = 0; i < keys.Length; i++)
            values[i] = BitConverter.UInt64BitsToDouble(keys[i] ^ (~Signs(keys[i]) | 0x8000000000000000UL));
    }

    /// <summary>Sorts by the bits from <paramref name="shift"/>, then by insertion.</summary>
    /// <returns>Whether all is in order now; it may not be if bits were left out.</returns>
    private static bool Order(Span<ulong> keys, ulong[] rented, ulong least, int shift, int bits)
    {
        var passes = (bits + DigitBits - 1) / DigitBits;
        Span<int> counts = stackalloc int[MostPasses * Digits];
        counts.Clear();
        foreach (var key in keys)
        {
            for (var pass = 0; pass < passes; pass++)
                counts[(pass * Digits) + Digit(key - least, shift, pass)]++;
        }

        var from = keys;
        var to = rented.AsSpan(0, keys.Length);
        for (var pass = 0; pass < passes; pass++)
        {
            var starts = counts.Slice(pass * Digits, Digits);
            var next = 0;
            for (var digit = 0; digit < Digits; digit++)
                (starts[digit], next) = (next, next + starts[digit]);
            foreach (var key in from)
                to[starts[Digit(key - least, shift, pass)]++] = key;
            var full = to;
            to = from;
            from = full;
        }

        if (passes % 2 != 0)
            from.CopyTo(keys);
        return shift == 0 || Insert(keys);
    }

    /// <summary>Insertion, given up after four moves for each value.</summary>
    private static bool Insert(Span<ulong> keys)
    {
        var left = 4L * keys.Length;
        for (var i = 1; i < keys.Length; i++)
        {
            var key = keys[i];
            var place = i;
            for (; place > 0 && keys[place - 1] > key; place--)
                keys[place] = keys[place - 1];
            keys[place] = key;
            left -= i - place;
            if (left < 0)
                return false;
        }

        return true;
    }

    private static int Digit(ulong key, int shift, int pass) => (int)((key >> (shift + (DigitBits * pass))) & (Digits - 1));

    /// <summary>All ones where the highest bit is one.</summary>
    private static ulong Signs(ulong bits) => unchecked(0UL - (bits >> 63));
}
