using System.Collections.Generic;

namespace Waywright;

/// <summary>Brings together what the heights of a combined sweep are uncertain by.</summary>
internal static class SweepErrors
{
    public static ProfileErrors? Of(PooledSweep pooled)
    {
        if (pooled.Sweep.Setup is not { } setup)
            return null;
        var means = new StationMeans(pooled);
        var dial = setup.Indicator;
        const double factor = 1;
        var (station, degrees) = StationScatter.Of(means, dial, Repeated(pooled), factor);
        var shapes = new List<ErrorShape>();
        shapes.AddRange(GuideShapes.Of(setup, pooled.Profile));
        shapes.AddRange(DialWaves.Of(dial, pooled, means, factor));
        if (RetraceShape.Of(dial, pooled, means, factor) is { } retrace)
            shapes.Add(retrace);
        return new ProfileErrors(station, degrees, shapes);
    }

    private static (double Um, int DegreesOfFreedom)? Repeated(PooledSweep pooled)
        => pooled.RepeatabilityUm is { } s ? (s, pooled.DegreesOfFreedom) : null;
}
