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
    /// <param name="observed">T(z), above the level.</param>
    /// <param name="level">What v . z has to reach.</param>
    /// <param name="sum">Room for padded residuals.</param>
    public static double Of(HeightFigure figure, ReadOnlySpan<double> e, ReadOnlySpan<double> z, double observed, double level, Span<double> sum)
    {
        var (value, along) = figure.At(e, z);
        if (along >= level)
            return value;
        // Two supporting lines of the convex function: a falling one, from l = 0, and a rising one, from the comparison that z itself attains.
        var (fallingAt, fallingSlope) = (value, along - level);
        var (risingAt, risingSlope) = (figure.At(z, e).Along, observed - level);
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
}
