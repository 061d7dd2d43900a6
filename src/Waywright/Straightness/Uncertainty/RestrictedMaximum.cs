using System;

namespace Waywright;

/// <summary>
/// The largest v . e over the comparisons v of a figure, and mixtures of them, with v . z no less than a level: by the duality of linear programs the smallest, over l of 0 or more, of
/// <c>T(e + l z) - l level</c>, which is convex in l and costs one evaluation of the figure each.
/// </summary>
internal static class RestrictedMaximum
{
    private const int Turns = 40;
    private const double Close = 1e-7;

    /// <param name="figure">A sublinear figure.</param>
    /// <param name="e">Residuals of an error, padded.</param>
    /// <param name="z">Residuals of the heights, padded.</param>
    /// <param name="attained">Weights of the comparison that z itself attains.</param>
    /// <param name="observed">T(z), above the level.</param>
    /// <param name="level">What v . z has to reach.</param>
    /// <param name="sum">Room for padded residuals.</param>
    public static double Of(HeightFigure figure, ReadOnlySpan<double> e, ReadOnlySpan<double> z, ReadOnlySpan<double> attained, double observed, double level, Span<double> sum)
    {
        var (value, along) = figure.At(e, z);
        if (along >= level)
            return value;
        var risingAt = 0.0;
        for (var i = 0; i < attained.Length; i++)
            risingAt += attained[i] * e[i];
        if (figure.IsNorm)
            return OfNorm(value, risingAt, level / observed);
        // Two supporting lines of the convex function: a falling one, from l = 0, and a rising one, from the comparison that z itself attains.
        var (fallingAt, fallingSlope) = (value, along - level);
        var risingSlope = observed - level;
        for (var turn = 0; turn < Turns; turn++)
        {
            var l = (fallingAt - risingAt) / (risingSlope - fallingSlope);
            var bound = fallingAt + (fallingSlope * l);
            for (var i = 0; i < sum.Length; i++)
                sum[i] = e[i] + (l * z[i]);
            (value, along) = figure.At(sum, z);
            var there = value - (l * level);
            var slope = along - level;
            if (there - bound <= Close * Math.Abs(there) || slope == 0)
                return there;
            if (slope < 0)
                (fallingAt, fallingSlope) = (there - (slope * l), slope);
            else
                (risingAt, risingSlope) = (there - (slope * l), slope);
        }

        return fallingAt + (fallingSlope * (fallingAt - risingAt) / (risingSlope - fallingSlope));
    }

    // Comparisons of a root mean square are all vectors of one length, so the nearly attained ones are a cap around z.
    private static double OfNorm(double value, double along, double share)
        => share <= -1 ? value : (share * along) + Math.Sqrt(Math.Max(0, (1 - (share * share)) * ((value * value) - (along * along))));
}
