using System.Collections.Generic;

namespace Waywright;

/// <summary>Why a pluck is not to be used, each with what to do.</summary>
internal static class PluckReasons
{
    public static IReadOnlyList<string> NoNote { get; } = FixedList<string>.Copy(["no note stands out of the noise: hold the phone within 2 cm of the middle of the span"]);

    public static IReadOnlyList<string> TooShort(double seconds) => FixedList<string>.Copy([$"too short: {NumberText.Rounded(1000 * seconds, 0)} ms of sound after the pluck, and 120 ms are needed"]);

    public static IReadOnlyList<string> Of(PluckSignal signal, PluckStretch stretch, Pluck pluck, List<PluckCandidate> candidates, PluckGlide glide, PluckSearch search) => FixedList<string>.Empty;
}
