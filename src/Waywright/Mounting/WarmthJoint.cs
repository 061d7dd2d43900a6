using System;
using System.Linq;

namespace Waywright;

/// <summary>
/// Two bars that bend alike, held together at screws that slide once friction is used up. N is what the joint carries from screw to screw: it changes at each by no more than
/// friction g, and is 0 outside the end screws. Where nothing slides, N C + d kappa = strain, kappa = (N d - M) / sum EI, C = 1/E1A1 + 1/E2A2; M the moment of the ends, 0 where
/// they may turn, else the straight line that leaves slopes and heights of both ends at 0. N and mm.
/// </summary>
/// <remarks>Checked against a finite-element model of both bars with sliders between them, that is loaded in steps (tests, Reference/warmth).</remarks>
internal sealed class WarmthJoint
{
    private const int MostTurns = 200;

    private readonly double _length;
    private readonly double[] _screws;
    private readonly double _strain;
    private readonly bool _endsHeld;
    private readonly double _distance;
    private readonly double _stiffness;
    private readonly double _give;

    /// <param name="rail">The rail.</param>
    /// <param name="under">The base.</param>
    /// <param name="length">mm.</param>
    /// <param name="screws">mm, rising.</param>
    /// <param name="strain">What the base would grow more than the rail, per length.</param>
    /// <param name="endsHeld">Whether both ends are kept from turning.</param>
    /// <param name="hasOpposite">A second rail on the opposite face: nothing bends, and the base bears the pull of both.</param>
    public WarmthJoint(BarSection rail, BarSection under, double length, double[] screws, double strain, bool endsHeld, bool hasOpposite)
    {
        (_length, _screws, _strain, _endsHeld) = (length, screws, strain, endsHeld);
        _distance = hasOpposite ? 0 : rail.ToJointMm + under.ToJointMm;
        _stiffness = 1e6 * (rail.BendingStiffnessNm2 + under.BendingStiffnessNm2);
        _give = (1 / rail.AxialStiffnessN) + ((hasOpposite ? 2 : 1) / under.AxialStiffnessN);
    }

    // What N has to be where nothing slides: (strain + d M / sum EI) / Stretch.
    private double Stretch => _give + (_distance * _distance / _stiffness);

    private double Wanted => _strain / Stretch;

    private double WantedPerMoment => _distance / _stiffness / Stretch;

    /// <summary>Loaded from nothing.</summary>
    /// <param name="gripN">Friction of one screw.</param>
    public WarmthState Warm(double gripN) => Settle(gripN, [.. _screws.Skip(1).Select(_ => Wanted)]);

    /// <summary>Brought back to where it was screwed down: what slid stays slid, until friction the other way gives in too.</summary>
    public WarmthState Return(WarmthState warm, double gripN)
        => Settle(gripN, [.. warm.Forces.Select((n, i) => n - Wanted - (WantedPerMoment * Moment(warm.First, warm.Last, Middle(i))))]);

    /// <summary>Nothing slides anywhere, from end to end.</summary>
    public WarmthState Bond()
    {
        var held = _endsHeld ? _distance * _strain / _give : 0;
        return new([Wanted + (WantedPerMoment * held)], held, held);
    }

    /// <summary>The line that it takes, mm.</summary>
    public WarmthCurve Bent(WarmthState state)
    {
        var isBond = state.Forces.Length != _screws.Length - 1 || _screws.Length == 0;
        double[] nodes = isBond ? [0, _length] : [0, .. _screws.Where(s => s > 0 && s < _length), _length];
        var rise = -(state.Last - state.First) / _length / _stiffness;
        return new(nodes, [.. nodes.SkipLast(1).Select((x, i) => (((Carried(state, isBond, (x + nodes[i + 1]) / 2) * _distance) - Moment(state.First, state.Last, x)) / _stiffness, rise))]);
    }

    private double Carried(WarmthState state, bool isBond, double x)
    {
        if (isBond)
            return state.Forces[0];
        var before = _screws.Count(s => s < x);
        return before == 0 || before == _screws.Length ? 0 : state.Forces[before - 1];
    }

    private double Middle(int gap) => (_screws[gap] + _screws[gap + 1]) / 2;

    private double Moment(double first, double last, double x) => first + ((last - first) * x / _length);

    // N in each gap is what it wants to be, or what the screws towards the nearer end hold. The moments follow from N and N from the moments: a convex problem of two unknowns,
    // piecewise linear, solved by Newton's method: exact once the same gaps stick twice.
    private WarmthState Settle(double gripN, double[] wanted)
    {
        var forces = new double[wanted.Length];
        var (first, last) = (0.0, 0.0);
        bool[] stuck = [];
        for (var turn = 0; turn < MostTurns; turn++)
        {
            var sticks = new bool[wanted.Length];
            for (var i = 0; i < forces.Length; i++)
            {
                var most = gripN * Math.Min(i + 1, wanted.Length - i);
                var wants = wanted[i] + (WantedPerMoment * Moment(first, last, Middle(i)));
                (sticks[i], forces[i]) = (Math.Abs(wants) < most, Math.Clamp(wants, -most, most));
            }

            if (!_endsHeld || stuck.AsSpan().SequenceEqual(sticks))
                return new(forces, first, last);
            stuck = sticks;
            (first, last) = EndMoments(forces, wanted, stuck);
        }

        throw new InvalidOperationException("The search for the end moments did not come to an end.");
    }

    // M = first + (last - first) x / L with int (N d - M) = 0 and int (N d - M) x = 0, N of the gaps that stick following M.
    private (double First, double Last) EndMoments(double[] forces, double[] wanted, bool[] stuck)
    {
        var (a11, a12, a22) = (_length, _length / 2, _length / 3);
        var (b1, b2) = (0.0, 0.0);
        for (var i = 0; i < forces.Length; i++)
        {
            var part = _distance * (_screws[i + 1] - _screws[i]);
            var at = Middle(i) / _length;
            var given = stuck[i] ? wanted[i] : forces[i];
            (b1, b2) = (b1 + (part * given), b2 + (part * at * given));
            if (stuck[i])
                (a11, a12, a22) = (a11 - (part * WantedPerMoment), a12 - (part * WantedPerMoment * at), a22 - (part * WantedPerMoment * at * at));
        }

        var determinant = (a11 * a22) - (a12 * a12);
        var (level, slope) = (((b1 * a22) - (b2 * a12)) / determinant, ((b2 * a11) - (b1 * a12)) / determinant);
        return (level, level + slope);
    }
}

/// <summary>What a joint carries from screw to screw, N, and the moments of both ends, N mm.</summary>
internal sealed record WarmthState(double[] Forces, double First, double Last);
