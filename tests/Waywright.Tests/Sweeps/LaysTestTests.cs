namespace Waywright.Tests;

public class LaysTestTests
{
    private static readonly double[] Parabola = [.. Simulated.Stations.Select(x => 1 - Math.Pow((x - 160) / 160, 2))];

    [Fact]
    public void One_lay_shows_repeatability_only()
    {
        Assert.StartsWith("Repeatability only", Batch(0, 1, 0, "AA").Lays.Verdict);
        Assert.StartsWith("Nothing was repeated", Batch(0, 1, 0, "A").Lays.Verdict);
        Assert.False(Batch(0, 1, 0, "AA").Lays.IsSignificant);
    }

    [Theory]
    [InlineData("AABB")]
    [InlineData("ABC")]
    public void Lays_that_differ_by_scatter_alone_are_told_apart_in_five_percent_of_batches(string lays)
    {
        const int batches = 2000;
        var alarms = Enumerable.Range(0, batches).Count(t => Batch(t, 2, 0, lays).Lays.IsSignificant);
        // Binomial, 4 standard deviations about 0.05.
        Assert.InRange((double)alarms / batches, 0.05 - 0.0195, 0.05 + 0.0195);
    }

    // Coarse steps: passes of one lay repeat the same rounding, the next lay, a little higher and steeper, rounds otherwise.
    [Theory]
    [InlineData(0)]
    [InlineData(0.2)]
    [InlineData(0.7)]
    [InlineData(1.5)]
    [InlineData(4)]
    public void Rounding_is_not_taken_for_a_bow_between_lays(double sigma)
    {
        const int batches = 2000;
        const double step = 10;
        var setup = Simulated.Setup(division: step);
        var alarms = Enumerable.Range(0, batches).Count(trial => Simulated.Sweep(setup, RailFace.Side, [.. "AAABBB".Select((lay, k) =>
        {
            var line = Simulated.Noise(trial, 100 + lay, 20);
            return ($"{lay}", "forward", Simulated.Noise(trial, k, sigma).Select((e, i) => step * Math.Round((e + line[0] + (line[1] * Simulated.Stations[i] / 320) + (20 * Parabola[i])) / step)).ToArray());
        })]).Pool().Lays.IsSignificant);
        // Binomial, 4 standard deviations above 0.05.
        Assert.InRange((double)alarms / batches, 0, 0.05 + 0.0195);
    }

    [Fact]
    public void A_bow_between_lays_is_found_with_its_size_and_becomes_an_input_that_falls_with_lays()
    {
        double squares = 0, within = 0;
        const int batches = 200;
        for (var trial = 0; trial < batches; trial++)
        {
            var pooled = Batch(trial, 1, 10, "AABBCCDDEEFF");
            Assert.True(pooled.Lays.IsSignificant);
            squares += pooled.Lays.ExtraUm * pooled.Lays.ExtraUm / batches;
            within += pooled.Lays.WithinUm!.Value / batches;
            var shape = pooled.Errors!.Shapes.Single(s => s.Input == "R side: bow between lays");
            Assert.Equal(pooled.Lays.ExtraUm / Math.Sqrt(6), shape.HeightsUm[8], 1e-9);
            Assert.Equal((5, AveragesOut.Relaying, false), (shape.DegreesOfFreedom, shape.AveragesOut, shape.IsRectangular));
            Assert.All(pooled.Errors.StationUm, u => Assert.Equal(pooled.Lays.WithinUm.Value / Math.Sqrt(12), u, 1e-9));
        }

        // The variance of 10 um bows from 200 batches of 5 degrees of freedom: 4.5 % standard deviation.
        Assert.InRange(squares, 100 * 0.82, 100 * 1.18);
        Assert.InRange(within, 0.97, 1.03);
    }

    [Fact]
    public void Each_lays_bow_is_given_crowned_positive()
    {
        var setup = Simulated.Setup();
        (string, string, double[])[] passes = [("A", "forward", Bowed(10)), ("A", "back", Bowed(10)), ("B", "forward", Bowed(16)), ("B", "back", Bowed(16))];
        var lays = Simulated.Sweep(setup, RailFace.Side, passes).Pool().Lays;
        Assert.Equal(["A", "B"], lays.Lays);
        Assert.Equal([10, 16], lays.BowUm.Select(b => Math.Round(b, 6)));
        // Bows of 10 and 16: standard deviation 6 / sqrt 2; what rounding to 1 um may add is taken off.
        Assert.InRange(lays.ExtraUm, 4.1, 6 / Math.Sqrt(2));
        Assert.True(double.IsFinite(lays.F!.Value));
    }

    [Fact]
    public void Unequal_passes_give_the_F_of_the_two_models_residuals()
    {
        // Oracle: both models by dense least squares over all readings, no shortcut.
        var setup = Simulated.Setup();
        var full = Simulated.Stations;
        (string Lay, int From, int To)[] spans = [("A", 0, 17), ("A", 3, 15), ("B", 0, 12), ("C", 4, 17), ("C", 2, 17)];
        var passes = spans.Select((s, k) => new SweepPass($"{k}", "forward", s.Lay, full[s.From..s.To], [.. Simulated.Noise(k, 0, 3)[s.From..s.To]])).ToArray();
        var pooled = new Sweep("R", RailFace.Side, "bench", setup, passes, "test").Pool();
        var without = Residual([]);
        var with = Residual(["B", "C"]);
        Assert.Equal((without - with) / 2 / (with / pooled.Lays.DegreesWithin), pooled.Lays.F!.Value, 1e-8);
        Assert.Equal(without, pooled.RepeatabilityUm!.Value * pooled.RepeatabilityUm.Value * pooled.DegreesOfFreedom, 1e-8);

        double Residual(string[] parabolas)
        {
            var rows = passes.SelectMany((p, k) => p.PositionsMm.Select((x, i) => (Pass: k, p.Lay, X: (x - 160) / 160, Z: p.ReadingsUm[i], Station: Array.IndexOf(full, x)))).ToArray();
            var columns = 17 + (2 * (passes.Length - 1)) + parabolas.Length;
            var design = MathNet.Numerics.LinearAlgebra.Matrix<double>.Build.Dense(rows.Length, columns, (r, c) => c < 17 ? (rows[r].Station == c ? 1 : 0)
                : c < 17 + (2 * (passes.Length - 1)) ? (rows[r].Pass == 1 + ((c - 17) / 2) ? ((c - 17) % 2 == 0 ? 1 : rows[r].X) : 0)
                : rows[r].Lay == parabolas[c - 17 - (2 * (passes.Length - 1))] ? rows[r].X * rows[r].X : 0);
            var z = MathNet.Numerics.LinearAlgebra.Vector<double>.Build.Dense(rows.Length, r => rows[r].Z);
            var left = z - (design * design.Svd().Solve(z));
            return left * left;
        }
    }

    [Theory]
    [InlineData(0)]
    [InlineData(0.5)]
    public void The_lag_1_correlation_is_that_of_the_scatter(double rho)
    {
        double sum = 0;
        const int batches = 400;
        for (var trial = 0; trial < batches; trial++)
        {
            var passes = Enumerable.Range(0, 4).Select(k => ("A", "forward", Correlated(Simulated.Noise(trial, k, 1)))).ToArray();
            sum += Simulated.Sweep(Simulated.Setup(), RailFace.Side, passes).Pool().Lag1!.Value / batches;
        }

        // Independent scatter: 0 within 4 standard errors (0.16 / 20); correlated scatter: part of it is taken for lines, so less than the truth.
        Assert.InRange(sum, rho == 0 ? -0.032 : 0.3, rho == 0 ? 0.032 : 0.5);

        double[] Correlated(double[] white)
        {
            for (var i = 1; i < white.Length; i++)
                white[i] = (rho * white[i - 1]) + (Math.Sqrt(1 - (rho * rho)) * white[i]);
            return white;
        }
    }

    [Fact]
    public void Nothing_repeated_has_no_lag_1_correlation()
    {
        Assert.Null(Batch(0, 1, 0, "A").Lag1);
        Assert.Null(Simulated.Sweep(Simulated.Setup(), RailFace.Side, ("A", "forward", new double[17]), ("A", "back", new double[17])).Pool().Lag1);
    }

    private static double[] Bowed(double um) => [.. Parabola.Select(p => um * p)];

    // Scatter within a pass, a bow for each lay.
    private static PooledSweep Batch(int trial, double sigma, double bow, string lays)
        => Simulated.Sweep(Simulated.Setup(), RailFace.Side, [.. lays.Select((lay, k) =>
        {
            var size = Simulated.Noise(trial, 500, bow)[lay - 'A'];
            return ($"{lay}", k % 2 == 0 ? "forward" : "back", Simulated.Noise(trial, k, sigma).Select((e, i) => e + (size * Parabola[i])).ToArray());
        })]).Pool();
}
