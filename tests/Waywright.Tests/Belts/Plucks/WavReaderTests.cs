using System.Buffers.Binary;
using System.Text;

namespace Waywright.Tests.Belts;

public class WavReaderTests
{
    // Written by hand after the RIFF WAVE description, independent of the reader.
    internal static byte[] Wav(int code, int channels, uint rate, int bits, byte[] data, bool extensible = false, uint? riff = null, uint? size = null, int? frame = null)
    {
        var format = new byte[extensible ? 40 : 16];
        BinaryPrimitives.WriteUInt16LittleEndian(format, (ushort)(extensible ? 0xFFFE : code));
        BinaryPrimitives.WriteUInt16LittleEndian(format.AsSpan(2), (ushort)channels);
        BinaryPrimitives.WriteUInt32LittleEndian(format.AsSpan(4), rate);
        BinaryPrimitives.WriteUInt16LittleEndian(format.AsSpan(12), (ushort)(frame ?? channels * bits / 8));
        BinaryPrimitives.WriteUInt16LittleEndian(format.AsSpan(14), (ushort)bits);
        if (extensible)
        {
            format[16] = 22;
            BinaryPrimitives.WriteUInt16LittleEndian(format.AsSpan(18), (ushort)bits);
            new Guid(code, 0, 0x10, 0x80, 0, 0, 0xAA, 0, 0x38, 0x9B, 0x71).TryWriteBytes(format.AsSpan(24));
        }
        using var file = new MemoryStream();
        using var writer = new BinaryWriter(file);
        writer.Write(Encoding.ASCII.GetBytes("RIFF"));
        writer.Write(riff ?? (uint)(4 + 8 + format.Length + 8 + 4 + 8 + data.Length));
        writer.Write(Encoding.ASCII.GetBytes("WAVEfmt "));
        writer.Write(format.Length);
        writer.Write(format);
        writer.Write(Encoding.ASCII.GetBytes("LIST"));
        writer.Write(3);
        writer.Write([1, 2, 3, 0]);
        writer.Write(Encoding.ASCII.GetBytes("data"));
        writer.Write(size ?? (uint)data.Length);
        writer.Write(data);
        writer.Flush();
        return file.ToArray();
    }

    private static byte[] Coded(int code, int bits, params double[] values)
        => [.. values.SelectMany(v => (code, bits) switch
        {
            (1, 8) => [(byte)(128 + 128 * v)],
            (3, 32) => BitConverter.GetBytes((float)v),
            (3, 64) => BitConverter.GetBytes(v),
            _ => BitConverter.GetBytes((long)(v * Math.Pow(2, bits - 1)))[..(bits / 8)],
        })];

    private static string Fault(byte[] file) => Assert.Single(Assert.Throws<InputException>(() => WavReader.Read(file, "take.wav")).Problems).ToString();

    [Theory]
    [InlineData(1, 8)]
    [InlineData(1, 16)]
    [InlineData(1, 24)]
    [InlineData(1, 32)]
    [InlineData(3, 32)]
    [InlineData(3, 64)]
    public void Every_linear_coding_gives_the_values_that_were_written(int code, int bits)
    {
        double[] values = [0, 0.5, -0.25, -1, 0.75];
        foreach (var extensible in new[] { false, true })
        {
            var read = WavReader.Read(Wav(code, 1, 48_000, bits, Coded(code, bits, values), extensible), "take.wav");
            Assert.Equal(values, read.Samples.ToArray());
            Assert.Equal((48_000, 1, 1, 1), (read.SampleRate, read.Channels, read.Channel, read.ClippedSamples));
        }
    }

    [Fact]
    public void The_strongest_of_eight_channels_is_taken_whatever_its_offset()
    {
        double[] frames = [.. Enumerable.Range(0, 6).SelectMany(i => Enumerable.Range(0, 8).Select(c => c == 5 ? (i % 2 - 0.5) / 2 : c == 2 ? 0.875 : 0))];
        var read = WavReader.Read(Wav(1, 8, 44_100, 16, Coded(1, 16, frames)), "take.wav");
        Assert.Equal(6, read.Channel);
        Assert.Equal([-0.25, 0.25, -0.25, 0.25, -0.25, 0.25], read.Samples.ToArray());
    }

    [Fact]
    public void A_recording_written_into_a_pipe_is_read_to_its_end()
        => Assert.Equal(3, WavReader.Read(Wav(1, 1, 8000, 16, [.. Coded(1, 16, 0, 0.5, 0.25), 7], riff: uint.MaxValue, size: uint.MaxValue), "take.wav").Samples.Length);

    [Fact]
    public void A_file_that_can_not_be_used_gets_one_clear_error()
    {
        var good = Coded(1, 16, 0, 0.5, -0.5, 0.25);
        Assert.Equal("take.wav: found an empty file, expected a WAV recording (PCM or float)", Fault([]));
        Assert.Equal("take.wav: found a file that isn't a WAV, expected a WAV recording (PCM or float)", Fault("span,mass"u8.ToArray()));
        Assert.Equal("take.wav: found a WAV cut off after 6 bytes, expected a whole file: copy it again", Fault(Wav(1, 1, 8000, 16, good)[..6]));
        Assert.Contains("a file said to be 56 bytes long where 53 are left", Fault(Wav(1, 1, 8000, 16, good)[..^3]));
        Assert.Contains("a sound said to be 4000000000 bytes long where 8 are left", Fault(Wav(1, 1, 8000, 16, good, size: 4_000_000_000)));
        Assert.Contains("found a sample rate of 0 per second, expected 4000 to 768000", Fault(Wav(1, 1, 0, 16, good)));
        Assert.Contains("found no samples", Fault(Wav(1, 1, 8000, 16, [])));
        Assert.Contains("found one sample", Fault(Wav(1, 1, 8000, 16, good[..2])));
        Assert.Contains("found 7 bytes of sound, expected whole frames of 2 bytes", Fault(Wav(1, 1, 8000, 16, good[..7])));
        Assert.Contains("found silence", Fault(Wav(1, 1, 8000, 16, Coded(1, 16, 0.5, 0.5, 0.5))));
        Assert.Contains("found 9 channels, expected 1 to 8 channels", Fault(Wav(1, 9, 8000, 16, new byte[36])));
        Assert.Contains("found 0 channels", Fault(Wav(1, 0, 8000, 16, good)));
        Assert.Contains("found the value NaN in frame 2, channel 1", Fault(Wav(3, 1, 8000, 32, Coded(3, 32, 0, double.NaN, 1))));
        Assert.Contains("frame 3, channel 1", Fault(Wav(3, 1, 8000, 64, Coded(3, 64, 0, 1, double.NegativeInfinity))));
        Assert.Contains("found 12-bit PCM samples", Fault(Wav(1, 1, 8000, 12, good, frame: 2)));
        Assert.Contains("found 3 bytes per frame, expected 2", Fault(Wav(1, 1, 8000, 16, good, frame: 3)));
        Assert.Contains("found sound coded as 0x0007 (mu-law) inside a WAV", Fault(Wav(7, 1, 8000, 8, good)));
        Assert.Contains("found sound coded as 0x0055 (mp3) inside a WAV", Fault(Wav(0x55, 1, 8000, 16, good, extensible: true)));
    }

    [Theory]
    [InlineData("0000001C667479704D344120", "m4a")]
    [InlineData("494433030000", "mp3")]
    [InlineData("FFFB9064", "mp3")]
    [InlineData("FFF15080", "aac")]
    [InlineData("4F67675300", "ogg")]
    [InlineData("664C614300", "flac")]
    [InlineData("6361666600", "caf")]
    public void Another_kind_of_sound_file_is_named_with_how_to_convert_it(string bytes, string kind)
    {
        var fault = Fault(Convert.FromHexString(bytes));
        Assert.Contains(kind, fault, StringComparison.Ordinal);
        Assert.Contains("convert a copy", fault, StringComparison.Ordinal);
    }

    [Fact]
    public void A_hundred_thousand_damaged_files_are_read_or_refused_within_the_memory_they_warrant()
    {
        byte[][] seeds = [Wav(1, 1, 8000, 16, Coded(1, 16, 0, 0.5, -0.5, 0.25)), Wav(3, 2, 44_100, 32, Coded(3, 32, 0, 0.5, -0.5, 0.25), extensible: true), Wav(1, 8, 8000, 24, new byte[48])];
        var state = 20_261_125UL;
        int Next(int below)
        {
            state = unchecked(state * 6_364_136_223_846_793_005 + 1_442_695_040_888_963_407);
            return (int)((state >> 33) % (ulong)below);
        }
        var (read, refused) = (0, 0);
        var most = 0L;
        for (var i = 0; i < 100_000; i++)
        {
            var file = seeds[Next(seeds.Length)].ToArray();
            for (var k = Next(4); k >= 0; k--)
                file[Next(file.Length)] = Next(3) switch { 0 => 0xFF, 1 => 0, _ => (byte)Next(256) };
            if (Next(4) == 0)
                file = file[..Next(file.Length + 1)];
            var before = GC.GetAllocatedBytesForCurrentThread();
            try
            {
                var recording = WavReader.Read(file, "take.wav");
                Assert.All(recording.Samples.ToArray(), s => Assert.True(double.IsFinite(s)));
                read++;
            }
            catch (InputException)
            {
                refused++;
            }
            most = Math.Max(most, GC.GetAllocatedBytesForCurrentThread() - before);
        }
        Assert.True(read > 1000 && refused > 1000, $"read {read}, refused {refused}");
        Assert.InRange(most, 1, 200_000);
    }
}
