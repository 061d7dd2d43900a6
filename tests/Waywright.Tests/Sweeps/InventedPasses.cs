namespace Waywright.Tests;

/// <summary>Invented passes over a rail with a known shape: 14 stations of the museum's 320 mm rails.</summary>
internal static class InventedPasses
{
    public static readonly double[] Stations = [4, .. Enumerable.Range(0, 12).Select(i => 22.5 + (25 * i)), 316];

    public static double Bow(double x, double um = 30) => um * x * (320 - x) / 25_600;

    public static double Gauss(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());

    /// <summary>Passes of one shape, each with its own height and tilt and noise; every second one on the way back.</summary>
    public static Sweep Sweep(int passes, double noise, int seed, Func<double, double>? shape = null, double[]? stations = null, double step = 0)
    {
        var random = new Random(seed);
        var x = stations ?? Stations;
        return Of([.. Enumerable.Range(0, passes).Select(_ =>
        {
            var (height, tilt) = (50 * random.NextDouble(), 0.2 * (random.NextDouble() - 0.5));
            return x.Select(at => Rounded((shape ?? (p => Bow(p)))(at) + height + (tilt * at) + (noise * Gauss(random)), step)).ToArray();
        })], x);
    }

    public static Sweep Of(double[][] readings, double[]? stations = null)
        => new("R01", RailFace.Side, null, null, FixedList<SweepPass>.Copy(readings.Select((z, k) => new SweepPass($"{k + 1}", k % 2 == 0 ? "forward" : "back", "", FixedList<double>.Copy(stations ?? Stations), FixedList<double>.Copy(z)))), "sweeps.csv");

    public static SweepBatch Batch(params Sweep[] sweeps) => new("sweeps.csv", sweeps, "test");

    public static Sweep With(this Sweep sweep, int pass, Func<double, double, double> reading)
        => sweep with { Passes = FixedList<SweepPass>.Copy(sweep.Passes.Select((p, k) => k == pass ? p with { ReadingsUm = FixedList<double>.Copy(p.PositionsMm.Zip(p.ReadingsUm, reading)) } : p)) };

    private static double Rounded(double z, double step) => step == 0 ? z : Math.Round(z / step) * step;
}
