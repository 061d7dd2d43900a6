using System;
using System.Buffers;
using System.Globalization;
using System.Linq;
using System.Runtime.ExceptionServices;
using System.Threading;
using System.Threading.Tasks;

namespace Waywright;

/// <summary>Runs trials of a model in batches of fixed borders, on as many threads as there are; each result has its place, so nothing depends on who made it.</summary>
internal sealed class TrialRunner
{
    // The columns of a score of inputs stay in the nearest cache.
    private const int BatchLength = 256;

    private readonly Action<TrialBatch, Span<double>> _model;
    private readonly RandomDraws _draws;
    private readonly int _columns;
    private readonly ParallelOptions _options;
    private readonly Lock _lock = new();
    private readonly IProgress<double>? _progress;
    private int _failedBatch = int.MaxValue;
    private ExceptionDispatchInfo? _failure;

    public TrialRunner(Action<TrialBatch, Span<double>> model, FixedList<MonteCarloInput> inputs, ulong seed, int mostThreads, IProgress<double>? progress, CancellationToken cancel)
    {
        Inputs = inputs;
        _model = model;
        _progress = progress;
        _draws = new RandomDraws(seed);
        _columns = inputs.Sum(i => i.Names.Count);
        _options = new ParallelOptions { MaxDegreeOfParallelism = mostThreads, CancellationToken = cancel };
        if (inputs.SelectMany(i => i.Names).GroupBy(n => n).FirstOrDefault(g => g.Count() > 1) is { } twice)
            throw new ArgumentException($"Two inputs are called '{twice.Key}': give each its own name.", nameof(inputs));
    }

    public FixedList<MonteCarloInput> Inputs { get; }

    /// <summary>Runs the trials from <paramref name="firstTrial"/>, an even one, and puts each result into its place.</summary>
    /// <exception cref="OperationCanceledException">Cancelled.</exception>
    /// <exception cref="ArithmeticException">A result is not finite; the first such trial is named.</exception>
    public void Run(long firstTrial, Memory<double> results)
    {
        var batches = (results.Length + BatchLength - 1) / BatchLength;
        var done = 0;
        Parallel.For(
            0,
            batches,
            _options,
            () => ArrayPool<double>.Shared.Rent(_columns * BatchLength),
            (batch, state, buffer) =>
            {
                var from = batch * BatchLength;
                var mine = results.Slice(from, Math.Min(BatchLength, results.Length - from));
                try
                {
                    RunBatch(firstTrial + from, mine.Span, buffer);
                    if (_progress is not null)
                        Tell(Interlocked.Increment(ref done), batches);
                }
                // Whatever the model throws goes to the caller, from the first batch that fails: Break lets those before it finish.
                catch (Exception e)
                {
                    Keep(batch, e);
                    state.Break();
                }

                return buffer;
            },
            buffer => ArrayPool<double>.Shared.Return(buffer));
        _failure?.Throw();
    }

    // A hundred times in all, whatever the number of batches.
    private void Tell(int done, int batches)
    {
        if (100L * done / batches > 100L * (done - 1) / batches)
            _progress!.Report((double)done / batches);
    }

    private void RunBatch(long firstTrial, Span<double> results, double[] buffer)
    {
        uint column = 0;
        foreach (var input in Inputs)
        {
            input.Draw(_draws, column, firstTrial, results.Length, buffer.AsSpan((int)column * BatchLength), BatchLength);
            column += (uint)input.Names.Count;
        }

        var batch = new TrialBatch(buffer, BatchLength, _columns, results.Length, firstTrial);
        _model(batch, results);
        for (var i = 0; i < results.Length; i++)
        {
            if (!double.IsFinite(results[i]))
                throw new ArithmeticException(NotFinite(batch, i, results[i]));
        }
    }

    private string NotFinite(TrialBatch batch, int index, double result)
    {
        var names = Inputs.SelectMany(i => i.Names).ToArray();
        var values = new string[_columns];
        for (var i = 0; i < _columns; i++)
            values[i] = $"{names[i]} = {NumberText.Plain(batch[i][index])}";
        return string.Create(CultureInfo.InvariantCulture, $"Trial {batch.FirstTrial + index}: the model gives {result} for {string.Join(", ", values)}.");
    }

    private void Keep(int batch, Exception failure)
    {
        lock (_lock)
        {
            if (batch < _failedBatch)
                (_failedBatch, _failure) = (batch, ExceptionDispatchInfo.Capture(failure));
        }
    }
}
