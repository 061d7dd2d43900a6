using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;

namespace Waywright;

/// <summary>A rail, its screws and its base, checked once for any number of patterns.</summary>
internal sealed record MountingCase
{
    public MountingCase(Profile free, ScrewPattern screws, double bendingStiffnessNm2, Profile? under, double? baseStiffnessNm2, double? clampLimitN)
    {
        ArgumentNullException.ThrowIfNull(free);
        ArgumentNullException.ThrowIfNull(screws);
        var problems = new List<string?>
        {
            StationCurve.Problem(free, screws, "The free shape", within: true),
            free.IsFiltered ? "The free shape was filtered: a filter hides what stays between screws." : null,
            under is null ? null : StationCurve.Problem(under, screws, "The base", within: false),
            under is { IsFiltered: true } ? "The base's shape was filtered: a filter hides what stays between screws." : null,
            Outside(bendingStiffnessNm2, 1e-6, 1e12, "The bending stiffness of the rail", "N m2"),
            Outside(baseStiffnessNm2, 1e-6, 1e12, "The bending stiffness of the base", "N m2"),
            Outside(clampLimitN, double.Epsilon, 1e9, "The clamp limit", "N"),
        };
        if (problems.Any(p => p is not null))
            throw new ArgumentException(string.Join(' ', problems.OfType<string>()));
        (Free, Screws, Base, BendingStiffnessNm2, BaseStiffnessNm2, ClampLimitN) = (free, screws, under, bendingStiffnessNm2, baseStiffnessNm2, clampLimitN);
        FreeCurve = new StationCurve(free);
        BaseCurve = under is null ? null : new StationCurve(under);
    }

    public Profile Free { get; }

    public ScrewPattern Screws { get; init; }

    public Profile? Base { get; }

    public double BendingStiffnessNm2 { get; }

    public double? BaseStiffnessNm2 { get; }

    public double? ClampLimitN { get; }

    public StationCurve FreeCurve { get; }

    public StationCurve? BaseCurve { get; }

    /// <summary>The rail's share of the way that both have to go: equal and opposite forces bend the softer one more.</summary>
    public double BaseShare => BaseStiffnessNm2 is { } under ? under / (BendingStiffnessNm2 + under) : 1;

    /// <summary>What is wrong with a value that must lie within bounds, or null.</summary>
    public static string? Outside(double? value, double least, double most, string what, string unit)
        => value is not { } given || (given >= least && given <= most)
            ? null
            : string.Create(CultureInfo.InvariantCulture, $"{what} is {given} {unit}: it must be {(least == double.Epsilon ? "above 0 and at most" : string.Create(CultureInfo.InvariantCulture, $"from {least} to"))} {most} {unit}.");
}
