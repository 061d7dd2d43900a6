namespace Waywright;

/// <summary>
/// An invented recording of a plucked span whose note is known: partials f_k = k f sqrt((1 + B k^2) / (1 + B)) of amplitude sin(k pi p) / k for a pluck at the share p of the span
/// (Fourier series of a plucked string; Fletcher and Rossing, The Physics of Musical Instruments, 2.8, from memory), each dying down with tau k^(-0.7), after 15 ms of noise from the finger.
/// </summary>
public sealed record InventedPluck(double FrequencyHz, double DecaySeconds)
{
    private const double NoiseOfFinger = 0.015;

    /// <summary>B of the partials.</summary>
    public double Inharmonicity { get; init; } = 5e-5;

    /// <summary>Where the finger plucks, as a share of the span.</summary>
    public double Place { get; init; } = 0.3;

    /// <summary>How many partials.</summary>
    public int Partials { get; init; } = 20;

    /// <summary>Amplitude of the second partial over the first; as the place has it where null.</summary>
    public double? SecondOverFirst { get; init; }

    /// <summary>Whether the first partial is missing.</summary>
    public bool LacksFirst { get; init; }

    /// <summary>Whether all but the first are 40 dB down.</summary>
    public bool IsNearlyPure { get; init; }

    /// <summary>How much higher it starts, cents.</summary>
    public double GlideCents { get; init; }

    /// <summary>Samples of the pluck alone, without noise.</summary>
    public double[] Samples(int rate, double seconds, PluckDraws draws)
    {
        var samples = new double[(int)(seconds * rate)];
        var rise = Math.Pow(2, GlideCents / 1200) - 1;
        for (var k = 1; k <= Partials; k++)
        {
            var frequency = k * FrequencyHz * Math.Sqrt((1 + (Inharmonicity * k * k)) / (1 + Inharmonicity));
            var phase = draws.Uniform(0, 2 * Math.PI);
            if (frequency > 0.45 * rate || (k == 1 && LacksFirst))
                continue;
            var amplitude = k == 2 && SecondOverFirst is { } ratio ? ratio * Math.Sin(Math.PI * Place) : Math.Sin(k * Math.PI * Place) / k * (k > 1 && IsNearlyPure ? 0.01 : 1);
            var decay = Math.Pow(k, 0.7) / DecaySeconds;
            for (var i = 0; i < samples.Length; i++)
            {
                var t = (double)i / rate;
                var warped = t + (rise * (1 - Math.Exp(-2 * t / DecaySeconds)) * DecaySeconds / 2);
                samples[i] += amplitude * Math.Exp(-decay * t) * Math.Cos((2 * Math.PI * frequency * warped) + phase);
            }
        }

        return samples;
    }

    /// <summary>Noise of a finger over the first 15 ms.</summary>
    public static void Touch(double[] samples, int rate, PluckDraws draws)
    {
        var level = 1.5 * Math.Sqrt(Power(samples));
        for (var i = 0; i < Math.Min(samples.Length, (int)(NoiseOfFinger * rate)); i++)
            samples[i] += level * Math.Exp(-i / (0.004 * rate)) * draws.Normal();
    }

    public static double Power(ReadOnlySpan<double> samples)
    {
        var sum = 0.0;
        foreach (var sample in samples)
            sum += sample * sample;
        return sum / samples.Length;
    }
}

/// <summary>Numbers from a seed, one after the other.</summary>
public sealed class PluckDraws(ulong seed)
{
    private readonly RandomDraws _draws = new(seed, 1);
    private readonly double[] _normals = new double[64];
    private readonly double[] _uniforms = new double[2];
    private int _next = 64;
    private uint _block;
    private uint _single;

    public double Normal()
    {
        if (_next == _normals.Length)
        {
            _draws.Gaussian(0, 64L * _block++, _normals);
            _next = 0;
        }

        return _normals[_next++];
    }

    public double Uniform(double low, double high)
    {
        _draws.Uniform(1, 2L * _single++, _uniforms);
        return low + ((high - low) * _uniforms[0]);
    }

    /// <summary>Evenly spread over the logarithm.</summary>
    public double Ratio(double low, double high) => Math.Exp(Uniform(Math.Log(low), Math.Log(high)));
}
