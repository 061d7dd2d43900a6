using System.Globalization;

namespace Waywright;

/// <summary>
/// How a sweep was taken. A dial reads the difference between the rail and whatever guided it, so a figure belongs to its set-up;
/// the guide's own error is one input, shared by every pass and rail of the set-up, which no number of passes takes out.
/// </summary>
/// <param name="Id">Its name, as the column <c>setup</c> of a sweeps file gives it.</param>
/// <param name="Guide"><c>plate</c>, <c>straightedge</c>, <c>base</c>, or <c>rail:ID</c>.</param>
/// <param name="GuideStraightnessUm">The guide's straightness in um; null when it isn't known.</param>
/// <param name="GuideKnownFrom"><c>certificate</c>, <c>reversal</c>, or <c>unknown</c>.</param>
/// <param name="Probe"><c>surface</c> (the dial touches the rail) or <c>carriage</c> (it rides on the rail's carriage).</param>
/// <param name="Held">How the rail was held: <c>two supports at 71 mm, 249 mm</c>, <c>on a plate</c>, <c>screwed to base</c>, <c>clamped at 20 mm, 300 mm</c>.</param>
/// <param name="Instrument">The indicator's name.</param>
/// <param name="DivisionUm">One division of the dial in um.</param>
/// <param name="ReadTo"><c>whole</c>, <c>half</c> or <c>tenth</c> of a division.</param>
/// <param name="ForceN">Measuring force in N; null when not stated.</param>
/// <param name="TemperatureC">Degrees Celsius in the room; null when not stated.</param>
public sealed record Setup(
    string Id,
    string Guide,
    double? GuideStraightnessUm,
    string GuideKnownFrom,
    string Probe,
    string Held,
    string Instrument,
    double DivisionUm,
    string ReadTo,
    double? ForceN,
    double? TemperatureC)
{
    /// <summary>The indicator with what is known of its errors; in um.</summary>
    public Instrument Indicator { get; init; } = Waywright.Instrument.Create(Instrument, "um", DivisionUm, ReadTo);

    /// <summary>
    /// Angle between a lever indicator's lever and the surface, degrees: it turns too far by 1 / cos, so readings are multiplied by cos. Null where there is no lever, or it
    /// lies along the surface.
    /// </summary>
    public double? LeverAngleDeg { get; init; }

    /// <summary>Standard uncertainty of that angle, degrees; null when not stated.</summary>
    public double? LeverAngleUDeg { get; init; }

    /// <summary>What the rail's bending is worked out from; null when not stated, and bending is then not corrected.</summary>
    internal RailSection? Rail { get; init; }

    /// <summary>How the rail was held, as data; null for words of no known form.</summary>
    internal RailHolding? Holding => RailHolding.Read(Held);

    /// <summary>Whether the guide's own error is known; if not, figures are 'rail against guide' and can't condemn a rail.</summary>
    public bool IsGuideKnown => GuideKnownFrom != "unknown" && GuideStraightnessUm is not null;

    /// <summary>The set-up in one line.</summary>
    public override string ToString()
    {
        var known = IsGuideKnown ? string.Create(CultureInfo.InvariantCulture, $"straight to {GuideStraightnessUm} um by {GuideKnownFrom}") : "straightness unknown";
        var force = ForceN is { } n ? string.Create(CultureInfo.InvariantCulture, $", {n} N") : "";
        var warmth = TemperatureC is { } t ? string.Create(CultureInfo.InvariantCulture, $", {t} °C") : "";
        var lever = LeverAngleDeg is { } a ? string.Create(CultureInfo.InvariantCulture, $", lever at {a}°") : "";
        return string.Create(CultureInfo.InvariantCulture, $"{Id}: {Instrument} ({DivisionUm} um a division, read to {ReadTo} divisions) on the {Probe}, guided by {Guide} ({known}); held: {Held}{force}{warmth}{lever}");
    }
}
