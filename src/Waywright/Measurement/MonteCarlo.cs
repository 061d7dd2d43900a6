using System;
using System.Collections.Generic;
using System.Threading;

namespace Waywright;

/// <summary>
/// Propagation of distributions (JCGM 101:2008): the model is calculated many times with inputs drawn from what is known of them. For models that bend,
/// for peak-to-valley heights and other maxima, for inputs far from Gaussian; <see cref="Uncertain"/> is quicker and says which input matters.
/// </summary>
/// <remarks>
/// Draws come from Philox4x32-10, addressed by seed, input and trial: the same seed gives the same result, bit for bit, on any number of threads. Gaussian draws are
/// quantiles by Wichura's AS 241 in IEEE operations only, equal on every machine; Student's t and arcsine draws use the machine's mathematics library and may differ in the last digit.
/// A model must depend on its inputs only; it runs on several threads at once. Checked by JCGM 101:2008, 9.2, 9.3 and 9.5.
/// </remarks>
public static class MonteCarlo
{
    private const int MostTrials = 100_000_000;

    /// <summary>Runs a given number of trials of a model that calculates one at a time: <c>MonteCarlo.Run(x => x[0] / x[1], inputs, 100_000, seed: 1)</c>.</summary>
    /// <param name="model">Output from the inputs, which stand in the order of <paramref name="inputs"/>.</param>
    /// <param name="inputs">At least one; names differ.</param>
    /// <param name="trials">2 to 100 million; JCGM 101:2008, 7.2.2, suggests at least 10^4 / (1 - p), 200 000 for 95 %.</param>
    /// <param name="seed">Any; the result names it.</param>
    /// <param name="progress">Told the share that is done, 0 to 1, about a hundred times and from any thread; may be null.</param>
    /// <param name="cancel">Ends the run.</param>
    /// <exception cref="ArgumentException">No input, or two of one name.</exception>
    /// <exception cref="ArgumentOutOfRangeException">Too few or too many trials.</exception>
    /// <exception cref="ArithmeticException">The model gives something that is not finite; the first such trial and its inputs are named.</exception>
    /// <exception cref="OperationCanceledException">Cancelled.</exception>
    public static MonteCarloResult Run(Func<ReadOnlySpan<double>, double> model, IReadOnlyList<MonteCarloInput> inputs, int trials, ulong seed, IProgress<double>? progress = null, CancellationToken cancel = default)
        => Run(EachTrial(model), inputs, trials, seed, progress, cancel);

    /// <summary>Runs a given number of trials of a model that calculates a batch at a time, from columns of inputs into a column of results.</summary>
    /// <param name="model">Fills one result for each trial of the batch.</param>
    /// <param name="inputs">As for the other.</param>
    /// <param name="trials">As for the other.</param>
    /// <param name="seed">As for the other.</param>
    /// <param name="progress">Told the share that is done, 0 to 1, about a hundred times and from any thread; may be null.</param>
    /// <param name="cancel">Ends the run.</param>
    /// <inheritdoc cref="Run(Func{ReadOnlySpan{double}, double}, IReadOnlyList{MonteCarloInput}, int, ulong, IProgress{double}, CancellationToken)" path="/exception"/>
    public static MonteCarloResult Run(Action<TrialBatch, Span<double>> model, IReadOnlyList<MonteCarloInput> inputs, int trials, ulong seed, IProgress<double>? progress = null, CancellationToken cancel = default)
        => Run(model, inputs, trials, seed, mostThreads: -1, progress, cancel);

    /// <summary>
    /// Runs as many trials as make the figures stable (7.9): sequences of M trials until twice the standard deviation of the average mean, standard uncertainty
    /// and interval ends is within delta, half a unit of the last digit wanted of u.
    /// </summary>
    /// <param name="model">Output from the inputs.</param>
    /// <param name="inputs">At least one; names differ.</param>
    /// <param name="seed">Any; the result names it.</param>
    /// <param name="significantDigits">1 or 2 digits of the standard uncertainty; two want about a million trials.</param>
    /// <param name="coverage">Probability of the interval, 0.5 to 0.9999.</param>
    /// <param name="shortest">Watch the shortest interval instead of the symmetric one.</param>
    /// <param name="mostTrials">Where to give up: the result then says that it is not stable.</param>
    /// <param name="cancel">Ends the run.</param>
    /// <inheritdoc cref="Run(Func{ReadOnlySpan{double}, double}, IReadOnlyList{MonteCarloInput}, int, ulong, IProgress{double}, CancellationToken)" path="/exception"/>
    public static MonteCarloResult RunUntilStable(
        Func<ReadOnlySpan<double>, double> model, IReadOnlyList<MonteCarloInput> inputs, ulong seed, int significantDigits = 2, double coverage = 0.95, bool shortest = false, int mostTrials = 20_000_000, CancellationToken cancel = default)
        => RunUntilStable(EachTrial(model), inputs, seed, significantDigits, coverage, shortest, mostTrials, cancel);

    /// <summary>As the other, for a model that calculates a batch at a time.</summary>
    /// <inheritdoc cref="RunUntilStable(Func{ReadOnlySpan{double}, double}, IReadOnlyList{MonteCarloInput}, ulong, int, double, bool, int, CancellationToken)" path="/*[not(self::summary)]"/>
    public static MonteCarloResult RunUntilStable(
        Action<TrialBatch, Span<double>> model, IReadOnlyList<MonteCarloInput> inputs, ulong seed, int significantDigits = 2, double coverage = 0.95, bool shortest = false, int mostTrials = 20_000_000, CancellationToken cancel = default)
        => RunUntilStable(model, inputs, seed, significantDigits, coverage, shortest, mostTrials, mostThreads: -1, cancel);

    internal static MonteCarloResult Run(Action<TrialBatch, Span<double>> model, IReadOnlyList<MonteCarloInput> inputs, int trials, ulong seed, int mostThreads, IProgress<double>? progress = null, CancellationToken cancel = default)
    {
        CheckTrials(trials, 2, nameof(trials));
        var runner = Runner(model, inputs, seed, mostThreads, progress, cancel);
        var results = GC.AllocateUninitializedArray<double>(trials);
        runner.Run(0, results);
        return new MonteCarloResult(results, runner.Inputs, seed);
    }

    internal static MonteCarloResult RunUntilStable(
        Action<TrialBatch, Span<double>> model, IReadOnlyList<MonteCarloInput> inputs, ulong seed, int significantDigits, double coverage, bool shortest, int mostTrials, int mostThreads, CancellationToken cancel = default)
    {
        if (coverage is not (>= 0.5 and <= 0.9999))
            throw new ArgumentOutOfRangeException(nameof(coverage), coverage, "A coverage probability from 0.5 to 0.9999 is needed.");
        var sequence = AdaptiveTrials.SequenceLength(coverage);
        CheckTrials(mostTrials, 2 * sequence, nameof(mostTrials));
        MonteCarloResult.NumericalTolerance(1, significantDigits);
        var runner = Runner(model, inputs, seed, mostThreads, null, cancel);
        return new AdaptiveTrials(runner, significantDigits, coverage, shortest, mostTrials / sequence).Run(seed);
    }

    private static TrialRunner Runner(Action<TrialBatch, Span<double>> model, IReadOnlyList<MonteCarloInput> inputs, ulong seed, int mostThreads, IProgress<double>? progress, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(inputs);
        if (inputs.Count == 0)
            throw new ArgumentException("A model needs at least one input.", nameof(inputs));
        return new TrialRunner(model, FixedList<MonteCarloInput>.Copy(inputs), seed, mostThreads, progress, cancel);
    }

    private static Action<TrialBatch, Span<double>> EachTrial(Func<ReadOnlySpan<double>, double> model)
    {
        ArgumentNullException.ThrowIfNull(model);
        return (batch, results) =>
        {
            var row = batch.Inputs <= 64 ? stackalloc double[batch.Inputs] : new double[batch.Inputs];
            for (var trial = 0; trial < results.Length; trial++)
            {
                for (var input = 0; input < row.Length; input++)
                    row[input] = batch[input][trial];
                results[trial] = model(row);
            }
        };
    }

    private static void CheckTrials(int trials, int fewest, string name)
    {
        if (trials < fewest || trials > MostTrials)
            throw new ArgumentOutOfRangeException(name, trials, $"From {fewest} to {MostTrials} trials are possible.");
    }
}
