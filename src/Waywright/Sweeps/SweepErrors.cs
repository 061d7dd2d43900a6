using System;
using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>Brings together what the heights of a combined sweep are uncertain by.</summary>
internal static class SweepErrors
{
    public static ProfileErrors? Of(PooledSweep pooled)
    {
        if (pooled.Sweep.Setup is not { } setup)
            return null;
        var means = pooled.Means;
        var dial = setup.Indicator;
        var factor = SweepCorrections.LeverFactor(setup);
        var (s, degrees) = Scatter(pooled, dial, factor);
        var (station, degreesOfFreedom) = StationScatter.Of(means, factor * dial.ReadingStep, s, degrees, pooled.RepeatabilityUm is not null);
        var shapes = new List<ErrorShape>();
        shapes.AddRange(GuideShapes.Of(setup, pooled.Profile));
        shapes.AddRange(DialWaves.Of(dial, pooled, means, factor));
        shapes.AddRange(new[] { RetraceShape.Of(dial, pooled, means, factor), LayBows.Shape(pooled), Stiffness(pooled, setup), LeverAngle(pooled, setup) }.OfType<ErrorShape>());
        return new ProfileErrors(station, degreesOfFreedom, shapes);
    }

    // What lays differ by is an input of its own, so scatter is then what is left within them.
    private static (double Um, double DegreesOfFreedom) Scatter(PooledSweep pooled, Instrument dial, double factor)
        => pooled.Lays is { WithinUm: { } within } lays && (pooled.BatchLays is { Um: > 0 } || (pooled.BatchLays is null && lays.IsSignificant)) ? (within, lays.DegreesWithin)
            : pooled.RepeatabilityUm is { } s ? (factor * s, pooled.DegreesOfFreedom)
            : (factor * dial.Repeatability, dial.RepeatabilityDegreesOfFreedom);

    // A stiffness off by 1 % is a bending off by 1 %.
    private static ErrorShape? Stiffness(PooledSweep pooled, Setup setup)
    {
        var bending = pooled.Corrections.Where(c => c.Name is SweepCorrections.SelfWeight or SweepCorrections.MeasuringForce).ToArray();
        return setup.Rail is { StiffnessUPercent: > 0 and { } percent } && bending.Length > 0
            ? Known($"set-up {setup.Id}: bending stiffness of the rail", pooled, i => -percent / 100 * bending.Sum(c => c.HeightsUm[i]), "hang a known mass at the middle and measure how far the rail bends")
            : null;
    }

    // d cos(a) = -tan(a) cos(a) da.
    private static ErrorShape? LeverAngle(PooledSweep pooled, Setup setup)
        => setup is { LeverAngleDeg: { } angle, LeverAngleUDeg: > 0 and { } u }
            ? Known($"set-up {setup.Id}: lever angle", pooled, i => -Math.Tan(angle * Math.PI / 180) * u * Math.PI / 180 * pooled.Uncorrected.HeightsUm[i] * SweepCorrections.LeverFactor(setup), "set the lever along the surface")
            : null;

    private static ErrorShape Known(string input, PooledSweep pooled, Func<int, double> height, string remedy)
        => new(input, [.. Enumerable.Range(0, pooled.Profile.Count).Select(height)], double.PositiveInfinity, IsRectangular: false, AveragesOut.Nothing, remedy);
}
