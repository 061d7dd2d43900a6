using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text.Json;

namespace Waywright;

/// <summary>Reads the positions of a document; every wrong value is noted where it stands.</summary>
internal static class MachinePlanReader
{
    private const int LongestName = 64;
    private const int MostMachines = 1000;
    private const int MostOfOne = 100;
    private const int MostRails = 5000;

    // No workshop has a longer rail, and a slip of the unit is found.
    private const double LargestMm = 10_000;
    private const double SmallestMm = 0.1;

    public static MachinePlan Read(string json, string source)
    {
        var problems = new ProblemList(source);
        var root = JsonPlace.Read(json, problems);
        if (root.Kind != JsonTokenType.StartObject)
        {
            root.Reject("an object with positions, a list of the places that want a rail");
            problems.ThrowIfAny();
        }

        root.OnlyMembers("machines", "positions", "note", "$schema");
        var machines = (int?)root.Whole("machines", 1, MostMachines) ?? 1;
        var list = root.Member("positions", required: true);
        if (list is not null && (list.Kind != JsonTokenType.StartArray || list.Items.Count == 0))
            list.Reject("a list of at least one position");
        var places = list?.Items ?? [];
        var positions = new Dictionary<string, MachinePosition>(StringComparer.Ordinal);
        foreach (var place in places)
        {
            if (ReadPosition(place) is { } position && !positions.TryAdd(position.Name, position))
                place.Member("name")!.Reject("a name that no other position has");
        }

        foreach (var place in places.Where(p => p.Kind == JsonTokenType.StartObject))
            CheckPair(place, places, positions);
        var plan = new MachinePlan(source, machines, positions.Values);
        if (plan.RailCount > MostRails)
            list!.Reject(string.Create(CultureInfo.InvariantCulture, $"places for at most {MostRails} rails over all machines"));
        problems.ThrowIfAny();
        return plan;
    }

    private static MachinePosition? ReadPosition(JsonPlace place)
    {
        if (place.Kind != JsonTokenType.StartObject)
        {
            place.Reject("an object with name, width_mm, length_mm, grade and face");
            return null;
        }

        place.OnlyMembers("name", "width_mm", "length_mm", "grade", "face", "weight", "pair", "count", "ends", "note");
        var name = Name(place, "name", required: true);
        var width = place.Number("width_mm", SmallestMm, LargestMm, required: true);
        var length = place.Number("length_mm", SmallestMm, LargestMm, required: true);
        var grade = Name(place, "grade", required: true);
        var face = place.OneOf("face", true, "side", "top");
        var weight = place.Number("weight", 0.001, 1000) ?? 1;
        var pair = Name(place, "pair", required: false);
        var count = (int?)place.Whole("count", 1, MostOfOne) ?? 1;
        var ends = Ends(place.Member("ends"));
        return name is null || width is null || length is null || grade is null || face is null
            ? null
            : new MachinePosition(name, width.Value, length.Value, grade, face == "top" ? RailFace.Top : RailFace.Side, weight, pair, count, ends.Near, ends.Far)
            {
                GradeAt = place.Member("grade") is { } at ? (at.Line, at.Column) : null,
            };
    }

    private static void CheckPair(JsonPlace place, IReadOnlyList<JsonPlace> places, Dictionary<string, MachinePosition> positions)
    {
        if (place.Member("pair") is not { Kind: JsonTokenType.String } pair || place.Member("name") is not { Kind: JsonTokenType.String } own || !positions.TryGetValue(own.Raw, out var position))
            return;
        if (pair.Raw == own.Raw || !places.Any(p => p.Kind == JsonTokenType.StartObject && p.Member("name")?.Raw == pair.Raw))
        {
            pair.Reject("the name of another position");
            return;
        }

        if (positions.Values.Any(p => p.Name != position.Name && p.Name != pair.Raw && (p.Pair == position.Name || p.Pair == pair.Raw)) || (positions.TryGetValue(pair.Raw, out var named) && named.Pair is { } third && third != own.Raw))
            pair.Reject("a position that is in no other pair");
        else if (named is not null && (named.LengthMm != position.LengthMm || named.Face != position.Face || named.Count != position.Count))
            pair.Reject($"a position with the same length_mm, face and count as {own.Raw}");
    }

    private static (string Near, string Far) Ends(JsonPlace? place)
    {
        if (place is null)
            return ("near end", "far end");
        if (place.Kind == JsonTokenType.StartArray && place.Items.Count == 2 && place.Items.All(i => i.Kind == JsonTokenType.String && IsName(i.Raw)) && place.Items[0].Raw != place.Items[1].Raw)
            return (place.Items[0].Raw, place.Items[1].Raw);
        place.Reject("two different names, of the near and the far end, such as [\"front\", \"back\"]");
        return default;
    }

    private static string? Name(JsonPlace place, string member, bool required)
    {
        if (place.Text(member, required) is not { } name)
            return null;
        if (IsName(name))
            return name;
        place.Member(member)!.Reject("1 to 64 printable characters");
        return null;
    }

    private static bool IsName(string name)
        => name.Length is > 0 and <= LongestName && !string.IsNullOrWhiteSpace(name) && !name.Any(c => char.IsControl(c) || char.GetUnicodeCategory(c) == UnicodeCategory.Format);
}
