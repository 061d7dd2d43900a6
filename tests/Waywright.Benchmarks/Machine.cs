using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Waywright.Benchmarks;

/// <summary>What the figures were measured on, as far as it matters to them.</summary>
internal static class Machine
{
    public static IReadOnlyList<string> Describe() =>
    [
        $"{Environment.ProcessorCount} cores, {Processor()}",
        $"{RuntimeInformation.OSDescription}, {RuntimeInformation.ProcessArchitecture}",
        $"{RuntimeInformation.FrameworkDescription}, vectors of 256 bits {(Vector256.IsHardwareAccelerated ? "in hardware" : "emulated")}",
    ];

    private static string Processor()
    {
        const string linux = "/proc/cpuinfo";
        const string key = "model name";
        var line = File.Exists(linux) ? File.ReadLines(linux).FirstOrDefault(l => l.StartsWith(key, StringComparison.Ordinal)) : null;
        return line is null ? "processor not named" : line[(line.IndexOf(':', StringComparison.Ordinal) + 1)..].Trim();
    }
}
