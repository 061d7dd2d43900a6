using System;

namespace Waywright;

/// <summary>
/// What is known of a quantity, as a probability distribution (JCGM 101:2008, table 1): where its value may lie, and how likely each place is.
/// For Monte Carlo; <see cref="Uncertain"/> keeps only mean and standard uncertainty and is enough where the formula hardly bends.
/// </summary>
/// <remarks>Draws are counter-based: see <see cref="MonteCarlo"/>. Numbers carry no unit; all of one model must be in units that fit together.</remarks>
public abstract record Distribution
{
    private protected Distribution()
    {
    }

    /// <summary>Expectation.</summary>
    public abstract double Mean { get; }

    /// <summary>Standard deviation of the distribution, which is the standard uncertainty; infinite for Student's t with 2 or fewer degrees of freedom.</summary>
    public abstract double StandardUncertainty { get; }

    /// <summary>A value with a standard uncertainty, and no limits (6.4.7).</summary>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite, or u is negative.</exception>
    public static Distribution Gaussian(double mean, double standardUncertainty)
        => new GaussianDistribution(Finite(mean, nameof(mean)), NotNegative(standardUncertainty, nameof(standardUncertainty)));

    /// <summary>A Gaussian cut off at limits that can't be passed; its mean and standard uncertainty are those of what is left.</summary>
    /// <param name="mean">Before the cut.</param>
    /// <param name="standardUncertainty">Before the cut, above 0.</param>
    /// <param name="low">Lower limit; may be minus infinity.</param>
    /// <param name="high">Upper limit; may be infinity.</param>
    /// <exception cref="ArgumentException">Limits in the wrong order, or less than a millionth of the Gaussian between them.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite, or u is not above 0.</exception>
    public static Distribution TruncatedGaussian(double mean, double standardUncertainty, double low, double high)
        => TruncatedGaussianDistribution.Of(Finite(mean, nameof(mean)), Positive(standardUncertainty, nameof(standardUncertainty)), low, high);

    /// <summary>An estimate from few readings: mean + scale t, scale = s / sqrt n, n - 1 degrees of freedom (6.4.9). Its u is scale sqrt(nu / (nu - 2)).</summary>
    /// <param name="mean">Mean of the readings.</param>
    /// <param name="scale">Standard uncertainty as JCGM 100 calculates it, 0 or more.</param>
    /// <param name="degreesOfFreedom">1 or more; infinite gives the Gaussian.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite, the scale is negative, or there is less than one degree of freedom.</exception>
    public static Distribution StudentT(double mean, double scale, double degreesOfFreedom)
    {
        StudentQuantile.CheckDegreesOfFreedom(degreesOfFreedom);
        Finite(mean, nameof(mean));
        NotNegative(scale, nameof(scale));
        return double.IsPositiveInfinity(degreesOfFreedom) ? new GaussianDistribution(mean, scale) : new StudentDistribution(mean, scale, degreesOfFreedom);
    }

    /// <summary>Anywhere between limits, all places alike (6.4.2): u = (high - low) / sqrt 12. Equal limits make a constant.</summary>
    /// <exception cref="ArgumentException">Limits in the wrong order.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A limit is not finite.</exception>
    public static Distribution Rectangular(double low, double high)
    {
        CheckLimits(low, high);
        return new RectangularDistribution(low, high);
    }

    /// <summary>Between limits that are themselves known only within +/- d (6.4.3): u2 = (high - low)2 / 12 + d2 / 9.</summary>
    /// <param name="low">Lower limit, best estimate.</param>
    /// <param name="high">Upper limit, best estimate.</param>
    /// <param name="inexactness">d, 0 or more, less than half the width.</param>
    /// <exception cref="ArgumentException">Limits in the wrong order, or d not less than half the width.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite, or d is negative.</exception>
    public static Distribution CurvilinearTrapezoid(double low, double high, double inexactness)
    {
        CheckLimits(low, high);
        NotNegative(inexactness, nameof(inexactness));
        if (inexactness >= (high - low) / 2)
            throw new ArgumentException("The limits may be inexact by less than half the width between them.", nameof(inexactness));
        return new CurvilinearTrapezoidDistribution(low, high, inexactness);
    }

    /// <summary>Sum of two rectangular quantities (6.4.4): u2 = (high - low)2 (1 + beta2) / 24.</summary>
    /// <param name="low">Lower limit.</param>
    /// <param name="high">Upper limit.</param>
    /// <param name="beta">Width of the top over width of the base: 0 is a triangle, 1 a rectangle.</param>
    /// <exception cref="ArgumentException">Limits in the wrong order.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A limit is not finite, or beta is not between 0 and 1.</exception>
    public static Distribution Trapezoid(double low, double high, double beta)
    {
        CheckLimits(low, high);
        if (beta is not (>= 0 and <= 1))
            throw new ArgumentOutOfRangeException(nameof(beta), beta, "The top is 0 to 1 times as wide as the base.");
        return new TrapezoidDistribution(low, high, beta);
    }

    /// <summary>Sum of two equal rectangular quantities (6.4.5): u = (high - low) / sqrt 24.</summary>
    /// <exception cref="ArgumentException">Limits in the wrong order.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A limit is not finite.</exception>
    public static Distribution Triangular(double low, double high) => Trapezoid(low, high, 0);

    /// <summary>A quantity that swings between limits and is met at any moment (6.4.6, U-shaped): u = (high - low) / sqrt 8.</summary>
    /// <exception cref="ArgumentException">Limits in the wrong order.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A limit is not finite.</exception>
    public static Distribution Arcsine(double low, double high)
    {
        CheckLimits(low, high);
        return new ArcsineDistribution(low, high);
    }

    /// <summary>What an uncertain number says, taken as independent of all others: Gaussian, or Student's t where its degrees of freedom are finite.</summary>
    public static Distribution Of(Uncertain value)
    {
        ArgumentNullException.ThrowIfNull(value);
        return StudentT(value.Value, value.StandardUncertainty, value.DegreesOfFreedom);
    }

    /// <summary>Draws one value for each consecutive trial.</summary>
    /// <param name="draws">Where the numbers come from.</param>
    /// <param name="input">Which input.</param>
    /// <param name="firstTrial">The trial of the first value, even.</param>
    /// <param name="values">Gets the draws, at most <see cref="RandomDraws.MostAtOnce"/>.</param>
    internal abstract void Draw(RandomDraws draws, uint input, long firstTrial, Span<double> values);

    private static double Finite(double value, string name)
        => double.IsFinite(value) ? value : throw new ArgumentOutOfRangeException(name, value, "A finite number is needed.");

    private static double NotNegative(double value, string name)
        => Finite(value, name) >= 0 ? value : throw new ArgumentOutOfRangeException(name, value, "A number of 0 or more is needed.");

    private static double Positive(double value, string name)
        => Finite(value, name) > 0 ? value : throw new ArgumentOutOfRangeException(name, value, "A number above 0 is needed.");

    private static void CheckLimits(double low, double high)
    {
        Finite(low, nameof(low));
        Finite(high, nameof(high));
        if (low > high)
            throw new ArgumentException($"The lower limit {NumberText.Plain(low)} is above the upper one, {NumberText.Plain(high)}.", nameof(low));
    }
}
