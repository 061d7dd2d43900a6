using System;

namespace Waywright;

/// <summary>
/// A row but for two neighbouring fields. Most rows of a measurement table repeat the row before them but for two numbers: such a row is told by comparing,
/// and its end is found by reading the numbers. Equal text also has equal quotes and as many fields, so it needs no check either.
/// </summary>
internal sealed class RowPattern(char delimiter)
{
    private char[] _text = new char[64];
    private int _before;
    private int _length = -1;

    /// <param name="row">A row that was found sound.</param>
    /// <param name="start">Where the first of the two fields starts.</param>
    /// <param name="end">Where the second ends.</param>
    public void Learn(ReadOnlySpan<char> row, int start, int end)
    {
        if (row.Length > _text.Length)
            _text = new char[row.Length];
        row[..start].CopyTo(_text);
        row[end..].CopyTo(_text.AsSpan(start));
        _before = start;
        _length = row.Length - (end - start);
    }

    /// <summary>Whether a row repeats this one but for what stands from start to end.</summary>
    public bool IsLike(ReadOnlySpan<char> row, int start, int end)
        => start == _before && row.Length - (end - start) == _length && row.StartsWith(_text.AsSpan(0, start)) && row.EndsWith(_text.AsSpan(start, _length - start));

    /// <summary>
    /// Reads the two numbers of each row at the start of the text, as long as the rows repeat this one and have plain numbers with the file's own decimal mark.
    /// Returns how many characters these rows have.
    /// </summary>
    /// <param name="text">Starts with a row; may end within one.</param>
    /// <param name="mark">The file's decimal mark.</param>
    /// <param name="least">A row whose first number is less is left.</param>
    /// <param name="factor">By which the second numbers are multiplied.</param>
    /// <param name="pairs">Gets the numbers.</param>
    public int Read(ReadOnlySpan<char> text, DecimalMark mark, double least, double factor, NumberPairs pairs)
    {
        var before = _text.AsSpan(0, _before);
        var behind = _text.AsSpan(_before, _length - _before);
        var sign = mark switch
        {
            DecimalMark.Point => '.',
            DecimalMark.Comma => ',',
            _ => '0',
        };
        var rest = text;
        while (rest.StartsWith(before))
        {
            var at = Number.ReadPlain(rest, before.Length, sign, out var first);
            if (at < 0 || at >= rest.Length || rest[at] != delimiter || first < least)
                break;
            at = Number.ReadPlain(rest, at + 1, sign, out var second);
            if (at < 0 || (!behind.IsEmpty && !rest[at..].StartsWith(behind)))
                break;
            at += behind.Length;
            if (at < rest.Length && rest[at] == '\n')
                rest = rest[(at + 1)..];
            else if (rest[at..].StartsWith("\r\n"))
                rest = rest[(at + 2)..];
            else
                break;
            pairs.Add(first, second * factor);
        }

        return text.Length - rest.Length;
    }
}
