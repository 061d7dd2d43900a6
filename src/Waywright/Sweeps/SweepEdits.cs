using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>Copies of sweeps with some readings changed: for the cleaning steps.</summary>
internal static class SweepEdits
{
    /// <summary>What a person calls a pass, its lay included.</summary>
    public static string NameOf(SweepPass pass) => pass.Lay.Length == 0 ? pass.ToString() : $"{pass}, lay {pass.Lay}";

    public static CleanedReading Reading(Sweep sweep, int pass, int index, double? after, string why)
        => new(sweep.Rail, sweep.Face, NameOf(sweep.Passes[pass]), sweep.Passes[pass].PositionsMm[index], sweep.Passes[pass].ReadingsUm[index], after, why);

    public static Sweep WithReadings(Sweep sweep, int pass, double[] readings)
        => With(sweep, pass, sweep.Passes[pass] with { ReadingsUm = FixedList<double>.Own(readings) });

    /// <summary>Without one reading.</summary>
    public static Sweep Without(Sweep sweep, int pass, int index)
    {
        var old = sweep.Passes[pass];
        return With(sweep, pass, old with { PositionsMm = FixedList<double>.Copy(old.PositionsMm.Where((_, i) => i != index)), ReadingsUm = FixedList<double>.Copy(old.ReadingsUm.Where((_, i) => i != index)) });
    }

    private static Sweep With(Sweep sweep, int pass, SweepPass changed)
        => sweep with { Passes = FixedList<SweepPass>.Copy(sweep.Passes.Select((p, k) => k == pass ? changed : p)) };

    /// <summary>Heights less their least-squares line: over fewer than two different positions less their mean.</summary>
    public static double[] Level(IReadOnlyList<double> x, IReadOnlyList<double> z) => Level(x, z, out _);

    /// <param name="x">mm.</param>
    /// <param name="z">um.</param>
    /// <param name="slope">Of the line, um/mm.</param>
    public static double[] Level(IReadOnlyList<double> x, IReadOnlyList<double> z, out double slope)
    {
        double meanX = x.Average(), meanZ = z.Average(), sxx = 0, sxz = 0;
        for (var i = 0; i < x.Count; i++)
        {
            sxx += (x[i] - meanX) * (x[i] - meanX);
            sxz += (x[i] - meanX) * (z[i] - meanZ);
        }

        var b = sxx > 0 ? sxz / sxx : 0;
        slope = b;
        return [.. x.Select((at, i) => z[i] - meanZ - (b * (at - meanX)))];
    }
}
