using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;

namespace Waywright;

/// <summary>
/// A straight line fitted by unweighted least squares, y = a + b x or y = b x, with what its residuals say about it. For a profile's reference line and
/// straightness use <see cref="StraightnessFigures"/>; this one is for calibrations and laws, where the coefficients matter.
/// </summary>
/// <remarks>
/// The model: x exact, the errors of y independent, of one unknown standard deviation, which is estimated from the residuals. Units are those of y and x.
/// Equations: JCGM 100:2008, H.3.2. Sums are kept in pairs of doubles, so that the digits of the data are the limit. Checked by the certified values of
/// NIST StRD Norris and NoInt1 and by JCGM 100:2008, H.3.
/// </remarks>
public sealed record LineFit
{
    private readonly double _meanX;
    private readonly double _meanVariance;

    /// <param name="intercept">a.</param>
    /// <param name="slope">b.</param>
    /// <param name="variance">Of one y, from the residuals.</param>
    /// <param name="sxx">Sum of squares of x, from their mean or from the origin.</param>
    /// <param name="meanX">Where the line's height and slope are uncorrelated: the mean of x, or the origin.</param>
    /// <param name="meanVariance">Of the line's height there.</param>
    /// <param name="rSquared">Share of the variation that the line explains.</param>
    /// <param name="degreesOfFreedom">Points less coefficients.</param>
    private LineFit(Pair intercept, Pair slope, Pair variance, Pair sxx, Pair meanX, Pair meanVariance, double? rSquared, int degreesOfFreedom)
    {
        Intercept = intercept.Value;
        Slope = slope.Value;
        InterceptUncertainty = Math.Sqrt((meanVariance + (meanX * meanX * variance / sxx)).Value);
        SlopeUncertainty = Math.Sqrt((variance / sxx).Value);
        Covariance = (0 - (meanX * variance / sxx)).Value;
        ResidualDeviation = Math.Sqrt(variance.Value);
        RSquared = rSquared;
        DegreesOfFreedom = degreesOfFreedom;
        _meanX = meanX.Value;
        _meanVariance = meanVariance.Value;
        if (!double.IsFinite(Intercept + Slope + InterceptUncertainty + SlopeUncertainty + Covariance + ResidualDeviation + (rSquared ?? 0)))
            throw new ArgumentException("The points are too far apart or too close together for their sums of squares to be numbers.");
    }

    /// <summary>a, the line's height at x = 0; exactly zero through the origin.</summary>
    public double Intercept { get; }

    /// <summary>b.</summary>
    public double Slope { get; }

    /// <summary>Standard uncertainty of a: s sqrt(1/n + mean(x)² / Sxx); zero through the origin.</summary>
    public double InterceptUncertainty { get; }

    /// <summary>Standard uncertainty of b: s / sqrt(Sxx), through the origin s / sqrt(Σ x²).</summary>
    public double SlopeUncertainty { get; }

    /// <summary>Covariance of a and b: -s² mean(x) / Sxx; zero through the origin.</summary>
    public double Covariance { get; }

    /// <summary>s = sqrt(Σ r² / degrees of freedom).</summary>
    public double ResidualDeviation { get; }

    /// <summary>1 - Σ r² / Σ (y - mean y)², through the origin 1 - Σ r² / Σ y². Null where all y are equal (all zero), because nothing is there to explain.</summary>
    public double? RSquared { get; }

    /// <summary>n - 2, through the origin n - 1.</summary>
    public int DegreesOfFreedom { get; }

    /// <summary>y = a + b x through at least three points.</summary>
    /// <param name="x">Finite, at least two different.</param>
    /// <param name="y">Finite, one for each x.</param>
    /// <exception cref="ArgumentException">
    /// The lists differ in length, hold fewer than three points or a value that is not finite, all x are equal, or a sum of squares is out of range.
    /// </exception>
    public static LineFit Of(IReadOnlyList<double> x, IReadOnlyList<double> y)
    {
        Check(x, y, fewest: 3);
        var n = x.Count;
        if (x.All(value => value == x[0]))
            throw new ArgumentException("All x are equal: a slope needs at least two different ones.", nameof(x));
        var meanX = Pair.Sum(x) / n;
        var meanY = Pair.Sum(y) / n;
        Pair sxx = default, sxy = default, syy = default;
        for (var i = 0; i < n; i++)
        {
            var fromX = x[i] - meanX;
            var fromY = y[i] - meanY;
            sxx += fromX * fromX;
            sxy += fromX * fromY;
            syy += fromY * fromY;
        }

        var slope = sxy / sxx;
        var intercept = meanY - (slope * meanX);
        var variance = SquaredResiduals(x, y, intercept, slope) / (n - 2);
        var rSquared = y.All(value => value == y[0]) ? (double?)null : (1 - (variance * (n - 2) / syy)).Value;
        return new LineFit(intercept, slope, variance, sxx, meanX, variance / n, rSquared, n - 2);
    }

    /// <summary>y = b x through at least two points.</summary>
    /// <param name="x">Finite, at least one not zero.</param>
    /// <param name="y">Finite, one for each x.</param>
    /// <exception cref="ArgumentException">
    /// The lists differ in length, hold fewer than two points or a value that is not finite, all x are zero, or a sum of squares is out of range.
    /// </exception>
    public static LineFit ThroughOrigin(IReadOnlyList<double> x, IReadOnlyList<double> y)
    {
        Check(x, y, fewest: 2);
        var n = x.Count;
        if (x.All(value => value == 0))
            throw new ArgumentException("All x are zero: a slope needs at least one that is not.", nameof(x));
        Pair sxx = default, sxy = default, syy = default;
        for (var i = 0; i < n; i++)
        {
            sxx += (Pair)x[i] * x[i];
            sxy += (Pair)x[i] * y[i];
            syy += (Pair)y[i] * y[i];
        }

        var slope = sxy / sxx;
        var variance = SquaredResiduals(x, y, default, slope) / (n - 1);
        var rSquared = y.All(value => value == 0) ? (double?)null : (1 - (variance * (n - 1) / syy)).Value;
        return new LineFit(default, slope, variance, sxx, default, default, rSquared, n - 1);
    }

    /// <summary>The line's value at x: a + b x.</summary>
    public double At(double x) => Intercept + (Slope * x);

    /// <summary>
    /// Standard uncertainty of the line's value at x: s sqrt(1/n + (x - mean(x))² / Sxx), which is JCGM 100:2008, H.3.4; through the origin |x| u(b).
    /// The scatter of one more y is not in it.
    /// </summary>
    public double UncertaintyAt(double x) => Math.Sqrt(_meanVariance + ((x - _meanX) * (x - _meanX) * SlopeUncertainty * SlopeUncertainty));

    private static Pair SquaredResiduals(IReadOnlyList<double> x, IReadOnlyList<double> y, Pair intercept, Pair slope)
    {
        Pair squares = default;
        for (var i = 0; i < x.Count; i++)
        {
            var residual = y[i] - intercept - (slope * x[i]);
            squares += residual * residual;
        }

        return squares;
    }

    private static void Check(IReadOnlyList<double> x, IReadOnlyList<double> y, int fewest)
    {
        ArgumentNullException.ThrowIfNull(x);
        ArgumentNullException.ThrowIfNull(y);
        if (x.Count != y.Count)
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"{x.Count} x and {y.Count} y: each point needs both."), nameof(y));
        if (x.Count < fewest)
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"{x.Count} points: at least {fewest} are needed for a line and its uncertainty."), nameof(x));
        for (var i = 0; i < x.Count; i++)
        {
            if (!double.IsFinite(x[i]) || !double.IsFinite(y[i]))
                throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"Point {i} is ({x[i]}, {y[i]}): both must be finite."), double.IsFinite(x[i]) ? nameof(y) : nameof(x));
        }
    }

    /// <summary>
    /// A number as the unevaluated sum of two doubles, about 31 digits. Dekker, Numerische Mathematik 18 (1971) 224-242; exact products by a fused
    /// multiply-add, which rounds the same everywhere.
    /// </summary>
    private readonly record struct Pair(double High, double Low)
    {
        public double Value => High + Low;

        public static implicit operator Pair(double value) => new(value, 0);

        public static Pair operator +(Pair a, Pair b)
        {
            var sum = a.High + b.High;
            var part = sum - a.High;
            var error = (a.High - (sum - part)) + (b.High - part);
            return Normal(sum, error + (a.Low + b.Low));
        }

        public static Pair operator -(Pair a, Pair b) => a + new Pair(-b.High, -b.Low);

        public static Pair operator *(Pair a, Pair b)
        {
            var product = a.High * b.High;
            return Normal(product, Math.FusedMultiplyAdd(a.High, b.High, -product) + ((a.High * b.Low) + (a.Low * b.High)));
        }

        public static Pair operator /(Pair a, Pair b)
        {
            var quotient = a.High / b.High;
            var rest = a - (quotient * b);
            return Normal(quotient, rest.High / b.High);
        }

        public static Pair Sum(IEnumerable<double> values) => values.Aggregate(default(Pair), (sum, value) => sum + value);

        private static Pair Normal(double high, double low)
        {
            var sum = high + low;
            return new Pair(sum, low - (sum - high));
        }
    }
}
