using System;
using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>A stretch of a run with forces above the run's usual one.</summary>
internal sealed record DragStretch(double FromMm, double ToMm, double PeakRatio);

/// <summary>One carriage pulled along one rail without a stop; its start-up stands apart.</summary>
internal sealed record DragRun
{
    /// <summary>Fewer readings leave nothing to tell a place from.</summary>
    public const int LeastReadings = 5;

    // Hampel's k and the share of the median that a place has to exceed the median by: common practice, no source.
    private const double Deviations = 3;
    private const double MadToDeviation = 1.4826;
    private const double LeastShare = 0.25;

    // The start-up never takes so much that no median is left.
    private const int LeastRunning = 4;

    private readonly FixedList<double> _positionsMm;
    private readonly FixedList<double> _forcesN;
    private readonly int _startUp;
    private readonly Sample _running;

    public DragRun(string rail, string carriage, string direction, IEnumerable<double> positionsMm, IEnumerable<double> forcesN)
    {
        (Rail, Carriage, Direction) = (rail, carriage, direction);
        (_positionsMm, _forcesN) = (FixedList<double>.Copy(positionsMm), FixedList<double>.Copy(forcesN));
        _startUp = StartUp(_forcesN);
        _running = new Sample(_forcesN.Skip(_startUp));
        Stretches = FixedList<DragStretch>.Copy(Find());
    }

    public string Rail { get; }

    public string Carriage { get; }

    public string Direction { get; }

    /// <summary>Forces after the start-up, N.</summary>
    public IEnumerable<double> RunningN => _forcesN.Skip(_startUp);

    /// <summary>Where those were read, mm.</summary>
    public IEnumerable<double> RunningMm => _positionsMm.Skip(_startUp);

    /// <summary>The largest force of the start-up, N.</summary>
    public double StartUpN => _forcesN.Take(_startUp).Max();

    /// <summary>Median force after the start-up, N.</summary>
    public double MedianN => _running.Median;

    /// <summary>Where the force is above the usual, in the order in which the carriage met them.</summary>
    public IReadOnlyList<DragStretch> Stretches { get; }

    /// <summary>Whether the run, its start-up left out, went over the middle of a stretch.</summary>
    public bool Covers(double fromMm, double toMm)
    {
        var (first, last, middle) = (_positionsMm[_startUp], _positionsMm[^1], (fromMm + toMm) / 2);
        return Math.Min(first, last) <= middle && middle <= Math.Max(first, last);
    }

    /// <summary>The first reading, and those after it that are high and still fall.</summary>
    private static int StartUp(FixedList<double> forcesN)
    {
        var limit = HighAbove(new Sample(forcesN.Skip(1)));
        var count = 1;
        while (forcesN.Count - count > LeastRunning && forcesN[count] > limit && forcesN[count] < forcesN[count - 1])
            count++;
        return count;
    }

    private static double HighAbove(Sample sample) => sample.Median + Math.Max(Deviations * MadToDeviation * sample.MedianAbsoluteDeviation, LeastShare * sample.Median);

    private IEnumerable<DragStretch> Find()
    {
        var limit = HighAbove(_running);
        for (var i = _startUp; i < _forcesN.Count; i++)
        {
            if (_forcesN[i] <= limit)
                continue;
            var first = i;
            while (i + 1 < _forcesN.Count && _forcesN[i + 1] > limit)
                i++;
            var (a, b) = (Between(first, first - 1), Between(i, i + 1));
            yield return new DragStretch(Math.Min(a, b), Math.Max(a, b), _forcesN.Skip(first).Take(i - first + 1).Max() / _running.Median);
        }
    }

    // The end of the run is the end of a stretch that reaches it.
    private double Between(int place, int neighbour) => neighbour >= _forcesN.Count ? _positionsMm[place] : (_positionsMm[place] + _positionsMm[neighbour]) / 2;
}
