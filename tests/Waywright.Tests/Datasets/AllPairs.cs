namespace Waywright.Tests.Datasets;

/// <summary>Straightness by the slowest plain route, to hold against the data's own figures: nothing of the library is used.</summary>
static class AllPairs
{
    /// <summary>The best of the zones whose slope is that of a pair of stations: one edge of the minimum zone holds two of them (ISO 12780-1).</summary>
    public static double MinimumZone(IReadOnlyList<double> x, IReadOnlyList<double> z)
    {
        var least = double.PositiveInfinity;
        for (var i = 0; i < x.Count; i++)
            for (var j = i + 1; j < x.Count; j++)
                least = Math.Min(least, Range(Deviations(x, z, (z[j] - z[i]) / (x[j] - x[i]), 0)));
        return least;
    }

    /// <summary>The widest minimum zone of the stations within <paramref name="window"/> of one another, four or more.</summary>
    public static double Local(IReadOnlyList<double> x, IReadOnlyList<double> z, double window)
    {
        var widest = 0.0;
        for (var first = 0; first < x.Count; first++)
        {
            var inside = Enumerable.Range(first, x.Count - first).Where(i => x[i] - x[first] <= window).ToArray();
            if (inside.Length >= 4)
                widest = Math.Max(widest, MinimumZone([.. inside.Select(i => x[i])], [.. inside.Select(i => z[i])]));
        }

        return widest;
    }

    /// <summary>Slope and height at zero of the least-squares line, from the normal equations.</summary>
    public static (double Slope, double AtZero) LeastSquares(IReadOnlyList<double> x, IReadOnlyList<double> z)
    {
        var (meanX, meanZ) = (x.Average(), z.Average());
        var slope = x.Zip(z, (at, height) => (at - meanX) * (height - meanZ)).Sum() / x.Sum(at => (at - meanX) * (at - meanX));
        return (slope, meanZ - (slope * meanX));
    }

    public static (double Slope, double AtZero) EndPoints(IReadOnlyList<double> x, IReadOnlyList<double> z)
    {
        var slope = (z[^1] - z[0]) / (x[^1] - x[0]);
        return (slope, z[0] - (slope * x[0]));
    }

    public static double[] Deviations(IReadOnlyList<double> x, IReadOnlyList<double> z, double slope, double atZero)
        => [.. x.Zip(z, (at, height) => height - atZero - (slope * at))];

    public static double Range(IReadOnlyCollection<double> values) => values.Max() - values.Min();
}
