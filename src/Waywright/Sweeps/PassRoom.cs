using System;
using System.Collections.Generic;

namespace Waywright;

/// <summary>What all passes of a table share while it is read.</summary>
internal sealed class PassRoom
{
    private readonly HashSet<string> _names = new(StringComparer.Ordinal);

    /// <summary>Rows of the pass that is being read.</summary>
    public NumberPairs Rows { get; } = new();

    /// <summary>Stations of the last pass that was read: passes over the same ones share their list, so memory grows with rails.</summary>
    public FixedList<double> Stations { get; set; } = FixedList<double>.Empty;

    /// <summary>One string for equal names, however often they stand in the file.</summary>
    public string Name(ReadOnlySpan<char> name)
    {
        var names = _names.GetAlternateLookup<ReadOnlySpan<char>>();
        if (!names.TryGetValue(name, out var known))
            _names.Add(known = name.ToString());
        return known;
    }
}
