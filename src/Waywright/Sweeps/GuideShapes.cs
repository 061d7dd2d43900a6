using System;
using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>
/// The guide's own error: a bow, an S and a W on the stations, each anywhere between its limits, which are as 1 : 1/2 : 1/3 (of straightness each by itself) and so wide that all
/// three together, at their limits and with the signs that add up worst, are out of straight by the guide's stated straightness about the minimum zone, and never by more.
/// </summary>
/// <remarks>
/// That a guide's long waves are its largest is common practice, no source. Straightness is convex in the three amplitudes, so the worst of the four sign patterns is the worst of
/// all. It is the same guide for each pass, rail and lay of the set-up: nothing but knowing it better makes it smaller.
/// </remarks>
internal static class GuideShapes
{
    // Stations closer than this share of the whole length make no shape of their own.
    private const double Closest = 1e-3;

    private static readonly (int Order, double Share, string Name)[] Waves = [(2, 1, "bow"), (3, 1.0 / 2, "S"), (4, 1.0 / 3, "W")];

    public static IEnumerable<ErrorShape> Of(Setup setup, Profile profile)
    {
        var different = Different(profile.PositionsMm);
        if (!setup.IsGuideKnown || setup.GuideStraightnessUm is not > 0 || different < 3)
            yield break;
        var waves = Waves[..Math.Min(Waves.Length, different - 2)];
        var highest = waves[^1].Order;
        var modes = ModeShapes.Of(new UnitAxis(profile).Stations(profile), highest);
        var shapes = Array.ConvertAll(waves, w => Scaled(modes.At(w.Order), w.Share / Straightness(profile, modes.At(w.Order))));
        var factor = setup.GuideStraightnessUm.Value / Worst(profile, shapes) / Math.Sqrt(3);
        var remedy = setup.GuideKnownFrom == "reversal" ? "reverse the guide again, with more passes" : "reverse the guide";
        for (var i = 0; i < waves.Length; i++)
            yield return new ErrorShape($"guide {setup.Id}: {waves[i].Name}", Scaled(shapes[i], factor), double.PositiveInfinity, IsRectangular: true, AveragesOut.Nothing, remedy);
    }

    private static int Different(IReadOnlyList<double> positions)
    {
        var (count, last) = (1, positions[0]);
        foreach (var x in positions)
        {
            if (x - last > Closest * (positions[positions.Count - 1] - positions[0]))
                (count, last) = (count + 1, x);
        }

        return count;
    }

    // Turning all signs changes nothing, so the first keeps its own.
    private static double Worst(Profile profile, double[][] shapes)
    {
        var worst = 0.0;
        for (var signs = 0; signs < 1 << (shapes.Length - 1); signs++)
        {
            var sum = shapes[0].ToArray();
            for (var k = 1; k < shapes.Length; k++)
            {
                var sign = (signs >> (k - 1)) % 2 == 0 ? 1 : -1;
                for (var i = 0; i < sum.Length; i++)
                    sum[i] += sign * shapes[k][i];
            }

            worst = Math.Max(worst, Straightness(profile, sum));
        }

        return worst;
    }

    private static double Straightness(Profile profile, ReadOnlySpan<double> heights)
        => StraightnessFigures.Of(new Profile(profile.PositionsMm, heights.ToArray())).MinimumZone.Line.STRtUm;

    private static double[] Scaled(ReadOnlySpan<double> shape, double factor)
    {
        var scaled = new double[shape.Length];
        for (var i = 0; i < scaled.Length; i++)
            scaled[i] = factor * shape[i];
        return scaled;
    }
}
