using System;
using MathNet.Numerics.RootFinding;

namespace Waywright;

/// <summary>
/// An interval of permissible values: what a quantity is required to be (a tolerance interval, JCGM 106:2012, 3.3.5), or, narrowed by a guard band,
/// what its measured value may be (an acceptance interval, 3.3.9). One limit may be missing.
/// </summary>
public sealed record ToleranceLimits
{
    /// <param name="lower">Lower limit; null for none.</param>
    /// <param name="upper">Upper limit; null for none.</param>
    /// <exception cref="ArgumentException">Neither is given, one is not finite, or the lower is not below the upper.</exception>
    public ToleranceLimits(double? lower, double? upper)
    {
        if (lower is null && upper is null)
            throw new ArgumentException("At least one limit is needed.", nameof(lower));
        if (!double.IsFinite(lower ?? 0) || !double.IsFinite(upper ?? 0))
            throw new ArgumentException("Limits are finite; leave out the one that there is not.", double.IsFinite(lower ?? 0) ? nameof(upper) : nameof(lower));
        if (lower >= upper)
            throw new ArgumentException($"The lower limit {NumberText.Plain(lower.Value)} is not below the upper one, {NumberText.Plain(upper!.Value)}.", nameof(lower));
        (Lower, Upper) = (lower, upper);
    }

    /// <summary>Lower limit; null for none.</summary>
    public double? Lower { get; }

    /// <summary>Upper limit; null for none.</summary>
    public double? Upper { get; }

    /// <summary>Upper less lower limit; null for one limit.</summary>
    public double? Width => Upper - Lower;

    /// <summary>No more than this.</summary>
    public static ToleranceLimits AtMost(double upper) => new(null, upper);

    /// <summary>No less than this.</summary>
    public static ToleranceLimits AtLeast(double lower) => new(lower, null);

    /// <summary>From one to the other.</summary>
    public static ToleranceLimits Between(double lower, double upper) => new(lower, upper);

    /// <summary>How likely it is that the true value lies within the limits, when this was measured (JCGM 106:2012, 7.2 to 7.4): Gaussian, or Student's t for finite degrees of freedom.</summary>
    public Conformity Check(Uncertain value)
    {
        ArgumentNullException.ThrowIfNull(value);
        return new(this, value.Value, value.StandardUncertainty, ProbabilityWithin(value.Value, value.StandardUncertainty, value.DegreesOfFreedom), 0);
    }

    /// <summary>The same for what Monte Carlo gives: the share of the trials within the limits.</summary>
    public Conformity Check(MonteCarloResult value)
    {
        ArgumentNullException.ThrowIfNull(value);
        var share = value.Share(Lower ?? double.NegativeInfinity, Upper ?? double.PositiveInfinity);
        // By Agresti and Coull, The American Statistician 52 (1998) 119-126, so that 0 and 1 too keep an error.
        var shrunk = ((share * value.Trials) + 2) / (value.Trials + 4);
        return new(this, value.Mean, value.StandardUncertainty, share, Math.Sqrt(shrunk * (1 - shrunk) / (value.Trials + 4)));
    }

    /// <summary>Moved inwards by a guard band w, or outwards if it is negative. ISO 14253-1 takes w = U: at most 2.3 % false acceptance for k = 2 (JCGM 106:2012, 8.3.2.3).</summary>
    /// <param name="guardBand">w, in the limits' unit.</param>
    /// <exception cref="ArgumentException">It is not finite, or nothing is left between the limits.</exception>
    public ToleranceLimits Guarded(double guardBand) => new(Lower + guardBand, Upper - guardBand);

    /// <summary>
    /// The measured values that are to be accepted, so that each conforms with at least this probability (JCGM 106:2012, 8.3.3): limits moved inwards by
    /// t_p(nu) u; where the uncertainty reaches both limits, by what the two tails together need (7.7.5). Null if no value can be accepted.
    /// </summary>
    /// <param name="probability">Wanted probability of conformity, 0.5 to 0.9999.</param>
    /// <param name="standardUncertainty">u of a measured value, 0 or more, the same over the interval.</param>
    /// <param name="degreesOfFreedom">Of u, 1 or more; may be infinite.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside these.</exception>
    public ToleranceLimits? Acceptance(double probability, double standardUncertainty, double degreesOfFreedom = double.PositiveInfinity)
    {
        if (probability is not (>= 0.5 and <= 0.9999))
            throw new ArgumentOutOfRangeException(nameof(probability), probability, "A probability from 0.5 to 0.9999 is needed.");
        if (!double.IsFinite(standardUncertainty) || standardUncertainty < 0)
            throw new ArgumentOutOfRangeException(nameof(standardUncertainty), standardUncertainty, "A finite standard uncertainty of 0 or more is needed.");
        var guardBand = StudentQuantile.Of(probability, degreesOfFreedom) * standardUncertainty;
        if (Lower is not { } lower || Upper is not { } upper)
            return Guarded(guardBand);
        var centre = lower + ((upper - lower) / 2);
        if (Lacks(centre) > 0 || 2 * guardBand >= upper - lower)
            return null;
        // One tail's guard band is too narrow by what the other tail adds; the centre is far enough.
        if (Lacks(lower + guardBand) > 0)
            guardBand = Brent.FindRoot(Lacks, lower + guardBand, centre, 1e-12 * (upper - lower)) - lower;
        return 2 * guardBand < upper - lower ? Guarded(guardBand) : null;

        double Lacks(double value) => probability - ProbabilityWithin(value, standardUncertainty, degreesOfFreedom);
    }

    /// <summary>Probability that the true value lies within the limits.</summary>
    internal double ProbabilityWithin(double value, double standardUncertainty, double degreesOfFreedom)
    {
        if (standardUncertainty == 0)
            return value >= (Lower ?? value) && value <= (Upper ?? value) ? 1 : 0;
        var below = Lower is { } lower ? StudentQuantile.Probability((lower - value) / standardUncertainty, degreesOfFreedom) : 0;
        var above = Upper is { } upper ? StudentQuantile.Probability((value - upper) / standardUncertainty, degreesOfFreedom) : 0;
        return Math.Clamp(1 - below - above, 0, 1);
    }
}
