using System.Globalization;

namespace Waywright.Publishing;

/// <summary>How hard carriages are to pull along a rail: two carriages, both ways.</summary>
internal static class DragSheet
{
    private const int MostRows = 34;
    private const double RoomMm = 136;
    private const double LowestMm = 7;
    private const double HighestMm = 9;

    private static readonly int[] StepsMm = [10, 20, 25, 50, 100];

    public static string Html(Paper paper, SheetRails rails)
        => SheetHtml.Frame(paper, "Drag of carriages", Enumerable.Range(1, rails.Count).Select(i => Page(rails, $"R{i.ToString("00", CultureInfo.InvariantCulture)}")));

    /// <summary>Even places along the rail, none at its very ends.</summary>
    public static IReadOnlyList<int> PlacesMm(double lengthMm)
    {
        var step = StepsMm.First(s => lengthMm / s <= MostRows || s == StepsMm[^1]);
        return [.. Enumerable.Range(1, (int)Math.Ceiling(lengthMm / step) - 1).Select(i => i * step)];
    }

    private static string Page(SheetRails rails, string name)
    {
        var places = PlacesMm(rails.Rail.LengthMm);
        return SheetHtml.Page(
            $"Rail {name}: drag",
            SheetHtml.Blank("date", 24) + SheetHtml.Blank("who", 24),
            SheetHtml.Lines(SheetHtml.Blank("gauge", 18), SheetHtml.Choice("forces in", "N", "gf (1000 gf = 9.807 N)"), SheetHtml.Blank("own carriage", 16), SheetHtml.Blank("second", 16)),
            $"<div class=\"drawings\">{SetupDrawing.Drag(rails)}<div class=\"beside\">",
            SheetHtml.Steps(
                "Clamp the rail to the bench, a stop at both ends.",
                "Carriage over x of the first row; gauge level with it.",
                "Pull <b>forward</b>, slowly, without a stop; a helper writes.",
                "Then pull <b>back</b>: from the far end, right half first, <b>up</b>.",
                "The same with a second carriage.",
                "What the hand felt (rough, click, stiff) goes below."),
            SheetHtml.Caution("A carriage that runs off the end drops its balls: put a stop there. Keep fingers out of its path; wipe with the carriage off the rail."),
            "</div></div>\n",
            Tables(places),
            SheetHtml.Lines(SheetHtml.Blank("felt at x =", 60), SheetHtml.Blank("felt at x =", 60)),
            SheetHtml.Goes($"Type into <code>rails/drag.csv</code>, one line a box, the lines of one pull together in the order of reading: <code>{name},</code>carriage<code>,forward,{places[0]},</code>force<code>,</code>note."));
    }

    private static string Tables(IReadOnlyList<int> places)
    {
        var half = (places.Count + 1) / 2;
        return $"<div class=\"pair\">{Table("First half", places.Take(half), half)}{Table("Second half, goes on from the left", places.Skip(half), half)}</div>\n";
    }

    private static string Table(string caption, IEnumerable<int> places, int rows)
        => SheetHtml.Table(
            caption,
            [
                "<th scope=\"col\" rowspan=\"2\"><b>x</b><br>mm</th>" + SheetHtml.Head("<b>own</b> carriage", 2, "thick") + SheetHtml.Head("<b>second</b> carriage", 2, "thick"),
                string.Concat(Enumerable.Repeat(SheetHtml.Head("forward ↓", 1, "thick") + SheetHtml.Head("back ↑"), 2)),
            ],
            places.Select(at => at.ToString(CultureInfo.InvariantCulture)), (2, 2), Math.Clamp(RoomMm / rows, LowestMm, HighestMm));
}
