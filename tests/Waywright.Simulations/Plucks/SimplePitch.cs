namespace Waywright.Simulations.Plucks;

/// <summary>Three common ways to a pitch, to measure the analysis against; 18 to 420 Hz.</summary>
internal static class SimplePitch
{
    private const double Lowest = 18;
    private const double Highest = 420;

    /// <summary>The largest peak of the spectrum, by a parabola through three logarithms.</summary>
    public static double Peak(double[] sound, double rate)
    {
        var spectrum = PluckSpectrum.Hann(sound, rate);
        var (m, step) = (spectrum.Magnitudes, spectrum.StepHz);
        var best = (int)(Lowest / step);
        for (var i = best; i < Math.Min(m.Length - 1, Highest / step); i++)
            best = m[i] > m[best] ? i : best;
        var (a, b, c) = (Math.Log(m[best - 1]), Math.Log(m[best]), Math.Log(m[best + 1]));
        return (best + (0.5 * (a - c) / (a - (2 * b) + c))) * step;
    }

    /// <summary>The largest peak of the autocorrelation (biased), by a parabola.</summary>
    public static double Autocorrelation(double[] sound, double rate)
    {
        var mean = sound.Average();
        double[] x = [.. sound.Select(v => v - mean)];
        double At(int lag) => Products.Sum(x.AsSpan(0, x.Length - lag), x.AsSpan(lag));
        var (from, to) = ((int)(rate / Highest), Math.Min(x.Length / 2, (int)(rate / Lowest)));
        double[] values = [.. Enumerable.Range(from - 1, to - from + 3).Select(At)];
        var best = 1;
        for (var i = 1; i < values.Length - 1; i++)
        {
            if (values[i] >= values[i - 1] && values[i] >= values[i + 1] && (values[i] > values[best] || best == 1))
                best = i;
        }

        var (a, b, c) = (values[best - 1], values[best], values[best + 1]);
        return rate / (from - 1 + best + (0.5 * (a - c) / (a - (2 * b) + c)));
    }

    /// <summary>The largest sum of the magnitudes at ten multiples, weighted 0.84^(k - 1) (Hermes, J. Acoust. Soc. Am. 83, 1988, from memory).</summary>
    public static double HarmonicSum(double[] sound, double rate)
    {
        var spectrum = PluckSpectrum.Hann(sound, rate);
        var (best, bestHz) = (0.0, Lowest);
        for (var hertz = Lowest; hertz < Highest; hertz *= 1 + (1 / 1731.234))
        {
            var sum = 0.0;
            for (var k = 1; k <= 10; k++)
            {
                var place = k * hertz / spectrum.StepHz;
                var bin = (int)place;
                if (bin + 1 < spectrum.Magnitudes.Length)
                    sum += Math.Pow(0.84, k - 1) * (spectrum.Magnitudes[bin] + ((place - bin) * (spectrum.Magnitudes[bin + 1] - spectrum.Magnitudes[bin])));
            }

            if (sum > best)
                (best, bestHz) = (sum, hertz);
        }

        return bestHz;
    }
}
