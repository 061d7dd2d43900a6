using System;
using System.Globalization;

namespace Waywright;

/// <summary>One figure of straightness and how sure it is.</summary>
/// <remarks>
/// The figure is the largest of many comparisons v of heights, <c>T(z) = max v . z</c>; e is the error of the heights z + e that were measured.
/// Lower bound: <c>T_obs - q(max of v . e over the v that are nearly attained)</c>; zero where noise alone reads as much.
/// Upper bound: <c>T_obs + k s</c>: the true figure is one comparison, s bounds its error, and k is the smaller the less room the other comparisons leave.
/// docs/methods.md derives them; docs/coverage.md has what they covered in simulation.
/// STRq about the minimum zone lies between STRq about least squares and half of the zone's width, and takes its bounds from these.
/// </remarks>
public sealed record UncertainFigure
{
    // Below this share the upper bound would lean on the noise being no smaller than stated.
    private const double LeastShare = 0.5;
    private const double MostOfShapes = 0.5;

    private readonly FigureTrials _own;
    private readonly FigureTrials _lower;
    private readonly FigureTrials _upper;
    private readonly double _scale;
    private readonly double _upperScale;

    internal UncertainFigure(ReferenceLineKind line, StraightnessParameter parameter, FigureTrials trials, double scale = 1)
        : this(line, parameter, trials, trials, trials, scale, scale)
    {
    }

    internal UncertainFigure(ReferenceLineKind line, StraightnessParameter parameter, FigureTrials own, FigureTrials lower, FigureTrials upper, double scale, double upperScale)
        => (Line, Parameter, _own, _lower, _upper, _scale, _upperScale) = (line, parameter, own, lower, upper, scale, upperScale);

    /// <summary>About which line.</summary>
    public ReferenceLineKind Line { get; }

    /// <summary>Which figure.</summary>
    public StraightnessParameter Parameter { get; }

    /// <summary>Length of the window where this is the worst short stretch, mm; null for the whole length.</summary>
    public double? WindowMm { get; internal init; }

    /// <summary>The figure of the heights as measured, um; noise makes it too large on average.</summary>
    public double ObservedUm => _scale * _own.Observed;

    /// <summary>95 % point of what the same set-up reads on a perfectly straight rail, um.</summary>
    public double NoiseFloorUm => _scale * _own.OfNoise(0.95);

    /// <summary>Whether the figure is larger than noise alone would read in 95 of 100 sweeps.</summary>
    public bool IsDistinguishable => ObservedUm > NoiseFloorUm;

    /// <summary>The observed figure less what noise is taken to have added, um: close to median-unbiased (docs/coverage.md).</summary>
    public double EstimateUm => Math.Clamp(Math.Min(_scale * _own.Estimate, ObservedUm) + (_scale * _own.LikelyBetween), LowUm, HighUm);

    /// <summary>What noise is taken to have added to the observed figure, um; below 0 where what was not read between stations is likely to add more.</summary>
    public double NoiseShareUm => ObservedUm - EstimateUm;

    /// <summary>Lower end of the 95 % interval, um.</summary>
    public double LowUm => LowerBoundUm(0.975);

    /// <summary>
    /// Upper end of the 95 % interval, um. Where the lower end is zero nothing is staked there, and the upper end has the whole 5 %; not so where a shared shape
    /// makes much of the error, as the lower end then has no slack for other rails.
    /// </summary>
    public double HighUm => UpperBoundUm(LowUm > 0 || _upper.Widest.OfShapes > MostOfShapes * _upper.Widest.OfStations ? 0.975 : 0.95);

    /// <summary>(upper - lower end) / (2 x 1.96), um: exactly u where the interval is that of a normal distribution.</summary>
    public double StandardUncertaintyUm => (HighUm - LowUm) / (2 * NormalQuantile.Of(0.975));

    /// <summary>Lower end of the interval that holds whatever the shape, um: the observed figure less the noise floor.</summary>
    public double GuaranteedLowUm => Math.Max(0, _scale * (_lower.Observed - _lower.OfNoise(0.95) - _lower.LessBetween(0.95)));

    /// <summary>Upper end of the interval that holds whatever the shape, um: the observed figure and the noise floor.</summary>
    public double GuaranteedHighUm => _upperScale * (_upper.Observed + _upper.OfNoise(0.95) + _upper.MoreBetween(0.95));

    /// <summary>The true figure is at least this with the confidence given, um.</summary>
    /// <param name="confidence">From 0.5 up to, not including, 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The confidence is outside its range.</exception>
    public double LowerBoundUm(double confidence)
    {
        Check(confidence);
        return _lower.Observed <= _lower.OfNoise(confidence) ? 0 : _scale * Math.Max(0, _lower.Observed - _lower.OfNearlyAttained(confidence) - _lower.LessBetween(confidence));
    }

    /// <summary>The true figure is at most this with the confidence given, um.</summary>
    /// <param name="confidence">From 0.5 up to, not including, 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The confidence is outside its range.</exception>
    public double UpperBoundUm(double confidence)
    {
        Check(confidence);
        return Math.Max(OwnUpper(confidence), LowerBoundUm(confidence));
    }

    private double OwnUpper(double confidence)
    {
        if (_upper.IsGuaranteed)
            return _upperScale * (_upper.Observed + _upper.OfNoise(confidence) + _upper.MoreBetween(confidence));
        var risk = (1 - confidence) / Math.Max(LeastShare, _upper.ShareAcrossWithin(_upper.Observed));
        return _upperScale * (_upper.Upper(Factor(risk), Factor(1 - confidence)) + _upper.MoreBetween(confidence));
    }

    private double Factor(double risk) => risk >= 0.5 ? 0 : StudentQuantile.Of(1 - risk, _upper.Widest.DegreesOfFreedom);

    /// <summary>The highest confidence, in steps of 0.001, at which the upper bound is within a limit; null below 0.5.</summary>
    /// <param name="limitUm">um.</param>
    public double? ConfidenceWithin(double limitUm) => Highest(c => UpperBoundUm(c) <= limitUm);

    /// <summary>The highest confidence, in steps of 0.001, at which the lower bound is beyond a limit; null below 0.5.</summary>
    /// <param name="limitUm">um.</param>
    public double? ConfidenceBeyond(double limitUm) => Highest(c => LowerBoundUm(c) > limitUm);

    /// <summary>Whether it is within a limit: the same as comparing floor and upper bound with it, without the lower bound, which is never above.</summary>
    internal bool IsWithin(double limitUm, double confidence) => NoiseFloorUm <= limitUm && OwnUpper(confidence) <= limitUm;

    /// <summary>Simulates all that may be asked for, so that the trials need not be kept.</summary>
    internal UncertainFigure Complete()
    {
        _own.Complete();
        _lower.Complete();
        _upper.Complete();
        return this;
    }

    /// <summary>Whether all that is known is how far errors move it.</summary>
    internal bool IsGuaranteed => _upper.IsGuaranteed;

    /// <summary>By how much a face between stations that nobody read may make it larger, um.</summary>
    internal double MoreBetweenUm(double confidence) => _upperScale * _upper.MoreBetween(confidence);

    /// <summary>The most that a comparison behind the figure is uncertain by.</summary>
    internal WidestError Widest => _upper.Widest;

    /// <summary>Equal when it came from the same simulation.</summary>
    public bool Equals(UncertainFigure? other)
        => other is not null && Line == other.Line && Parameter == other.Parameter && ObservedUm.Equals(other.ObservedUm) && LowUm.Equals(other.LowUm) && HighUm.Equals(other.HighUm);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Line, Parameter, ObservedUm);

    // Bounds move apart as confidence rises, so the answers are true up to one level and false above it.
    private static double? Highest(Func<double, bool> holds)
    {
        var (low, high) = (500, 1000);
        if (!holds(0.5))
            return null;
        while (high - low > 1)
        {
            var middle = (low + high) / 2;
            if (holds(middle / 1000.0))
                low = middle;
            else
                high = middle;
        }

        return low / 1000.0;
    }

    private static void Check(double confidence)
    {
        if (!(confidence is >= 0.5 and < 1))
            throw new ArgumentOutOfRangeException(nameof(confidence), confidence, "A confidence from 0.5 up to, not including, 1 is needed.");
    }

    /// <summary>The figure in one line.</summary>
    public override string ToString()
        => string.Create(CultureInfo.InvariantCulture, $"{Parameter} {EstimateUm:0.0} um ({LowUm:0.0} to {HighUm:0.0} um at 95 %; read as {ObservedUm:0.0}, noise floor {NoiseFloorUm:0.0})");
}
