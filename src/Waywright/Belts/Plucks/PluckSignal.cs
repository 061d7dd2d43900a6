using System;

namespace Waywright;

/// <summary>
/// A recording at about 8 000 samples a second: enough for partials up to 3.5 kHz, and a sixth of the work of 48 000.
/// Filter: sinc times a Kaiser window of beta 8 (Oppenheim and Schafer, Discrete-Time Signal Processing, 7.5, from memory), 16 output samples to each side; it has no delay.
/// </summary>
internal sealed class PluckSignal : IEquatable<PluckSignal>
{
    private const int WantedRate = 8000;
    private const int HalfOutputs = 16;
    private const double Cutoff = 0.45;
    private const double KaiserBeta = 8;

    private readonly double[] _powers;

    private readonly ReadOnlyMemory<double> _recorded;

    private PluckSignal(double[] samples, double rate, ReadOnlyMemory<double> recorded)
    {
        (Samples, Rate, _recorded) = (samples, rate, recorded);
        _powers = new double[samples.Length + 1];
        for (var i = 0; i < samples.Length; i++)
            _powers[i + 1] = _powers[i] + (samples[i] * samples[i]);
    }

    public double[] Samples { get; }

    /// <summary>Samples per second.</summary>
    public double Rate { get; }

    public static PluckSignal Of(PluckRecording recording)
    {
        var factor = Math.Max(1, recording.SampleRate / WantedRate);
        var samples = recording.Samples.Span;
        return factor == 1
            ? new(samples.ToArray(), recording.SampleRate, recording.Samples)
            : new(Decimated(samples, factor), (double)recording.SampleRate / factor, recording.Samples);
    }

    /// <summary>The same less what is given of each sample.</summary>
    public PluckSignal Less(ReadOnlySpan<double> part)
    {
        var rest = new double[Samples.Length];
        for (var i = 0; i < rest.Length; i++)
            rest[i] = Samples[i] - part[i];
        return new(rest, Rate, _recorded);
    }

    public bool Equals(PluckSignal? other) => other is not null && Rate.Equals(other.Rate) && Samples.AsSpan().SequenceEqual(other.Samples);

    public override bool Equals(object? obj) => Equals(obj as PluckSignal);

    public override int GetHashCode() => HashCode.Combine(Rate, Samples.Length);

    public int Count(double seconds) => (int)Math.Round(seconds * Rate);

    /// <summary>Mean square from one sample to before another; 0 where none is left.</summary>
    public double Power(int from, int to)
    {
        (from, to) = (Math.Max(0, from), Math.Min(Samples.Length, to));
        return to > from ? Math.Max(0, _powers[to] - _powers[from]) / (to - from) : 0;
    }

    /// <summary>How many samples' time the recorder spent at or above a level, in a stretch of these.</summary>
    public double Clipped(int from, int to, double level)
    {
        var factor = (double)_recorded.Length / Samples.Length;
        var (first, last) = ((int)(from * factor), Math.Min(_recorded.Length, (int)(to * factor)));
        var clipped = 0;
        foreach (var sample in _recorded.Span[first..last])
            clipped += Math.Abs(sample) >= level ? 1 : 0;
        return clipped / factor;
    }

    private static double[] Decimated(ReadOnlySpan<double> samples, int factor)
    {
        var half = HalfOutputs * factor;
        var taps = Taps(half, Cutoff / factor);
        var result = new double[((samples.Length - 1) / factor) + 1];
        for (var j = 0; j < result.Length; j++)
        {
            var first = (j * factor) - half;
            var skipped = Math.Max(0, -first);
            var count = Math.Min(taps.Length, samples.Length - first) - skipped;
            result[j] = Products.Sum(taps.AsSpan(skipped, count), samples.Slice(first + skipped, count));
        }

        return result;
    }

    private static double[] Taps(int half, double cutoff)
    {
        var taps = new double[(2 * half) + 1];
        var sum = 0.0;
        for (var i = 0; i < taps.Length; i++)
        {
            var x = (double)(i - half) / half;
            var window = MathNet.Numerics.SpecialFunctions.BesselI0(KaiserBeta * Math.Sqrt(1 - (x * x)));
            var angle = 2 * Math.PI * cutoff * (i - half);
            taps[i] = window * (i == half ? 1 : Math.Sin(angle) / angle);
            sum += taps[i];
        }

        for (var i = 0; i < taps.Length; i++)
            taps[i] /= sum;
        return taps;
    }
}
