using System;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;

namespace Waywright;

/// <summary>
/// Philox4x32-10, a counter-based generator: 128 random bits are a function of a 128-bit counter and a 64-bit key, so any draw can be had without the ones before it.
/// Salmon, Moraes, Dror and Shaw, Parallel random numbers: as easy as 1, 2, 3, SC11 (2011), doi 10.1145/2063384.2063405. Checked by the authors' known-answer vectors.
/// </summary>
internal static class Philox
{
    private const uint MultiplierA = 0xD2511F53;
    private const uint MultiplierB = 0xCD9E8D57;
    private const uint WeylA = 0x9E3779B9;
    private const uint WeylB = 0xBB67AE85;
    private const int Rounds = 10;

    /// <summary>One block.</summary>
    public static (uint A, uint B, uint C, uint D) Block(uint counterA, uint counterB, uint counterC, uint counterD, uint keyA, uint keyB)
    {
        unchecked
        {
            for (var round = 0; round < Rounds; round++)
            {
                var first = (ulong)MultiplierA * counterA;
                var second = (ulong)MultiplierB * counterC;
                (counterA, counterB, counterC, counterD) = ((uint)(second >> 32) ^ counterB ^ keyA, (uint)second, (uint)(first >> 32) ^ counterD ^ keyB, (uint)first);
                keyA += WeylA;
                keyB += WeylB;
            }

            return (counterA, counterB, counterC, counterD);
        }
    }

    /// <summary>The blocks of consecutive counters, each as two words of 64 bits, low word first.</summary>
    /// <param name="firstBlock">Low 64 bits of the first counter.</param>
    /// <param name="counterC">Third word of all counters.</param>
    /// <param name="counterD">Fourth word of all counters.</param>
    /// <param name="key">The key, low word first.</param>
    /// <param name="words">Gets two words for each block; its length is even.</param>
    public static void Fill(ulong firstBlock, uint counterC, uint counterD, ulong key, Span<ulong> words)
    {
        var done = Avx512F.IsSupported ? Fill8(firstBlock, counterC, counterD, key, words)
            : Avx2.IsSupported ? Fill4(firstBlock, counterC, counterD, key, words)
            : 0;
        FillSingly(unchecked(firstBlock + ((ulong)done / 2)), counterC, counterD, key, words[done..]);
    }

    internal static void FillSingly(ulong firstBlock, uint counterC, uint counterD, ulong key, Span<ulong> words)
    {
        for (var i = 0; i < words.Length; i += 2)
        {
            var block = unchecked(firstBlock + (ulong)(i / 2));
            var (a, b, c, d) = Block(Low(block), High(block), counterC, counterD, Low(key), High(key));
            words[i] = a | ((ulong)b << 32);
            words[i + 1] = c | ((ulong)d << 32);
        }
    }

    // Whole numbers, so the lanes give the same bits as the plain loop. Their upper halves carry rubbish, which the 32-bit multiplication ignores.
    private static int Fill8(ulong firstBlock, uint counterC, uint counterD, ulong key, Span<ulong> words)
    {
        var target = MemoryMarshal.Cast<ulong, Vector512<ulong>>(words);
        var (multiplierA, multiplierB) = (Vector512.Create((ulong)MultiplierA).AsUInt32(), Vector512.Create((ulong)MultiplierB).AsUInt32());
        var low = Vector512.Create((ulong)uint.MaxValue);
        var blocks = Vector512.Create(firstBlock) + Vector512<ulong>.Indices;
        for (var i = 0; i + 1 < target.Length; i += 2, blocks += Vector512.Create((ulong)Vector512<ulong>.Count))
        {
            var (a, b, c, d) = (blocks, blocks >>> 32, Vector512.Create((ulong)counterC), Vector512.Create((ulong)counterD));
            var (keyA, keyB) = (Low(key), High(key));
            for (var round = 0; round < Rounds; round++)
            {
                var first = Avx512F.Multiply(multiplierA, a.AsUInt32());
                var second = Avx512F.Multiply(multiplierB, c.AsUInt32());
                (a, b, c, d) = ((second >>> 32) ^ b ^ Vector512.Create((ulong)keyA), second, (first >>> 32) ^ d ^ Vector512.Create((ulong)keyB), first);
                (keyA, keyB) = unchecked((keyA + WeylA, keyB + WeylB));
            }

            var (even, odd) = ((a & low) | (b << 32), (c & low) | (d << 32));
            target[i] = Avx512F.PermuteVar8x64x2(even, Vector512.Create(0UL, 8, 1, 9, 2, 10, 3, 11), odd);
            target[i + 1] = Avx512F.PermuteVar8x64x2(even, Vector512.Create(4UL, 12, 5, 13, 6, 14, 7, 15), odd);
        }

        return target.Length / 2 * 2 * Vector512<ulong>.Count;
    }

    private static int Fill4(ulong firstBlock, uint counterC, uint counterD, ulong key, Span<ulong> words)
    {
        var target = MemoryMarshal.Cast<ulong, Vector256<ulong>>(words);
        var (multiplierA, multiplierB) = (Vector256.Create((ulong)MultiplierA).AsUInt32(), Vector256.Create((ulong)MultiplierB).AsUInt32());
        var low = Vector256.Create((ulong)uint.MaxValue);
        var blocks = Vector256.Create(firstBlock) + Vector256<ulong>.Indices;
        for (var i = 0; i + 1 < target.Length; i += 2, blocks += Vector256.Create((ulong)Vector256<ulong>.Count))
        {
            var (a, b, c, d) = (blocks, blocks >>> 32, Vector256.Create((ulong)counterC), Vector256.Create((ulong)counterD));
            var (keyA, keyB) = (Low(key), High(key));
            for (var round = 0; round < Rounds; round++)
            {
                var first = Avx2.Multiply(multiplierA, a.AsUInt32());
                var second = Avx2.Multiply(multiplierB, c.AsUInt32());
                (a, b, c, d) = ((second >>> 32) ^ b ^ Vector256.Create((ulong)keyA), second, (first >>> 32) ^ d ^ Vector256.Create((ulong)keyB), first);
                (keyA, keyB) = unchecked((keyA + WeylA, keyB + WeylB));
            }

            var (even, odd) = ((a & low) | (b << 32), (c & low) | (d << 32));
            var (lower, upper) = (Avx2.UnpackLow(even, odd), Avx2.UnpackHigh(even, odd));
            target[i] = Avx2.Permute2x128(lower, upper, 0x20);
            target[i + 1] = Avx2.Permute2x128(lower, upper, 0x31);
        }

        return target.Length / 2 * 2 * Vector256<ulong>.Count;
    }

    private static uint Low(ulong word) => (uint)(word & uint.MaxValue);

    private static uint High(ulong word) => (uint)(word >> 32);
}
