using System;
using System.Diagnostics;
using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Waywright;

/// <summary>
/// The order of arithmetic that the kernels share: four vectors of four doubles, so sixteen lanes whatever the machine's vector width is, added up
/// in one written order, with multiply and subtract kept apart (a fused one rounds differently). The same readings give the same bits anywhere.
/// </summary>
internal static class Lanes
{
    /// <summary>Doubles per turn of a kernel's loop.</summary>
    public const int Block = 16;

    /// <summary>Vectors per block.</summary>
    public const int Vectors = 4;

    private const int Vector = Block / Vectors;

    /// <summary>The length of an array of whole blocks that has room for so many values.</summary>
    public static int Padded(int count) => (count + Block - 1) / Block * Block;

    /// <summary>
    /// Copies what is left after the last whole block into its place in the room, filled up to a block with copies of the first value.
    /// Returns where that block starts, which is the room's length if there is none.
    /// </summary>
    public static int CopyRest(ReadOnlySpan<double> values, Span<double> room)
    {
        Debug.Assert(room.Length == Padded(values.Length));
        var whole = values.Length / Block * Block;
        values[whole..].CopyTo(room[whole..]);
        room[values.Length..].Fill(values[0]);
        return whole;
    }

    /// <summary>The vector of a block: <paramref name="at"/> is where the block starts, <paramref name="vector"/> is 0 to 3.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector256<double> At(ref readonly double first, int at, int vector) => Vector256.LoadUnsafe(in first, Offset(at, vector));

    /// <summary>Stores a vector of a block.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Put(Vector256<double> value, ref double first, int at, int vector) => value.StoreUnsafe(ref first, Offset(at, vector));

    // The loops end within their arrays; unchecked, the vector's part of the offset folds into the instruction.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static nuint Offset(int at, int vector) => unchecked((nuint)(uint)at + (nuint)(uint)(vector * Vector));

    /// <summary>The sum of the sixteen lanes, in one order.</summary>
    public static double Sum(Vector256<double> a, Vector256<double> b, Vector256<double> c, Vector256<double> d)
    {
        var lanes = (a + b) + (c + d);
        return (lanes[0] + lanes[1]) + (lanes[2] + lanes[3]);
    }

    /// <summary>The largest of the sixteen lanes, never -0.</summary>
    public static double Highest(Vector256<double> a, Vector256<double> b, Vector256<double> c, Vector256<double> d)
    {
        var lanes = Vector256.MaxNative(Vector256.MaxNative(a, b), Vector256.MaxNative(c, d));
        return double.MaxNative(double.MaxNative(lanes[0], lanes[1]), double.MaxNative(lanes[2], lanes[3])) + 0.0;
    }

    /// <summary>The smallest of the sixteen lanes, never -0.</summary>
    public static double Lowest(Vector256<double> a, Vector256<double> b, Vector256<double> c, Vector256<double> d)
    {
        var lanes = Vector256.MinNative(Vector256.MinNative(a, b), Vector256.MinNative(c, d));
        return double.MinNative(double.MinNative(lanes[0], lanes[1]), double.MinNative(lanes[2], lanes[3])) + 0.0;
    }
}
