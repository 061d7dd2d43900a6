namespace Waywright.Tests.Straightness;

/// <summary>Invented profiles with errors, from a seed.</summary>
internal static class Sweeps
{
    public static double[] Positions(int stations, double step = 25) => [.. Enumerable.Range(0, stations).Select(i => step * i)];

    public static double[] Bow(int stations, double um) => [.. Enumerable.Range(0, stations).Select(i => i / (stations - 1.0)).Select(u => 4 * um * u * (1 - u))];

    public static Profile Noisy(double[] truth, double sigma, int seed)
    {
        var random = new Random(seed);
        return new Profile(Positions(truth.Length), [.. truth.Select(z => z + (sigma * Gaussian(random)))]);
    }

    public static ProfileErrors Even(int stations, double sigma, double degreesOfFreedom = double.PositiveInfinity, params ErrorShape[] shapes)
        => new([.. Enumerable.Repeat(sigma, stations)], degreesOfFreedom, shapes);

    public static ErrorShape SharedBow(int stations, double um) => new("bow of the guide", Bow(stations, um), double.PositiveInfinity, false, AveragesOut.Nothing, "reverse the guide");

    public static double Gaussian(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
