using System.Globalization;
using Waywright.Tests.Reference;

namespace Waywright.Tests.Belts.Plucks;

/// <summary>
/// 36 recorded plucked strings of known pitch: FluidR3 GM's samples (Frank Wen, MIT) and four sets of instrument samples (CC-BY 3.0), cut and made mono; index.csv names the source of each, LICENCES.md the licences.
/// Reference: the first mode from a robust fit of up to 16 partials from the nominal note on, u 0.3 to 3 cents; the interval spans that fit and the first partial itself, widened by 3 + 2 u cents.
/// </summary>
public sealed record OpenClip(string File, double ReferenceHz, double ReferenceUCents, double LowHz, double HighHz, double OnsetSeconds)
{
    private const int HeaderBytes = 44;

    public static IReadOnlyList<OpenClip> All { get; } = Read();

    public byte[] Wav => System.IO.File.ReadAllBytes(ReferenceFile.PathOf($"audio/{File}"));

    /// <summary>The clip with white noise, its mean square this many dB under the clip's.</summary>
    public byte[] WithNoise(double db, ulong seed)
    {
        var (samples, rate) = Samples();
        InventedTake.Mix(samples, InventedTake.White(samples.Length, new PluckDraws(seed)), Math.Sqrt(InventedPluck.Power(samples)) * InventedTake.Level(-db));
        return InventedTake.Wav(samples, rate);
    }

    /// <summary>So many seconds from where the pluck starts: the first sample is already sound.</summary>
    public byte[] Cut(double seconds)
    {
        var (samples, rate) = Samples();
        return InventedTake.Wav([.. samples.Skip((int)(OnsetSeconds * rate)).Take((int)(seconds * rate))], rate);
    }

    private (double[] Samples, int Rate) Samples()
    {
        var bytes = Wav;
        double[] samples = [.. Enumerable.Range(0, (bytes.Length - HeaderBytes) / 2).Select(i => (double)BitConverter.ToInt16(bytes, HeaderBytes + (2 * i)))];
        return (samples, BitConverter.ToInt32(bytes, 24));
    }

    private static List<OpenClip> Read()
    {
        var rows = ReferenceFile.Lines("audio/index.csv").Select(Cells).ToArray();
        var columns = new[] { "reference_hz", "reference_u_cents", "accept_lo_hz", "accept_hi_hz", "onset_s" }.Select(name => rows[0].IndexOf(name)).ToArray();
        return [.. rows.Skip(1).Select(cells => (cells[0], columns.Select(c => double.Parse(cells[c], CultureInfo.InvariantCulture)).ToArray()))
            .Select(row => new OpenClip(row.Item1, row.Item2[0], row.Item2[1], row.Item2[2], row.Item2[3], row.Item2[4]))];
    }

    // Fields in quotes hold commas and doubled quotes.
    private static List<string> Cells(string line)
    {
        var (cells, start, quoted) = (new List<string>(), 0, false);
        for (var i = 0; i <= line.Length; i++)
        {
            quoted ^= i < line.Length && line[i] == '"';
            if (i < line.Length && (line[i] != ',' || quoted))
                continue;
            cells.Add(line[start..i]);
            start = i + 1;
        }

        return cells;
    }
}
