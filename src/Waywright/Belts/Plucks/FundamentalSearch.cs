using System;
using System.Collections.Generic;

namespace Waywright;

/// <summary>
/// Which note a spectrum is the ladder of: a comb over eight partials, weighted k^(-1/2), less what stands half way between them and at thirds:
/// S(f) = sum over k = 1 .. 8 of k^(-1/2) (G(k f) - G((k - 1/2) f)) - 1/2 sum over m = 1/3, 2/3, 4/3, 5/3 of G(m f), with G the square root of what stands out of the floor.
/// An octave too high lacks the partials between, an octave too low has none at its halves. Figures on recorded strings: docs/plucks.md.
/// </summary>
internal static class FundamentalSearch
{
    private const double Cents = 2;
    private const int Partials = 8;
    private const int Blur = 3;
    private const double Apart = 1.06;
    private const int Kept = 3;

    private static readonly double Step = Math.Log(2) * Cents / 1200;

    /// <summary>The best notes, best first; none where nothing stands out of the floor.</summary>
    public static List<PluckCandidate> Of(PluckSpectrum spectrum, double lowestHz, double highestHz)
    {
        var top = spectrum.StepHz * (spectrum.Magnitudes.Length - 1);
        var first = Math.Log(lowestHz / 3.06);
        var grid = Grid(spectrum, first, (int)((Math.Log(Math.Min(8.2 * highestHz, 0.98 * top)) - first) / Step));
        var from = (int)Math.Ceiling((Math.Log(lowestHz) - first) / Step);
        var to = (int)((Math.Log(highestHz) - first) / Step);
        var salience = new double[to - from + 1];
        for (var k = 1; k <= Partials; k++)
        {
            Add(1 / Math.Sqrt(k), k);
            Add(-1 / Math.Sqrt(k), k - 0.5);
        }

        foreach (var share in (ReadOnlySpan<double>)[1 / 3.0, 2 / 3.0, 4 / 3.0, 5 / 3.0])
            Add(-0.5, share);
        return Best(salience, i => Math.Exp(first + ((from + i) * Step)));

        void Add(double weight, double multiple)
        {
            var shift = from + (int)Math.Round(Math.Log(multiple) / Step);
            for (var i = Math.Max(0, -shift); i < salience.Length && i + shift < grid.Length; i++)
                salience[i] += weight * grid[i + shift];
        }
    }

    // Square roots of what stands out of twice the floor, over the logarithm of the frequency, each the largest within 6 cents.
    private static double[] Grid(PluckSpectrum spectrum, double first, int count)
    {
        var (magnitudes, floor) = (spectrum.Magnitudes, spectrum.Floor());
        var sharp = new double[Math.Max(0, count)];
        for (var i = 0; i < sharp.Length; i++)
        {
            var place = Math.Exp(first + (i * Step)) / spectrum.StepHz;
            var bin = Math.Min((int)place, magnitudes.Length - 2);
            sharp[i] = Out(bin) + ((place - bin) * (Out(bin + 1) - Out(bin)));
        }

        var grid = new double[sharp.Length];
        for (var i = 0; i < grid.Length; i++)
        {
            for (var j = Math.Max(0, i - Blur); j <= Math.Min(grid.Length - 1, i + Blur); j++)
                grid[i] = Math.Max(grid[i], sharp[j]);
        }

        return grid;

        double Out(int bin) => Math.Sqrt(Math.Max(0, magnitudes[bin] - (2 * floor[bin])));
    }

    private static List<PluckCandidate> Best(double[] salience, Func<int, double> hertz)
    {
        var (found, highest) = (new List<PluckCandidate>(), 0.0);
        while (found.Count < Kept)
        {
            var best = -1;
            for (var i = 0; i < salience.Length; i++)
            {
                if (salience[i] > (best < 0 ? 0 : salience[best]) && found.TrueForAll(f => Math.Abs(Math.Log(hertz(i) / f.FrequencyHz)) > Math.Log(Apart)))
                    best = i;
            }

            if (best < 0)
                break;
            highest = found.Count == 0 ? salience[best] : highest;
            found.Add(new(hertz(best), salience[best] / highest));
        }

        return found;
    }
}
