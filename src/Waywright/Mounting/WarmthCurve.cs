using System;
using System.Linq;

namespace Waywright;

/// <summary>A line whose curvature is a straight line from node to node, integrated twice: v'' = kappa, counted from the chord through its ends. Exact.</summary>
internal sealed class WarmthCurve
{
    private readonly double[] _nodes;
    private readonly (double From, double Rise)[] _curvatures;
    private readonly double[] _slopes;
    private readonly double[] _heights;

    /// <param name="nodes">mm, rising, from 0 to the length.</param>
    /// <param name="curvatures">For each piece between nodes its curvature at its start, 1/mm, and how that rises, 1/mm2.</param>
    public WarmthCurve(double[] nodes, (double From, double Rise)[] curvatures)
    {
        (_nodes, _curvatures) = (nodes, curvatures);
        (_slopes, _heights) = (new double[nodes.Length], new double[nodes.Length]);
        for (var i = 0; i < curvatures.Length; i++)
        {
            var h = nodes[i + 1] - nodes[i];
            _heights[i + 1] = Height(i, h);
            _slopes[i + 1] = _slopes[i] + (h * (curvatures[i].From + (curvatures[i].Rise * h / 2)));
        }

        var tilt = _heights[^1] / nodes[^1];
        for (var i = 0; i < nodes.Length; i++)
        {
            _slopes[i] -= tilt;
            _heights[i] -= tilt * nodes[i];
        }

        _heights[^1] = 0;
    }

    /// <summary>Height above the chord, mm.</summary>
    public double At(double x)
    {
        var i = Array.BinarySearch(_nodes, x);
        i = Math.Clamp(i < 0 ? ~i - 1 : i, 0, _curvatures.Length - 1);
        return x == _nodes[i + 1] ? _heights[i + 1] : Height(i, x - _nodes[i]);
    }

    /// <summary>The place and height farthest from the chord, mm: at a node, or where the slope of a piece is 0.</summary>
    public (double X, double Height) Farthest()
    {
        var far = (X: 0.0, Height: 0.0);
        for (var i = 0; i < _curvatures.Length; i++)
        {
            var length = _nodes[i + 1] - _nodes[i];
            foreach (var x in Level(i).Where(t => t > 0 && t < length).Select(t => _nodes[i] + t).Append(_nodes[i + 1]))
            {
                // A rounding must not choose between two places of one height.
                if (Math.Abs(At(x)) > Math.Abs(far.Height) * (1 + 1e-12))
                    far = (x, At(x));
            }
        }

        return far;
    }

    private double Height(int i, double t) => _heights[i] + (t * (_slopes[i] + (t * ((_curvatures[i].From / 2) + (_curvatures[i].Rise * t / 6)))));

    // Where slope + From t + Rise t2 / 2 is 0; the form of the roots that loses no digits.
    private double[] Level(int i)
    {
        var (slope, (from, rise)) = (_slopes[i], _curvatures[i]);
        var under = (from * from) - (2 * rise * slope);
        if (under < 0)
            return [];
        var q = -(from + Math.CopySign(Math.Sqrt(under), from));
        return q == 0 ? [] : rise == 0 ? [2 * slope / q] : [2 * slope / q, q / rise];
    }
}
