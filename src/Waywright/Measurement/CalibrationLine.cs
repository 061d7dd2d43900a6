using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;

namespace Waywright;

/// <summary>
/// A straight calibration line y = a + b x, from known values x and an instrument's readings y with their standard uncertainties (ISO/TS 28037:2010):
/// it turns a reading into a corrected value with its uncertainty. For an unweighted fit of a law, use <c>LineFit</c>.
/// </summary>
/// <remarks>
/// Weighted least squares where only y is uncertain (clause 6), generalised distance regression where x is too (clause 7). Errors are independent of each other.
/// Checked by the examples of ISO/TS 28037:2010, 6.3, 7.4, 11 and annex E, and by NIST's line-width calibration.
/// </remarks>
public sealed record CalibrationLine
{
    private const double Coverage = 0.95;

    private readonly double _meanX;
    private readonly Uncertain _atMean;
    private readonly Uncertain _slope;

    private CalibrationLine(string name, StraightLine line, double scale, double degreesOfFreedom, int points, double lowestX, double highestX)
    {
        _meanX = line.MeanX;
        _atMean = Uncertain.Input($"{name}: height of the calibration line", line.MeanY, scale * line.HeightUncertainty, degreesOfFreedom);
        _slope = Uncertain.Input($"{name}: slope of the calibration line", line.Slope, scale * line.SlopeUncertainty, degreesOfFreedom);
        (Name, LowestX, HighestX) = (name, lowestX, highestX);
        Intercept = line.MeanY - (line.Slope * _meanX);
        var heightVariance = _atMean.StandardUncertainty * _atMean.StandardUncertainty;
        var slopeVariance = _slope.StandardUncertainty * _slope.StandardUncertainty;
        InterceptUncertainty = Math.Sqrt(heightVariance + (_meanX * _meanX * slopeVariance));
        Covariance = -_meanX * slopeVariance;
        ChiSquared = double.IsPositiveInfinity(degreesOfFreedom) ? line.ChiSquared : null;
        ResidualDegreesOfFreedom = points - 2;
        ScatterFromResiduals = double.IsPositiveInfinity(degreesOfFreedom) ? null : scale;
    }

    /// <summary>The instrument's name: the line's errors are inputs under it, shared by all that is corrected with this line.</summary>
    public string Name { get; }

    /// <summary>a.</summary>
    public double Intercept { get; }

    /// <summary>b.</summary>
    public double Slope => _slope.Value;

    /// <summary>Standard uncertainty of a.</summary>
    public double InterceptUncertainty { get; }

    /// <summary>Standard uncertainty of b.</summary>
    public double SlopeUncertainty => _slope.StandardUncertainty;

    /// <summary>Covariance of a and b.</summary>
    public double Covariance { get; }

    /// <summary>Sum of the squared weighted residuals; null where the scatter itself gave the uncertainty.</summary>
    public double? ChiSquared { get; }

    /// <summary>Number of points less 2.</summary>
    public int ResidualDegreesOfFreedom { get; }

    /// <summary>95 % quantile of chi-squared for these degrees of freedom (6.2, 7.2: validation of the model).</summary>
    public double ChiSquaredLimit => MathNet.Numerics.Distributions.ChiSquared.InvCDF(ResidualDegreesOfFreedom, Coverage);

    /// <summary>Whether the points scatter about the line no more than their uncertainties allow; if not, the line or the uncertainties are wrong. Null where the scatter itself gave the uncertainty.</summary>
    public bool? IsConsistent => ChiSquared is { } chiSquared ? chiSquared <= ChiSquaredLimit : null;

    /// <summary>Standard deviation of a reading about the line, where it was estimated from the residuals; null where uncertainties were given.</summary>
    public double? ScatterFromResiduals { get; }

    /// <summary>Smallest known value that was tried; below it the line is a guess.</summary>
    public double LowestX { get; }

    /// <summary>Largest known value that was tried; above it the line is a guess.</summary>
    public double HighestX { get; }

    /// <summary>Whether 0 lies outside the slope's 95 % interval.</summary>
    internal bool HasProvenSlope => Math.Abs(_slope.Value) > _slope.Expanded(Coverage).U;

    /// <summary>Readings with known uncertainties against exact known values (clause 6).</summary>
    /// <param name="name">The instrument.</param>
    /// <param name="x">Known values, at least two different.</param>
    /// <param name="y">Readings.</param>
    /// <param name="uncertaintyY">Standard uncertainty of each reading, above 0.</param>
    /// <exception cref="ArgumentException">The name is empty, or the lists differ in length, hold fewer than 3 points, a number that is not finite, an uncertainty not above 0, or equal x only.</exception>
    public static CalibrationLine Of(string name, IReadOnlyList<double> x, IReadOnlyList<double> y, IReadOnlyList<double> uncertaintyY)
        => Of(name, x, [.. Enumerable.Repeat(0.0, x?.Count ?? 0)], y, uncertaintyY);

    /// <summary>Readings and known values that are both uncertain (clause 7).</summary>
    /// <param name="name">The instrument.</param>
    /// <param name="x">Known values, at least two different.</param>
    /// <param name="uncertaintyX">Standard uncertainty of each known value, 0 or more.</param>
    /// <param name="y">Readings.</param>
    /// <param name="uncertaintyY">Standard uncertainty of each reading, 0 or more, not both 0.</param>
    /// <exception cref="ArgumentException">As for the other, or the iteration does not settle because the uncertainties hide the line.</exception>
    public static CalibrationLine Of(string name, IReadOnlyList<double> x, IReadOnlyList<double> uncertaintyX, IReadOnlyList<double> y, IReadOnlyList<double> uncertaintyY)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        var line = StraightLine.Of(x, uncertaintyX, y, uncertaintyY);
        return new(name, line, 1, double.PositiveInfinity, x.Count, x.Min(), x.Max());
    }

    /// <summary>Readings of one unknown scatter, estimated from the residuals with n - 2 degrees of freedom (annex E, with the degrees of freedom kept for the coverage factor in place of its factor sqrt((n - 2) / (n - 4))).</summary>
    /// <param name="name">The instrument.</param>
    /// <param name="x">Known values, at least two different.</param>
    /// <param name="y">Readings.</param>
    /// <exception cref="ArgumentException">The name is empty, or the lists differ in length, hold fewer than 3 points, a number that is not finite, or equal x only.</exception>
    public static CalibrationLine FromScatter(string name, IReadOnlyList<double> x, IReadOnlyList<double> y)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        ArgumentNullException.ThrowIfNull(x);
        var line = StraightLine.Of(x, [.. x.Select(_ => 0.0)], y, [.. x.Select(_ => 1.0)]);
        return new(name, line, Math.Sqrt(line.ChiSquared / (x.Count - 2)), x.Count - 2, x.Count, x.Min(), x.Max());
    }

    /// <summary>
    /// The value that a reading stands for, x = (y - a) / b (11.1): to first order u2(x) = (u2(y) + u2(a) + x2 u2(b) + 2 x cov(a, b)) / b2.
    /// The line's part is shared with everything else that this line corrects, so it does not average out.
    /// </summary>
    /// <param name="reading">The reading with its own uncertainty, such as the scatter of one reading.</param>
    /// <exception cref="InvalidOperationException">The slope is not proven to differ from 0, so no reading stands for any value (Fieller's interval has no end).</exception>
    public Uncertain ValueOf(Uncertain reading)
    {
        ArgumentNullException.ThrowIfNull(reading);
        if (!HasProvenSlope)
            throw new InvalidOperationException(string.Create(CultureInfo.InvariantCulture, $"{Name}: the slope {_slope} is not proven to differ from 0: check it against values further apart."));
        return _meanX + ((reading - _atMean) / _slope);
    }

    /// <summary>The reading to be expected of a value, y = a + b x (11.2): u2(y) = u2(a) + x2 u2(b) + 2 x cov(a, b) + b2 u2(x).</summary>
    public Uncertain ReadingOf(Uncertain value)
    {
        ArgumentNullException.ThrowIfNull(value);
        return _atMean + (_slope * (value - _meanX));
    }
}
