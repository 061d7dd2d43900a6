using System;

namespace Waywright;

/// <summary>Keeps many short lists of numbers in few arrays: one object and one header for each list would cost more than the numbers.</summary>
internal sealed class NumberBlocks
{
    // 64 kB: small enough for the collector's ordinary heap.
    private const int BlockLength = 8192;

    private double[] _block = [];
    private int _used;

    /// <summary>The same numbers, kept.</summary>
    public FixedList<double> Keep(ReadOnlySpan<double> numbers)
    {
        if (numbers.Length > BlockLength / 4)
            return FixedList<double>.Own(numbers.ToArray());
        if (numbers.Length > _block.Length - _used)
            (_block, _used) = (GC.AllocateUninitializedArray<double>(BlockLength), 0);
        numbers.CopyTo(_block.AsSpan(_used));
        _used += numbers.Length;
        return FixedList<double>.Own(_block, _used - numbers.Length, numbers.Length);
    }
}
