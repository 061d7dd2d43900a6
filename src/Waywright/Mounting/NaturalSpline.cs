using System;

namespace Waywright;

/// <summary>
/// The natural cubic spline: what a straight elastic bar does that is held at heights y(i) at x(i) and free elsewhere. Curvature is zero at the end knots and
/// beyond them, where it goes on straight. A <see cref="SupportedBeam"/> without weight is the same; this one writes into room that is given to it and
/// runs along a rising grid in one go, because the search for contacts asks for thousands of them.
/// </summary>
internal readonly ref struct NaturalSpline
{
    private readonly ReadOnlySpan<double> _x;
    private readonly ReadOnlySpan<double> _y;
    private readonly Span<double> _curvature;

    /// <param name="x">Knots, strictly rising, at least two.</param>
    /// <param name="y">Heights at the knots.</param>
    /// <param name="room">Two doubles for each knot, kept as long as the spline is used.</param>
    public NaturalSpline(ReadOnlySpan<double> x, ReadOnlySpan<double> y, Span<double> room)
    {
        var n = x.Length;
        _x = x;
        _y = y;
        _curvature = room[..n];
        var above = room[n..(2 * n)];
        (_curvature[0], _curvature[n - 1], above[0]) = (0, 0, 0);
        // Clapeyron: l c(i-1) + 2 (l + r) c(i) + r c(i+1) = 6 (slope right - slope left); dominant diagonal, so no pivots.
        for (var i = 1; i < n - 1; i++)
        {
            var (l, r) = (x[i] - x[i - 1], x[i + 1] - x[i]);
            var pivot = (2 * (l + r)) - (l * above[i - 1]);
            above[i] = r / pivot;
            _curvature[i] = ((6 * (((y[i + 1] - y[i]) / r) - ((y[i] - y[i - 1]) / l))) - (l * _curvature[i - 1])) / pivot;
        }

        for (var i = n - 2; i > 0; i--)
            _curvature[i] -= above[i] * _curvature[i + 1];
    }

    /// <summary>By how much the third derivative rises at a knot: the force there is EI times it.</summary>
    public double Jump(int knot)
    {
        var right = knot < _x.Length - 1 ? (_curvature[knot + 1] - _curvature[knot]) / (_x[knot + 1] - _x[knot]) : 0;
        var left = knot > 0 ? (_curvature[knot] - _curvature[knot - 1]) / (_x[knot] - _x[knot - 1]) : 0;
        return right - left;
    }

    /// <summary>Height at one place.</summary>
    public double At(double x)
    {
        Span<double> height = stackalloc double[1];
        Along([x], height);
        return height[0];
    }

    /// <summary>Heights at places that rise.</summary>
    public void Along(ReadOnlySpan<double> places, Span<double> heights)
    {
        var last = _x.Length - 1;
        var left = 0;
        var (first, end) = (_x[0], _x[last]);
        var (slopeFirst, slopeEnd) = (SlopeAt(0, 1), SlopeAt(last, last - 1));
        for (var i = 0; i < places.Length; i++)
        {
            var place = places[i];
            if (place <= first)
            {
                heights[i] = _y[0] + (slopeFirst * (place - first));
                continue;
            }

            if (place >= end)
            {
                heights[i] = _y[last] + (slopeEnd * (place - end));
                continue;
            }

            while (place > _x[left + 1])
                left++;
            var h = _x[left + 1] - _x[left];
            var (t, u) = (place - _x[left], _x[left + 1] - place);
            heights[i] = (((_y[left] * u) + (_y[left + 1] * t)) / h) - (t * u * ((_curvature[left] * (h + u)) + (_curvature[left + 1] * (h + t))) / (6 * h));
        }
    }

    // At an end the bending moment is zero, so only the neighbour's enters.
    private double SlopeAt(int end, int near)
    {
        var h = _x[near] - _x[end];
        return ((_y[near] - _y[end]) / h) - (h * _curvature[near] / 6);
    }
}
