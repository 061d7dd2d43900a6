using System;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Waywright;

/// <summary>
/// Random numbers addressed by seed, stream, input and trial: the draw of a trial is the same whichever thread makes it and whatever was drawn before.
/// Key of <see cref="Philox"/>: the seed. Counter: trial / 2 (64 bits), input (32), stream (24) and part (8); each block serves two trials.
/// </summary>
/// <param name="seed">The seed.</param>
/// <param name="stream">Keeps apart what one seed is used for; below 2^24.</param>
internal readonly struct RandomDraws(ulong seed, uint stream = 0)
{
    /// <summary>Largest number of draws that one call makes.</summary>
    public const int MostAtOnce = 512;

    private const double HalfStep = 1.0 / (1L << 53);

    /// <summary>
    /// Uniform between 0 and 1, neither of them reached: (n + 1/2) / 2^52, n of 52 bits, which a double with its 53 bits holds exactly; so 1 - u is a draw too.
    /// </summary>
    /// <param name="input">Which input.</param>
    /// <param name="firstTrial">The trial of the first value, even.</param>
    /// <param name="values">One for each consecutive trial, at most <see cref="MostAtOnce"/>.</param>
    /// <param name="part">For distributions that need several numbers for a draw: which of them, below 256.</param>
    public void Uniform(uint input, long firstTrial, Span<double> values, uint part = 0)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThan(values.Length, MostAtOnce);
        if (firstTrial < 0 || long.IsOddInteger(firstTrial))
            throw new ArgumentOutOfRangeException(nameof(firstTrial), firstTrial, "An even trial, 0 or more, is needed.");
        // Each word is turned into its value where it stands; an odd count has one word too many for that.
        Span<ulong> words = values.Length % 2 == 0 ? MemoryMarshal.Cast<double, ulong>(values) : stackalloc ulong[values.Length + 1];
        Philox.Fill((ulong)firstTrial / 2, input, (stream << 8) | part, seed, words);
        var lanes = MemoryMarshal.Cast<double, Vector512<double>>(values);
        var wordLanes = MemoryMarshal.Cast<ulong, Vector512<ulong>>(words);
        for (var i = 0; i < lanes.Length; i++)
        {
            var oneToTwo = ((wordLanes[i] >>> 12) | Vector512.Create(0x3FF0000000000000UL)).AsDouble();
            lanes[i] = (oneToTwo - Vector512<double>.One) + Vector512.Create(HalfStep);
        }

        for (var i = lanes.Length * Vector512<double>.Count; i < values.Length; i++)
            values[i] = BitConverter.UInt64BitsToDouble((words[i] >> 12) | 0x3FF0000000000000UL) - 1 + HalfStep;
    }

    /// <summary>Standard normal: the quantile of a uniform draw, so one number makes one draw, and a larger number a larger draw.</summary>
    /// <param name="input">Which input.</param>
    /// <param name="firstTrial">The trial of the first value, even.</param>
    /// <param name="values">One for each consecutive trial, at most <see cref="MostAtOnce"/>.</param>
    /// <param name="part">As for <see cref="Uniform"/>.</param>
    public void Gaussian(uint input, long firstTrial, Span<double> values, uint part = 0)
    {
        Uniform(input, firstTrial, values, part);
        NormalQuantile.Replace(values);
    }

    /// <summary>offset + factor x for each x, rounded once.</summary>
    public static void Scale(Span<double> values, double offset, double factor)
    {
        var lanes = MemoryMarshal.Cast<double, Vector512<double>>(values);
        for (var i = 0; i < lanes.Length; i++)
            lanes[i] = Vector512.FusedMultiplyAdd(lanes[i], Vector512.Create(factor), Vector512.Create(offset));
        for (var i = lanes.Length * Vector512<double>.Count; i < values.Length; i++)
            values[i] = Math.FusedMultiplyAdd(values[i], factor, offset);
    }
}
