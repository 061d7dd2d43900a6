using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using UnitsNet;

namespace Waywright;

/// <summary>One pitch that a belt may have.</summary>
/// <param name="Name">As the trade calls it.</param>
/// <param name="PitchMm">Nominal pitch, mm; null for none of the known ones.</param>
/// <param name="Probability">How likely after the measurement, all taken as equally likely before it.</param>
public sealed record PitchCandidate(string Name, double? PitchMm, double Probability);

/// <summary>
/// Which pitch a belt has, from the length over N pitches, flank to same flank (N + 1 teeth). Likelihood of pitch p: normal density of the length at N p with
/// u2 = u(L)2 + (N p tau)2 / 3, tau the belt's own pitch tolerance; of none of these: any pitch from 1 to 15 mm alike.
/// </summary>
/// <remarks>
/// Nominal pitches: MXL 2.032 and XL 5.080 mm (ISO 5296); 2.5, 5 and 10 mm (DIN 7721, from memory); 2, 3, 5, 8 mm as in makers' tables; 40 DP 2.073 mm (0.0816 in, from memory).
/// A pitch proves no tooth form: a 2 mm belt may have round or straight flanks. The form is asked for, with its height, and never inferred.
/// </remarks>
public sealed record BeltPitch
{
    /// <summary>Limits of a belt's own mean pitch, as a share of it; common practice, no source.</summary>
    public const double UsualTolerance = 0.001;

    private const double Settled = 0.99;
    private const double LeastMm = 1;
    private const double MostMm = 15;

    private static readonly (string Name, double Mm)[] Known =
    [
        ("2 mm", 2), ("MXL (2.032 mm)", 2.032), ("40 DP (2.073 mm)", 2.073), ("2.5 mm", 2.5), ("3 mm", 3), ("5 mm", 5), ("XL (5.080 mm)", 5.08), ("8 mm", 8), ("L (9.525 mm)", 9.525), ("10 mm", 10),
    ];

    private BeltPitch(int pitches, Measured<Length> over, IEnumerable<PitchCandidate> candidates, int? pitchesToSettle, IEnumerable<string> forms, bool isFormAsked)
    {
        (Pitches, Over, PitchesToSettle) = (pitches, over, pitchesToSettle);
        Candidates = FixedList<PitchCandidate>.Copy(candidates);
        Forms = FixedList<string>.Copy(forms);
        IsFormAsked = isFormAsked;
    }

    /// <summary>How many pitches were measured over: one less than the teeth.</summary>
    public int Pitches { get; }

    /// <summary>Their length, flank to same flank.</summary>
    public Measured<Length> Over { get; }

    /// <summary>The pitch as measured, mm.</summary>
    public Uncertain PitchMm => 1000 * Over.Si / Pitches;

    /// <summary>The known pitches and none of these, the likeliest first; probabilities add to 1.</summary>
    public IReadOnlyList<PitchCandidate> Candidates { get; }

    /// <summary>The likeliest if it has at least 99 %, and is not none of these; else null.</summary>
    public PitchCandidate? Found => Candidates[0] is { PitchMm: not null, Probability: >= Settled } found ? found : null;

    /// <summary>Over how many pitches to measure, just as well, to tell the two likeliest known ones apart with 999 to 1; null where that is done or the belt's own tolerance hides it.</summary>
    public int? PitchesToSettle { get; }

    /// <summary>Profiles that have this pitch, and the height and flanks if these were given.</summary>
    public IReadOnlyList<string> Forms { get; }

    /// <summary>Whether tooth height and flanks were given.</summary>
    public bool IsFormAsked { get; }

    /// <summary>The result in words.</summary>
    public string Verdict => BeltPitchText.Verdict(this);

    /// <summary>Weighs the known pitches against a length.</summary>
    /// <param name="pitches">N: one less than the teeth spanned, 1 or more.</param>
    /// <param name="over">Length from a flank to the same flank N teeth on, with its uncertainty.</param>
    /// <param name="toothHeight">Height of a tooth over the land between, as measured; null if not.</param>
    /// <param name="flanks">How the flanks look: <c>straight</c> or <c>round</c>; null if not looked at.</param>
    /// <param name="tolerance">Limits of the belt's own pitch, as a share of it.</param>
    /// <exception cref="ArgumentOutOfRangeException">N below 1, a length or height not above 0, a tolerance below 0 or above 5 %.</exception>
    /// <exception cref="ArgumentException">The length has no uncertainty, or the flanks are neither straight nor round.</exception>
    public static BeltPitch Identify(int pitches, Measured<Length> over, Measured<Length>? toothHeight = null, string? flanks = null, double tolerance = UsualTolerance)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(pitches, 1);
        ArgumentNullException.ThrowIfNull(over);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(over.Si.Value, nameof(over));
        if (over.Si.StandardUncertainty == 0)
            throw new ArgumentException("State how well the length is known, such as 100 +/- 0.5 mm: nothing can be weighed without.", nameof(over));
        if (toothHeight is { Si.Value: <= 0 })
            throw new ArgumentOutOfRangeException(nameof(toothHeight), toothHeight.ToString(), "A tooth is higher than 0.");
        if (flanks is not (null or "straight" or "round"))
            throw new ArgumentException($"Flanks are 'straight' or 'round', not '{flanks}'.", nameof(flanks));
        if (tolerance is not (>= 0 and <= 0.05))
            throw new ArgumentOutOfRangeException(nameof(tolerance), tolerance, "A pitch tolerance lies between 0 and 0.05.");
        var (length, u) = (1000 * over.Si.Value, 1000 * over.Si.StandardUncertainty);
        double Spread(double pitch) => double.Hypot(u, pitches * pitch * tolerance / Math.Sqrt(3));
        double LogDensity(double pitch) => (-0.5 * Math.Pow((length - (pitches * pitch)) / Spread(pitch), 2)) - Math.Log(Spread(pitch) * Math.Sqrt(2 * Math.PI));

        var none = length / pitches is >= LeastMm and <= MostMm ? -Math.Log(pitches * (MostMm - LeastMm)) : double.NegativeInfinity;
        (string Name, double? Mm, double Log)[] weighed = [.. Known.Select(k => (k.Name, (double?)k.Mm, LogDensity(k.Mm))), ("none of these", null, none)];
        var highest = weighed.Max(w => w.Log);
        var sum = weighed.Sum(w => Math.Exp(w.Log - highest));
        PitchCandidate[] candidates = [.. weighed.Select(w => new PitchCandidate(w.Name, w.Mm, Math.Exp(w.Log - highest) / sum)).OrderByDescending(c => c.Probability).ThenBy(c => c.PitchMm ?? double.MaxValue)];
        var likely = candidates[0].PitchMm;
        var forms = likely is { } mm ? ToothForms.With(mm, toothHeight, flanks) : [];
        return new(pitches, over, candidates, ToSettle(weighed, u, tolerance, pitches), forms, toothHeight is not null && flanks is not null);
    }

    // A likelihood ratio of 999 at the likeliest pitch needs (N dp)2 = 2 ln 999 u2, where u2 grows with N by the belt's own tolerance.
    private static int? ToSettle((string Name, double? Mm, double Log)[] weighed, double u, double tolerance, int now)
    {
        var two = weighed.Where(w => w.Mm is not null).OrderByDescending(w => w.Log).Take(2).Select(w => w.Mm!.Value).ToArray();
        var wanted = 2 * Math.Log(999);
        var rest = Math.Pow(two[0] - two[1], 2) - (wanted * Math.Pow(Math.Max(two[0], two[1]) * tolerance, 2) / 3);
        if (rest <= 0)
            return null;
        var pitches = (int)Math.Min(1e6, Math.Ceiling(u * Math.Sqrt(wanted / rest)));
        return pitches <= now ? null : pitches;
    }
}

/// <summary>A pitch in words.</summary>
internal static class BeltPitchText
{
    public static string Verdict(BeltPitch pitch)
    {
        var best = pitch.Candidates[0];
        var measured = $"{pitch.PitchMm.ToShortString()} mm over {pitch.Pitches.ToString(CultureInfo.InvariantCulture)} pitches";
        var action = pitch.Found is { } found ? $"Take the belt as {found.Name}: {measured}, {Percent(found)} likely."
            : best.PitchMm is null ? $"Count the teeth again: {measured} fits none of the known pitches."
            : pitch.PitchesToSettle is { } more ? string.Create(CultureInfo.InvariantCulture, $"Measure over {more + 1} teeth ({more} pitches): {measured} leaves {best.Name} at {Percent(best)} and {pitch.Candidates[1].Name} at {Percent(pitch.Candidates[1])}.")
            : $"Undecided: {measured} leaves {best.Name} at {Percent(best)} and {pitch.Candidates[1].Name} at {Percent(pitch.Candidates[1])}.";
        return best.PitchMm is null ? action : $"{action} {Form(pitch)}";
    }

    private static string Form(BeltPitch pitch)
    {
        var several = string.Join(", ", pitch.Forms);
        if (!pitch.IsFormAsked)
            return $"Form not proven: measure a tooth's height and look whether its flanks are straight or round{(pitch.Forms.Count > 0 ? $"; this pitch exists as {several}" : "")}.";
        return pitch.Forms.Count switch
        {
            0 => "Form not proven: no profile of this pitch in the tables has this height and these flanks.",
            1 => $"Height and flanks are those of {several}.",
            _ => $"Form not proven: height and flanks fit {several}.",
        };
    }

    private static string Percent(PitchCandidate candidate) => candidate.Probability > 0.9995 ? "over 99.9 %" : $"{NumberText.Rounded(100 * candidate.Probability, 1)} %";
}

/// <summary>Tooth forms with their pitch and height, mm: SDP/SI handbook D265, p. T15, as printed; T10 from the same page.</summary>
internal static class ToothForms
{
    // Caliper on rubber teeth: common practice, no source.
    private const double HeightLimitMm = 0.1;

    private static readonly (string Name, double Pitch, double Height, string Flanks)[] Table =
    [
        ("MXL", 2.032, 0.46, "straight"), ("40 DP", 2.073, 0.46, "straight"), ("XL", 5.08, 1.3, "straight"), ("HTD 3 mm", 3, 1.22, "round"), ("HTD 5 mm", 5, 2.08, "round"),
        ("2 mm curvilinear", 2, 0.76, "round"), ("3 mm curvilinear", 3, 1.14, "round"), ("5 mm curvilinear", 5, 1.93, "round"), ("T2.5", 2.5, 0.7, "straight"), ("T5", 5, 1.2, "straight"), ("T10", 10, 2.5, "straight"),
    ];

    public static IEnumerable<string> With(double pitchMm, Measured<Length>? height, string? flanks)
        => Table.Where(t => Math.Abs(t.Pitch - pitchMm) < 0.002 && (flanks is null || t.Flanks == flanks)
            && (height is null || Math.Abs((1000 * height.Si.Value) - t.Height) <= HeightLimitMm + (2000 * height.Si.StandardUncertainty))).Select(t => t.Name);
}
