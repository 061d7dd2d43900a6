using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;

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
/// <param name="Held">How the rail was held, in words: <c>two supports at 71 mm, 249 mm</c>.</param>
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
    /// <summary>Whether the guide's own error is known; if not, figures are 'rail against guide' and can't condemn a rail.</summary>
    public bool IsGuideKnown => GuideKnownFrom != "unknown" && GuideStraightnessUm is not null;

    /// <summary>The set-up in one line.</summary>
    public override string ToString()
    {
        var known = IsGuideKnown ? string.Create(CultureInfo.InvariantCulture, $"straight to {GuideStraightnessUm} um by {GuideKnownFrom}") : "straightness unknown";
        var force = ForceN is { } n ? string.Create(CultureInfo.InvariantCulture, $", {n} N") : "";
        var warmth = TemperatureC is { } t ? string.Create(CultureInfo.InvariantCulture, $", {t} °C") : "";
        return string.Create(CultureInfo.InvariantCulture, $"{Id}: {Instrument} ({DivisionUm} um a division, read to {ReadTo} divisions) on the {Probe}, guided by {Guide} ({known}); held: {Held}{force}{warmth}");
    }
}

/// <summary>The set-ups of a build, from <c>setups.json</c>.</summary>
public sealed record SetupBook
{
    private SetupBook(string source, IReadOnlyList<Setup> setups) => (Source, Setups) = (source, setups);

    /// <summary>The file as the caller named it.</summary>
    public string Source { get; }

    /// <summary>In the file's order.</summary>
    public IReadOnlyList<Setup> Setups { get; }

    /// <summary>Reads <c>{"setups":[{"id":...}]}</c>.</summary>
    /// <param name="path">The file.</param>
    /// <exception cref="InputException">The file can't be read, isn't JSON, misses a value, has one too many, or names a set-up twice.</exception>
    public static SetupBook Read(string path) => Parse(TextSource.ReadAll(path), path);

    /// <summary>Reads the same from a text.</summary>
    /// <param name="json">The document.</param>
    /// <param name="source">What messages call it.</param>
    /// <exception cref="InputException">As <see cref="Read"/>.</exception>
    public static SetupBook Parse(string json, string source)
    {
        ArgumentNullException.ThrowIfNull(json);
        var problems = new ProblemList(source);
        var root = JsonPlace.Read(json, problems);
        root.OnlyMembers("setups", "note", "$schema");
        var setups = new List<Setup>();
        var list = root.Member("setups", required: true);
        if (list is { Items.Count: 0 })
            list.Reject("a list of at least one set-up");
        foreach (var place in list?.Items ?? [])
        {
            if (ReadSetup(place) is not { } setup)
                continue;
            if (setups.Any(s => s.Id == setup.Id))
                place.Member("id")!.Reject("a name that no other set-up has");
            setups.Add(setup);
        }

        problems.ThrowIfAny();
        return new SetupBook(source, FixedList<Setup>.Copy(setups));
    }

    /// <summary>The set-up of that name, or null.</summary>
    public Setup? Find(string id) => Setups.FirstOrDefault(s => s.Id == id);

    private static Setup? ReadSetup(JsonPlace place)
    {
        place.OnlyMembers("id", "guide", "guide_straightness_um", "guide_known_from", "probe", "held", "instrument", "force_n", "temperature_c", "note");
        var id = place.Text("id", required: true);
        var guide = place.Text("guide", required: true);
        if (guide is not null and not ("plate" or "straightedge" or "base") && !guide.StartsWith("rail:", StringComparison.Ordinal))
            place.Member("guide")!.Reject("plate, straightedge, base, or rail:ID");
        var known = place.OneOf("guide_known_from", true, "certificate", "reversal", "unknown");
        var straightness = place.Number("guide_straightness_um", 0, 1e5, required: known is "certificate" or "reversal");
        var probe = place.OneOf("probe", true, "surface", "carriage");
        var held = place.Text("held", required: true);
        var instrument = place.Member("instrument", required: true);
        instrument?.OnlyMembers("name", "division_um", "read_to", "note");
        var name = instrument?.Text("name", required: true);
        var division = instrument?.Number("division_um", 1e-3, 1e4, required: true);
        var readTo = instrument?.OneOf("read_to", true, "whole", "half", "tenth");
        var force = place.Number("force_n", 0, 100);
        var warmth = place.Number("temperature_c", -50, 100);
        return id is null || guide is null || known is null || probe is null || held is null || name is null || division is null || readTo is null
            ? null
            : new Setup(id, guide, straightness, known, probe, held, name, division.Value, readTo, force, warmth);
    }
}
