using System;
using System.Buffers.Binary;
using System.Globalization;

namespace Waywright;

/// <summary>
/// Reads a WAV recording (RIFF WAVE; Multimedia Programming Interface and Data Specifications 1.0, IBM and Microsoft 1991, from memory):
/// PCM of 8, 16, 24, 32 bit, float of 32 or 64 bit, WAVE_FORMAT_EXTENSIBLE, 1 to 8 channels. Memory: 8 bytes per frame of the file at most.
/// </summary>
public static class WavReader
{
    // A float file may pass full scale; a value beyond this is no sound.
    private const double Loudest = 1000;

    /// <summary>The strongest channel of a recording.</summary>
    /// <param name="bytes">The whole file.</param>
    /// <param name="source">The file as the caller named it.</param>
    /// <exception cref="InputException">Not a WAV (other kinds are named), truncated, compressed, empty, silent, one sample, not finite, or a header that can't be.</exception>
    public static PluckRecording Read(ReadOnlySpan<byte> bytes, string source)
    {
        ArgumentNullException.ThrowIfNull(source);
        var data = Chunks(bytes, source, out var format);
        var frames = data.Length / format.FrameBytes;
        if (data.Length % format.FrameBytes != 0)
            throw Fault(source, FormattableString.Invariant($"{data.Length} bytes of sound"), FormattableString.Invariant($"whole frames of {format.FrameBytes} bytes: the file is truncated"));
        if (frames < 2)
            throw Fault(source, frames == 0 ? "no samples" : "one sample", "the sound of a pluck, at least 0.1 s");
        var channel = Strongest(data, format, frames, source);
        var samples = new double[frames];
        var clipped = 0;
        for (var i = 0; i < frames; i++)
        {
            samples[i] = format.Sample(data[(i * format.FrameBytes + channel * format.Bytes)..]);
            if (Math.Abs(samples[i]) >= 0.999)
                clipped++;
        }
        return new(source, format.Rate, format.Channels, channel + 1, clipped, samples);
    }

    private static ReadOnlySpan<byte> Chunks(ReadOnlySpan<byte> bytes, string source, out WavFormat format)
    {
        if (bytes.IsEmpty)
            throw Fault(source, "an empty file", SoundKind.Wanted);
        if (!bytes.StartsWith("RIFF"u8))
            throw SoundKind.Of(bytes) is { } kind ? Fault(source, kind, SoundKind.Converted) : Fault(source, "a file that isn't a WAV", SoundKind.Wanted);
        if (bytes.Length < 12)
            throw Fault(source, FormattableString.Invariant($"a WAV cut off after {bytes.Length} bytes"), "a whole file: copy it again");
        if (!bytes.Slice(8, 4).SequenceEqual("WAVE"u8))
            throw Fault(source, "a RIFF file that holds no sound", SoundKind.Wanted);
        var whole = BinaryPrimitives.ReadUInt32LittleEndian(bytes[4..]);
        // A recorder that writes into a pipe can't know the sizes and says 'all ones' in both places.
        var streamed = whole == uint.MaxValue;
        // Some writers count a last pad byte that they leave out.
        if (!streamed && whole > (uint)bytes.Length - 8u + 1u)
            throw Beyond(source, "file", whole, bytes.Length - 8);
        WavFormat? read = null;
        for (long at = 12; at + 8 <= bytes.Length;)
        {
            var id = bytes.Slice((int)at, 4);
            var size = BinaryPrimitives.ReadUInt32LittleEndian(bytes[((int)at + 4)..]);
            var rest = bytes[((int)at + 8)..];
            var sound = id.SequenceEqual("data"u8);
            if (sound && read is null)
                throw Fault(source, "sound before its format", "a 'fmt ' chunk before the 'data' chunk: the file is damaged");
            if (size > rest.Length)
            {
                if (!(sound && streamed && size == uint.MaxValue))
                    throw Beyond(source, sound ? "sound" : "part of the header", size, rest.Length);
                // The last frame of a stream may be cut.
                size = (uint)(rest.Length - rest.Length % read!.Value.FrameBytes);
            }
            var chunk = rest[..(int)size];
            if (sound)
            {
                format = read!.Value;
                return chunk;
            }
            if (id.SequenceEqual("fmt "u8))
                read ??= WavFormat.Read(chunk, source);
            at += 8 + (long)size + size % 2;
        }
        throw Fault(source, read is null ? "a WAV without a format" : "a WAV without sound", "a 'fmt ' and a 'data' chunk: the file is truncated");
    }

    private static int Strongest(ReadOnlySpan<byte> data, WavFormat format, int frames, string source)
    {
        var best = 0;
        var most = 0.0;
        for (var channel = 0; channel < format.Channels; channel++)
        {
            double sum = 0, squares = 0, first = 0;
            for (var i = 0; i < frames; i++)
            {
                var value = format.Sample(data[(i * format.FrameBytes + channel * format.Bytes)..]);
                // Written so that NaN fails too.
                if (!(Math.Abs(value) <= Loudest))
                    throw Fault(source, string.Create(CultureInfo.InvariantCulture, $"the value {value:G6} in frame {i + 1}, channel {channel + 1}"), "finite samples about full scale 1: export the recording again");
                if (i == 0)
                    first = value;
                sum += value - first;
                squares += (value - first) * (value - first);
            }
            var power = squares - sum * sum / frames;
            if (power > most)
                (best, most) = (channel, power);
        }
        return most > 0 ? best : throw Fault(source, "silence: every sample is the same", "the sound of a pluck: check the microphone and its mute");
    }

    private static InputException Beyond(string source, string what, uint size, int there)
        => Fault(source, FormattableString.Invariant($"a {what} said to be {size} bytes long where {there} are left"), "sizes within the file: it is truncated, copy it again");

    private static InputException Fault(string source, string found, string expected) => WavFormat.Fault(source, found, expected);
}
