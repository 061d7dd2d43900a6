using System;
using System.Buffers.Binary;
using System.Globalization;

namespace Waywright;

/// <summary>What a WAV's 'fmt ' chunk says, checked: linear samples of a known size, 1 to 8 channels, a rate a recorder can have.</summary>
internal readonly record struct WavFormat(bool Float, int Channels, int Rate, int Bytes)
{
    // The last 14 bytes of KSDATAFORMAT_SUBTYPE_*: the first two are the format code itself.
    private static ReadOnlySpan<byte> SubtypeTail => [0x00, 0x00, 0x00, 0x00, 0x10, 0x00, 0x80, 0x00, 0x00, 0xAA, 0x00, 0x38, 0x9B, 0x71];

    public int FrameBytes => Channels * Bytes;

    public static WavFormat Read(ReadOnlySpan<byte> chunk, string source)
    {
        if (chunk.Length < 16)
            throw Fault(source, FormattableString.Invariant($"a format chunk of {chunk.Length} bytes"), "at least 16: the file is damaged");
        int code = BinaryPrimitives.ReadUInt16LittleEndian(chunk);
        int channels = BinaryPrimitives.ReadUInt16LittleEndian(chunk[2..]);
        var rate = BinaryPrimitives.ReadUInt32LittleEndian(chunk[4..]);
        int frame = BinaryPrimitives.ReadUInt16LittleEndian(chunk[12..]);
        int bits = BinaryPrimitives.ReadUInt16LittleEndian(chunk[14..]);
        if (code == 0xFFFE)
        {
            if (chunk.Length < 40)
                throw Fault(source, FormattableString.Invariant($"an extensible format chunk of {chunk.Length} bytes"), "at least 40: the file is damaged");
            code = BinaryPrimitives.ReadUInt16LittleEndian(chunk[24..]);
            if (!chunk.Slice(26, 14).SequenceEqual(SubtypeTail))
                throw Fault(source, "an extensible WAV of unknown coding", SoundKind.Converted);
        }
        if (code is not (1 or 3))
            throw Fault(source, string.Create(CultureInfo.InvariantCulture, $"sound coded as 0x{code:X4} ({SoundKind.Codec(code)}) inside a WAV"), SoundKind.Converted);
        if (channels is < 1 or > 8)
            throw Fault(source, FormattableString.Invariant($"{channels} channels"), "1 to 8 channels");
        if (rate is < 4000 or > 768_000)
            throw Fault(source, FormattableString.Invariant($"a sample rate of {rate} per second"), "4000 to 768000");
        if (code == 1 ? bits is not (8 or 16 or 24 or 32) : bits is not (32 or 64))
            throw Fault(source, FormattableString.Invariant($"{bits}-bit {(code == 1 ? "PCM" : "float")} samples"), "PCM of 8, 16, 24 or 32 bit, or float of 32 or 64 bit");
        var format = new WavFormat(code == 3, channels, (int)rate, bits / 8);
        if (frame != format.FrameBytes)
            throw Fault(source, FormattableString.Invariant($"{frame} bytes per frame"), FormattableString.Invariant($"{format.FrameBytes} for {channels} channels of {bits} bit: the file is damaged"));
        return format;
    }

    /// <summary>One sample, full scale 1.</summary>
    public double Sample(ReadOnlySpan<byte> at) => (Float, Bytes) switch
    {
        (true, 4) => BinaryPrimitives.ReadSingleLittleEndian(at),
        (true, _) => BinaryPrimitives.ReadDoubleLittleEndian(at),
        // 8-bit PCM alone is unsigned.
        (false, 1) => (at[0] - 128) / 128.0,
        (false, 2) => BinaryPrimitives.ReadInt16LittleEndian(at) / 32768.0,
        (false, 3) => ((at[0] << 8 | at[1] << 16 | at[2] << 24) >> 8) / 8388608.0,
        _ => BinaryPrimitives.ReadInt32LittleEndian(at) / 2147483648.0,
    };

    internal static InputException Fault(string source, string found, string expected) => new(new InputProblem(source, null, null, found, expected));
}
