using System.Diagnostics;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using System.Security.Cryptography;

namespace Waywright.Tests.Straightness;

/// <summary>The figures are the same to the last bit whatever vectors the machine has: other widths are switched off in a child process.</summary>
public sealed class SameBitsTests
{
    private const string Expected = "WAYWRIGHT_EXPECTED_BITS";

    [Theory]
    [InlineData("DOTNET_EnableHWIntrinsic")]
    [InlineData("DOTNET_EnableAVX2")]
    [InlineData("DOTNET_EnableAVX512")]
    public void Without_some_vector_instructions_the_figures_have_the_same_bits(string switchedOff)
    {
        Assert.SkipUnless(RuntimeInformation.ProcessArchitecture == Architecture.X64, "the switches are those of x64");
        var start = new ProcessStartInfo(Environment.ProcessPath!) { RedirectStandardOutput = true };
        if (Path.GetFileNameWithoutExtension(Environment.ProcessPath) == "dotnet")
            start.ArgumentList.Add(typeof(SameBitsTests).Assembly.Location);
        foreach (var argument in new[] { "-noColor", "-explicit", "on", "-method", $"{typeof(SameBitsTests).FullName}.{nameof(The_figures_have_the_bits_of_the_parent_process)}" })
            start.ArgumentList.Add(argument);
        start.Environment[switchedOff] = "0";
        start.Environment[Expected] = Bits();
        using var child = Process.Start(start)!;
        var output = child.StandardOutput.ReadToEnd();
        child.WaitForExit();
        Assert.True(child.ExitCode == 0, output);
        Assert.Contains("Total: 1, Errors: 0, Failed: 0, Skipped: 0", output, StringComparison.Ordinal);
    }

    [Fact(Explicit = true)]
    public void The_figures_have_the_bits_of_the_parent_process()
    {
        var expected = Environment.GetEnvironmentVariable(Expected);
        Assert.True(expected is not null, "runs in the child process of the test above");
        if (Environment.GetEnvironmentVariable("DOTNET_EnableHWIntrinsic") == "0")
            Assert.False(Vector256.IsHardwareAccelerated, "the switch had no effect, so this proves nothing");
        Assert.Equal(expected, Bits());
    }

    private static string Bits()
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        var random = new Random(5);
        for (var turn = 0; turn < 500; turn++)
        {
            // No sine or logarithm: those may differ between machines before any figure is made.
            var x = Enumerable.Range(0, 2 + random.Next(400)).Select(_ => random.NextDouble() * 350).Append(0).ToArray();
            var figures = StraightnessFigures.Of(new Profile(x, Array.ConvertAll(x, at => (at * (350 - at) / 2000) + (3 * random.NextDouble()))));
            var zone = figures.MinimumZone;
            foreach (var line in new[] { figures.EndPoints, figures.LeastSquares, zone.Line })
            {
                double[] values = [line.SlopeUmPerM, line.HeightAtZeroUm, line.STRtUm, line.STRpUm, line.STRvUm, line.STRqUm];
                hash.AppendData(MemoryMarshal.AsBytes(values.AsSpan()));
            }

            int[] contacts = [.. zone.Contacts.Select(c => (2 * c.Station) + (int)c.Side)];
            hash.AppendData(MemoryMarshal.AsBytes(contacts.AsSpan()));
        }

        return Convert.ToHexString(hash.GetHashAndReset());
    }
}
