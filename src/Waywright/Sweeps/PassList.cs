using System;
using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>The passes of the face that is being read; used again for the next face.</summary>
internal sealed class PassList
{
    private readonly List<PassRows> _passes = [];
    private int _count;

    public PassList()
    {
    }

    /// <summary>Takes finished passes up again.</summary>
    public PassList(IReadOnlyList<SweepPass> passes, int lastLine)
    {
        _passes.AddRange(passes.Select(p => new PassRows(p)));
        _count = _passes.Count;
        Last.LastLine = lastLine;
    }

    public PassRows Last => _passes[_count - 1];

    /// <summary>Forgets the passes and keeps their room.</summary>
    public void Clear() => _count = 0;

    /// <summary>The pass of that name, new if need be.</summary>
    public PassRows Find(ReadOnlySpan<char> pass, ReadOnlySpan<char> direction, ReadOnlySpan<char> lay, PassRoom room)
    {
        for (var i = 0; i < _count; i++)
        {
            if (_passes[i].Is(pass, direction, lay))
                return _passes[i];
        }

        if (_passes.Count == _count)
            _passes.Add(new PassRows());
        var added = _passes[_count++];
        added.Start(pass, direction, lay, room);
        return added;
    }

    public SweepPass[] Finish(PassRoom room)
    {
        var passes = new SweepPass[_count];
        for (var i = 0; i < passes.Length; i++)
            passes[i] = _passes[i].Finish(room);
        return passes;
    }
}
