using System;
using MathNet.Numerics.IntegralTransforms;

namespace Waywright;

/// <summary>Magnitudes of a stretch of sound, eight times finer than its length resolves.</summary>
internal sealed class PluckSpectrum
{
    private const int Padding = 8;

    private PluckSpectrum(double[] magnitudes, double step) => (Magnitudes, StepHz) = (magnitudes, step);

    public double[] Magnitudes { get; }

    public double StepHz { get; }

    /// <summary>Hann's window.</summary>
    public static PluckSpectrum Hann(ReadOnlySpan<double> samples, double rate) => Of(samples, rate, t => 0.5 - (0.5 * Math.Cos(t)));

    /// <summary>The four-term window of Blackman and Harris, side lobes at -92 dB (Harris, Proc. IEEE 66, 1978, table 1).</summary>
    public static PluckSpectrum BlackmanHarris(ReadOnlySpan<double> samples, double rate)
        => Of(samples, rate, t => 0.35875 - (0.48829 * Math.Cos(t)) + (0.14128 * Math.Cos(2 * t)) - (0.01168 * Math.Cos(3 * t)));

    /// <summary>The median of blocks of about 60 Hz, itself a median over five of them, between the blocks straight: what stands above it is a tone.</summary>
    public double[] Floor(double blockHz = 60)
    {
        var size = Math.Max(16, (int)(blockHz / StepHz));
        var blocks = Math.Max(1, Magnitudes.Length / size);
        var medians = new double[blocks];
        for (var b = 0; b < blocks; b++)
            medians[b] = Median(Magnitudes.AsSpan(b * size, Math.Min(size, Magnitudes.Length - (b * size))));
        var smooth = new double[blocks];
        Span<double> five = stackalloc double[5];
        for (var b = 0; b < blocks; b++)
        {
            for (var j = 0; j < 5; j++)
                five[j] = medians[Math.Clamp(b + j - 2, 0, blocks - 1)];
            smooth[b] = Median(five);
        }

        var floor = new double[Magnitudes.Length];
        for (var i = 0; i < floor.Length; i++)
        {
            var place = Math.Clamp((((double)i) / size) - 0.5, 0, blocks - 1);
            var b = Math.Min((int)place, Math.Max(0, blocks - 2));
            floor[i] = blocks == 1 ? smooth[0] : smooth[b] + ((place - b) * (smooth[b + 1] - smooth[b]));
        }

        return floor;
    }

    /// <summary>Median of the resolved magnitudes within so many steps of a place: one of each eight, as many as are independent.</summary>
    public double MedianAbout(int place, int steps)
    {
        var (from, to) = (Math.Max(0, place - steps), Math.Min(Magnitudes.Length, place + steps));
        var resolved = new double[((to - from - 1) / Padding) + 1];
        for (var i = 0; i < resolved.Length; i++)
            resolved[i] = Magnitudes[from + (i * Padding)];
        return Median(resolved);
    }

    public static double Median(ReadOnlySpan<double> values)
    {
        var sorted = values.ToArray();
        Array.Sort(sorted);
        return sorted.Length % 2 == 1 ? sorted[sorted.Length / 2] : (sorted[(sorted.Length / 2) - 1] + sorted[sorted.Length / 2]) / 2;
    }

    private static PluckSpectrum Of(ReadOnlySpan<double> samples, double rate, Func<double, double> window)
    {
        var length = 1;
        while (length < Padding * samples.Length)
            length *= 2;
        var (real, imaginary) = (new double[length], new double[length]);
        var mean = 0.0;
        foreach (var value in samples)
            mean += value / samples.Length;

        for (var i = 0; i < samples.Length; i++)
            real[i] = (samples[i] - mean) * window(2 * Math.PI * (i + 0.5) / samples.Length);
        Fourier.Forward(real, imaginary, FourierOptions.NoScaling);
        var magnitudes = new double[(length / 2) + 1];
        for (var i = 0; i < magnitudes.Length; i++)
            magnitudes[i] = Math.Sqrt((real[i] * real[i]) + (imaginary[i] * imaginary[i]));
        return new(magnitudes, rate / length);
    }
}
