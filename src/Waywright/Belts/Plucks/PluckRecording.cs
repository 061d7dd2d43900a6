using System;

namespace Waywright;

/// <summary>One channel of a recording, as numbers: full scale is 1. Made by <see cref="WavReader"/>; it holds a finite number for each sample and is never silent.</summary>
public sealed class PluckRecording
{
    internal PluckRecording(string source, int rate, int channels, int channel, int clipped, double[] samples)
    {
        Source = source;
        SampleRate = rate;
        Channels = channels;
        Channel = channel;
        ClippedSamples = clipped;
        Samples = samples;
    }

    /// <summary>The file as the caller named it.</summary>
    public string Source { get; }

    /// <summary>Samples per second, from the header: 4 000 to 768 000.</summary>
    public int SampleRate { get; }

    /// <summary>How many channels the file has, 1 to 8.</summary>
    public int Channels { get; }

    /// <summary>The channel taken, from 1: the strongest, because two microphones mixed can cancel each other.</summary>
    public int Channel { get; }

    /// <summary>Samples of that channel at 99.9 % of full scale or above.</summary>
    public int ClippedSamples { get; }

    /// <summary>The samples, at least 2.</summary>
    public ReadOnlyMemory<double> Samples { get; }

    /// <summary>Length in seconds.</summary>
    public double Seconds => (double)Samples.Length / SampleRate;
}
