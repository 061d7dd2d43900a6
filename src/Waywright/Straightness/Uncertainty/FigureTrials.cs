using System;
using System.Threading;
using System.Threading.Tasks;

namespace Waywright;

/// <summary>What simulated errors do to one figure.</summary>
internal sealed class FigureTrials
{
    private const int Chunk = 512;
    // Shares of the 95 % point of T(e), by simulation (docs/coverage.md): a single height above the line has more comparisons close to the largest.
    private const double SymmetricCut = 0.65;
    private const double OneSidedCut = 1;
    private const int MostListed = 400;
    private const double LargestFactor = 10;

    private readonly double[] _noise;
    private readonly double[] _near;
    private readonly double[] _across;
    private readonly ComparisonFront? _front;

    private FigureTrials(double observed, double medianAdded, double[] noise)
    {
        (Observed, Estimate, _noise, _near, _across) = (observed, observed - medianAdded, noise, noise, []);
    }

    private FigureTrials(double observed, double medianAdded, double[] noise, double[] near, double[] across, WidestError widest, ComparisonFront? front)
    {
        (Observed, _noise, _near, _across, Widest, _front) = (observed, noise, near, across, widest, front);
        // Noise added to heights that noise has roughened adds less; all nearly attained comparisons at one level would add more: half way is close to median-unbiased.
        Estimate = ((observed - medianAdded) + Math.Max(0, observed - OfNearlyAttained(0.5))) / 2;
    }

    /// <summary>A figure of which only this is known: errors move it by no more than the noise given.</summary>
    /// <param name="observed">As read.</param>
    /// <param name="noise">Sorted.</param>
    /// <param name="within">The figure whose unknown part between stations it has.</param>
    public static FigureTrials Guaranteed(double observed, double[] noise, FigureTrials within) => new(observed, 0, noise) { IsGuaranteed = true, Between = within.Between };

    /// <summary>Whether the noise alone bounds it, to both sides.</summary>
    public bool IsGuaranteed { get; private init; }

    /// <summary>T of the heights as measured.</summary>
    public double Observed { get; }

    /// <summary>No comparison behind the figure has a larger standard deviation.</summary>
    public WidestError Widest { get; }

    /// <summary>T(z + e) less what e is taken to have added.</summary>
    public double Estimate { get; }

    /// <summary>What the face between stations adds, in all trials, sorted; empty where all heights were read.</summary>
    private double[] Between { get; init; } = [];

    /// <summary>By how much what lies between stations may make the figure larger than it is of the heights known, with the confidence given.</summary>
    public double MoreBetween(double confidence) => Between.Length == 0 ? 0 : Math.Max(0, Quantile(Between, confidence));

    /// <summary>By how much it may make it smaller.</summary>
    public double LessBetween(double confidence) => Between.Length == 0 ? 0 : Math.Max(0, -Quantile(Between, 1 - confidence));

    /// <summary>What it adds in half of the cases.</summary>
    public double LikelyBetween => Between.Length == 0 ? 0 : Quantile(Between, 0.5);

    /// <summary>T(e) of all trials, sorted.</summary>
    public double[] Sorted => _noise;

    /// <summary>Quantile of T(e).</summary>
    public double OfNoise(double p) => Quantile(_noise, p);

    /// <summary>Quantile of the largest v . e over the comparisons v that are nearly attained.</summary>
    public double OfNearlyAttained(double p) => Quantile(_near, p);

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
        return ownFactor <= LargestFactor && _front?.Highest(ownFactor) is { } own ? Math.Max(Observed, Math.Min(widest, own)) : widest;
    }

    /// <summary>Share of simulations in which the stations' errors, less their part along one comparison, leave the figure at or below a value; 1 where that bounds nothing.</summary>
    public double ShareAcrossWithin(double value)
    {
        if (_across.Length == 0)
            return 1;
        var at = Array.BinarySearch(_across, value);
        at = at < 0 ? ~at : at;
        while (at < _across.Length && _across[at] <= value)
            at++;
        return (double)at / _across.Length;
    }

    /// <summary>T(e) of all trials, sorted.</summary>
    public static double[] Noise(HeightFigure figure, ErrorTrials trials, CancellationToken cancel)
    {
        var noise = new double[trials.Trials];
        ForTrials(trials, (_, t) => noise[t] = figure.At(trials.All(t), trials.All(t)).Value, cancel);
        RadixSort.Sort(noise);
        return noise;
    }

    /// <param name="figure">The figure.</param>
    /// <param name="heights">As measured.</param>
    /// <param name="trials">Of their errors.</param>
    /// <param name="between">Of what the heights are missing; null where nothing.</param>
    /// <param name="cancel">Stops it.</param>
    public static FigureTrials Of(HeightFigure figure, ReadOnlySpan<double> heights, ErrorTrials trials, ErrorTrials? between, CancellationToken cancel)
    {
        var stations = trials.Stations;
        var z = stations.Residuals(heights);
        var observed = figure.At(z, z).Value;
        var noise = Noise(figure, trials, cancel);
        var medianAdded = Quantile(Added(figure, z, observed, trials, cancel), 0.5);
        if (!figure.IsSublinear)
            return new FigureTrials(observed, medianAdded, noise);
        var weights = figure.Weights(z);
        var widest = WidestError.Of(figure, trials.Errors);
        return new FigureTrials(
            observed, medianAdded, noise, Near(figure, z, weights, observed, noise, trials, cancel), Across(figure, z, weights, trials, cancel), widest, Front(figure, z, observed, noise, trials.Errors, widest))
        {
            Between = between is null ? [] : Added(figure, z, observed, between, cancel),
        };
    }

    private static double[] Added(HeightFigure figure, double[] z, double observed, ErrorTrials trials, CancellationToken cancel)
    {
        var added = new double[trials.Trials];
        ForTrials(trials, (sum, t) =>
        {
            var e = trials.All(t);
            for (var i = 0; i < sum.Length; i++)
                sum[i] = z[i] + e[i];
            added[t] = figure.At(sum, z).Value - observed;
        }, cancel);
        RadixSort.Sort(added);
        return added;
    }

    // Listing the comparisons of a long profile costs more than it brings; and where noise alone reads as much, every one of them is close.
    private static ComparisonFront? Front(HeightFigure figure, double[] z, double observed, double[] noise, HeightErrors errors, WidestError widest)
    {
        if (figure.Stations.Count > MostListed || widest.Um == 0 || observed <= Quantile(noise, 0.95))
            return null;
        var (station, shapes) = errors.Parts(figure);
        var front = new ComparisonFront(station, widest.Um, observed - (LargestFactor * widest.Um));
        figure.Compare(z, shapes, front);
        return front;
    }

    // A comparison that falls far short of the observed figure can hardly be the true one.
    private static double[] Near(HeightFigure figure, double[] z, double[] attained, double observed, double[] noise, ErrorTrials trials, CancellationToken cancel)
    {
        var floor = Quantile(noise, 0.95);
        if (floor == 0)
            return noise;
        var level = observed - ((figure.IsSymmetric ? SymmetricCut : OneSidedCut) * floor);
        var near = new double[noise.Length];
        ForTrials(trials, (sum, t) => near[t] = RestrictedMaximum.Of(figure, trials.All(t), z, attained, observed, level, sum), cancel);
        RadixSort.Sort(near);
        return near;
    }

    // e less its regression on v . e, with v the comparison that the heights attain: what is left is independent of v . e.
    private static double[] Across(HeightFigure figure, double[] z, double[] weights, ErrorTrials trials, CancellationToken cancel)
    {
        if (!figure.IsSymmetric)
            return [];
        var spread = trials.Errors.SpreadAlong(weights);
        var variance = 0.0;
        for (var i = 0; i < weights.Length; i++)
            variance += weights[i] * spread[i];

        if (variance == 0)
            return [];
        var along = trials.Stations.Residuals(spread);
        var across = new double[trials.Trials];
        ForTrials(trials, (sum, t) =>
        {
            var e = trials.OfStations(t);
            var factor = 0.0;
            for (var i = 0; i < weights.Length; i++)
                factor += weights[i] * e[i];
            factor /= variance;
            for (var i = 0; i < sum.Length; i++)
                sum[i] = e[i] - (factor * along[i]);
            across[t] = figure.At(sum, z).Value;
        }, cancel);
        RadixSort.Sort(across);
        return across;
    }

    private delegate void ForTrial(Span<double> sum, int trial);

    private static void ForTrials(ErrorTrials trials, ForTrial body, CancellationToken cancel)
        => Parallel.For(0, (trials.Trials + Chunk - 1) / Chunk, new ParallelOptions { CancellationToken = cancel }, chunk =>
        {
            var sum = new double[trials.Stations.Padded];
            for (var t = chunk * Chunk; t < Math.Min(trials.Trials, (chunk + 1) * Chunk); t++)
                body(sum, t);
        });

    private static double Quantile(double[] sorted, double p)
    {
        var at = p * (sorted.Length - 1);
        var below = (int)at;
        return below + 1 < sorted.Length ? sorted[below] + ((at - below) * (sorted[below + 1] - sorted[below])) : sorted[^1];
    }
}
