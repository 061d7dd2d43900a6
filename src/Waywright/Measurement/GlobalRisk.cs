using System;
using System.Collections.Generic;
using System.Linq;
using MathNet.Numerics.Integration;

namespace Waywright;

/// <summary>How often inspection goes wrong over all pieces that a process makes (JCGM 106:2012, 9.5): both risks are shares of all pieces.</summary>
/// <param name="ConsumerRisk">R_C: the piece does not conform and is accepted.</param>
/// <param name="ProducerRisk">R_P: the piece conforms and is rejected.</param>
/// <param name="Conforming">Share of the pieces that conform.</param>
public sealed record GlobalRisk(double ConsumerRisk, double ProducerRisk, double Conforming)
{
    // Gauss and Legendre's rule of this order, on panels no wider than a deviation of what varies fastest: good to twelve digits for Gaussian curves.
    private const int Order = 20;

    // Beyond these many deviations a Gaussian holds less than 1e-23.
    private const double Reach = 10;

    /// <summary>For a process whose pieces are Gaussian.</summary>
    /// <param name="limits">What a piece is required to be.</param>
    /// <param name="acceptance">Which measured values are accepted.</param>
    /// <param name="standardUncertainty">u of a measurement, Gaussian, above 0.</param>
    /// <param name="processMean">Mean of the pieces.</param>
    /// <param name="processDeviation">Standard deviation of the pieces, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite, or an uncertainty or deviation is not above 0.</exception>
    public static GlobalRisk Of(ToleranceLimits limits, ToleranceLimits acceptance, double standardUncertainty, double processMean, double processDeviation)
    {
        CheckPositive(processDeviation, nameof(processDeviation));
        CheckFinite(processMean, nameof(processMean));
        return Of(
            limits,
            acceptance,
            standardUncertainty,
            value => StudentQuantile.NormalDensity((value - processMean) / processDeviation) / processDeviation,
            processMean - (Reach * processDeviation),
            processMean + (Reach * processDeviation),
            processDeviation);
    }

    /// <summary>For a process of any density.</summary>
    /// <param name="limits">What a piece is required to be.</param>
    /// <param name="acceptance">Which measured values are accepted.</param>
    /// <param name="standardUncertainty">u of a measurement, Gaussian, above 0.</param>
    /// <param name="density">Probability density of the pieces, smooth from <paramref name="low"/> to <paramref name="high"/>; what lies outside is left out.</param>
    /// <param name="low">Where it begins.</param>
    /// <param name="high">Where it ends, or is too small to matter.</param>
    /// <param name="scale">Length over which the density changes much, such as its standard deviation, above 0.</param>
    /// <exception cref="ArgumentException">Low is not below high, or so many scales away that the sum would take long.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite, or u or the scale is not above 0.</exception>
    public static GlobalRisk Of(ToleranceLimits limits, ToleranceLimits acceptance, double standardUncertainty, Func<double, double> density, double low, double high, double scale)
    {
        ArgumentNullException.ThrowIfNull(limits);
        ArgumentNullException.ThrowIfNull(acceptance);
        ArgumentNullException.ThrowIfNull(density);
        CheckPositive(standardUncertainty, nameof(standardUncertainty));
        CheckPositive(scale, nameof(scale));
        CheckFinite(low, nameof(low));
        CheckFinite(high, nameof(high));
        var panel = Math.Min(scale, standardUncertainty);
        if (low >= high || (high - low) / panel > 1e6)
            throw new ArgumentException("The density's range is empty, or longer than a million times the scale or the uncertainty.", nameof(low));
        double consumer = 0, producer = 0, conforming = 0;
        foreach (var (from, to) in Stretches(limits, low, high))
        {
            var isConforming = limits.ProbabilityWithin(from + ((to - from) / 2), 0, double.PositiveInfinity) == 1;
            var all = Integral(density, from, to, panel);
            var accepted = Integral(value => density(value) * acceptance.ProbabilityWithin(value, standardUncertainty, double.PositiveInfinity), from, to, panel);
            if (isConforming)
                (conforming, producer) = (conforming + all, producer + all - accepted);
            else
                consumer += accepted;
        }

        return new(consumer, producer, conforming);
    }

    // Cut where the limits are: there the two risks change places.
    private static IEnumerable<(double From, double To)> Stretches(ToleranceLimits limits, double low, double high)
    {
        double?[] inner = [limits.Lower, limits.Upper];
        double[] cuts = [low, .. inner.OfType<double>().Where(c => c > low && c < high), high];
        return cuts.Zip(cuts.Skip(1));
    }

    private static double Integral(Func<double, double> f, double from, double to, double panel)
    {
        var panels = (int)Math.Ceiling((to - from) / panel);
        var sum = 0.0;
        for (var i = 0; i < panels; i++)
            sum += GaussLegendreRule.Integrate(f, from + ((to - from) * i / panels), from + ((to - from) * (i + 1) / panels), Order);
        return sum;
    }

    private static void CheckFinite(double value, string name)
    {
        if (!double.IsFinite(value))
            throw new ArgumentOutOfRangeException(name, value, "A finite number is needed.");
    }

    private static void CheckPositive(double value, string name)
    {
        if (!double.IsFinite(value) || value <= 0)
            throw new ArgumentOutOfRangeException(name, value, "A finite number above 0 is needed.");
    }
}
