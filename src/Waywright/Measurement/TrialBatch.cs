using System;

namespace Waywright;

/// <summary>
/// The drawn inputs of some consecutive trials, for a model that calculates many at once: <c>batch[0]</c> is the first input, one value for each trial.
/// Which trials make a batch never changes what comes out.
/// </summary>
public readonly ref struct TrialBatch
{
    private readonly ReadOnlySpan<double> _columns;
    private readonly int _stride;

    internal TrialBatch(ReadOnlySpan<double> columns, int stride, int inputs, int count, long firstTrial)
    {
        _columns = columns;
        _stride = stride;
        (Inputs, Count, FirstTrial) = (inputs, count, firstTrial);
    }

    /// <summary>Number of inputs of the model, correlated ones counted singly.</summary>
    public int Inputs { get; }

    /// <summary>Number of trials in this batch.</summary>
    public int Count { get; }

    /// <summary>Number of the first trial, from 0.</summary>
    public long FirstTrial { get; }

    /// <summary>The values of an input, one for each trial.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no such input.</exception>
    public ReadOnlySpan<double> this[int input]
    {
        get
        {
            ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual((uint)input, (uint)Inputs, nameof(input));
            return _columns.Slice(input * _stride, Count);
        }
    }
}
