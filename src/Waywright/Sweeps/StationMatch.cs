using System;
using System.Globalization;

namespace Waywright;

/// <summary>Holds two runs to the same stations, and each to what can be compared at all.</summary>
internal static class StationMatch
{
    public const double SameMm = 1e-6;

    private const int Least = 3;

    /// <exception cref="InputException">Filtered, a station twice, or fewer than 3.</exception>
    public static void Check(Profile profile, string source)
    {
        if (profile.IsFiltered)
            throw Problem(source, "a filtered profile", "heights as they were measured");
        if (profile.HasRepeatedStation)
            throw Problem(source, "a station that is there twice", "each station once: combine the passes first");
        if (profile.Count < Least)
            throw Problem(source, string.Create(CultureInfo.InvariantCulture, $"{profile.Count} stations"), "at least 3: two always lie on a line");
    }

    /// <exception cref="InputException">The stations differ.</exception>
    public static void Check(Profile first, string firstName, Profile other, string otherName, string source)
    {
        if (other.Count != first.Count)
            throw Problem(source, string.Create(CultureInfo.InvariantCulture, $"{other.Count} stations in the {otherName}"), string.Create(CultureInfo.InvariantCulture, $"the {first.Count} stations of the {firstName}"));
        for (var i = 0; i < first.Count; i++)
        {
            if (Math.Abs(other.PositionsMm[i] - first.PositionsMm[i]) > SameMm)
                throw Problem(source, $"a station at {NumberText.Plain(other.PositionsMm[i])} mm in the {otherName}", $"{NumberText.Plain(first.PositionsMm[i])} mm as in the {firstName}");
        }
    }

    private static InputException Problem(string source, string found, string expected) => new(new InputProblem(source, null, null, found, expected));
}
