using NAudio.Wave;

namespace Waywright.Tests.Belts;

/// <summary>The WAV reader beside NAudio.Core's (MIT), an independent one: the same samples from the same bytes.</summary>
public class WavByNAudioTests
{
    [Theory]
    [InlineData(1, 8, 1, false)]
    [InlineData(1, 16, 1, false)]
    [InlineData(1, 16, 2, true)]
    [InlineData(1, 24, 2, false)]
    [InlineData(1, 24, 1, true)]
    [InlineData(1, 32, 1, false)]
    [InlineData(3, 32, 2, false)]
    [InlineData(3, 64, 1, false)]
    public void Every_coding_gives_the_samples_that_NAudio_gives(int code, int bits, int channels, bool extensible)
    {
        var draws = new PluckDraws(5);
        var data = new byte[300 * channels * bits / 8];
        for (var i = 0; i < data.Length * 8 / bits; i++)
            Coded(code, bits, draws.Uniform(-0.99, 0.99)).CopyTo(data, i * bits / 8);
        var file = WavReaderTests.Wav(code, channels, 44_100, bits, data, extensible);

        using var reader = new WaveFileReader(new MemoryStream(file));
        var theirs = new float[300 * channels];
        Assert.Equal(theirs.Length, reader.ToSampleProvider().Read(theirs));
        var ours = WavReader.Read(file, "take.wav");
        Assert.Equal(300, ours.Samples.Length);
        for (var i = 0; i < 300; i++)
            // NAudio gives single precision.
            Assert.InRange(ours.Samples.Span[i] - theirs[(i * channels) + ours.Channel - 1], -1e-7, 1e-7);
    }

    [Fact]
    public void A_recorded_clip_gives_the_samples_that_NAudio_gives()
    {
        var file = Waywright.Tests.Belts.Plucks.OpenClip.All[0].Wav;
        using var reader = new WaveFileReader(new MemoryStream(file));
        var ours = WavReader.Read(file, "clip.wav");
        var theirs = new float[ours.Samples.Length];
        Assert.Equal(theirs.Length, reader.ToSampleProvider().Read(theirs));
        Assert.Equal(theirs, ours.Samples.ToArray().Select(s => (float)s));
    }

    private static byte[] Coded(int code, int bits, double value) => (code, bits) switch
    {
        (1, 8) => [(byte)(128 + (127 * value))],
        (3, 32) => BitConverter.GetBytes((float)value),
        (3, 64) => BitConverter.GetBytes(value),
        _ => BitConverter.GetBytes((long)(value * Math.Pow(2, bits - 1)))[..(bits / 8)],
    };
}
