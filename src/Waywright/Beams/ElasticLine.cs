using System;

namespace Waywright;

/// <summary>
/// The elastic line by Clapeyron's theorem of three moments, in N and mm, downwards positive:
/// l M(i-1) + 2 (l + r) M(i) + r M(i+1) = 6 (slopes that the spans l and r would have at support i, were they free to turn there).
/// Spans and overhangs are then closed polynomials, so the line is exact at every x, not only at nodes.
/// </summary>
/// <remarks>Moments that sag the beam are positive. Slopes are counted outwards from the span, so that two that meet without a kink add to zero.</remarks>
internal sealed record ElasticLine
{
    private readonly double _length;
    private readonly double _stiffness;
    private readonly double _load;
    private readonly FixedList<double> _supports;
    private readonly FixedList<double> _drops;
    private readonly FixedList<PointForce> _forces;
    private readonly FixedList<double> _moments;

    /// <param name="length">mm.</param>
    /// <param name="stiffness">EI, N mm2.</param>
    /// <param name="load">Uniform load, N/mm.</param>
    /// <param name="supports">mm, rising, at least two.</param>
    /// <param name="drops">How far each support lies below the line that deflections count from, mm.</param>
    /// <param name="forces">Anywhere on the beam, in any order.</param>
    public ElasticLine(double length, double stiffness, double load, FixedList<double> supports, FixedList<double> drops, FixedList<PointForce> forces)
    {
        _length = length;
        _stiffness = stiffness;
        _load = load;
        _supports = supports;
        _drops = drops;
        _forces = forces;
        _moments = FixedList<double>.Own(SolveMoments());
    }

    private int Last => _supports.Count - 1;

    /// <summary>Deflection at x, mm, downwards positive.</summary>
    public double At(double x)
    {
        if (x < _supports[0])
            return InOverhang(0, 1, _supports[0] - x);
        if (x > _supports[Last])
            return InOverhang(Last, Last - 1, x - _supports[Last]);
        var left = 0;
        while (left < Last - 1 && x > _supports[left + 1])
            left++;
        return InSpan(left, x);
    }

    /// <summary>What each support pushes up with, N.</summary>
    public double[] Reactions()
    {
        var reactions = new double[_supports.Count];
        for (var left = 0; left < Last; left++)
        {
            reactions[left] += SpanShare(left, left + 1);
            reactions[left + 1] += SpanShare(left + 1, left);
        }

        reactions[0] += OverhangLoad(0).Force;
        reactions[Last] += OverhangLoad(Last).Force;
        return reactions;
    }

    /// <summary>Moments over the supports; the matrix is diagonally dominant, so elimination needs no pivots.</summary>
    private double[] SolveMoments()
    {
        var moments = new double[_supports.Count];
        moments[0] = -OverhangLoad(0).Moment;
        moments[Last] = -OverhangLoad(Last).Moment;
        var above = new double[_supports.Count];
        for (var i = 1; i < Last; i++)
        {
            var l = _supports[i] - _supports[i - 1];
            var r = _supports[i + 1] - _supports[i];
            var pivot = (2 * (l + r)) - (l * above[i - 1]);
            above[i] = r / pivot;
            moments[i] = ((6 * (FreeSlope(i, i - 1) + FreeSlope(i, i + 1))) - (l * moments[i - 1])) / pivot;
        }

        for (var i = Last - 1; i > 0; i--)
            moments[i] -= above[i] * moments[i + 1];
        return moments;
    }

    /// <summary>EI times the outward slope that the span from near to far has at its near end when no moments act at its ends.</summary>
    private double FreeSlope(int near, int far)
    {
        var l = Math.Abs(_supports[far] - _supports[near]);
        var slope = (_stiffness * (_drops[near] - _drops[far]) / l) - (_load * l * l * l / 24);
        foreach (var force in _forces.AsSpan())
        {
            if (!IsInSpan(force, Math.Min(near, far)))
                continue;
            var p = Math.Abs(force.PositionMm - _supports[near]);
            slope -= force.DownwardN * p * (l - p) * (l + l - p) / (6 * l);
        }

        return slope;
    }

    /// <summary>What the span from near to far lays on its near support.</summary>
    private double SpanShare(int near, int far)
    {
        var l = Math.Abs(_supports[far] - _supports[near]);
        var share = (_load * l / 2) + ((_moments[far] - _moments[near]) / l);
        foreach (var force in _forces.AsSpan())
        {
            if (IsInSpan(force, Math.Min(near, far)))
                share += force.DownwardN * Math.Abs(_supports[far] - force.PositionMm) / l;
        }

        return share;
    }

    /// <summary>What hangs outside an end support, or stands right on the last one: its force and its moment about that support.</summary>
    private (double Force, double Moment) OverhangLoad(int end)
    {
        var c = Reach(end);
        var (sum, moment) = (_load * c, _load * c * c / 2);
        foreach (var force in _forces.AsSpan())
        {
            if (!IsOutside(force, end))
                continue;
            sum += force.DownwardN;
            moment += force.DownwardN * Math.Abs(force.PositionMm - _supports[end]);
        }

        return (sum, moment);
    }

    private double InSpan(int left, double x)
    {
        var (t, u) = (x - _supports[left], _supports[left + 1] - x);
        var l = _supports[left + 1] - _supports[left];
        var bent = (_load * t * u * ((l * l) + (t * u)) / 24) + (t * u * ((_moments[left] * (l + u)) + (_moments[left + 1] * (l + t))) / (6 * l));
        foreach (var force in _forces.AsSpan())
        {
            if (!IsInSpan(force, left))
                continue;
            var (p, q) = (force.PositionMm - _supports[left], _supports[left + 1] - force.PositionMm);
            bent += force.DownwardN * (t <= p ? q * t * ((p * (l + q)) - (t * t)) : p * u * ((q * (l + p)) - (u * u))) / (6 * l);
        }

        return (((_drops[left] * u) + (_drops[left + 1] * t)) / l) + (bent / _stiffness);
    }

    /// <summary>A cantilever that leaves its support with the slope of the span beside it.</summary>
    private double InOverhang(int end, int far, double d)
    {
        var c = Reach(end);
        var slope = FreeSlope(end, far) - (((_moments[end] / 3) + (_moments[far] / 6)) * Math.Abs(_supports[far] - _supports[end]));
        var bent = (slope * d) + (_load * d * d * ((6 * c * c) - (4 * c * d) + (d * d)) / 24);
        foreach (var force in _forces.AsSpan())
        {
            if (!IsOutside(force, end))
                continue;
            var e = Math.Abs(force.PositionMm - _supports[end]);
            bent += force.DownwardN * (d <= e ? d * d * ((3 * e) - d) : e * e * ((3 * d) - e)) / 6;
        }

        return _drops[end] + (bent / _stiffness);
    }

    private double Reach(int end) => end == 0 ? _supports[0] : _length - _supports[Last];

    // A force right on a support belongs to the span that begins there, or to the overhang where none begins: it is counted once.
    private bool IsInSpan(PointForce force, int left) => force.PositionMm >= _supports[left] && force.PositionMm < _supports[left + 1];

    private bool IsOutside(PointForce force, int end) => end == 0 ? force.PositionMm < _supports[0] : force.PositionMm >= _supports[Last];
}
