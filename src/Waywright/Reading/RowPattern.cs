using System;

namespace Waywright;

/// <summary>
/// A row but for two neighbouring fields. Most rows of a measurement table repeat the row before them but for two numbers: such a row is told by comparing,
/// and needs no splitting. Equal text also has equal quotes and as many fields, so it needs no check either.
/// </summary>
internal sealed class RowPattern(char delimiter)
{
    private char[] _text = new char[64];
    private int _before;
    private int _length;
    private bool _isSet;

    /// <param name="row">A row that was found sound.</param>
    /// <param name="first">The first of the two fields, within the row.</param>
    /// <param name="second">The next field, within the row.</param>
    public void Learn(ReadOnlySpan<char> row, ReadOnlySpan<char> first, ReadOnlySpan<char> second)
    {
        _isSet = row.Overlaps(first, out var start) & row.Overlaps(second, out var end);
        if (!_isSet)
            return;
        end += second.Length;
        if (row.Length > _text.Length)
            _text = new char[row.Length];
        row[..start].CopyTo(_text);
        row[end..].CopyTo(_text.AsSpan(start));
        _before = start;
        _length = row.Length - (end - start);
    }

    /// <summary>Reads the two numbers of a row that repeats this one and has plain numbers with the file's own decimal mark; false for any other row.</summary>
    public bool TryRead(ReadOnlySpan<char> row, DecimalMark mark, out double first, out double second)
    {
        first = second = 0;
        var text = _text.AsSpan(0, _length);
        if (!_isSet || !row.StartsWith(text[.._before]))
            return false;
        var sign = mark switch
        {
            DecimalMark.Point => '.',
            DecimalMark.Comma => ',',
            _ => '0',
        };
        var at = Number.ReadPlain(row, _before, sign, out first);
        if (at < 0 || at >= row.Length || row[at] != delimiter)
            return false;
        at = Number.ReadPlain(row, at + 1, sign, out second);
        return at >= 0 && row[at..].SequenceEqual(text[_before..]);
    }
}
