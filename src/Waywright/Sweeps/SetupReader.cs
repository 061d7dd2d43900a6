using System;
using System.Collections.Generic;
using System.Text.Json;

namespace Waywright;

/// <summary>Reads the set-ups of a document; every wrong value is noted where it stands.</summary>
internal static class SetupReader
{
    // Two supports that are closer than this to each other or lie off the rail can't carry it.
    private const double ClosestSupportsMm = 1;

    public static FixedList<Setup> Read(string json, string source)
    {
        var problems = new ProblemList(source);
        var root = JsonPlace.Read(json, problems);
        root.OnlyMembers("setups", "note", "$schema");
        var setups = new List<Setup>();
        var ids = new HashSet<string>(StringComparer.Ordinal);
        var list = root.Member("setups", required: true);
        if (list is { Items.Count: 0 })
            list.Reject("a list of at least one set-up");
        foreach (var place in list?.Items ?? [])
        {
            var setup = ReadSetup(place);
            if (place.Member("id") is { Kind: JsonTokenType.String } id && !ids.Add(id.Raw))
                id.Reject("a name that no other set-up has");
            if (setup is not null)
                setups.Add(setup);
        }

        problems.ThrowIfAny();
        return FixedList<Setup>.Copy(setups);
    }

    private static Setup? ReadSetup(JsonPlace place)
    {
        place.OnlyMembers("id", "guide", "guide_straightness_um", "guide_known_from", "probe", "held", "instrument", "force_n", "temperature_c", "lever_angle_deg", "lever_angle_u_deg", "rail", "note");
        var id = place.Text("id", required: true);
        var guide = place.Text("guide", required: true);
        if (guide is not null and not ("plate" or "straightedge" or "base") && !(guide.StartsWith("rail:", StringComparison.Ordinal) && guide.Length > "rail:".Length))
            place.Member("guide")!.Reject("plate, straightedge, base, or rail:ID");
        var known = place.OneOf("guide_known_from", true, "certificate", "reversal", "unknown");
        var straightness = place.Number("guide_straightness_um", 0, 1e5, required: known is "certificate" or "reversal");
        var probe = place.OneOf("probe", true, "surface", "carriage");
        var held = place.Text("held", required: true);
        var holding = held is null ? null : RailHolding.Read(held);
        if (held is not null && holding is null)
            place.Member("held")!.Reject(RailHolding.Expected);
        var instrument = ReadInstrument(place.Member("instrument", required: true));
        var force = place.Number("force_n", 0, 100);
        var warmth = place.Number("temperature_c", -50, 100);
        var lever = place.Number("lever_angle_deg", 0, 80);
        var leverUncertainty = place.Number("lever_angle_u_deg", 0, 45);
        if (leverUncertainty is not null && lever is null && place.Member("lever_angle_deg") is null)
            place.Member("lever_angle_u_deg")!.Reject("left out: it goes with lever_angle_deg");
        var rail = ReadRail(place.Member("rail"));
        CheckPlaces(place, holding, rail);
        return id is null || guide is null || known is null || probe is null || held is null || instrument is not var (dial, readTo)
            ? null
            : new Setup(id, guide, straightness, known, probe, held, dial.Name, dial.Division, readTo, force, warmth) { Indicator = dial, LeverAngleDeg = lever, LeverAngleUDeg = leverUncertainty, Rail = rail };
    }

    private static (Instrument Dial, string ReadTo)? ReadInstrument(JsonPlace? place)
    {
        if (place is null)
            return null;
        place.OnlyMembers("name", "division_um", "read_to", "range_mm", "turn_mm", "small", "permissible_error_um", "repeatability_um", "retrace_um", "note");
        var name = place.Text("name", required: true);
        if (name is not null && string.IsNullOrWhiteSpace(name))
            place.Member("name")!.Reject("a name");
        var division = place.Number("division_um", 1e-3, 1e4, required: true);
        var readTo = place.OneOf("read_to", true, "whole", "half", "tenth");
        var limits = ReadLimits(place, division);
        var permissible = place.Number("permissible_error_um", 0, 1e4);
        if (permissible is not null && (place.Member("range_mm") ?? place.Member("turn_mm")) is not null)
            place.Member("permissible_error_um")!.Reject("left out, or range_mm and turn_mm: one of them says what the dial's errors are");
        var repeatability = place.Number("repeatability_um", 0, 1e4);
        var retrace = place.Number("retrace_um", 0, 1e4);
        return string.IsNullOrWhiteSpace(name) || division is null || readTo is null || (limits is not null && permissible is not null)
            ? null
            : (Instrument.Create(name, "um", division.Value, readTo, permissible, limits, repeatability, retrace: retrace), readTo);
    }

    private static DialLimits? ReadLimits(JsonPlace place, double? division)
    {
        var (range, turn) = (place.Member("range_mm"), place.Member("turn_mm"));
        var small = place.Member("small");
        if (small is { Kind: not (JsonTokenType.True or JsonTokenType.False) })
            small.Reject("true (bezel below 50 mm, or back plunger) or false");
        if (range is null && turn is null)
        {
            small?.Reject("left out: it goes with range_mm and turn_mm");
            return null;
        }

        var rangeMm = place.Number("range_mm", 1e-3, 1000, required: true);
        var turnMm = place.Number("turn_mm", 1e-3, 100, required: true);
        if (division is null || rangeMm is null || turnMm is null)
            return null;
        var limits = DialLimits.Jis7503(division.Value / 1000, rangeMm.Value, turnMm.Value, small is { Kind: JsonTokenType.True });
        if (limits is null)
            range!.Reject("a range that JIS B 7503:2011 lists for such a dial; for others give permissible_error_um instead of range_mm and turn_mm");
        return limits;
    }

    private static RailSection? ReadRail(JsonPlace? place)
    {
        if (place is null)
            return null;
        if (place.Kind != JsonTokenType.StartObject)
        {
            place.Reject("an object with length_mm, bending_stiffness_top_nm2, bending_stiffness_side_nm2 and mass_kg_per_m");
            return null;
        }

        place.OnlyMembers("length_mm", "bending_stiffness_top_nm2", "bending_stiffness_side_nm2", "mass_kg_per_m", "stiffness_u_percent", "note");
        var length = place.Number("length_mm", 10, 1e5, required: true);
        var top = place.Number("bending_stiffness_top_nm2", 1e-3, 1e9, required: true);
        var side = place.Number("bending_stiffness_side_nm2", 1e-3, 1e9, required: true);
        var mass = place.Number("mass_kg_per_m", 1e-3, 1e3, required: true);
        var percent = place.Number("stiffness_u_percent", 0, 50);
        return length is null || top is null || side is null || mass is null ? null : new RailSection(length.Value, top.Value, side.Value, mass.Value, percent);
    }

    private static void CheckPlaces(JsonPlace place, RailHolding? holding, RailSection? rail)
    {
        if (holding is { Kind: HoldingKind.TwoSupports } && holding.PlacesMm[1] - holding.PlacesMm[0] < ClosestSupportsMm)
            place.Member("held")!.Reject("two supports at least 1 mm apart");
        else if (rail is not null && holding is { PlacesMm.Count: > 0 } && holding.PlacesMm[^1] > rail.LengthMm)
            place.Member("held")!.Reject($"places within the rail's length of {NumberText.Plain(rail.LengthMm)} mm");
    }
}
