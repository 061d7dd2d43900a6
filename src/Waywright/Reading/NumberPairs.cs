using System;

namespace Waywright;

/// <summary>Two columns of numbers that grow together.</summary>
internal sealed class NumberPairs
{
    private double[] _first;
    private double[] _second;

    public NumberPairs() => (_first, _second) = (new double[64], new double[64]);

    /// <summary>With so much in it from the start, and room for as much again.</summary>
    public NumberPairs(ReadOnlySpan<double> first, ReadOnlySpan<double> second)
    {
        Count = first.Length;
        _first = new double[Math.Max(4, 2 * Count)];
        _second = new double[_first.Length];
        first.CopyTo(_first);
        second.CopyTo(_second);
    }

    public int Count { get; private set; }

    public Span<double> First => _first.AsSpan(0, Count);

    public Span<double> Second => _second.AsSpan(0, Count);

    public void Add(double first, double second)
    {
        var count = Count;
        if ((uint)count >= (uint)_first.Length)
            Grow();
        _first[count] = first;
        _second[count] = second;
        Count = count + 1;
    }

    public void Clear() => Count = 0;

    /// <summary>Puts the pairs in rising order of their first number.</summary>
    public void Sort()
    {
        var (rises, falls) = (true, true);
        for (var i = 1; i < Count; i++)
        {
            rises &= _first[i] >= _first[i - 1];
            falls &= _first[i] < _first[i - 1];
        }

        if (rises)
            return;
        if (falls)
        {
            First.Reverse();
            Second.Reverse();
        }
        else
        {
            First.Sort(Second);
        }
    }

    private void Grow()
    {
        Array.Resize(ref _first, 2 * Count);
        Array.Resize(ref _second, 2 * Count);
    }
}
