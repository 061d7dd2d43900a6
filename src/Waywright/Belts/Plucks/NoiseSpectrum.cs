using System;
using MathNet.Numerics.IntegralTransforms;

namespace Waywright;

/// <summary>What a fit leaves, as energy over frequency, smoothed over the width of 20 / T to each side.</summary>
internal sealed class NoiseSpectrum
{
    private readonly int _length;
    private readonly double[] _energy;

    public NoiseSpectrum(double[] rest)
    {
        _length = 1;
        while (_length < 2 * rest.Length)
            _length *= 2;
        var sharp = Energy(rest);
        var half = Math.Max(5, (int)Math.Round(20.0 / rest.Length * _length));
        var sums = new double[sharp.Length + 1];
        for (var i = 0; i < sharp.Length; i++)
            sums[i + 1] = sums[i] + sharp[i];
        _energy = new double[sharp.Length];
        for (var i = 0; i < sharp.Length; i++)
        {
            var (from, to) = (Math.Max(0, i - half), Math.Min(sharp.Length, i + half + 1));
            _energy[i] = (sums[to] - sums[from]) / (to - from) / rest.Length;
        }
    }

    /// <summary>Variance of the inner product of this noise with a series.</summary>
    public double Variance(double[] series)
    {
        var energy = Energy(series);
        var sum = 0.0;
        for (var i = 0; i < energy.Length; i++)
            sum += (i == 0 || i == energy.Length - 1 ? 1 : 2) * energy[i] * _energy[i];
        return sum / _length;
    }

    private double[] Energy(double[] series)
    {
        var (real, imaginary) = (new double[_length], new double[_length]);
        series.CopyTo(real, 0);
        Fourier.Forward(real, imaginary, FourierOptions.NoScaling);
        var energy = new double[(_length / 2) + 1];
        for (var i = 0; i < energy.Length; i++)
            energy[i] = (real[i] * real[i]) + (imaginary[i] * imaginary[i]);
        return energy;
    }
}
