using System;

namespace Waywright;

/// <summary>Where the fields of a row end. A delimiter after an odd number of quotation marks belongs to its field.</summary>
internal sealed class RowSplit(char delimiter)
{
    private int[] _ends = new int[16];

    public int Count { get; private set; }

    public void Split(ReadOnlySpan<char> row)
    {
        Count = 0;
        var isQuoted = false;
        for (var at = 0; ; at++)
        {
            var next = row[at..].IndexOfAny(delimiter, '"');
            if (next < 0)
                break;
            at += next;
            if (row[at] == '"')
                isQuoted = !isQuoted;
            else if (!isQuoted)
                Add(at);
        }

        Add(row.Length);
    }

    public int StartOf(int field) => field == 0 ? 0 : _ends[field - 1] + 1;

    public int EndOf(int field) => _ends[field];

    private void Add(int end)
    {
        if (Count == _ends.Length)
            Array.Resize(ref _ends, 2 * Count);
        _ends[Count++] = end;
    }
}
