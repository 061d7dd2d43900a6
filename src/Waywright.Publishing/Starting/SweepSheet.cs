using System.Globalization;

namespace Waywright.Publishing;

/// <summary>Sweeps of the side and the top of a rail: a row a station, a box a reading.</summary>
internal static class SweepSheet
{
    // As many rows as fit on one page are drawn as high as there is room, between these.
    private const double RoomMm = 108;
    private const double LowestMm = 6.3;
    private const double HighestMm = 9;

    public static string Html(Paper paper, SheetRails rails)
        => SheetHtml.Frame(paper, "Rail sweeps: side and top", Enumerable.Range(1, rails.Count).Select(i => Page(rails, $"R{i.ToString("00", CultureInfo.InvariantCulture)}")));

    private static string Page(SheetRails rails, string name)
        => SheetHtml.Page(
            $"Rail {name}: sweep side and top",
            SheetHtml.Blank("date", 24) + SheetHtml.Blank("who", 24),
            SheetHtml.Lines(SheetHtml.Blank("set-up", 18), SheetHtml.Blank("dial", 28), SheetHtml.Blank("guide", 28), SheetHtml.Blank("room °C", 12), SheetHtml.Choice("readings in", "µm", "mm", "in", "divisions")),
            $"<div class=\"drawings\">{SetupDrawing.Side(rails)}{SetupDrawing.Top(rails)}</div>\n",
            SheetHtml.Steps(
                "Wipe rail and guide. Paint a dot on one end: x counts from there.",
                "Level: both ends read alike within 0.01 mm.",
                "Pass 1, <b>forward</b>: from the dot, down the column.",
                "Pass 2, <b>back</b>: from the far end, <b>up</b> the column.",
                "<b>Lift the rail, lay it down again</b>, level: pass 3, forward.",
                "Write what the dial shows, with its sign. A slip: cross it out, write beside it."),
            SheetHtml.Caution("Sharp edges and oil: wear gloves. Keep solvent from flames, open a window. Nothing may slide off the bench onto your feet."),
            SheetHtml.Table("Readings", Heads(), rails.Rail.StationsMm.Select(SheetHtml.Mm), (2, 3), Math.Clamp(RoomMm / rails.Rail.StationsMm.Count, LowestMm, HighestMm)),
            SheetHtml.Lines(SheetHtml.Blank("what slipped, stuck, or looks odd, and where", 104)),
            SheetHtml.Goes($"Type into <code>rails/sweeps.csv</code>, one line a box: <code>{name},side,1,forward,{SheetHtml.Mm(rails.Rail.StationsMm[0])},</code>reading<code>,</code>set-up<code>,A</code>. Pass 3 is lay B. Readings in mm, in or divisions: rename the column <code>reading_um</code>."));

    private static IEnumerable<string> Heads()
    {
        yield return "<th scope=\"col\" rowspan=\"2\"><b>x</b><br>mm from<br>the dot</th>" + SheetHtml.Head("<b>SIDE face</b>", 3, "thick") + SheetHtml.Head("<b>TOP face</b>", 3, "thick");
        yield return string.Concat(Enumerable.Repeat(SheetHtml.Head("<b>1</b> forward<br>read down ↓<br>lay A", 1, "thick") + SheetHtml.Head("<b>2</b> back<br>read up ↑<br>lay A") + SheetHtml.Head("<b>3</b> forward<br>read down ↓<br>lifted: lay B"), 2));
    }
}
