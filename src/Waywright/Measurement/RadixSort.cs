using System;
using System.Runtime.InteropServices;

namespace Waywright;

/// <summary>
/// Sorts many finite numbers, byte after byte from the last to the first, each pass keeping the order of the one before (Knuth, The Art of Computer Programming 3, 5.2.5):
/// the time grows with the count alone. -0 becomes 0.
/// </summary>
internal static class RadixSort
{
    private const int Passes = 8;
    private const int Digits = 256;

    public static void Sort(double[] values)
    {
        // The bits of doubles are ordered like whole numbers once those of negative ones are turned round.
        var keys = MemoryMarshal.Cast<double, ulong>(values.AsSpan());
        Span<ulong> other = new ulong[values.Length];
        var counts = new int[Passes * Digits];
        for (var i = 0; i < keys.Length; i++)
        {
            var bits = BitConverter.DoubleToUInt64Bits(values[i] + 0.0);
            var key = bits ^ (Signs(bits) | 0x8000000000000000UL);
            keys[i] = key;
            for (var pass = 0; pass < Passes; pass++)
                counts[(pass * Digits) + Digit(key, pass)]++;
        }

        Span<int> starts = stackalloc int[Digits];
        for (var pass = 0; pass < Passes; pass++)
        {
            var mine = counts.AsSpan(pass * Digits, Digits);
            if (mine.Contains(keys.Length))
                continue;
            var next = 0;
            for (var digit = 0; digit < Digits; digit++)
            {
                starts[digit] = next;
                next += mine[digit];
            }

            foreach (var key in keys)
                other[starts[Digit(key, pass)]++] = key;
            var full = other;
            other = keys;
            keys = full;
        }

        for (var i = 0; i < keys.Length; i++)
            values[i] = BitConverter.UInt64BitsToDouble(keys[i] ^ (~Signs(keys[i]) | 0x8000000000000000UL));
    }

    private static int Digit(ulong key, int pass) => (int)((key >> (8 * pass)) & 0xFF);

    /// <summary>All ones where the highest bit is one.</summary>
    private static ulong Signs(ulong bits) => unchecked(0UL - (bits >> 63));
}
