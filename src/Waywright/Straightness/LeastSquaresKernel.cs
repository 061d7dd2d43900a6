using System;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Waywright;

/// <summary>A least-squares line and what stands out from it. Positions and heights count from the first station and its reading.</summary>
/// <param name="Slope">Height per position.</param>
/// <param name="AtFirst">Height of the line at the first position.</param>
/// <param name="Highest">Largest residual; below zero by rounding only.</param>
/// <param name="Lowest">Smallest residual; above zero by rounding only.</param>
/// <param name="MeanSquare">Of the residuals.</param>
/// <param name="MeanPosition">Of the stations.</param>
/// <param name="MeanSquarePosition">Mean square of the positions from their mean.</param>
internal readonly record struct LeastSquaresLine(
    double Slope,
    double AtFirst,
    double Highest,
    double Lowest,
    double MeanSquare,
    double MeanPosition,
    double MeanSquarePosition)
{
    /// <summary>Mean square of the heights from another line. Residuals of least squares are orthogonal to every line, so squares add (Pythagoras).</summary>
    public double MeanSquareFrom(double slope, double atFirst)
    {
        var steeper = slope - Slope;
        var apart = (atFirst - AtFirst) + (steeper * MeanPosition);
        return MeanSquare + (apart * apart) + (steeper * steeper * MeanSquarePosition);
    }
}

/// <summary>
/// The straight line of least squares through heights over a prepared axis: slope = Σ (x - mean x) z / Σ (x - mean x)². Heights count from the first
/// of them, so that equal readings leave residuals of exactly zero. No allocation.
/// </summary>
internal static class LeastSquaresKernel
{
    /// <param name="axis">The stations.</param>
    /// <param name="heights">One for each station.</param>
    /// <param name="residuals"><c>axis.FromMean.Length</c> doubles; holds the residuals afterwards, filled up with copies of the first.</param>
    public static LeastSquaresLine Solve(in StationAxis axis, ReadOnlySpan<double> heights, Span<double> residuals)
    {
        var rest = Lanes.CopyRest(heights, residuals);
        ref var target = ref MemoryMarshal.GetReference(residuals);
        ref readonly var source = ref MemoryMarshal.GetReference(heights);
        ref readonly var x = ref MemoryMarshal.GetReference(axis.FromMean);
        var first = Vector256.Create(heights[0]);
        Vector256<double> sum0 = default, sum1 = default, sum2 = default, sum3 = default;
        Vector256<double> product0 = default, product1 = default, product2 = default, product3 = default;
        for (var at = 0; at < residuals.Length; at += Lanes.Block)
        {
            if (at == rest)
                source = ref target;
            Add(first, in source, ref target, in x, at, 0, ref sum0, ref product0);
            Add(first, in source, ref target, in x, at, 1, ref sum1, ref product1);
            Add(first, in source, ref target, in x, at, 2, ref sum2, ref product2);
            Add(first, in source, ref target, in x, at, 3, ref sum3, ref product3);
        }

        var mean = Lanes.Sum(sum0, sum1, sum2, sum3) / axis.Count;
        var slope = Lanes.Sum(product0, product1, product2, product3) / axis.SumOfSquares;
        return TakeOff(axis, residuals, slope, mean);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Add(
        Vector256<double> first,
        ref readonly double source,
        ref double target,
        ref readonly double x,
        int at,
        int vector,
        ref Vector256<double> sum,
        ref Vector256<double> product)
    {
        var height = Lanes.At(in source, at, vector) - first;
        Lanes.Put(height, ref target, at, vector);
        sum += height;
        product += height * Lanes.At(in x, at, vector);
    }

    private static LeastSquaresLine TakeOff(in StationAxis axis, Span<double> residuals, double slope, double mean)
    {
        ref var x = ref MemoryMarshal.GetReference(axis.FromMean);
        ref var z = ref MemoryMarshal.GetReference(residuals);
        var slopes = Vector256.Create(slope);
        var means = Vector256.Create(mean);
        Vector256<double> high0 = Vector256.Create(double.NegativeInfinity), high1 = high0, high2 = high0, high3 = high0;
        Vector256<double> low0 = Vector256.Create(double.PositiveInfinity), low1 = low0, low2 = low0, low3 = low0;
        Vector256<double> square0 = default, square1 = default, square2 = default, square3 = default;
        for (var at = 0; at < residuals.Length; at += Lanes.Block)
        {
            Turn(ref x, ref z, at, 0, slopes, means, ref high0, ref low0, ref square0);
            Turn(ref x, ref z, at, 1, slopes, means, ref high1, ref low1, ref square1);
            Turn(ref x, ref z, at, 2, slopes, means, ref high2, ref low2, ref square2);
            Turn(ref x, ref z, at, 3, slopes, means, ref high3, ref low3, ref square3);
        }

        var copies = residuals.Length - axis.Count;
        var squares = Lanes.Sum(square0, square1, square2, square3) - (copies * (z * z));
        return new LeastSquaresLine(
            slope,
            mean + (slope * x),
            Lanes.Highest(high0, high1, high2, high3),
            Lanes.Lowest(low0, low1, low2, low3),
            Math.Max(squares, 0) / axis.Count,
            -x,
            axis.SumOfSquares / axis.Count);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Turn(
        ref double x,
        ref double z,
        int at,
        int vector,
        Vector256<double> slope,
        Vector256<double> mean,
        ref Vector256<double> high,
        ref Vector256<double> low,
        ref Vector256<double> square)
    {
        var residual = (Lanes.At(ref z, at, vector) - mean) - (slope * Lanes.At(ref x, at, vector));
        Lanes.Put(residual, ref z, at, vector);
        high = Vector256.MaxNative(high, residual);
        low = Vector256.MinNative(low, residual);
        square += residual * residual;
    }
}
