#pragma warning disable xUnit1051 // Runs of a second or less need no token.

namespace Waywright.Tests;

public sealed class MonteCarloTests
{
    private static readonly MonteCarloInput[] Inputs =
    [
        ("span", Distribution.Gaussian(180, 0.2)),
        ("density", Distribution.Rectangular(8, 8.2)),
        ("note", Distribution.StudentT(96, 0.5, 4)),
        MonteCarloInput.Correlated(["left", "right"], [1, 2], new[,] { { 0.04, 0.03 }, { 0.03, 0.09 } }),
    ];

    private static readonly Action<TrialBatch, Span<double>> Batches = (batch, results) =>
    {
        for (var i = 0; i < results.Length; i++)
            results[i] = Model(batch[0][i], batch[1][i], batch[2][i], batch[3][i], batch[4][i]);
    };

    [Fact]
    public void The_same_bits_come_out_on_any_number_of_threads()
    {
        // 100 003 is odd, and no multiple of a batch.
        var one = MonteCarlo.Run(Batches, Inputs, 100_003, seed: 5, mostThreads: 1);
        foreach (var threads in new[] { 2, 3, 7, -1 })
        {
            var many = MonteCarlo.Run(Batches, Inputs, 100_003, seed: 5, mostThreads: threads);
            Assert.Equal(one.Ordered.Select(BitConverter.DoubleToInt64Bits), many.Ordered.Select(BitConverter.DoubleToInt64Bits));
            Assert.Equal(one, many);
        }

        var adaptive = MonteCarlo.RunUntilStable(Batches, Inputs, 5, 2, 0.95, false, 2_000_000, mostThreads: 1);
        Assert.Equal(adaptive, MonteCarlo.RunUntilStable(Batches, Inputs, 5, 2, 0.95, false, 2_000_000, mostThreads: 3));
    }

    [Fact]
    public void A_model_of_single_trials_and_one_of_batches_get_the_same_draws()
    {
        var singly = MonteCarlo.Run(x => Model(x[0], x[1], x[2], x[3], x[4]), Inputs, 10_000, seed: 5);
        Assert.Equal(singly, MonteCarlo.Run(Batches, Inputs, 10_000, seed: 5));
        Assert.Equal(5UL, singly.Seed);
        Assert.NotEqual(singly.Mean, MonteCarlo.Run(Batches, Inputs, 10_000, seed: 6).Mean);
    }

    [Fact]
    public void Longer_runs_begin_with_the_same_trials()
    {
        var firstTen = new double[10];
        MonteCarlo.Run(Keep, Inputs, 10, seed: 5);
        var ten = (double[])firstTen.Clone();
        MonteCarlo.Run(Keep, Inputs, 5_000, seed: 5);
        Assert.Equal(ten, firstTen);

        void Keep(TrialBatch batch, Span<double> results)
        {
            Batches(batch, results);
            if (batch.FirstTrial == 0)
                results[..10].CopyTo(firstTen);
        }
    }

    [Fact]
    public void Correlated_inputs_have_their_means_and_covariances()
    {
        double[,] covariance = { { 4, 3, 0 }, { 3, 9, -1 }, { 0, -1, 1 } };
        var columns = new double[3][];
        for (var i = 0; i < 3; i++)
            columns[i] = new double[200_000];
        MonteCarlo.Run(
            (batch, results) =>
            {
                results.Clear();
                for (var i = 0; i < 3; i++)
                    batch[i].CopyTo(columns[i].AsSpan((int)batch.FirstTrial));
            },
            [MonteCarloInput.Correlated(["a", "b", "c"], [1, 2, 3], covariance)],
            200_000,
            seed: 9);
        for (var i = 0; i < 3; i++)
        {
            Assert.Equal(i + 1, columns[i].Average(), 4 * Math.Sqrt(covariance[i, i] / 200_000));
            for (var k = 0; k < 3; k++)
            {
                var sample = columns[i].Zip(columns[k], (x, y) => (x - (i + 1)) * (y - (k + 1))).Average();
                var error = Math.Sqrt(((covariance[i, i] * covariance[k, k]) + (covariance[i, k] * covariance[i, k])) / 200_000);
                Assert.Equal(covariance[i, k], sample, 4 * error);
            }
        }
    }

    [Fact]
    public void Fully_correlated_inputs_are_one()
    {
        var inputs = MonteCarloInput.Correlated(["a", "b", "c"], [0, 0, 5], new double[,] { { 1, -2, 0 }, { -2, 4, 0 }, { 0, 0, 0 } });
        var result = MonteCarlo.Run(x => (2 * x[0]) + x[1] + x[2], [inputs], 1000, seed: 1);
        Assert.Equal(5, result.Mean, 1e-12);
        Assert.Equal(0, result.StandardUncertainty, 1e-12);
    }

    [Fact]
    public void Impossible_covariances_are_refused_with_all_that_is_wrong()
    {
        var several = Assert.Throws<ArgumentException>(() => MonteCarloInput.Correlated(["a", "b", "c"], [0, 0, 0], new double[,] { { 1, 2, 0.5 }, { 2, 1, 0 }, { 0.4, 0, 1 } }));
        Assert.Contains("'b' and 'a' would have the correlation 2: correlations lie between -1 and 1.", several.Message, StringComparison.Ordinal);
        Assert.Contains("'c' and 'a' stands twice, as 0.4 and as 0.5.", several.Message, StringComparison.Ordinal);
        var negative = Assert.Throws<ArgumentException>(() => MonteCarloInput.Correlated(["a", "b"], [0, 0], new double[,] { { -1, 0 }, { 0, double.NaN } }));
        Assert.Contains("The variance of 'a' is -1", negative.Message, StringComparison.Ordinal);
        Assert.Contains("The covariance of 'b' and 'b' is not a finite number.", negative.Message, StringComparison.Ordinal);
        // Each pair is possible, the three together are not: eigenvalues 1.9, 1.9 and -0.8.
        var indefinite = Assert.Throws<ArgumentException>(() => MonteCarloInput.Correlated(["a", "b", "c"], [0, 0, 0], new[,] { { 1, 0.9, 0.9 }, { 0.9, 1, -0.9 }, { 0.9, -0.9, 1 } }));
        Assert.Contains("not positive semidefinite: 'c'", indefinite.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => MonteCarloInput.Correlated(["a", "b"], [0, 0], new double[,] { { 0, 1 }, { 1, 4 } }));
        Assert.Throws<ArgumentException>(() => MonteCarloInput.Correlated(["a", "b"], [0, 0], new double[,] { { 1 } }));
        Assert.Throws<ArgumentException>(() => MonteCarloInput.Correlated(["a"], [0, 0], new double[,] { { 1 } }));
        // A zero pivot with something beside it: correlation 1 with a, which correlates 0.5 with c, but 0 with c itself.
        Assert.Throws<ArgumentException>(() => MonteCarloInput.Correlated(["a", "b", "c"], [0, 0, 0], new[,] { { 1, 1, 0.5 }, { 1, 1, 0 }, { 0.5, 0, 1 } }));
    }

    [Fact]
    public void A_result_that_is_not_finite_is_refused_by_its_first_trial()
    {
        var e = Assert.Throws<ArithmeticException>(() => MonteCarlo.Run(x => Math.Sqrt(x[0]), [("gap", Distribution.Gaussian(4, 1))], 1_000_000, seed: 1));
        Assert.Matches(@"^Trial \d+: the model gives NaN for gap = -0\.\d+\.$", e.Message);
        for (var again = 0; again < 5; again++)
            Assert.Equal(e.Message, Assert.Throws<ArithmeticException>(() => MonteCarlo.Run(x => Math.Sqrt(x[0]), [("gap", Distribution.Gaussian(4, 1))], 1_000_000, seed: 1)).Message);
    }

    [Fact]
    public void What_the_model_throws_comes_through()
    {
        var e = Assert.Throws<InvalidOperationException>(() => MonteCarlo.Run(x => x[0] > 3 ? throw new InvalidOperationException("too high") : x[0], [("a", Distribution.Gaussian(0, 1))], 100_000, seed: 1));
        Assert.Equal("too high", e.Message);
        Assert.Throws<OperationCanceledException>(() => MonteCarlo.Run(_ => throw new OperationCanceledException(), [("a", Distribution.Gaussian(0, 1))], 100_000, seed: 1));
    }

    [Fact]
    public void A_run_can_be_cancelled()
    {
        using var source = new CancellationTokenSource();
        Assert.ThrowsAny<OperationCanceledException>(() => MonteCarlo.Run(
            x =>
            {
                source.Cancel();
                return x[0];
            },
            [("a", Distribution.Gaussian(0, 1))],
            10_000_000,
            seed: 1,
            cancel: source.Token));
    }

    [Fact]
    public void Progress_is_told_about_a_hundred_times_up_to_the_whole_and_changes_no_figure()
    {
        var told = new Told();
        Func<ReadOnlySpan<double>, double> model = x => x[0] * x[0];
        MonteCarloInput[] inputs = [("a", Distribution.Gaussian(0, 1))];
        var result = MonteCarlo.Run(model, inputs, 200_000, seed: 1, told);
        Assert.InRange(told.Shares.Count, 90, 101);
        Assert.Equal(1, told.Shares.Max());
        Assert.All(told.Shares, share => Assert.InRange(share, 0, 1));
        Assert.Equal(MonteCarlo.Run(model, inputs, 200_000, seed: 1).Mean, result.Mean);
    }

    private sealed class Told : IProgress<double>
    {
        public System.Collections.Concurrent.ConcurrentBag<double> Shares { get; } = [];

        public void Report(double value) => Shares.Add(value);
    }

    [Fact]
    public void A_run_that_never_settles_says_so()
    {
        // Student's t with one degree of freedom has no mean to settle at.
        var result = MonteCarlo.RunUntilStable(x => x[0], [("a", Distribution.StudentT(0, 1, 1))], seed: 1, mostTrials: 100_000);
        Assert.False(result.IsStable);
        Assert.Equal(100_000, result.Trials);
        Assert.Equal(12.706, result.Symmetric().High, 0.4);
    }

    [Fact]
    public void A_model_that_does_not_vary_is_stable_at_once()
    {
        var result = MonteCarlo.RunUntilStable(_ => 7.5, [("a", Distribution.Gaussian(0, 1))], seed: 1);
        Assert.Equal((7.5, 0, true, 20_000), (result.Mean, result.StandardUncertainty, result.IsStable!.Value, result.Trials));
    }

    [Fact]
    public void Wrong_calls_are_refused()
    {
        MonteCarloInput[] one = [("a", Distribution.Gaussian(0, 1))];
        Assert.Throws<ArgumentException>(() => MonteCarlo.Run(x => x[0], [], 10, seed: 1));
        Assert.Contains("'a'", Assert.Throws<ArgumentException>(() => MonteCarlo.Run(x => x[0], [.. one, .. one], 10, seed: 1)).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => MonteCarlo.Run(x => x[0], one, 1, seed: 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => MonteCarlo.Run(x => x[0], one, 100_000_001, seed: 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => MonteCarlo.RunUntilStable(x => x[0], one, seed: 1, significantDigits: 3));
        Assert.Throws<ArgumentOutOfRangeException>(() => MonteCarlo.RunUntilStable(x => x[0], one, seed: 1, coverage: 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => MonteCarlo.RunUntilStable(x => x[0], one, seed: 1, mostTrials: 10_000));
        Assert.Throws<ArgumentOutOfRangeException>(() => MonteCarlo.Run((batch, _) => batch[1].ToArray(), one, 10, seed: 1));
        Assert.Throws<ArgumentException>(() => MonteCarloInput.Of(" ", Distribution.Gaussian(0, 1)));
    }

    private static double Model(double span, double density, double note, double left, double right) => (4 * density * span * span * note * note) + (left * right);
}
