using System;

namespace Waywright;

/// <summary>Makes the reference lines that need no search.</summary>
internal static class ReferenceLines
{
    /// <summary>Through the mean reading of the first and of the last position.</summary>
    public static ReferenceLine ThroughEnds(Profile profile, in LeastSquaresLine leastSquares)
    {
        var x = profile.Positions;
        var z = profile.Heights;
        var firsts = 1;
        while (x[firsts] == x[0])
            firsts++;
        var lasts = 1;
        while (x[^(lasts + 1)] == x[^1])
            lasts++;
        var atFirst = MeanFrom(z[0], z[..firsts]);
        var atLast = MeanFrom(z[0], z[^lasts..]);
        var slope = (atLast - atFirst) / (x[^1] - x[0]);
        new LineScan(x, z, slope, anchor: 0).Extremes(out var highest, out var lowest);
        return Line(ReferenceLineKind.EndPoints, slope, x[0], z[0] + atFirst, highest - atFirst, lowest - atFirst, leastSquares.MeanSquareFrom(slope, atFirst));
    }

    /// <summary>What the kernel found, in the terms of the standard.</summary>
    public static ReferenceLine LeastSquares(Profile profile, in LeastSquaresLine line)
        => Line(ReferenceLineKind.LeastSquares, line.Slope, profile.Positions[0], profile.Heights[0] + line.AtFirst, line.Highest, line.Lowest, line.MeanSquare);

    /// <param name="kind">Which line it is.</param>
    /// <param name="slope">um/mm.</param>
    /// <param name="x">A position on the line, mm.</param>
    /// <param name="height">The line's height there, um.</param>
    /// <param name="highest">Largest height from the line; below zero by rounding only.</param>
    /// <param name="lowest">Smallest height from the line; above zero by rounding only.</param>
    /// <param name="meanSquare">Of the heights from the line.</param>
    public static ReferenceLine Line(ReferenceLineKind kind, double slope, double x, double height, double highest, double lowest, double meanSquare)
    {
        var peak = Math.Max(highest, 0);
        var valley = Math.Max(0 - lowest, 0);
        // Adding zero makes -0 a plain 0.
        return new ReferenceLine(kind, (slope * 1000) + 0.0, height - (slope * x) + 0.0, peak + valley, peak, valley, Math.Sqrt(meanSquare));
    }

    private static double MeanFrom(double height, ReadOnlySpan<double> heights)
    {
        var sum = 0.0;
        foreach (var z in heights)
            sum += z - height;
        return sum / heights.Length;
    }
}
