using System;
using System.Threading;

namespace Waywright;

/// <summary>What simulated errors do to one figure. Each part is simulated when it is first asked for, so that a decision costs no more than it takes.</summary>
internal sealed class FigureTrials
{
    private const double LargestFactor = FigureWork.LargestFactor;

    private readonly Lazy<double[]> _noise;
    private readonly Lazy<double[]> _near;
    private readonly Lazy<double[]> _across;
    private readonly Lazy<double[]> _between;
    private readonly Lazy<double> _estimate;
    private readonly Lazy<WidestError> _widest;
    private readonly Lazy<ComparisonFront?> _front;

    private FigureTrials(FigureWork work)
    {
        Observed = work.Observed;
        _noise = new(work.Noise);
        _between = new(work.Between);
        _widest = new(work.Widest);
        _near = new(() => work.IsSublinear ? work.Near(OfNoise(0.95)) ?? _noise!.Value : _noise!.Value);
        _across = new(work.Across);
        _front = new(() => work.Front(OfNoise(0.95), Widest));
        // Noise added to heights that noise has roughened adds less; all nearly attained comparisons at one level would add more: half way is close to median-unbiased.
        _estimate = new(() => work.MedianAdded() is var added && work.IsSublinear ? ((Observed - added) + Math.Max(0, Observed - OfNearlyAttained(0.5))) / 2 : Observed - added);
    }

    private FigureTrials(double observed, Func<double[]> noise, FigureTrials? within)
    {
        (Observed, IsGuaranteed, _between) = (observed, true, within?._between ?? new([]));
        (_noise, _across, _estimate, _widest, _front) = (new(noise), new([]), new(observed), new(default(WidestError)), new((ComparisonFront?)null));
        _near = _noise;
    }

    /// <summary>A figure of which only this is known: errors move it by no more than the noise given.</summary>
    /// <param name="observed">As read.</param>
    /// <param name="noise">Sorted.</param>
    /// <param name="within">The figure whose unknown part between stations it has; none where the noise has that in it.</param>
    public static FigureTrials Guaranteed(double observed, Func<double[]> noise, FigureTrials? within = null) => new(observed, noise, within);

    /// <param name="figure">The figure.</param>
    /// <param name="heights">As measured.</param>
    /// <param name="trials">Of their errors.</param>
    /// <param name="between">Of what the heights are missing; null where nothing.</param>
    /// <param name="cancel">Stops it.</param>
    public static FigureTrials Of(HeightFigure figure, ReadOnlySpan<double> heights, ErrorTrials trials, ErrorTrials? between, CancellationToken cancel)
        => new(new FigureWork(figure, heights, trials, between, cancel));

    /// <summary>Whether the noise alone bounds it, to both sides.</summary>
    public bool IsGuaranteed { get; }

    /// <summary>T of the heights as measured.</summary>
    public double Observed { get; }

    /// <summary>No comparison behind the figure has a larger standard deviation.</summary>
    public WidestError Widest => _widest.Value;

    /// <summary>T(z + e) less what e is taken to have added.</summary>
    public double Estimate => _estimate.Value;

    /// <summary>T(e) of all trials, sorted.</summary>
    public double[] Sorted => _noise.Value;

    /// <summary>Simulates every part, so that the trials need not be kept.</summary>
    public void Complete()
    {
        foreach (var part in new[] { _noise, _near, _across, _between })
            _ = part.Value;
        _ = (Estimate, Widest, _front.Value);
    }

    /// <summary>By how much what lies between stations may make the figure larger than it is of the heights known, with the confidence given.</summary>
    public double MoreBetween(double confidence) => _between.Value.Length == 0 ? 0 : Math.Max(0, FigureWork.Quantile(_between.Value, confidence));

    /// <summary>By how much it may make it smaller.</summary>
    public double LessBetween(double confidence) => _between.Value.Length == 0 ? 0 : Math.Max(0, -FigureWork.Quantile(_between.Value, 1 - confidence));

    /// <summary>What it adds in half of the cases.</summary>
    public double LikelyBetween => _between.Value.Length == 0 ? 0 : FigureWork.Quantile(_between.Value, 0.5);

    /// <summary>Quantile of T(e).</summary>
    public double OfNoise(double p) => FigureWork.Quantile(_noise.Value, p);

    /// <summary>Quantile of the largest v . e over the comparisons v that are nearly attained.</summary>
    public double OfNearlyAttained(double p) => FigureWork.Quantile(_near.Value, p);

    /// <summary>
    /// Upper bound by the widest comparison, T + factor s; or, if lower, by each comparison with its own s: the largest v . z + factor s(v).
    /// </summary>
    /// <param name="factor">For the widest.</param>
    /// <param name="ownFactor">For each on its own.</param>
    public double Upper(double factor, double ownFactor)
    {
        if (IsGuaranteed)
            throw new NotSupportedException("Only the noise bounds this figure.");
        var widest = Observed + (factor * Widest.Um);
        return ownFactor <= LargestFactor && _front.Value?.Highest(ownFactor) is { } own ? Math.Max(Observed, Math.Min(widest, own)) : widest;
    }

    /// <summary>Share of simulations in which the stations' errors, less their part along one comparison, leave the figure at or below a value; 1 where that bounds nothing.</summary>
    public double ShareAcrossWithin(double value)
    {
        var across = _across.Value;
        if (across.Length == 0)
            return 1;
        var at = Array.BinarySearch(across, value);
        at = at < 0 ? ~at : at;
        while (at < across.Length && across[at] <= value)
            at++;
        return (double)at / across.Length;
    }
}
