using System.Text;

namespace Waywright;

/// <summary>An invented recording: quiet, a pluck, and what disturbs it. Invented data.</summary>
public sealed record InventedTake(InventedPluck Pluck)
{
    public int Rate { get; init; } = 22050;

    public double QuietSeconds { get; init; } = 0.3;

    public double Seconds { get; init; } = 1.5;

    /// <summary>Mean square of the pluck's first second over that of the noise, dB.</summary>
    public double NoiseDb { get; init; } = 30;

    public bool IsNoisePink { get; init; }

    /// <summary>Five partials of the mains, dB beside the pluck.</summary>
    public double? HumDb { get; init; }

    /// <summary>A second string, this share higher.</summary>
    public double? BeatsBy { get; init; }

    /// <summary>A second string of its own, dB beside the first, this many times as high.</summary>
    public (double Db, double Ratio)? Other { get; init; }

    /// <summary>Share of the largest value at which the recorder clips.</summary>
    public double? ClipsAt { get; init; }

    /// <summary>A recorder that levels the sound over 50 ms.</summary>
    public bool IsLevelled { get; init; }

    /// <summary>Corner of a fourth-order high-pass, Hz.</summary>
    public double? HighPassHz { get; init; }

    public double[] Samples(ulong seed)
    {
        var draws = new PluckDraws(seed);
        var sound = Pluck.Samples(Rate, Seconds, draws);
        if (BeatsBy is { } by)
            Mix(sound, (Pluck with { FrequencyHz = Pluck.FrequencyHz * (1 + by) }).Samples(Rate, Seconds, draws), 0.8);
        if (Other is var (db, ratio))
            Mix(sound, (Pluck with { FrequencyHz = Pluck.FrequencyHz * ratio }).Samples(Rate, Seconds, draws), Level(db));
        InventedPluck.Touch(sound, Rate, draws);
        var level = Math.Sqrt(InventedPluck.Power(sound.AsSpan(0, Math.Min(sound.Length, Rate))));
        var quiet = (int)(QuietSeconds * Rate);
        var samples = new double[quiet + sound.Length];
        sound.CopyTo(samples, quiet);
        Mix(samples, IsNoisePink ? Pink(samples.Length, draws) : White(samples.Length, draws), level * Level(-NoiseDb));
        if (HumDb is { } hum)
            Mix(samples, Hum(samples.Length, draws), level * Level(hum));
        if (HighPassHz is { } corner)
            samples = HighPassed(samples, corner);
        if (ClipsAt is { } share)
            Clip(samples, share);
        return IsLevelled ? Levelled(samples, level) : samples;
    }

    /// <summary>The take as a 16-bit WAV file, its largest value at <paramref name="peak"/> of full scale.</summary>
    public byte[] Wav(ulong seed, double peak = 0.5) => Wav(Samples(seed), Rate, peak);

    /// <param name="samples">The sound.</param>
    /// <param name="rate">Samples per second.</param>
    /// <param name="peak">Its largest value, of full scale.</param>
    /// <param name="comment">Written into the file's INFO list, as a recorder would write its own.</param>
    public static byte[] Wav(double[] samples, int rate, double peak = 0.5, string? comment = null)
    {
        var largest = samples.Max(Math.Abs);
        using var file = new MemoryStream();
        using var writer = new BinaryWriter(file);
        byte[] text = comment is null ? [] : [.. Encoding.ASCII.GetBytes(comment), .. new byte[2 - (comment.Length % 2)]];
        var list = text.Length == 0 ? 0 : text.Length + 20;
        writer.Write("RIFF"u8);
        writer.Write(36 + list + (2 * samples.Length));
        writer.Write("WAVEfmt "u8);
        writer.Write(16);
        writer.Write((short)1);
        writer.Write((short)1);
        writer.Write(rate);
        writer.Write(2 * rate);
        writer.Write((short)2);
        writer.Write((short)16);
        if (list > 0)
        {
            writer.Write("LIST"u8);
            writer.Write(list - 8);
            writer.Write("INFOICMT"u8);
            writer.Write(text.Length);
            writer.Write(text);
        }

        writer.Write("data"u8);
        writer.Write(2 * samples.Length);
        foreach (var sample in samples)
            writer.Write((short)Math.Round(sample / largest * peak * short.MaxValue));
        writer.Flush();
        return file.ToArray();
    }

    public static double Level(double db) => Math.Pow(10, db / 20);

    public static void Mix(double[] to, double[] part, double level)
    {
        for (var i = 0; i < to.Length; i++)
            to[i] += level * part[i];
    }

    public static double[] White(int count, PluckDraws draws) => [.. Enumerable.Range(0, count).Select(_ => draws.Normal())];

    // 1 / f by a sum of first-order low-passes a factor 4 apart, brought to unit power.
    private double[] Pink(int count, PluckDraws draws)
    {
        var sum = new double[count];
        for (var corner = 4.0; corner < Rate / 2.0; corner *= 4)
        {
            var keep = Math.Exp(-2 * Math.PI * corner / Rate);
            var (state, scale) = (0.0, Math.Sqrt(1 - (keep * keep)));
            for (var i = 0; i < count; i++)
            {
                state = (keep * state) + (scale * draws.Normal());
                sum[i] += state;
            }
        }

        var level = Math.Sqrt(InventedPluck.Power(sum));
        return [.. sum.Select(value => value / level)];
    }

    private double[] Hum(int count, PluckDraws draws)
    {
        var mains = (draws.Uniform(0, 1) < 0.5 ? 50 : 60) + draws.Uniform(-0.1, 0.1);
        var sum = new double[count];
        for (var k = 1; k <= 5; k++)
        {
            var phase = draws.Uniform(0, 2 * Math.PI);
            for (var i = 0; i < count; i++)
                sum[i] += Math.Cos((2 * Math.PI * k * mains * i / Rate) + phase) / k;
        }

        var level = Math.Sqrt(InventedPluck.Power(sum));
        return [.. sum.Select(value => value / level)];
    }

    // Two of Butterworth's second-order sections by the bilinear transform.
    private double[] HighPassed(double[] samples, double corner)
    {
        foreach (var q in (ReadOnlySpan<double>)[0.54119610, 1.30656296])
        {
            var w = Math.Tan(Math.PI * corner / Rate);
            var scale = 1 / (1 + (w / q) + (w * w));
            var (a1, a2) = (2 * ((w * w) - 1) * scale, (1 - (w / q) + (w * w)) * scale);
            var result = new double[samples.Length];
            for (var i = 2; i < samples.Length; i++)
                result[i] = (scale * (samples[i] - (2 * samples[i - 1]) + samples[i - 2])) - (a1 * result[i - 1]) - (a2 * result[i - 2]);
            samples = result;
        }

        return samples;
    }

    private static void Clip(double[] samples, double share)
    {
        var limit = share * samples.Max(Math.Abs);
        for (var i = 0; i < samples.Length; i++)
            samples[i] = Math.Clamp(samples[i], -limit, limit);
    }

    private double[] Levelled(double[] samples, double level)
    {
        var half = Rate / 40;
        var sums = new double[samples.Length + 1];
        for (var i = 0; i < samples.Length; i++)
            sums[i + 1] = sums[i] + (samples[i] * samples[i]);
        return [.. samples.Select((value, i) =>
        {
            var (from, to) = (Math.Max(0, i - half), Math.Min(samples.Length, i + half));
            return value / (Math.Sqrt((sums[to] - sums[from]) / (to - from)) + (0.02 * level));
        })];
    }
}
