namespace Waywright.Tests.Straightness;

/// <summary>Invented profiles from a seed: unequal stations, bows, waves, noise, tilts; with ties and repeated stations in turn.</summary>
internal static class RandomSweeps
{
    public static IEnumerable<Profile> Some(int count, int seed)
    {
        var random = new Random(seed);
        for (var i = 0; i < count; i++)
            yield return One(random, i);
    }

    private static Profile One(Random random, int kind)
    {
        var n = kind % 10 == 0 ? random.Next(2, 6) : random.Next(2, 401);
        var (bow, wave, noise, tilt) = (random.NextDouble() * 50, random.NextDouble() * 10, random.NextDouble() * 3, (random.NextDouble() - 0.5) * 200);
        var stations = Enumerable.Range(0, n).Select(_ => random.NextDouble() * 350).ToArray();
        // Whole positions are often repeated, whole readings often tie.
        if (kind % 4 >= 2)
            stations = Array.ConvertAll(stations, x => Math.Round(x / 5) * 5);
        (stations[0], stations[^1]) = (0, 350);
        var heights = Array.ConvertAll(stations, x => (bow * x * (350 - x) / 30_625) + (wave * Math.Sin(x / 10)) + (tilt * x / 350) + (noise * Gaussian(random)));
        if (kind % 2 == 1)
            heights = Array.ConvertAll(heights, Math.Round);
        return new Profile(stations, heights);
    }

    private static double Gaussian(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
