using System;
using System.Globalization;
using System.Linq;
using System.Threading;

namespace Waywright;

/// <summary>How clear a bend errors alone show: the model's statistic of heights that are nothing but errors.</summary>
internal static class KinkTrials
{
    public static double Chance(KinkModel model, ProfileErrors? errors, KinkPeak seen, int trials, ulong seed, CancellationToken cancel)
    {
        var shapes = errors?.Shapes.ToArray() ?? [];
        // The scale is what the bent line leaves, and no less than what is known: the statistic divides by its own scale, so this weighs scatter against shapes only.
        var scale = model.IsScaleKnown ? Math.Max(1, seen.Scale) : seen.Scale;
        MonteCarloInput[] inputs =
        [
            .. model.Sigma.Select((u, i) => MonteCarloInput.Of(string.Create(CultureInfo.InvariantCulture, $"station {i}"), Distribution.Gaussian(0, scale * u))),
            .. shapes.Select((s, i) => MonteCarloInput.Of(string.Create(CultureInfo.InvariantCulture, $"shape {i}"), DrawOf(s))),
        ];
        var result = MonteCarlo.Run((batch, results) => Statistics(model, shapes, batch, results), inputs, trials, seed, cancel: cancel);
        var noSmaller = Math.Round(result.Share(seen.Statistic, double.PositiveInfinity) * trials);
        return (1 + noSmaller) / (1 + trials);
    }

    private static void Statistics(KinkModel model, ErrorShape[] shapes, TrialBatch batch, Span<double> results)
    {
        var stations = model.T.Length;
        var (heights, work) = (new double[stations], new double[stations]);
        for (var trial = 0; trial < results.Length; trial++)
        {
            for (var i = 0; i < stations; i++)
                heights[i] = batch[i][trial];
            for (var s = 0; s < shapes.Length; s++)
            {
                var draw = batch[stations + s][trial];
                var shape = shapes[s].Heights;
                for (var i = 0; i < stations; i++)
                    heights[i] += draw * shape[i];
            }

            results[trial] = model.Highest(heights, work).Statistic;
        }
    }

    private static Distribution DrawOf(ErrorShape shape)
        => shape.IsRectangular ? Distribution.Rectangular(-Math.Sqrt(3), Math.Sqrt(3)) : Distribution.StudentT(0, 1, shape.DegreesOfFreedom);
}
