using System;
using System.Collections.Generic;
using System.Globalization;

namespace Waywright;

/// <summary>What a model's output can be, from trials with drawn inputs: every figure of JCGM 101:2008, 7.5 to 7.7, comes from the ordered results.</summary>
public sealed record MonteCarloResult
{
    // Fewer trials than this outside an interval leave its ends to chance.
    private const int LeastOutside = 10;

    private readonly FixedList<double> _ordered;

    /// <param name="results">In the order of the trials; taken over and sorted.</param>
    /// <param name="inputs">The model's inputs.</param>
    /// <param name="seed">The seed.</param>
    /// <param name="tolerance">Wanted, where the number of trials was adaptive.</param>
    /// <param name="isStable">Whether it was reached.</param>
    internal MonteCarloResult(double[] results, FixedList<MonteCarloInput> inputs, ulong seed, double? tolerance = null, bool? isStable = null)
    {
        (Mean, StandardUncertainty) = Moments(results);
        if (!double.IsFinite(Mean) || !double.IsFinite(StandardUncertainty))
            throw new ArithmeticException("The results are too large for their squares to be numbers.");
        RadixSort.Sort(results);
        _ordered = FixedList<double>.Own(results);
        (Inputs, Seed, Tolerance, IsStable) = (inputs, seed, tolerance, isStable);
    }

    /// <summary>Number of trials M.</summary>
    public int Trials => _ordered.Count;

    /// <summary>The seed: the same seed, inputs and number of trials give the same result, bit for bit, for any number of threads.</summary>
    public ulong Seed { get; }

    /// <summary>What was drawn.</summary>
    public IReadOnlyList<MonteCarloInput> Inputs { get; }

    /// <summary>Mean of the results (7.6).</summary>
    public double Mean { get; }

    /// <summary>Standard deviation of the results, with M - 1 (7.6).</summary>
    public double StandardUncertainty { get; }

    /// <summary>Numerical tolerance that was asked for (7.9.2); null where the number of trials was given.</summary>
    public double? Tolerance { get; }

    /// <summary>Whether mean, standard uncertainty and interval ends became stable within the tolerance before the trials ran out (7.9.4); null where the number of trials was given.</summary>
    public bool? IsStable { get; }

    /// <summary>The results in ascending order.</summary>
    internal FixedList<double> Ordered => _ordered;

    /// <summary>Interval with equally many results below and above it (7.7.2 with probabilistic symmetry).</summary>
    /// <param name="coverage">Probability p above 0, small enough that at least 10 trials lie outside.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside these.</exception>
    public CoverageInterval Symmetric(double coverage = 0.95)
    {
        var inside = Inside(coverage);
        // 7.7.2: r = (M - q) / 2, or the whole part of (M - q + 1) / 2.
        var first = (Trials - inside + 1) / 2;
        return new(_ordered[first - 1], _ordered[first + inside - 1], coverage);
    }

    /// <summary>Shortest interval (7.7.4): the one to take where the distribution leans, such as a peak-to-valley height.</summary>
    /// <param name="coverage">Probability p above 0, small enough that at least 10 trials lie outside.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside these.</exception>
    public CoverageInterval Shortest(double coverage = 0.95)
    {
        var inside = Inside(coverage);
        var ordered = _ordered.AsSpan();
        var best = 0;
        for (var first = 1; first + inside < ordered.Length; first++)
        {
            if (ordered[first + inside] - ordered[first] < ordered[best + inside] - ordered[best])
                best = first;
        }

        return new(ordered[best], ordered[best + inside], coverage);
    }

    /// <summary>Value below which the share p of the results lies, by linear interpolation between their mid-ranks (r - 1/2) / M (7.5.1, note).</summary>
    /// <param name="p">0 to 1; the smallest or largest result beyond the outermost mid-ranks.</param>
    /// <exception cref="ArgumentOutOfRangeException">p is not between 0 and 1.</exception>
    public double Quantile(double p)
    {
        if (p is not (>= 0 and <= 1))
            throw new ArgumentOutOfRangeException(nameof(p), p, "A probability from 0 to 1 is needed.");
        var place = Math.Clamp((p * Trials) - 0.5, 0, Trials - 1);
        var lower = (int)Math.Floor(place);
        var upper = Math.Min(lower + 1, Trials - 1);
        return _ordered[lower] + ((place - lower) * (_ordered[upper] - _ordered[lower]));
    }

    /// <summary>Share of the results from low to high, both included.</summary>
    public double Share(double low, double high)
        => low <= high ? (double)(Below(high, orEqual: true) - Below(low, orEqual: false)) / Trials : 0;

    /// <summary>Compares with the interval of the linear calculation (clause 8); Monte Carlo should be stable within a fifth of the tolerance for it (8.2).</summary>
    /// <param name="linear">The linear result, such as <see cref="Uncertain.Expanded"/>; its coverage is taken.</param>
    /// <param name="significantDigits">1 or 2 digits of the standard uncertainty that matter.</param>
    /// <param name="shortest">Compare with the shortest interval instead of the symmetric one.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not 1 or 2 digits, or too high a coverage for the trials.</exception>
    public GumValidation Validate(ExpandedUncertainty linear, int significantDigits = 2, bool shortest = false)
    {
        ArgumentNullException.ThrowIfNull(linear);
        var own = shortest ? Shortest(linear.Coverage) : Symmetric(linear.Coverage);
        return new(Math.Abs(linear.Low - own.Low), Math.Abs(linear.High - own.High), NumericalTolerance(linear.U / linear.CoverageFactor, significantDigits));
    }

    /// <summary><c>180.00 (179.61 to 180.39), 200000 trials</c>: mean and symmetric 95 % interval, to two digits of its half width.</summary>
    public override string ToString()
    {
        var interval = Trials >= 20 * LeastOutside ? Symmetric() : new(_ordered[0], _ordered[^1], 1);
        var halfWidth = (interval.High - interval.Low) / 2;
        if (halfWidth == 0)
            return string.Create(CultureInfo.InvariantCulture, $"{NumberText.Plain(Mean)}, {Trials} trials");
        var digits = NumberText.Decimals(halfWidth, 2);
        return string.Create(CultureInfo.InvariantCulture, $"{NumberText.Rounded(Mean, digits)} ({NumberText.Rounded(interval.Low, digits)} to {NumberText.Rounded(interval.High, digits)}), {Trials} trials");
    }

    /// <summary>delta = half a unit of the last of the digits in which u is written (JCGM 101:2008, 7.9.2); 0 for u = 0.</summary>
    internal static double NumericalTolerance(double u, int significantDigits)
    {
        if (significantDigits is not (1 or 2))
            throw new ArgumentOutOfRangeException(nameof(significantDigits), significantDigits, "One or two significant digits of a standard uncertainty are asked for.");
        return u > 0 ? 0.5 * Math.Pow(10, -NumberText.Decimals(u, significantDigits)) : 0;
    }

    /// <summary>Mean and standard deviation, from the distances to the first value, so that a large value with a small scatter keeps its digits.</summary>
    internal static (double Mean, double Deviation) Moments(ReadOnlySpan<double> values)
    {
        double sum = 0, squares = 0, rest = 0;
        foreach (var value in values)
            sum += value - values[0];
        var mean = sum / values.Length;
        foreach (var value in values)
        {
            var distance = value - values[0] - mean;
            squares += distance * distance;
            rest += distance;
        }

        var variance = (squares - (rest * rest / values.Length)) / (values.Length - 1);
        return (values[0] + mean, Math.Sqrt(Math.Max(0, variance)));
    }

    /// <summary>q = p M to the nearest whole number (7.7.1).</summary>
    private int Inside(double coverage)
    {
        if (coverage is not (> 0 and < 1) || Trials - (int)Math.Round(coverage * Trials) < LeastOutside)
            throw new ArgumentOutOfRangeException(nameof(coverage), coverage, $"A probability above 0 with at least {LeastOutside} of the {Trials} trials outside is needed.");
        return (int)Math.Round(coverage * Trials);
    }

    private int Below(double limit, bool orEqual)
    {
        var (low, high) = (0, Trials);
        while (low < high)
        {
            var middle = low + ((high - low) / 2);
            if (_ordered[middle] < limit || (orEqual && _ordered[middle] == limit))
                low = middle + 1;
            else
                high = middle;
        }

        return low;
    }
}
