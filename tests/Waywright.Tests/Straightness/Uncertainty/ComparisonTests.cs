namespace Waywright.Tests.Straightness;

/// <summary>Figures as the largest of comparisons, against enumeration.</summary>
public sealed class ComparisonTests
{
    private static readonly StraightnessParameter[] Parameters = [StraightnessParameter.STRt, StraightnessParameter.STRp, StraightnessParameter.STRv, StraightnessParameter.STRq];

    public static TheoryData<string> Names => [.. Figures(new PreparedStations(Stations())).Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void Its_weights_give_the_figure_take_no_line_for_a_bend_and_are_no_wider_than_said(string name)
    {
        var stations = new PreparedStations(Stations());
        var figure = Figures(stations)[name];
        var widest = 0.0;
        for (var seed = 0; seed < 2000; seed++)
        {
            var r = stations.Residuals(Heights(seed));
            var weights = figure.Weights(r);
            Assert.Equal(figure.At(r, r).Value, Dot(weights, r), 1e-9);
            Assert.Equal(0, weights.Sum(), 1e-9);
            Assert.Equal(0, Dot(weights, Stations()), 1e-7);
            widest = Math.Max(widest, Math.Sqrt(Dot(weights, weights)));
        }

        Assert.InRange(widest, 0.9 * figure.WidestOfStations(), figure.WidestOfStations() + 1e-9);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void The_largest_comparison_of_an_error_among_those_nearly_attained_is_what_enumeration_finds(string name)
    {
        var stations = new PreparedStations(Stations());
        var figure = Figures(stations)[name];
        if (name.EndsWith("STRq", StringComparison.Ordinal))
            return;
        var sum = new double[stations.Padded];
        for (var seed = 0; seed < 60; seed++)
        {
            var (z, e) = (stations.Residuals(Heights(seed)), stations.Residuals(Heights(seed + 1000)));
            var observed = figure.At(z, z).Value;
            // No station stands above the ends: the figure is zero, and nothing but that is attained.
            if (observed < 1e-9)
                continue;
            var level = observed * (0.2 + (0.01 * seed));
            var found = RestrictedMaximum.Of(figure, e, z, figure.Weights(z), observed, level, sum);
            Assert.Equal(Enumerated(Comparisons(name, stations), e, z, level), found, 1e-5);
        }
    }

    [Theory]
    [InlineData("least squares STRq")]
    [InlineData("end points STRq")]
    public void Of_the_comparisons_of_a_root_mean_square_none_that_is_nearly_attained_gives_more_and_one_gives_as_much(string name)
    {
        var stations = new PreparedStations(Stations());
        var figure = Figures(stations)[name];
        var sum = new double[stations.Padded];
        for (var seed = 0; seed < 30; seed++)
        {
            var (z, e) = (stations.Residuals(Heights(seed)), stations.Residuals(Heights(seed + 1000)));
            var observed = figure.At(z, z).Value;
            var level = observed * (0.3 + (0.02 * seed));
            var found = RestrictedMaximum.Of(figure, e, z, figure.Weights(z), observed, level, sum);
            var most = double.NegativeInfinity;
            // The best of them lies in the plane of e and z, so mixtures of the two meet it.
            for (var step = 0; step <= 4000; step++)
            {
                for (var i = 0; i < sum.Length; i++)
                    sum[i] = e[i] + (Math.Tan(Math.PI / 2 * step / 4001) * z[i]);
                var weights = figure.Weights(sum);
                if (Dot(weights, z) >= level)
                    most = Math.Max(most, Dot(weights, e));
            }

            Assert.InRange(most, found - 0.01, found + 1e-9);
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void No_comparison_of_shapes_is_wider_than_said(string name)
    {
        var stations = new PreparedStations(Stations());
        var figure = Figures(stations)[name];
        double[][] shapes = [stations.Residuals(Heights(1)), stations.Residuals(Heights(2)), stations.Residuals(Heights(3))];
        var said = figure.WidestOfShapes(shapes);
        for (var seed = 10; seed < 1000; seed++)
        {
            var weights = figure.Weights(stations.Residuals(Heights(seed)));
            Assert.True(Math.Sqrt(shapes.Sum(s => Dot(weights, s) * Dot(weights, s))) <= said + 1e-9);
        }
    }

    private static Dictionary<string, HeightFigure> Figures(PreparedStations stations)
    {
        var figures = new Dictionary<string, HeightFigure> { ["zone STRt"] = new ZoneFigure(stations) };
        foreach (var parameter in Parameters)
        {
            figures[$"least squares {parameter}"] = new LeastSquaresFigure(stations, parameter);
            figures[$"end points {parameter}"] = new EndPointFigure(stations, parameter);
        }

        return figures;
    }

    // The whole list of comparisons: pairs or singles of residuals, or three stations of a zone.
    private static List<double[]> Comparisons(string name, PreparedStations stations)
    {
        var n = stations.Count;
        var x = Stations();
        if (name == "zone STRt")
        {
            var triples = new List<double[]>();
            for (var i = 0; i < n; i++)
            {
                for (var j = i + 1; j < n; j++)
                {
                    for (var k = j + 1; k < n; k++)
                    {
                        var a = (x[k] - x[j]) / (x[k] - x[i]);
                        foreach (var sign in new[] { 1, -1 })
                        {
                            var v = new double[n];
                            (v[i], v[j], v[k]) = (-sign * a, sign, -sign * (1 - a));
                            triples.Add(v);
                        }
                    }
                }
            }

            return triples;
        }

        var rows = Enumerable.Range(0, n).Select(i => Row(i, name.StartsWith("least", StringComparison.Ordinal))).ToArray();
        if (name.EndsWith("STRp", StringComparison.Ordinal))
            return [.. rows];
        if (name.EndsWith("STRv", StringComparison.Ordinal))
            return [.. rows.Select(r => Array.ConvertAll(r, v => -v))];
        return [.. from a in rows from b in rows select a.Zip(b, (p, q) => p - q).ToArray()];

        double[] Row(int i, bool leastSquares)
        {
            var row = new double[n];
            var mean = x.Average();
            var squares = x.Sum(v => (v - mean) * (v - mean));
            for (var j = 0; j < n; j++)
            {
                var u = (x[i] - x[0]) / (x[^1] - x[0]);
                row[j] = (i == j ? 1 : 0) - (leastSquares ? (1.0 / n) + ((x[i] - mean) * (x[j] - mean) / squares) : j == 0 ? 1 - u : j == n - 1 ? u : 0);
            }

            return row;
        }
    }

    // With one condition the best mixture has at most two members.
    private static double Enumerated(List<double[]> comparisons, double[] e, double[] z, double level)
    {
        var points = comparisons.Select(v => (Along: Dot(v, z), Value: Dot(v, e))).ToArray();
        var best = double.NegativeInfinity;
        foreach (var inside in points.Where(p => p.Along >= level))
        {
            best = Math.Max(best, inside.Value);
            foreach (var (along, value) in points.Where(p => p.Along < level))
            {
                var share = (level - along) / (inside.Along - along);
                best = Math.Max(best, (share * inside.Value) + ((1 - share) * value));
            }
        }

        return best;
    }

    private static double[] Stations() => [0, 20, 45, 80, 95, 130, 150, 170, 205];

    private static double[] Heights(int seed)
    {
        var random = new Random(seed);
        var heights = Array.ConvertAll(Stations(), _ => Sweeps.Gaussian(random));
        // One in three has one or two stations that stand out.
        if (seed % 3 == 0)
        {
            heights[random.Next(9)] += 8;
            heights[random.Next(9)] -= 8 * (seed % 2);
        }

        return heights;
    }

    private static double Dot(double[] weights, double[] heights) => weights.Zip(heights, (w, h) => w * h).Sum();
}
