using System;
using System.Collections;
using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>A list that never changes and is equal to another with equal items, so that records of lists compare by value.</summary>
internal sealed class FixedList<T> : IReadOnlyList<T>, IEquatable<FixedList<T>>
{
    private readonly T[] _items;
    private readonly int _start;

    private FixedList(T[] items, int start, int count) => (_items, _start, Count) = (items, start, count);

    public static FixedList<T> Empty { get; } = new([], 0, 0);

    public int Count { get; }

    public T this[int index] => AsSpan()[index];

    public static FixedList<T> Copy(IEnumerable<T> items) => items as FixedList<T> ?? Own(items.ToArray());

    /// <summary>Takes the array over: the caller must not keep it.</summary>
    public static FixedList<T> Own(T[] items) => new(items, 0, items.Length);

    /// <summary>Takes a part of an array over, so that many short lists can lie in one: the caller must not write to that part again.</summary>
    public static FixedList<T> Own(T[] items, int start, int count)
    {
        _ = items.AsSpan(start, count);
        return new(items, start, count);
    }

    public ReadOnlySpan<T> AsSpan() => new(_items, _start, Count);

    public bool Equals(FixedList<T>? other) => other is not null && AsSpan().SequenceEqual(other.AsSpan(), EqualityComparer<T>.Default);

    public override bool Equals(object? obj) => Equals(obj as FixedList<T>);

    public override int GetHashCode()
    {
        var hash = new HashCode();
        foreach (var item in AsSpan())
            hash.Add(item);
        return hash.ToHashCode();
    }

    public IEnumerator<T> GetEnumerator() => ((IEnumerable<T>)new ArraySegment<T>(_items, _start, Count)).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    public override string ToString() => $"[{Count} items]";
}
