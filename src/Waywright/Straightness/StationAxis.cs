using System;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Waywright;

/// <summary>
/// The positions of a profile, prepared once for any number of sets of heights: counted from their mean, in whole blocks that are filled up with
/// copies of the first station. A copy moves no extreme, and the height sums give it the weight zero.
/// </summary>
internal readonly ref struct StationAxis
{
    private StationAxis(ReadOnlySpan<double> fromMean, int count, double sumOfSquares)
    {
        FromMean = fromMean;
        Count = count;
        SumOfSquares = sumOfSquares;
    }

    /// <summary>Positions less their mean, <c>Lanes.Padded(Count)</c> of them.</summary>
    public ReadOnlySpan<double> FromMean { get; }

    public int Count { get; }

    /// <summary>Sum of (x - mean)² over the stations.</summary>
    public double SumOfSquares { get; }

    /// <param name="positions">In rising order, at least two different.</param>
    /// <param name="room"><c>Lanes.Padded(positions.Length)</c> doubles, kept as long as the axis is used.</param>
    public static StationAxis Prepare(ReadOnlySpan<double> positions, Span<double> room)
    {
        var rest = Lanes.CopyRest(positions, room);
        ref var target = ref MemoryMarshal.GetReference(room);
        ref readonly var source = ref MemoryMarshal.GetReference(positions);
        var first = Vector256.Create(positions[0]);
        Vector256<double> a = default, b = default, c = default, d = default;
        for (var at = 0; at < room.Length; at += Lanes.Block)
        {
            if (at == rest)
                source = ref target;
            a += Less(first, in source, ref target, at, 0);
            b += Less(first, in source, ref target, at, 1);
            c += Less(first, in source, ref target, at, 2);
            d += Less(first, in source, ref target, at, 3);
        }

        var mean = Vector256.Create(Lanes.Sum(a, b, c, d) / positions.Length);
        a = b = c = d = default;
        for (var at = 0; at < room.Length; at += Lanes.Block)
        {
            a += Square(Less(mean, in target, ref target, at, 0));
            b += Square(Less(mean, in target, ref target, at, 1));
            c += Square(Less(mean, in target, ref target, at, 2));
            d += Square(Less(mean, in target, ref target, at, 3));
        }

        var copies = room.Length - positions.Length;
        return new StationAxis(room, positions.Length, Lanes.Sum(a, b, c, d) - (copies * Square(room[0])));
    }

    /// <summary>An axis that was prepared before, from its room.</summary>
    public static StationAxis Again(ReadOnlySpan<double> room, int count, double sumOfSquares) => new(room, count, sumOfSquares);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<double> Less(Vector256<double> constant, ref readonly double source, ref double target, int at, int vector)
    {
        var less = Lanes.At(in source, at, vector) - constant;
        Lanes.Put(less, ref target, at, vector);
        return less;
    }

    private static Vector256<double> Square(Vector256<double> value) => value * value;

    private static double Square(double value) => value * value;
}
