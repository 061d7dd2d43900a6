using System;
using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>Why a pluck is not to be used, each with what to do. The limits: docs/plucks.md.</summary>
internal static class PluckReasons
{
    private const double LeastPeriods = 5;
    private const double LikelyStrength = 0.9;
    private const double OtherNoteDb = -4;
    private const double BeatingDb = -2.5;
    private const double ClippedShare = 0.01;
    private const double FullScale = 0.999;
    private const double MainsBandHz = 0.3;
    private const double QuietDb = 10;
    private const double LeastDecay = 0.15;
    private const double ControlBand = 0.02;
    private const double LargestCents = 30;
    private const double EdgeShare = 0.01;
    private const double FaintDb = -38;

    public static IReadOnlyList<string> NoNote { get; } = FixedList<string>.Copy(["no note stands out of the noise: hold the phone within 2 cm of the middle of the span"]);

    public static IReadOnlyList<string> TooShort(double seconds) => FixedList<string>.Copy([FormattableString.Invariant($"too short: {1000 * Math.Max(0, seconds):0} ms of sound are left after the first 30 ms, and 120 ms are needed: let the span ring")]);

    public static IReadOnlyList<string> Of(PluckSignal signal, PluckStretch stretch, Pluck pluck, double decayPerSecond, PluckRemains remains, PluckSearch search)
    {
        var (hertz, seconds) = (pluck.Frequency!.Si.Value, (stretch.To - stretch.From) / signal.Rate);
        var reasons = new List<string>();
        if (Clipped(signal, stretch) > ClippedShare)
            reasons.Add("clipped: the recorder was overdriven; pluck more gently or hold it farther away");
        if (hertz * seconds < LeastPeriods)
            reasons.Add(FormattableString.Invariant($"too short: {hertz * seconds:0.0} periods of the note before it has died down, and 5 are needed: let the span ring, or pluck a longer one"));
        if (IsHum(signal, stretch, hertz, decayPerSecond * seconds))
            reasons.Add(FormattableString.Invariant($"hum: {hertz:0.0} Hz is a note of the mains, and nothing tells it from their hum: record half a second of quiet before the pluck, motors and supplies off"));
        if (remains.OffLadderDb > OtherNoteDb)
            reasons.Add(FormattableString.Invariant($"another note: {remains.OffLadderHz:0} Hz sounds too, {-Math.Min(0, remains.OffLadderDb):0} dB under the strongest partial: damp the other spans with a hand, and check that this is no wrong partial"));
        if (remains.NearLadderDb > BeatingDb)
            reasons.Add("beating: two notes close together sound at once: damp the other belt");
        if (pluck.RunnersUp.Count > 0 && pluck.RunnersUp[0].Strength > LikelyStrength)
            reasons.Add(FormattableString.Invariant($"wrong partial likely: {pluck.RunnersUp[0].FrequencyHz:0.0} Hz explains the sound nearly as well as {hertz:0.0} Hz: say what the note can be, or pluck another length of the span"));
        else if (LacksRungs(pluck.Partials))
            reasons.Add(FormattableString.Invariant($"wrong partial likely: of the ladder of {hertz:0.0} Hz the lowest rungs don't sound, and two spans can look like that: damp the others with a hand, hold the phone nearer, and say what the note can be"));
        if (Math.Min(Math.Abs(Math.Log(hertz / search.LowestHz)), Math.Abs(Math.Log(hertz / search.HighestHz))) < EdgeShare)
            reasons.Add(FormattableString.Invariant($"at the edge: {hertz:0.0} Hz lies at the end of the range that was searched: widen it"));
        if (PluckCents.Of(pluck.Frequency.Si.StandardUncertainty, hertz) > LargestCents)
            reasons.Add("no clear note: its uncertainty is more than 30 cents: hold the phone within 2 cm of the middle of the span");
        if (search.Control?.Plucks.Any(other => other.Frequency is { } note && Math.Abs(Math.Log(note.Si.Value / hertz)) < ControlBand) == true)
            reasons.Add(FormattableString.Invariant($"control take matches: {hertz:0.0} Hz sounds with a finger on the span too, so it is the frame or hum"));
        return FixedList<string>.Copy(reasons);
    }

    // Two spans whose notes stand as 2 to 3, or 3 to 4, have a common ladder without the rungs 1, 7, and 5 or 2.
    private static bool LacksRungs(IReadOnlyList<PluckPartial> partials)
    {
        bool Sounds(int number) => partials.Any(p => p.Number == number && p.LevelDb > FaintDb);
        return partials.Count >= 3 && !Sounds(1) && !Sounds(7) && (!Sounds(5) || !Sounds(2));
    }

    private static double Clipped(PluckSignal signal, PluckStretch stretch)
        => signal.Clipped(stretch.From, stretch.To, FullScale) / Math.Max(1, stretch.To - stretch.From);

    private static bool IsHum(PluckSignal signal, PluckStretch stretch, double hertz, double decays)
    {
        double[] mains = [50, 60, 100, 120];
        var isTold = stretch.HummingPower is { } hum ? hum * Math.Pow(10, QuietDb / 10) < signal.Power(stretch.From, stretch.To) : decays > LeastDecay;
        return mains.Any(m => Math.Abs(hertz - m) < MainsBandHz) && !isTold;
    }
}
