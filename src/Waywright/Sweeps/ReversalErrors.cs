using System;
using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>
/// What half a sum of two runs is uncertain by. Stations are independent, and what the least-squares line takes off and the even part averages is counted; an input that both runs
/// share (the dial's error) is one input and may cancel.
/// </summary>
internal static class ReversalErrors
{
    // A shape that is flat to this is none.
    private const double NoneUm = 1e-9;

    public static ProfileErrors Of(IReadOnlyList<double> x, ProfileErrors first, int firstSign, ProfileErrors second, int secondSign, double widthUncertaintyUm, bool isEven)
    {
        var n = x.Count;
        var width = widthUncertaintyUm * widthUncertaintyUm;
        var variances = Enumerable.Range(0, n).Select(i => (Square(first.StationUm[i]) + Square(second.StationUm[i]) + width) / 4).ToArray();
        var covariance = new LevelCovariance(x, variances);
        var stations = Enumerable.Range(0, n).Select(i => isEven ? (covariance.Of(i, i) + covariance.Of(n - 1 - i, n - 1 - i) + (2 * covariance.Of(i, n - 1 - i))) / 4 : covariance.Of(i, i));
        return new ProfileErrors([.. stations.Select(v => Math.Sqrt(Math.Max(0, v)))], Freedom(first, second, width), [.. Shapes(x, first, firstSign, second, secondSign, isEven)]);
    }

    private static IEnumerable<ErrorShape> Shapes(IReadOnlyList<double> x, ProfileErrors first, int firstSign, ProfileErrors second, int secondSign, bool isEven)
    {
        foreach (var input in first.Shapes.Select(s => (Shape: s, Sign: firstSign)).Concat(second.Shapes.Select(s => (Shape: s, Sign: secondSign))).GroupBy(s => s.Shape.Input))
        {
            var heights = new double[x.Count];
            foreach (var (shape, sign) in input)
            {
                for (var i = 0; i < heights.Length; i++)
                    heights[i] += sign * shape.HeightsUm[i] / 2;
            }

            var level = SweepEdits.Level(x, heights);
            var left = isEven ? ReversalRuns.Part(level, 1) : level;
            var like = input.First().Shape;
            if (left.Max(Math.Abs) > NoneUm)
                yield return new ErrorShape(like.Input, FixedList<double>.Own(left), like.DegreesOfFreedom, like.IsRectangular, like.AveragesOut, like.Remedy);
        }
    }

    // Welch-Satterthwaite (JCGM 100:2008, G.4.1); the width's uncertainty is taken as known.
    private static double Freedom(ProfileErrors first, ProfileErrors second, double width)
    {
        var (one, two) = (first.StationUm.Average(Square), second.StationUm.Average(Square));
        var squares = (one * one / first.StationDegreesOfFreedom) + (two * two / second.StationDegreesOfFreedom);
        return squares > 0 ? Math.Max(1, Square(one + two + width) / squares) : double.PositiveInfinity;
    }

    private static double Square(double x) => x * x;
}
