using System;
using System.Linq;
using MathNet.Numerics.LinearAlgebra;

namespace Waywright;

/// <summary>
/// How far a face may be off the natural spline through its stations. That spline is the mean of a bar whose curvature is white noise and which was read at the
/// stations (Kimeldorf and Wahba, Ann. Math. Statist. 41 (1970) 495-502; Wahba, J. R. Stat. Soc. B 40 (1978) 364-372; both from memory); off the stations it then
/// varies as an elastic bar gives way that is held at them, sigma² G. sigma² is the bending of the spline, less what errors alone bend, over n - 2.
/// </summary>
internal sealed class StationRoughness
{
    private readonly double[] _x;
    private readonly int[] _of;
    private readonly double[] _share;

    /// <param name="positions">Of the stations, rising; a station may be there more than once.</param>
    public StationRoughness(double[] positions)
    {
        _x = [.. positions.Distinct()];
        _of = Array.ConvertAll(positions, p => Array.BinarySearch(_x, p));
        var times = new int[_x.Length];
        foreach (var i in _of)
            times[i]++;
        _share = Array.ConvertAll(_of, i => 1.0 / times[i]);
    }

    /// <summary>How well sigma is known.</summary>
    public double DegreesOfFreedom => Math.Max(1, _x.Length - 2);

    /// <summary>Stations at different positions.</summary>
    public double[] Knots => _x;

    /// <summary>Readings of one station averaged.</summary>
    public double[] AtKnots(ReadOnlySpan<double> heights)
    {
        var means = new double[_x.Length];
        for (var i = 0; i < _of.Length; i++)
            means[_of[i]] += _share[i] * heights[i];
        return means;
    }

    /// <summary>sigma, um per mm to the power 1.5; 0 where errors alone bend the spline as much.</summary>
    public double Sigma(ReadOnlySpan<double> heights, ProfileErrors? errors)
    {
        if (_x.Length < 3)
            return 0;
        var bending = Bending(heights);
        var unit = new double[_of.Length];
        for (var i = 0; errors is not null && i < unit.Length; i++)
        {
            unit[i] = errors.Station[i];
            bending -= Bending(unit);
            unit[i] = 0;
        }

        foreach (var shape in errors?.Shapes ?? [])
            bending -= Bending(shape.Heights);
        return Math.Sqrt(Math.Max(0, bending) / DegreesOfFreedom);
    }

    /// <summary>Independent shapes of the face at places off the stations for sigma = 1: their squares add up to G.</summary>
    /// <param name="places">All places, the stations among them, rising.</param>
    public double[][] Modes(double[] places)
    {
        int[] off = [.. Enumerable.Range(0, places.Length).Where(i => !_x.Any(x => Math.Abs(x - places[i]) < MountedMap.ClosestMm))];
        if (off.Length == 0)
            return [];
        // Forces that it takes to move one place and no other; the inverse is how the bar gives way.
        var stiffness = Matrix<double>.Build.Dense(off.Length, off.Length);
        var (unit, room) = (new double[places.Length], new double[2 * places.Length]);
        for (var j = 0; j < off.Length; j++)
        {
            unit[off[j]] = 1;
            var spline = new NaturalSpline(places, unit, room);
            for (var i = 0; i < off.Length; i++)
                stiffness[i, j] = spline.Jump(off[i]);
            unit[off[j]] = 0;
        }

        var roots = ((stiffness + stiffness.Transpose()) / 2).Cholesky().Factor.Transpose().Inverse();
        return [.. Enumerable.Range(0, off.Length).Select(k =>
        {
            var mode = new double[places.Length];
            for (var i = 0; i < off.Length; i++)
                mode[off[i]] = roots[i, k];
            return mode;
        })];
    }

    // The integral of curvature squared: work of the forces that hold the bar at the heights.
    private double Bending(ReadOnlySpan<double> heights)
    {
        var knots = AtKnots(heights);
        var spline = new NaturalSpline(_x, knots, new double[2 * _x.Length]);
        var work = 0.0;
        for (var k = 0; k < knots.Length; k++)
            work += knots[k] * spline.Jump(k);
        return work;
    }
}
