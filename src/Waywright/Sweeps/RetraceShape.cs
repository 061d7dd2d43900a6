using System;
using System.Linq;

namespace Waywright;

/// <summary>
/// The dial's play: its pointer lags behind the plunger by up to half the retrace, e_i = clamp(e_i-1 - (r_i - r_i-1), -R/2, R/2) in the order of reading. While the plunger keeps
/// moving one way that is a constant, which straightness does not see, and it changes sign where the plunger turns round: at the top of a bow. A sweep back turns the signs, so
/// passes forward and back together average it out; passes all one way share it, however many.
/// </summary>
internal static class RetraceShape
{
    // A shape that is flat to this is a constant.
    private const double FlatUm = 1e-9;

    public static ErrorShape? Of(Instrument dial, PooledSweep pooled, StationMeans means, double factor)
    {
        if (dial.Retrace <= 0)
            return null;
        var lag = means.Of(k => Lag(pooled.Sweep.Passes[k], dial.Retrace / 2));
        if (lag.Max() - lag.Min() < FlatUm)
            return null;
        return new ErrorShape(
            $"dial {dial.Name}: retrace",
            Array.ConvertAll(lag, e => factor * e / Math.Sqrt(3)),
            double.PositiveInfinity,
            IsRectangular: true,
            AveragesOut.Nothing,
            "sweep forward and back, and pool both");
    }

    // It starts as the first move of the plunger would leave it.
    private static double[] Lag(SweepPass pass, double half)
    {
        var count = pass.ReadingsUm.Count;
        var order = pass.Direction == "back" ? Enumerable.Range(0, count).Reverse().ToArray() : [.. Enumerable.Range(0, count)];
        var lag = new double[count];
        var first = order.Select(i => pass.ReadingsUm[i] - pass.ReadingsUm[order[0]]).FirstOrDefault(move => move != 0);
        var held = -Math.Sign(first) * half;
        var before = pass.ReadingsUm[order[0]];
        foreach (var i in order)
        {
            held = Math.Clamp(held - (pass.ReadingsUm[i] - before), -half, half);
            before = pass.ReadingsUm[i];
            lag[i] = held;
        }

        return lag;
    }
}
