using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using UnitsNet;

namespace Waywright;

/// <summary>
/// One tension from the notes of several spans of the same belt, the carriage parked at four to six places: 1 / f = 2 (L + d) sqrt(mu / T), a straight line over L. Its slope gives T / mu and needs no
/// absolute length; d takes in what the ends do and where the scale starts.
/// </summary>
/// <remarks>
/// Weighted least squares where only notes are uncertain, generalised distance regression where lengths are too (ISO/TS 28037:2010, clauses 6 and 7). Two signs say that the tension changes along the travel:
/// residuals beyond their uncertainties (95 % quantile of chi-squared), and a curve, tested by its t value. Ends on pulleys, whose d does not depend on L to second order; a stated bending stiffness is taken out.
/// </remarks>
public sealed record TravelFit
{
    private const double Coverage = 0.95;

    private TravelFit(Measured<LinearDensity>? density, Uncertain ratio, Uncertain offset, IReadOnlyList<(double LengthM, double Hz)> places, IEnumerable<double> residuals, double? chiSquared, double? curve)
    {
        (Density, TensionOverDensity, EndOffset, ChiSquared, CurveT) = (density, ratio, Quantity.FromSi<Length>(offset, "intercept over slope of 1 / f on L"), chiSquared, curve);
        LengthsM = FixedList<double>.Copy(places.Select(p => p.LengthM));
        NotesHz = FixedList<double>.Copy(places.Select(p => p.Hz));
        ResidualShares = FixedList<double>.Copy(residuals);
        Tension = density is null ? null : Quantity.FromSi<Force>(ratio * density.Si, "4 mu / slope2 of 1 / f on L");
    }

    /// <summary>T / mu in m2/s2: the square of the speed of a wave on the belt.</summary>
    public Uncertain TensionOverDensity { get; }

    /// <summary>What the ends add to each length, d.</summary>
    public Measured<Length> EndOffset { get; }

    /// <summary>Mass per length; null if not given.</summary>
    public Measured<LinearDensity>? Density { get; }

    /// <summary>T; null without a density.</summary>
    public Measured<Force>? Tension { get; }

    /// <summary>Correlation of T / mu and d: both come from one line.</summary>
    public double Correlation => TensionOverDensity.CorrelationWith(EndOffset.Si);

    /// <summary>Covariance of T / mu (m2/s2) and d (m).</summary>
    public double Covariance => Correlation * TensionOverDensity.StandardUncertainty * EndOffset.Si.StandardUncertainty;

    /// <summary>The lengths, m, in the order given.</summary>
    public IReadOnlyList<double> LengthsM { get; }

    /// <summary>The notes, Hz.</summary>
    public IReadOnlyList<double> NotesHz { get; }

    /// <summary>Each note against the line's, as a share of it: 0.002 sounds 0.2 % high for its place.</summary>
    public IReadOnlyList<double> ResidualShares { get; }

    /// <summary>Sum of squared weighted residuals; null where the scatter itself gave the uncertainty.</summary>
    public double? ChiSquared { get; }

    /// <summary>The curve's size over its standard uncertainty; null for fewer than four places.</summary>
    public double? CurveT { get; }

    /// <summary>Whether the places don't lie on one line: the tension changes along the travel, or a place was measured wrongly. Null where too few places leave it open.</summary>
    public bool? IsChangingAlongTravel { get; private init; }

    /// <summary>The result in words.</summary>
    public string Verdict => TravelFitText.Verdict(this);

    /// <summary>Fits at least three places.</summary>
    /// <param name="places">Length of the plucked span (or the carriage's place on a scale) and its lowest note.</param>
    /// <param name="density">Mass per length, for the tension itself.</param>
    /// <param name="bendingStiffnessNm2">EI, if known: the notes are freed of it (pinned ends); needs the density.</param>
    /// <exception cref="ArgumentException">Fewer than three places, lengths all equal, a note not above 0, a note that falls with the length, uncertainties for some places only, or a stiffness without a density.</exception>
    public static TravelFit Of(IReadOnlyList<(Measured<Length> Length, Measured<Frequency> Frequency)> places, Measured<LinearDensity>? density = null, Uncertain? bendingStiffnessNm2 = null)
    {
        ArgumentNullException.ThrowIfNull(places);
        if (places.Count < 3)
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"{places.Count} places: at least 3 are needed, 4 to 6 are better."), nameof(places));
        if (places.Any(p => p.Frequency.Si.Value <= 0))
            throw new ArgumentException("A note is above 0 Hz.", nameof(places));
        if (density is { Si.Value: <= 0 })
            throw new ArgumentException("A density is above 0.", nameof(density));
        if (bendingStiffnessNm2 is not null && density is null)
            throw new ArgumentException("A bending stiffness needs the density too.", nameof(bendingStiffnessNm2));
        var known = places.Count(p => p.Frequency.Si.StandardUncertainty > 0 || p.Length.Si.StandardUncertainty > 0);
        if (known != 0 && known != places.Count)
            throw new ArgumentException("State uncertainties for all places, or for none.", nameof(places));
        double[] lengths = [.. places.Select(p => p.Length.Si.Value)];
        double[] periods = [.. places.Select(p => 1 / p.Frequency.Si.Value)];
        double[] lengthU = [.. places.Select(p => p.Length.Si.StandardUncertainty)];
        double[] periodU = [.. places.Select(p => known == 0 ? 1 : p.Frequency.Si.StandardUncertainty / (p.Frequency.Si.Value * p.Frequency.Si.Value))];
        var line = StraightLine.Of(lengths, lengthU, periods, periodU);
        for (var step = 0; bendingStiffnessNm2 is { } bending && step < 20; step++)
        {
            // A stiff belt's period is too short by the pinned ratio: longer ones stand for the string.
            var tension = density!.Si.Value * 4 / (line.Slope * line.Slope);
            var offset = (line.MeanY / line.Slope) - line.MeanX;
            double[] freed = [.. periods.Select((p, i) => p * TensionedBeam.Ratio(1, (lengths[i] + offset) * Math.Sqrt(tension / bending.Value), 0))];
            line = StraightLine.Of(lengths, lengthU, freed, periodU);
        }

        if (line.Slope <= 0)
            throw new ArgumentException("The notes don't fall with the length: check which length belongs to which note.", nameof(places));
        var df = places.Count - 2;
        var scale = known == 0 ? Math.Sqrt(line.ChiSquared / df) : 1;
        var (heightU, slopeU) = (scale * line.HeightUncertainty, scale * line.SlopeUncertainty);
        var degrees = known == 0 ? df : double.PositiveInfinity;
        var height = Uncertain.Input(new object(), "height of the line through the notes", line.MeanY, heightU, degrees);
        var slope = Uncertain.Input(new object(), "slope of the line through the notes", line.Slope, slopeU, degrees);
        double? chiSquared = known == 0 ? null : line.ChiSquared;
        var curve = CurveOf(lengths, periods, known == 0 ? null : periodU, lengthU, line.Slope);
        double[] residuals = [.. lengths.Select((l, i) => (line.MeanY + (line.Slope * (l - line.MeanX))) / periods[i] - 1)];
        return new(density?.AsInput("density"), 4 / slope.Pow(2), (height / slope) - line.MeanX, [.. lengths.Zip(places, (l, p) => (l, p.Frequency.Si.Value))], residuals, chiSquared, curve?.T)
        {
            IsChangingAlongTravel = chiSquared is { } value && value > MathNet.Numerics.Distributions.ChiSquared.InvCDF(df, Coverage) ? true
                : curve is { } c && Math.Abs(c.T) > StudentQuantile.Of((1 + Coverage) / 2, c.DegreesOfFreedom) ? true
                : chiSquared is null && curve is null ? null
                : false,
        };
    }

    // The quadratic term over its uncertainty: from stated ones, or from the residuals of the curve where a degree of freedom is left.
    private static (double T, double DegreesOfFreedom)? CurveOf(double[] x, double[] y, double[]? uncertainty, double[] lengthU, double slope)
    {
        if (x.Distinct().Count() < 4)
            return null;
        var middle = x.Average();
        var reach = x.Max(v => Math.Abs(v - middle));
        double[] scaled = [.. x.Select(v => (v - middle) / reach)];
        if (uncertainty is null)
        {
            var fit = Regression.Polynomial(scaled, y, 2);
            return fit.Uncertainties[2] > 0 ? (fit.Coefficients[2] / fit.Uncertainties[2], fit.DegreesOfFreedom) : null;
        }

        // The part of the square that no line explains, under the weights.
        double[] weights = [.. uncertainty.Zip(lengthU, (u, l) => 1 / ((u * u) + (slope * slope * l * l)))];
        double[] squares = [.. scaled.Select(s => s * s)];
        double[] part = Part(scaled, squares, weights);
        double[] rest = Part(scaled, y, weights);
        var (pp, pr) = (0.0, 0.0);
        for (var i = 0; i < part.Length; i++)
            (pp, pr) = (pp + (weights[i] * part[i] * part[i]), pr + (weights[i] * part[i] * rest[i]));
        return (pr / Math.Sqrt(pp), double.PositiveInfinity);
    }

    /// <summary>What a weighted line leaves of y.</summary>
    private static double[] Part(double[] x, double[] y, double[] weights)
    {
        var sum = weights.Sum();
        var (mx, my) = (weights.Zip(x, (w, v) => w * v).Sum() / sum, weights.Zip(y, (w, v) => w * v).Sum() / sum);
        var (xx, xy) = (0.0, 0.0);
        for (var i = 0; i < x.Length; i++)
            (xx, xy) = (xx + (weights[i] * (x[i] - mx) * (x[i] - mx)), xy + (weights[i] * (x[i] - mx) * (y[i] - my)));
        return [.. x.Select((v, i) => y[i] - my - (xy / xx * (v - mx)))];
    }
}

/// <summary>A fit along the travel in words.</summary>
internal static class TravelFitText
{
    public static string Verdict(TravelFit fit)
    {
        var found = fit.Tension is { } tension ? $"The belt is at {tension.ToShortString()}" : $"T / mu is {fit.TensionOverDensity.ToShortString()} m2/s2";
        var ends = $"ends add {fit.EndOffset.ToShortString()} to each length";
        var worst = Enumerable.Range(0, fit.NotesHz.Count).MaxBy(i => Math.Abs(fit.ResidualShares[i]));
        return fit.IsChangingAlongTravel switch
        {
            true => $"Look at the frame first: the tension changes along the travel, or a place was read wrongly. The place at {NumberText.Rounded(1000 * fit.LengthsM[worst], 0)} mm sounds {NumberText.Rounded(100 * fit.ResidualShares[worst], 1)} % off the common line. A pulley that runs out, belts that don't run parallel to the rails, or a carriage that was pushed do that.",
            null => $"{found}; {ends}. Three places only: pluck at a fourth, so that a change along the travel would show.",
            _ => $"{found}, the same along the travel; {ends}. The line needs no absolute length, and the ends have dropped out.",
        };
    }
}
