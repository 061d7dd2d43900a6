using System.Globalization;
using Waywright.Tests.Belts.Plucks;

namespace Waywright.Simulations.Plucks;

/// <summary>The recorded strings of known pitch: whole, with noise at 10 dB, and the first 0.3 s.</summary>
internal sealed record ClipOutcome(string Case, double[] Cents, int Inside, int Held, int Usable)
{
    public static IReadOnlyList<ClipOutcome> All() =>
    [
        Of("whole clip", clip => clip.Wav),
        Of("white noise at 10 dB", clip => clip.WithNoise(10, 7)),
        Of("first 0.3 s", clip => clip.Cut(0.3)),
    ];

    public string Row => string.Create(CultureInfo.InvariantCulture, $"| {Case} | {Cents.Length} | {PluckPoint.Errors(Cents)} | {Cents.Max(Math.Abs):0.0} | {Inside} | {Held} | {Usable} |");

    private static ClipOutcome Of(string name, Func<OpenClip, byte[]> wav)
    {
        var takes = OnAllCores.Select(OpenClip.All, clip => PluckTake.Analyse(WavReader.Read(wav(clip), clip.File)), CancellationToken.None);
        var pairs = OpenClip.All.Zip(takes, (clip, take) => (Clip: clip, Take: take, Hertz: take.Frequency?.Si.Value ?? double.NaN)).ToArray();
        return new(
            name,
            [.. pairs.Select(p => PluckCents.Between(p.Clip.ReferenceHz, p.Hertz))],
            pairs.Count(p => p.Hertz >= p.Clip.LowHz && p.Hertz <= p.Clip.HighHz),
            pairs.Count(p => Math.Abs(PluckCents.Between(p.Clip.ReferenceHz, p.Hertz)) <= 1.96 * Math.Sqrt(Math.Pow(PluckCents.Of(p.Take.Frequency!.Si.StandardUncertainty, p.Hertz), 2) + Math.Pow(p.Clip.ReferenceUCents, 2))),
            pairs.Count(p => p.Take.IsUsable));
    }
}
