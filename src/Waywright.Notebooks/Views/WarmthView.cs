using System.Globalization;

namespace Waywright.Notebooks;

/// <summary>What warmth does to a screwed-down rail.</summary>
internal sealed class WarmthView : View<Warmth>
{
    protected override string Verdict(Warmth result)
    {
        var change = string.Create(CultureInfo.InvariantCulture, $"from {result.FromC:0.#} to {result.ToC:0.#} °C");
        var way = result.HeldUm < 0 ? "hollow" : "crowned";
        return string.Create(CultureInfo.InvariantCulture, $"Expect the top to go {way} by {Math.Abs(result.HeldUm):0} um {change} (held by friction; up to {Math.Abs(result.BondedUm):0} um if nothing slips).");
    }

    protected override string Text(Warmth result) => $"{Verdict(result)}\n{Table(result)}\n{string.Join('\n', Notes(result))}";

    protected override string Html(Warmth result)
        => Markup.View(Verdict(result), Markup.Table(Table(result), "Bow by how the joint holds"), Markup.Details("What it rests on", Markup.List(Notes(result))));

    protected override IEnumerable<Figure> Figures(Warmth result, string id)
    {
        yield return new Figure($"{id}/held", "Bow held by friction, crowned positive", result.HeldUm, null, "um", method: "two bars, friction under the screws", relativeTolerance: 1e-9, absoluteTolerance: 1e-9);
        yield return new Figure($"{id}/bonded", "Bow of a full bond, crowned positive", result.BondedUm, null, "um", method: "two bars, full bond", relativeTolerance: 1e-9, absoluteTolerance: 1e-9);
    }

    private static TextTable Table(Warmth warmth) => new TextTable("joint", "#bow um", "~meaning")
        .Add("free", "0.0", "The screws let both grow by themselves.")
        .Add("held by friction", Shown.Um(warmth.HeldUm), "What to expect: friction under the screws is all that the joint carries.")
        .Add("full bond", Shown.Um(warmth.BondedUm), "The most there can be.");

    private static string[] Notes(Warmth warmth) =>
    [
        "Bends in the plane through rail and base, its ends free to turn; crowned is positive. A second rail on the opposite side of the base bends it back.",
        string.Create(CultureInfo.InvariantCulture, $"Apart, the base would grow {Math.Abs(warmth.ApartUm):0} um {(warmth.ApartUm < 0 ? "less" : "more")} than the rail; a span that the base carries changes by {warmth.BaseGrowthUm:0} um."),
        string.Create(CultureInfo.InvariantCulture, $"A full bond needs {warmth.BondForceN:0} N along the joint; {warmth.ScrewsMm.Count} screws of {warmth.ClampForceN:0} N with friction {warmth.Friction:0.##} hold what friction gives from the nearer end."),
    ];
}
