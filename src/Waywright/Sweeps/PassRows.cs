using System;
using System.Runtime.InteropServices;

namespace Waywright;

/// <summary>The rows of one pass while a table is read; used again for a pass of the next face.</summary>
internal sealed class PassRows
{
    private FixedList<double>? _stations;
    private FixedList<double> _readings = FixedList<double>.Empty;
    private NumberPairs? _rows;

    public PassRows() => (Pass, Direction, Lay) = ("", "", "");

    /// <summary>Takes a finished pass up again.</summary>
    public PassRows(SweepPass pass)
    {
        (Pass, Direction, Lay) = (pass.Pass, pass.Direction, pass.Lay);
        (_stations, _readings) = (FixedList<double>.Copy(pass.PositionsMm), FixedList<double>.Copy(pass.ReadingsUm));
    }

    public string Pass { get; private set; }

    public string Direction { get; private set; }

    public string Lay { get; private set; }

    public int LastLine { get; set; }

    public bool Is(ReadOnlySpan<char> pass, ReadOnlySpan<char> direction, ReadOnlySpan<char> lay)
        => pass.SequenceEqual(Pass) && direction.SequenceEqual(Direction) && lay.SequenceEqual(Lay);

    /// <summary>Starts a pass without rows.</summary>
    public void Start(ReadOnlySpan<char> pass, ReadOnlySpan<char> direction, ReadOnlySpan<char> lay, PassRoom room)
    {
        (_stations, _rows) = (null, null);
        if (!Is(pass, direction, lay))
            (Pass, Direction, Lay) = (room.Name(pass), room.Name(direction), room.Name(lay));
    }

    /// <summary>Where rows of this pass go. A pass that is met for the first time uses the shared room; one that goes on after others keeps its own.</summary>
    public NumberPairs Open(PassRoom room)
    {
        if (_rows is not null)
            return _rows;
        if (_stations is not null)
            return _rows = new NumberPairs(_stations.AsSpan(), _readings.AsSpan());
        room.Rows.Clear();
        return _rows = room.Rows;
    }

    /// <summary>Leaves the shared room to the next pass.</summary>
    public void Close(PassRoom room)
    {
        if (_rows == room.Rows)
            Settle(room);
    }

    /// <summary>The pass in rising position.</summary>
    public SweepPass Finish(PassRoom room)
    {
        if (_rows is not null)
            Settle(room);
        return new SweepPass(Pass, Direction, Lay, _stations!, _readings);
    }

    private void Settle(PassRoom room)
    {
        if (!IsSame(_rows!.First, room.Stations.AsSpan()))
        {
            _rows.Sort();
            if (!IsSame(_rows.First, room.Stations.AsSpan()))
                room.Stations = FixedList<double>.Own(_rows.First.ToArray());
        }

        _stations = room.Stations;
        _readings = FixedList<double>.Own(_rows.Second.ToArray());
        _rows = null;
    }

    private static bool IsSame(ReadOnlySpan<double> a, ReadOnlySpan<double> b) => MemoryMarshal.Cast<double, long>(a).SequenceEqual(MemoryMarshal.Cast<double, long>(b));
}
