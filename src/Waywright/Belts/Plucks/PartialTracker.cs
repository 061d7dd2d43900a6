using System;
using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>
/// Follows the partials of a stiff string up its spectrum, three, then six, then twelve of them, each looked for where the ones before say: f_k = k f_1 sqrt((1 + B k^2) / (1 + B)).
/// A peak counts 15 dB above the local median; its place is the vertex of the parabola through three logarithms. Fit of (f_k / k)^2 = a + b k^2, weights k^2, twice the median deviation and beyond weighs less (Huber).
/// </summary>
internal sealed record PartialTracker(double FirstHz, double Inharmonicity, IReadOnlyList<TrackedPeak> Peaks)
{
    private const double HighestHz = 3500;
    private const double LeastAboveMedian = 5.6234;
    private const int HuberSteps = 6;

    public static PartialTracker Of(PluckSpectrum spectrum, double firstHz, double seconds, double rate)
    {
        var found = new PartialTracker(firstHz, 0, []);
        foreach (var (most, band) in (ReadOnlySpan<(int, double)>)[(3, 0.012), (6, 0.006), (12, 0.006)])
        {
            var peaks = Found(spectrum, found, most, band, seconds, Math.Min(HighestHz, 0.45 * rate));
            if (peaks.Count == 0)
                return found with { Peaks = peaks };
            var (a, b) = Fit(peaks);
            found = new(Math.Sqrt(a + b), b / a, peaks);
        }

        return found;
    }

    private static List<TrackedPeak> Found(PluckSpectrum spectrum, PartialTracker now, int most, double band, double seconds, double highest)
    {
        var (magnitudes, step) = (spectrum.Magnitudes, spectrum.StepHz);
        var peaks = new List<TrackedPeak>();
        for (var k = 1; k <= most; k++)
        {
            var expected = PartialLadder.Partial(k, now.FirstHz, now.Inharmonicity);
            if (expected > highest)
                break;
            var half = Math.Min(Math.Max(band * expected, 2.5 / seconds), 0.45 * now.FirstHz);
            var (low, high) = ((int)((expected - half) / step), (int)((expected + half) / step) + 1);
            if (low < 1 || high + 2 > magnitudes.Length)
                break;
            var at = low;
            for (var i = low; i <= high; i++)
                at = magnitudes[i] > magnitudes[at] ? i : at;
            if (at == low || at == high || magnitudes[at] <= 0)
                continue;
            var wide = (int)(Math.Max(6 * now.FirstHz, 60) / step);
            var above = magnitudes[at] / spectrum.MedianAbout(at, wide);
            if (!(above >= LeastAboveMedian))
                continue;
            var (left, middle, right) = (Math.Log(magnitudes[at - 1]), Math.Log(magnitudes[at]), Math.Log(magnitudes[at + 1]));
            var vertex = 0.5 * (left - right) / (left - (2 * middle) + right);
            peaks.Add(new(k, (at + vertex) * step, above));
        }

        return peaks;
    }

    private static (double A, double B) Fit(List<TrackedPeak> peaks)
    {
        var bends = peaks.Count >= 3 && peaks[^1].Number >= 4;
        double[] squares = [.. peaks.Select(p => (double)p.Number * p.Number)];
        double[] y = [.. peaks.Select(p => p.FrequencyHz * p.FrequencyHz / ((double)p.Number * p.Number))];
        var weights = (double[])squares.Clone();
        var (a, b) = (0.0, 0.0);
        var rests = new double[y.Length];
        for (var step = 0; step < HuberSteps; step++)
        {
            var (w, wx, wy, wxx, wxy) = (0.0, 0.0, 0.0, 0.0, 0.0);
            for (var i = 0; i < y.Length; i++)
            {
                w += weights[i];
                wx += weights[i] * squares[i];
                wy += weights[i] * y[i];
                wxx += weights[i] * squares[i] * squares[i];
                wxy += weights[i] * squares[i] * y[i];
            }

            b = bends ? Math.Max(0, ((w * wxy) - (wx * wy)) / ((w * wxx) - (wx * wx))) : 0;
            a = (wy - (b * wx)) / w;
            for (var i = 0; i < y.Length; i++)
                rests[i] = Math.Abs(y[i] - a - (b * squares[i])) / y[0] * peaks[i].Number;
            var scale = Math.Max(1.4826 * PluckSpectrum.Median(rests), 1e-6);
            for (var i = 0; i < y.Length; i++)
                weights[i] = squares[i] / Math.Max(1, rests[i] / (2 * scale));
        }

        return (a, b);
    }
}

/// <summary>A peak of a spectrum that was taken for a partial.</summary>
internal readonly record struct TrackedPeak(int Number, double FrequencyHz, double AboveMedian);
