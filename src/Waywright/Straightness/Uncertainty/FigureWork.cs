using System;
using System.Threading;
using System.Threading.Tasks;

namespace Waywright;

/// <summary>One figure of heights as measured, and trials of their errors: each part of what is asked of them.</summary>
internal sealed class FigureWork
{
    /// <summary>No comparison is bounded by more than this many of its standard deviations.</summary>
    public const double LargestFactor = 10;

    private const int Chunk = 512;

    // Shares of the 95 % point of T(e), by simulation (docs/coverage.md): a single height above the line has more comparisons close to the largest.
    private const double SymmetricCut = 0.65;
    private const double OneSidedCut = 1;
    private const int MostListed = 400;

    private readonly HeightFigure _figure;
    private readonly ErrorTrials _trials;
    private readonly ErrorTrials? _missing;
    private readonly CancellationToken _cancel;
    private readonly double[] _z;
    private readonly Lazy<double[]> _weights;

    public FigureWork(HeightFigure figure, ReadOnlySpan<double> heights, ErrorTrials trials, ErrorTrials? missing, CancellationToken cancel)
    {
        (_figure, _trials, _missing, _cancel) = (figure, trials, missing, cancel);
        _z = trials.Stations.Residuals(heights);
        Observed = figure.At(_z, _z).Value;
        _weights = new(() => figure.Weights(_z));
    }

    public double Observed { get; }

    public bool IsSublinear => _figure.IsSublinear;

    /// <summary>T(e) of all trials, sorted.</summary>
    public static double[] Noise(HeightFigure figure, ErrorTrials trials, CancellationToken cancel)
    {
        var noise = NoiseByTrial(figure, trials, cancel);
        RadixSort.Sort(noise);
        return noise;
    }

    /// <summary>T(e) in the order of the trials.</summary>
    public static double[] NoiseByTrial(HeightFigure figure, ErrorTrials trials, CancellationToken cancel)
    {
        var noise = new double[trials.Trials];
        ForTrials(trials, (_, t) => noise[t] = figure.At(trials.All(t), trials.All(t)).Value, cancel);
        return noise;
    }

    public double[] Noise() => Noise(_figure, _trials, _cancel);

    public double MedianAdded() => Quantile(Added(_trials), 0.5);

    public WidestError Widest() => IsSublinear ? WidestError.Of(_figure, _trials.Errors) : default;

    /// <summary>What the face between stations adds, in all trials, sorted; empty where all heights were read.</summary>
    public double[] Between() => _missing is null ? [] : Added(_missing);

    /// <summary>Listing the comparisons of a long profile costs more than it brings; and where noise alone reads as much, every one of them is close.</summary>
    public ComparisonFront? Front(double floor, WidestError widest)
    {
        if (!IsSublinear || _figure.Stations.Count > MostListed || widest.Um == 0 || Observed <= floor)
            return null;
        var (station, shapes) = _trials.Errors.Parts(_figure);
        var front = new ComparisonFront(station, widest.Um, Observed - (LargestFactor * widest.Um));
        _figure.Compare(_z, shapes, front);
        return front;
    }

    /// <summary>The largest v . e of the comparisons that are nearly attained; null without noise. One that falls far short of the observed figure can hardly be the true one.</summary>
    public double[]? Near(double floor)
    {
        if (floor == 0)
            return null;
        var level = Observed - ((_figure.IsSymmetric ? SymmetricCut : OneSidedCut) * floor);
        var near = new double[_trials.Trials];
        ForTrials(_trials, (sum, t) => near[t] = RestrictedMaximum.Of(_figure, _trials.All(t), _z, _weights.Value, Observed, level, sum), _cancel);
        RadixSort.Sort(near);
        return near;
    }

    /// <summary>e less its regression on v . e, with v the comparison that the heights attain: what is left is independent of v . e.</summary>
    public double[] Across()
    {
        if (!_figure.IsSymmetric || !IsSublinear)
            return [];
        var weights = _weights.Value;
        var spread = _trials.Errors.SpreadAlong(weights);
        var variance = 0.0;
        for (var i = 0; i < weights.Length; i++)
            variance += weights[i] * spread[i];
        if (variance == 0)
            return [];
        var along = _trials.Stations.Residuals(spread);
        var across = new double[_trials.Trials];
        ForTrials(_trials, (sum, t) =>
        {
            var e = _trials.OfStations(t);
            var factor = 0.0;
            for (var i = 0; i < weights.Length; i++)
                factor += weights[i] * e[i];
            factor /= variance;
            for (var i = 0; i < sum.Length; i++)
                sum[i] = e[i] - (factor * along[i]);
            across[t] = _figure.At(sum, _z).Value;
        }, _cancel);
        RadixSort.Sort(across);
        return across;
    }

    public static double Quantile(double[] sorted, double p)
    {
        var at = p * (sorted.Length - 1);
        var below = (int)at;
        return below + 1 < sorted.Length ? sorted[below] + ((at - below) * (sorted[below + 1] - sorted[below])) : sorted[^1];
    }

    private double[] Added(ErrorTrials trials)
    {
        var added = new double[trials.Trials];
        ForTrials(trials, (sum, t) =>
        {
            var e = trials.All(t);
            for (var i = 0; i < sum.Length; i++)
                sum[i] = _z[i] + e[i];
            added[t] = _figure.At(sum, _z).Value - Observed;
        }, _cancel);
        RadixSort.Sort(added);
        return added;
    }

    private delegate void ForTrial(Span<double> sum, int trial);

    private static void ForTrials(ErrorTrials trials, ForTrial body, CancellationToken cancel)
        => Parallel.For(0, (trials.Trials + Chunk - 1) / Chunk, new ParallelOptions { CancellationToken = cancel }, chunk =>
        {
            var sum = new double[trials.Stations.Padded];
            for (var t = chunk * Chunk; t < Math.Min(trials.Trials, (chunk + 1) * Chunk); t++)
                body(sum, t);
        });
}
