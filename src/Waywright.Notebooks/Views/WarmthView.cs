using System.Globalization;

namespace Waywright.Notebooks;

/// <summary>What warmth does to a screwed-down rail.</summary>
internal sealed class WarmthView : View<Warmth>
{
    private const string Care = "Caution: warm the room, not the parts: no flame, no heater left alone, and local rules come first.";

    protected override string Verdict(Warmth result)
    {
        if (result.ToC == result.FromC || result.BondForceN == 0)
            return $"Leave it: {(result.ToC == result.FromC ? "both temperatures are the same" : "rail and base grow alike")}, so warmth does not bend the rail.";
        if (result.HasOppositeRail)
            return $"Tighten both rails alike: on opposite faces they bend each other back, so no bow is left {Change(result)}.";
        if (result.HeldUm == 0)
            return $"Tighten the screws before you count on anything: without clamp force the rail slides and stays as it is {Change(result)}.";
        return result.EndsHeld
            ? $"Let the frame bear {Moments(result)} N m at the ends: kept from turning, they leave a bow of {Size(result.HeldUm)} {Change(result)}."
            : $"Tighten the screws near {C(result.ToC)}, or count on a bow of {Size(result.HeldUm)} {Change(result)}.";
    }

    protected override string Text(Warmth result) => $"{Verdict(result)}\n{Table(result)}\n{string.Join('\n', Notes(result))}{(IsBent(result) ? "\n" + Care : "")}";

    protected override string Html(Warmth result)
        => Markup.View(
            Verdict(result),
            IsBent(result) ? FigureHtml.Of(WarmthPicture.Of(result), WarmthPicture.Caption(result)) : "",
            Markup.Table(Table(result), "Bow by how the joint holds"),
            Markup.Note(IsBent(result) ? Care : ""),
            Markup.Details("What it rests on", Markup.List(Notes(result))));

    protected override IEnumerable<Figure> Figures(Warmth result, string id)
    {
        const string friction = "two bars, friction under the screws";
        yield return Of("held", "Bow held by friction, crowned positive", result.HeldUm, "um", friction);
        yield return Of("bonded", "Bow of a full bond, crowned positive", result.BondedUm, "um", "two bars, full bond");
        yield return Of("stays", "Bow that stays once it has cooled again, crowned positive", result.StaysUm, "um", friction);
        yield return Of("base-growth", "Growth of the base over the rail's length", result.BaseGrowthUm, "um", "alpha L dT");
        for (var i = 0; i < result.EndMomentsNm.Count; i++)
            yield return Of(i == 0 ? "moment-dot-end" : "moment-far-end", i == 0 ? "Moment at the end with the dot" : "Moment at the far end", result.EndMomentsNm[i], "N.m", friction);

        Figure Of(string part, string name, double value, string unit, string method) => new($"{id}/{part}", name, value, null, unit, method: method, relativeTolerance: 1e-9, absoluteTolerance: 1e-9);
    }

    internal static bool IsBent(Warmth warmth) => warmth.HeldUm != 0 || warmth.BondedUm is > 0.05 or < -0.05;

    private static TextTable Table(Warmth warmth)
    {
        var table = new TextTable("joint", "#bow um (+ crowned)", "~what it means")
            .Add("free", "0", "Nothing holds: rail and base slide past each other.")
            .Add("held by friction", Um(warmth.HeldUm), $"What to expect: {Shown.Count(warmth.ScrewsMm.Count)} screws of {N(warmth.ClampForceN)} N, friction {Shown.Mm(warmth.Friction)}.");
        if (!warmth.HasOppositeRail)
        {
            table.Add("half the clamp force", Um(warmth.BowUm(warmth.ClampForceN / 2)), "The clamp force of a hand-held key is seldom known closer.")
                .Add("twice the clamp force", Um(warmth.BowUm(Math.Min(2 * warmth.ClampForceN, 1e6))), "The same the other way.");
        }

        return table.Add("full bond", Um(warmth.BondedUm), warmth.EndsHeld ? "Glued all along, held ends keep it straight; where screws slide it bows more than that." : "Glued all along: the most there can be.")
            .Add("cooled again", Um(warmth.StaysUm), "What friction keeps once it is back at the first temperature.");
    }

    private static IEnumerable<string> Notes(Warmth warmth)
    {
        yield return "Plane: at right angles to the joint, along the rail, so the top shows it; crowned is positive. The side stays as it is while the base is alike on both sides of the rail.";
        yield return $"Over {Shown.Mm(warmth.LengthMm)} mm the base alone would grow by {Um(warmth.BaseGrowthUm)} um, {Um(Math.Abs(warmth.ApartUm))} um {(warmth.ApartUm < 0 ? "less" : "more")} than the rail; a span that the base carries changes by as much as the base: 100 mm of it by {Um(warmth.BaseGrowthUm * 100 / warmth.LengthMm)} um.";
        yield return $"A full bond needs {N(warmth.BondForceN)} N along the joint; one screw holds {N(warmth.Friction * warmth.ClampForceN)} N by friction, and a place of the joint what the screws towards its nearer end hold.";
        if (warmth.EndsHeld)
            yield return $"Ends kept from turning: a full bond would stay straight and bear {warmth.BondedEndMomentNm.ToString("0.0", CultureInfo.InvariantCulture)} N m at each end; held by friction the ends bear {Moments(warmth)} N m.";
        yield return warmth.HasOppositeRail
            ? "Rails on opposite faces bend each other back only if both are screwed down alike; placed diagonally instead of opposite they twist the base, which isn't worked out here."
            : "An equal rail on the opposite face of the base, screwed down alike, takes the bow out; placed diagonally the two twist the base. A second rail on the same face adds to the bow.";
        yield return "Clamp force and friction are not measured here; 0.15 is common practice, no source. Both bars have one temperature each time, the base is as long as the rail.";
    }

    private static string Change(Warmth result) => $"at {C(result.ToC)} after screwing down at {C(result.FromC)}";

    internal static string Size(double um) => $"{Um(Math.Abs(um))} um {(um < 0 ? "hollow" : "crowned")}";

    private static string Moments(Warmth result) => string.Join(" and ", result.EndMomentsNm.Select(m => Math.Abs(m).ToString("0.0", CultureInfo.InvariantCulture)).Distinct());

    internal static string C(double celsius) => $"{Shown.Mm(celsius)} °C";

    private static string N(double newton) => newton.ToString("0", CultureInfo.InvariantCulture);

    private static string Um(double um) => (Math.Abs(um) < 0.05 ? 0 : um).ToString(Math.Abs(um) >= 9.95 || Math.Abs(um) < 0.05 ? "0" : "0.0", CultureInfo.InvariantCulture);
}
