using System;

namespace Waywright;

/// <summary>The rows of one pass while a table is read.</summary>
internal sealed class PassRows(string pass, string direction, string lay, int firstLine, int room)
{
    private double[] _positions = new double[Math.Max(room, 4)];
    private double[] _readings = new double[Math.Max(room, 4)];
    private bool _isSorted = true;

    public string Pass { get; } = pass;

    public string Direction { get; } = direction;

    public string Lay { get; } = lay;

    public int FirstLine { get; } = firstLine;

    public int LastLine { get; private set; } = firstLine;

    public int Count { get; private set; }

    public void Add(double position, double reading, int line)
    {
        if (Count == _positions.Length)
        {
            Array.Resize(ref _positions, 2 * Count);
            Array.Resize(ref _readings, 2 * Count);
        }

        _isSorted &= Count == 0 || position >= _positions[Count - 1];
        _positions[Count] = position;
        _readings[Count++] = reading;
        LastLine = line;
    }

    /// <summary>The pass in rising position, its readings in um. Passes over the same stations share one list of them: memory grows with rails.</summary>
    /// <param name="factor">Micrometres for one unit of the readings.</param>
    /// <param name="stations">The stations of an earlier pass; those of this one afterwards.</param>
    public SweepPass Finish(double factor, ref FixedList<double> stations)
    {
        var positions = _positions.AsSpan(0, Count);
        var readings = _readings.AsSpan(0, Count);
        if (!_isSorted)
            positions.Sort(readings);
        if (factor != 1)
        {
            foreach (ref var reading in readings)
                reading *= factor;
        }

        if (!stations.AsSpan().SequenceEqual(positions))
            stations = FixedList<double>.Own(positions.ToArray());
        return new SweepPass(Pass, Direction, Lay, stations, FixedList<double>.Own(Count == _readings.Length ? _readings : readings.ToArray()));
    }
}
