using System;
using System.Collections.Generic;
using System.Linq;
using MathNet.Numerics.LinearAlgebra;

namespace Waywright;

/// <summary>What the difference of a mounted sweep from its prediction is uncertain by.</summary>
internal sealed class MountedCheckErrors(MountedShape predicted, Profile swept, ProfileErrors sweptErrors, ProfileErrors? freeErrors, ProfileErrors? baseErrors)
{
    private readonly double[] _at = [.. swept.PositionsMm];

    private readonly double[] _knots = Knots(predicted);

    /// <summary>The fewest of all parts.</summary>
    public double DegreesOfFreedom => new[] { sweptErrors, freeErrors, baseErrors }.OfType<ProfileErrors>().Min(e => e.StationDegreesOfFreedom);

    private double Share => 1 / (1 + predicted.StiffnessRatio);

    /// <summary>Screws and contacts, mm, rising.</summary>
    public static double[] Knots(MountedShape shape) => [.. shape.Screws.ScrewsMm.Concat(shape.ContactsMm).Order()];

    /// <summary>V, um2.</summary>
    public Matrix<double> Covariance()
    {
        var n = _at.Length;
        var v = Matrix<double>.Build.Dense(n, n, (i, k) => i == k ? sweptErrors.StationUm[i] * sweptErrors.StationUm[i] : 0);
        var shapes = sweptErrors.Shapes.Select(s => (s.Input, Heights: s.HeightsUm.ToArray()));
        if (freeErrors is not null)
        {
            Scatter(v, freeErrors, e => OfFree(predicted.Free, e));
            shapes = shapes.Concat(freeErrors.Shapes.Select(s => (s.Input, Array.ConvertAll(OfFree(predicted.Free, s.HeightsUm), h => -h))));
        }

        if (baseErrors is not null)
        {
            Scatter(v, baseErrors, e => OfBase(predicted.Base!, e));
            shapes = shapes.Concat(baseErrors.Shapes.Select(s => (s.Input, Array.ConvertAll(OfBase(predicted.Base!, s.HeightsUm), h => -h))));
        }

        // One name is one input: what it does to sweep and prediction counts together.
        foreach (var input in shapes.GroupBy(s => s.Input, s => s.Heights))
        {
            var whole = Vector<double>.Build.Dense(n, i => input.Sum(h => h[i]));
            v += whole.OuterProduct(whole);
        }

        return v;
    }

    private static void Scatter(Matrix<double> v, ProfileErrors errors, Func<IReadOnlyList<double>, double[]> map)
    {
        for (var station = 0; station < errors.StationUm.Count; station++)
        {
            var unit = new double[errors.StationUm.Count];
            unit[station] = errors.StationUm[station];
            var effect = Vector<double>.Build.Dense(map(unit));
            effect.OuterProduct(effect).Add(v, v);
        }
    }

    // z = f - r S (f - g), knots as they were found.
    private double[] OfFree(Profile free, IReadOnlyList<double> error)
    {
        var curve = new StationCurve(new Profile(free.PositionsMm, error));
        var (here, pinned) = (new double[_at.Length], Pinned(curve));
        curve.Along(_at, here);
        return [.. here.Zip(pinned, (f, s) => f - (Share * s))];
    }

    private double[] OfBase(Profile under, IReadOnlyList<double> error)
        => Array.ConvertAll(Pinned(new StationCurve(new Profile(under.PositionsMm, error))), s => Share * s);

    private double[] Pinned(StationCurve curve)
    {
        var (held, along) = (new double[_knots.Length], new double[_at.Length]);
        curve.Along(_knots, held);
        new NaturalSpline(_knots, held, new double[2 * _knots.Length]).Along(_at, along);
        return along;
    }
}
