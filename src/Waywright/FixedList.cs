using System;
using System.Collections;
using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>A list that never changes and is equal to another with equal items, so that records of lists compare by value.</summary>
internal sealed class FixedList<T> : IReadOnlyList<T>, IEquatable<FixedList<T>>
{
    private readonly T[] _items;

    private FixedList(T[] items) => _items = items;

    public static FixedList<T> Empty { get; } = new([]);

    public int Count => _items.Length;

    public T this[int index] => _items[index];

    public static FixedList<T> Copy(IEnumerable<T> items) => items as FixedList<T> ?? new FixedList<T>(items.ToArray());

    /// <summary>Takes the array over: the caller must not keep it.</summary>
    public static FixedList<T> Own(T[] items) => new(items);

    public ReadOnlySpan<T> AsSpan() => _items;

    public bool Equals(FixedList<T>? other) => other is not null && _items.AsSpan().SequenceEqual(other._items, EqualityComparer<T>.Default);

    public override bool Equals(object? obj) => Equals(obj as FixedList<T>);

    public override int GetHashCode()
    {
        var hash = new HashCode();
        foreach (var item in _items)
            hash.Add(item);
        return hash.ToHashCode();
    }

    public IEnumerator<T> GetEnumerator() => ((IEnumerable<T>)_items).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => _items.GetEnumerator();

    public override string ToString() => $"[{_items.Length} items]";
}
