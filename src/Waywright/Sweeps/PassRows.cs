using System;
using System.Runtime.InteropServices;

namespace Waywright;

/// <summary>The rows of one pass while a table is read.</summary>
internal sealed class PassRows(string pass, string direction, string lay, int firstLine)
{
    private FixedList<double> _stations = FixedList<double>.Empty;
    private double[] _readings = [];
    private NumberPairs? _rows;

    public string Pass { get; } = pass;

    public string Direction { get; } = direction;

    public string Lay { get; } = lay;

    public int FirstLine { get; } = firstLine;

    public int LastLine { get; set; } = firstLine;

    public bool Is(ReadOnlySpan<char> pass, ReadOnlySpan<char> direction, ReadOnlySpan<char> lay)
        => pass.SequenceEqual(Pass) && direction.SequenceEqual(Direction) && lay.SequenceEqual(Lay);

    /// <summary>Where rows of this pass go. A pass that is met for the first time uses the shared room; one that goes on after others keeps its own.</summary>
    public NumberPairs Open(NumberPairs shared)
    {
        if (_rows is null && _readings.Length == 0)
        {
            shared.Clear();
            _rows = shared;
        }

        return _rows ??= new NumberPairs(_stations.AsSpan(), _readings);
    }

    /// <summary>Leaves the shared room to the next pass.</summary>
    public void Close(NumberPairs shared, ref FixedList<double> stations)
    {
        if (_rows == shared)
            Settle(ref stations);
    }

    /// <summary>The pass in rising position, its readings in um.</summary>
    /// <param name="factor">Micrometres for one unit of the readings.</param>
    /// <param name="stations">The stations of an earlier pass; those of this one afterwards.</param>
    public SweepPass Finish(double factor, ref FixedList<double> stations)
    {
        if (_rows is not null)
            Settle(ref stations);
        if (factor != 1)
        {
            foreach (ref var reading in _readings.AsSpan())
                reading *= factor;
        }

        return new SweepPass(Pass, Direction, Lay, _stations, FixedList<double>.Own(_readings));
    }

    // Passes over the same stations share one list of them: memory grows with rails.
    private void Settle(ref FixedList<double> stations)
    {
        if (!IsSame(_rows!.First, stations.AsSpan()))
        {
            _rows.Sort();
            if (!IsSame(_rows.First, stations.AsSpan()))
                stations = FixedList<double>.Own(_rows.First.ToArray());
        }

        _stations = stations;
        _readings = _rows.Second.ToArray();
        _rows = null;
    }

    private static bool IsSame(ReadOnlySpan<double> a, ReadOnlySpan<double> b) => MemoryMarshal.Cast<double, long>(a).SequenceEqual(MemoryMarshal.Cast<double, long>(b));
}
