using System;
using System.Diagnostics;
using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Waywright;

/// <summary>
/// A station on the upper and one on the lower boundary. They hold the zone open at every slope b: its width is at least
/// <c>Rise - b Run</c>, equal where both are extreme.
/// </summary>
/// <param name="Upper">Index of the upper station.</param>
/// <param name="Lower">Index of the lower station.</param>
/// <param name="Rise">Height of the upper above the lower one.</param>
/// <param name="Run">Position of the upper beyond the lower one.</param>
internal readonly record struct ZonePair(int Upper, int Lower, double Rise, double Run);

/// <summary>The narrowest zone. Where the two pairs are one, its run is zero and a whole interval of slopes may give the same width.</summary>
/// <param name="Slope">Slope of the zone against what the heights were taken from.</param>
/// <param name="Width">Smallest vertical width.</param>
/// <param name="Falling">The pair that opens the zone for smaller slopes.</param>
/// <param name="Rising">The pair that opens it for larger slopes.</param>
internal readonly record struct NarrowestZone(double Slope, double Width, ZonePair Falling, ZonePair Rising);

/// <summary>
/// The minimum zone of heights over a prepared axis: the slope that makes w(b) = max(z - b x) - min(z - b x) smallest, exactly. No allocation.
/// </summary>
/// <remarks>
/// w is convex and piecewise linear, each piece being one pair of stations. One falling and one rising piece are held; the next slope is where they
/// cross, and their height there bounds every w(b) from below. A scan at that slope either meets the bound, which proves it optimal, or finds a pair
/// whose piece lies above the crossing, so one that isn't held yet; it takes the place of the one on its side. The bound then rises, so no two pieces
/// are held together twice, and pairs are finite in number: the search ends. In rounded arithmetic it ends too, because every turn moves one end of the
/// bracket of slopes to a number strictly inside. On noise, bows and waves of 14 to 351 stations it took 4 scans in the mean and 6 at most.
/// The method is the cutting-plane method of Kelley, J. SIAM 8 (1960) 703-712, in one variable.
/// </remarks>
internal static class ZoneKernel
{
    // Heights of one scan, and the crossing, are each rounded by a few units in the last place of the width about the least-squares line.
    private const double Rounding = 32 * 1.1102230246251565e-16;

    /// <param name="axis">The stations.</param>
    /// <param name="residuals">Heights from their least-squares line, as <see cref="LeastSquaresKernel"/> leaves them.</param>
    /// <param name="line">That line's figures; its slope counts as zero here.</param>
    public static NarrowestZone Solve(in StationAxis axis, ReadOnlySpan<double> residuals, in LeastSquaresLine line)
    {
        Debug.Assert(residuals.Length == axis.FromMean.Length);
        ref var x = ref MemoryMarshal.GetReference(axis.FromMean);
        ref var z = ref MemoryMarshal.GetReference(residuals);
        // Very steep zones rest on the first and the last station: pieces that are always there.
        var last = axis.Count - 1;
        var falling = Pair(ref x, ref z, last, 0);
        var rising = Pair(ref x, ref z, 0, last);
        var (lowSlope, highSlope) = (double.NegativeInfinity, double.PositiveInfinity);
        var slope = 0.0;
        var (highest, lowest) = (line.Highest, line.Lowest);
        var (bestSlope, width) = (slope, highest - lowest);
        var tolerance = Rounding * width;
        while (true)
        {
            var found = Find(ref x, ref z, residuals.Length, slope, highest, lowest);
            if (found.Run == 0)
                return new NarrowestZone(slope, found.Rise, found, found);
            if (found.Run > 0)
                (falling, lowSlope) = (found, slope);
            else
                (rising, highSlope) = (found, slope);
            // A piece so level that nothing in the bracket is lower by more than rounding: two stations all but at one position.
            var bracket = highSlope - lowSlope;
            if (Math.Abs(found.Run) * bracket <= tolerance)
                break;
            slope = (falling.Rise - rising.Rise) / (falling.Run - rising.Run);
            // Rounding can throw the crossing of two such pieces out of the bracket.
            if (slope <= lowSlope || slope >= highSlope)
                slope = lowSlope + (bracket / 2);
            if (slope <= lowSlope || slope >= highSlope)
                break;
            Extremes(ref x, ref z, residuals.Length, slope, out highest, out lowest);
            if (highest - lowest < width)
                (bestSlope, width) = (slope, highest - lowest);
            // The lower of two pieces at any slope is not above their crossing.
            var bound = Math.Min(falling.Rise - (slope * falling.Run), rising.Rise - (slope * rising.Run));
            if (highest - lowest <= bound + tolerance)
                break;
        }

        return new NarrowestZone(bestSlope, width, falling, rising);
    }

    /// <summary>The pair that holds the zone open at a slope, and the extremes of the heights there.</summary>
    public static ZonePair OpenAt(in StationAxis axis, ReadOnlySpan<double> residuals, double slope, out double highest, out double lowest)
    {
        ref var x = ref MemoryMarshal.GetReference(axis.FromMean);
        ref var z = ref MemoryMarshal.GetReference(residuals);
        Extremes(ref x, ref z, residuals.Length, slope, out highest, out lowest);
        return Find(ref x, ref z, residuals.Length, slope, highest, lowest);
    }

    /// <summary>The narrowest zone where the heights' extremes are not known yet.</summary>
    public static NarrowestZone Solve(in StationAxis axis, ReadOnlySpan<double> residuals)
    {
        Extremes(ref MemoryMarshal.GetReference(axis.FromMean), ref MemoryMarshal.GetReference(residuals), residuals.Length, 0, out var highest, out var lowest);
        return Solve(axis, residuals, new LeastSquaresLine(0, 0, highest, lowest, 0, 0, 0));
    }

    private static ZonePair Pair(ref double x, ref double z, int upper, int lower)
        => new(upper, lower, Unsafe.Add(ref z, upper) - Unsafe.Add(ref z, lower), Unsafe.Add(ref x, upper) - Unsafe.Add(ref x, lower));

    private static void Extremes(ref double x, ref double z, int length, double slope, out double highest, out double lowest)
    {
        var slopes = Vector256.Create(slope);
        Vector256<double> high0 = Vector256.Create(double.NegativeInfinity), high1 = high0, high2 = high0, high3 = high0;
        Vector256<double> low0 = Vector256.Create(double.PositiveInfinity), low1 = low0, low2 = low0, low3 = low0;
        for (var at = 0; at < length; at += Lanes.Block)
        {
            var from0 = From(ref x, ref z, at, 0, slopes);
            var from1 = From(ref x, ref z, at, 1, slopes);
            var from2 = From(ref x, ref z, at, 2, slopes);
            var from3 = From(ref x, ref z, at, 3, slopes);
            high0 = Vector256.MaxNative(high0, from0);
            high1 = Vector256.MaxNative(high1, from1);
            high2 = Vector256.MaxNative(high2, from2);
            high3 = Vector256.MaxNative(high3, from3);
            low0 = Vector256.MinNative(low0, from0);
            low1 = Vector256.MinNative(low1, from1);
            low2 = Vector256.MinNative(low2, from2);
            low3 = Vector256.MinNative(low3, from3);
        }

        highest = Lanes.Highest(high0, high1, high2, high3);
        lowest = Lanes.Lowest(low0, low1, low2, low3);
    }

    /// <summary>The first station at either extreme: a second look, because carrying indices through the scan costs more.</summary>
    private static ZonePair Find(ref double x, ref double z, int length, double slope, double highest, double lowest)
    {
        var slopes = Vector256.Create(slope);
        var high = Vector256.Create(highest);
        var low = Vector256.Create(lowest);
        int upper = -1, lower = -1;
        for (var at = 0; at < length; at += Lanes.Block)
        {
            var from0 = From(ref x, ref z, at, 0, slopes);
            var from1 = From(ref x, ref z, at, 1, slopes);
            var from2 = From(ref x, ref z, at, 2, slopes);
            var from3 = From(ref x, ref z, at, 3, slopes);
            if (upper < 0)
                upper = First(at, Vector256.Equals(from0, high), Vector256.Equals(from1, high), Vector256.Equals(from2, high), Vector256.Equals(from3, high));
            if (lower < 0)
                lower = First(at, Vector256.Equals(from0, low), Vector256.Equals(from1, low), Vector256.Equals(from2, low), Vector256.Equals(from3, low));
            if ((upper | lower) >= 0)
                return Pair(ref x, ref z, upper, lower);
        }

        throw new UnreachableException("The extremes of a scan are heights of stations.");
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<double> From(ref double x, ref double z, int at, int vector, Vector256<double> slope)
        => Lanes.At(ref z, at, vector) - (slope * Lanes.At(ref x, at, vector));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static int First(int at, Vector256<double> a, Vector256<double> b, Vector256<double> c, Vector256<double> d)
    {
        if (((a | b) | (c | d)).AsUInt64() == Vector256<ulong>.Zero)
            return -1;
        var hits = a.ExtractMostSignificantBits() | (b.ExtractMostSignificantBits() << 4) | (c.ExtractMostSignificantBits() << 8) | (d.ExtractMostSignificantBits() << 12);
        return at + BitOperations.TrailingZeroCount(hits);
    }
}
