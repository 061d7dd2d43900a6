using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;

namespace Waywright;

/// <summary>
/// Straight line by weighted least squares, or by generalised distance regression where x is uncertain too (ISO/TS 28037:2010, 6.2 and 7.2), about the weighted mean,
/// where height and slope are uncorrelated.
/// </summary>
internal sealed record StraightLine(double MeanX, double MeanY, double HeightUncertainty, double Slope, double SlopeUncertainty, double ChiSquared)
{
    private const int MostSteps = 200;
    private const double Settled = 1e-14;

    /// <exception cref="ArgumentException">See <see cref="CalibrationLine"/>.</exception>
    public static StraightLine Of(IReadOnlyList<double> x, IReadOnlyList<double> uncertaintyX, IReadOnlyList<double> y, IReadOnlyList<double> uncertaintyY)
    {
        Check(x, uncertaintyX, y, uncertaintyY);
        var hasExactX = uncertaintyX.All(u => u == 0);
        var line = Weighted(x, y, hasExactX ? [.. uncertaintyY.Select(u => 1 / (u * u))] : [.. y.Select(_ => 1.0)]);
        if (hasExactX)
            return Finite(line);
        // 7.2.1, steps 2 to 5: points moved along their uncertainties onto the present line, then a weighted step, until the slope settles.
        for (var step = 0; step < MostSteps; step++)
        {
            var next = Step(line, x, uncertaintyX, y, uncertaintyY);
            var isSettled = Math.Abs(next.Slope - line.Slope) <= Settled * Math.Max(Math.Abs(next.Slope), next.SlopeUncertainty);
            line = next;
            if (isSettled)
                return Finite(line);
        }

        throw new ArgumentException("The line does not settle: the uncertainties of x hide it.", nameof(uncertaintyX));
    }

    private static StraightLine Weighted(IReadOnlyList<double> x, IReadOnlyList<double> y, double[] weights)
    {
        double sum = 0, meanX = 0, meanY = 0, sxx = 0, sxy = 0, chiSquared = 0;
        for (var i = 0; i < weights.Length; i++)
            sum += weights[i];
        for (var i = 0; i < weights.Length; i++)
            (meanX, meanY) = (meanX + (weights[i] / sum * x[i]), meanY + (weights[i] / sum * y[i]));
        for (var i = 0; i < weights.Length; i++)
            (sxx, sxy) = (sxx + (weights[i] * (x[i] - meanX) * (x[i] - meanX)), sxy + (weights[i] * (x[i] - meanX) * (y[i] - meanY)));
        var slope = sxy / sxx;
        for (var i = 0; i < weights.Length; i++)
            chiSquared += weights[i] * Square(y[i] - meanY - (slope * (x[i] - meanX)));
        return new(meanX, meanY, 1 / Math.Sqrt(sum), slope, 1 / Math.Sqrt(sxx), chiSquared);
    }

    private static StraightLine Step(StraightLine line, IReadOnlyList<double> x, IReadOnlyList<double> uncertaintyX, IReadOnlyList<double> y, IReadOnlyList<double> uncertaintyY)
    {
        var weights = new double[x.Count];
        var moved = new double[x.Count];
        for (var i = 0; i < weights.Length; i++)
        {
            var (varianceX, varianceY) = (Square(uncertaintyX[i]), Square(uncertaintyY[i]));
            var residual = y[i] - line.MeanY - (line.Slope * (x[i] - line.MeanX));
            weights[i] = 1 / (varianceY + (line.Slope * line.Slope * varianceX));
            moved[i] = x[i] + (line.Slope * varianceX * weights[i] * residual);
        }

        // A step for the heights over the moved points: residual + slope * moved is what the point says there.
        var heights = new double[x.Count];
        for (var i = 0; i < weights.Length; i++)
            heights[i] = y[i] + (line.Slope * (moved[i] - x[i]));
        return Weighted(moved, heights, weights);
    }

    private static StraightLine Finite(StraightLine line)
        => double.IsFinite(line.MeanX + line.MeanY + line.HeightUncertainty + line.Slope + line.SlopeUncertainty + line.ChiSquared)
            ? line
            : throw new ArgumentException("The numbers are too far apart or too close together for their sums of squares to be numbers.");

    private static double Square(double value) => value * value;

    private static void Check(IReadOnlyList<double> x, IReadOnlyList<double> uncertaintyX, IReadOnlyList<double> y, IReadOnlyList<double> uncertaintyY)
    {
        ArgumentNullException.ThrowIfNull(x);
        ArgumentNullException.ThrowIfNull(uncertaintyX);
        ArgumentNullException.ThrowIfNull(y);
        ArgumentNullException.ThrowIfNull(uncertaintyY);
        if (x.Count != y.Count || x.Count != uncertaintyX.Count || x.Count != uncertaintyY.Count)
            throw new ArgumentException($"{x.Count} x, {uncertaintyX.Count} u(x), {y.Count} y, {uncertaintyY.Count} u(y): each point needs all of them.", nameof(y));
        if (x.Count < 3)
            throw new ArgumentException($"{x.Count} points: at least 3 are needed, so that one is left to check the line.", nameof(x));
        for (var i = 0; i < x.Count; i++)
        {
            if (!double.IsFinite(x[i]) || !double.IsFinite(y[i]) || !double.IsFinite(uncertaintyX[i]) || !double.IsFinite(uncertaintyY[i]))
                throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"Point {i + 1} holds a number that is not finite."), nameof(x));
            if (uncertaintyX[i] < 0 || uncertaintyY[i] < 0 || (uncertaintyX[i] == 0 && uncertaintyY[i] == 0))
                throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"Point {i + 1} has a negative uncertainty, or none at all: an exact point would leave no line to fit."), nameof(uncertaintyY));
        }

        if (x.All(value => value == x[0]))
            throw new ArgumentException("All x are equal: a slope needs at least two different ones.", nameof(x));
    }
}
