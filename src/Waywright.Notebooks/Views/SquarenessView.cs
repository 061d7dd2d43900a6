using System.Globalization;

namespace Waywright.Notebooks;

/// <summary>Whether a frame is square.</summary>
internal sealed class SquarenessView : View<Squareness>
{
    private static readonly string[] Names = ["AB", "BC", "CD", "DA", "AC", "BD"];

    protected override string Verdict(Squareness result)
    {
        var (off, spread) = (result.OffMm.Value, result.OffMm.Expanded().U);
        var size = $"{Shown.ToSpread(Math.Abs(off), spread)} mm (+/- {Shown.ToSpread(spread, spread)}) over {result.SideMm.ToString("0", CultureInfo.InvariantCulture)} mm";
        if (!result.IsClosed)
            return "Measure all six lengths again: they don't close, so one was read or written wrong.";
        return result.IsOut
            ? $"Push the {(off > 0 ? "wider" : "sharper")} corner A {(off > 0 ? "in" : "out")}: it is out of square by {size}."
            : $"Leave it: the corner is square as far as these lengths tell, within {size}.";
    }

    protected override string Text(Squareness result) => $"{Verdict(result)}\n{Table(result)}\n{string.Join('\n', Notes(result))}";

    protected override string Html(Squareness result)
        => Markup.View(Verdict(result), Markup.Table(Table(result), "Measured less fitted"), Markup.Details("What it rests on", Markup.List(Notes(result))));

    protected override IEnumerable<Figure> Figures(Squareness result, string id)
    {
        yield return new Figure($"{id}/off", "Corner A from a right angle", result.OffRad.Value, null, "rad", standardUncertainty: result.OffRad.StandardUncertainty, method: "quadrilateral of six lengths, least squares", relativeTolerance: 1e-9, absoluteTolerance: 1e-12);
    }

    private static TextTable Table(Squareness result)
    {
        var table = new TextTable("length", "#measured less fitted mm");
        for (var i = 0; i < Names.Length; i++)
            table.Add(Names[i], result.LeftMm[i].ToString("0.00", CultureInfo.InvariantCulture));
        return table;
    }

    private static string[] Notes(Squareness result) =>
    [
        string.Create(CultureInfo.InvariantCulture, $"Six lengths for five unknowns leave one check: lengths as uncertain as stated disagree by as much in {100 * result.CheckChance:0} of 100 frames."),
        "Equal diagonals alone don't prove a right angle. A tape's zero error hardly matters here, its reading error does; a tape can't see 0.05 mm.",
    ];
}
