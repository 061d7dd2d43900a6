using System.Globalization;

namespace Waywright.Publishing;

/// <summary>What a belt weighs, and the notes of its plucked spans.</summary>
internal static class BeltSheet
{
    private const int Plucks = 5;
    private const int Pieces = 4;
    private const int Places = 6;
    private const double RowMm = 9;

    private const string Unplugged = "Machine off <b>and unplugged</b> before you touch a belt: one that starts to move takes fingers with it. Fingers and hair out of the pulleys, eye protection when you tension or cut. Not tighter than the makers of belt, motor and bearings allow; local codes come first.";

    public static string Html(Paper paper) => SheetHtml.Frame(paper, "Belts: teeth, weight and plucks", [Weight(), Pluck()]);

    private static string Weight()
        => SheetHtml.Page(
            "Belt: teeth and weight",
            SheetHtml.Blank("date", 24) + SheetHtml.Blank("who", 24),
            SheetHtml.Lines(SheetHtml.Blank("belt, reel", 34), SheetHtml.Blank("width", 14, "mm"), SheetHtml.Blank("sold as", 34)),
            $"<div class=\"drawings\">{SetupDrawing.Scale()}<div class=\"beside\">",
            SheetHtml.Steps(
                "Lay about 100 g on the pan; write what the scale shows. It stays there.",
                "Add the coiled belt: what it <b>adds</b> is its mass.",
                "Measure the piece stretched out straight, not pulled.",
                "Two pieces or more, three metres or more if you can."),
            SheetHtml.Caution("Eye protection when you cut; wires and cords in a belt are sharp."),
            "</div></div>\n",
            SheetHtml.Lines(SheetHtml.Blank("scale's division", 16, "g"), SheetHtml.Blank("weight on the pan", 18, "g"), SheetHtml.Blank("scale shows for it", 18, "g")),
            SheetHtml.Table(
                "Weighed pieces", [SheetHtml.Head("<b>piece</b>") + SheetHtml.Head("scale shows, weight and belt, <b>g</b>") + SheetHtml.Head("belt alone adds, <b>g</b>") + SheetHtml.Head("length, <b>mm</b>") + SheetHtml.Head("length +/- <b>mm</b>")],
                Numbered(Pieces), (1, 4), RowMm),
            SheetHtml.Goes("Type into <code>belts/pieces.csv</code>: <code>mass_g,length_mm,length_limit_mm</code>. Division and weight go into the parameters cell of <code>tension-belts</code>."),
            SheetHtml.Table(
                "Teeth, from a flank to the same flank", [SheetHtml.Head("<b>try</b>") + SheetHtml.Head("pitches counted") + SheetHtml.Head("they measure, <b>mm</b>") + SheetHtml.Head("+/- <b>mm</b>")],
                Numbered(3), (1, 3), RowMm),
            SheetHtml.Goes("60 pitches or more: a fraction of a millimetre tells 2.000 from 2.032 mm. Goes into <code>pitches</code> and <code>overPitches</code>."),
            SheetHtml.Table(
                "Several places of one belt: park the carriage, measure the span, pluck", [SheetHtml.Head("<b>place</b>") + SheetHtml.Head("free span, <b>mm</b>") + SheetHtml.Head("note, <b>Hz</b>") + SheetHtml.Head("note again, <b>Hz</b>")],
                Numbered(Places), (1, 3), RowMm),
            SheetHtml.Goes("If you like. Type into <code>belts/travel.csv</code>: <code>length_mm,frequency_hz</code>."));

    private static string Pluck()
        => SheetHtml.Page(
            "Belts: plucks",
            SheetHtml.Blank("date", 24) + SheetHtml.Blank("who", 24),
            SheetHtml.Lines(SheetHtml.Blank("fixture", 24), SheetHtml.Blank("rule, checked against", 34), SheetHtml.Blank("room °C", 12), SheetHtml.Blank("tuner", 28)),
            $"<div class=\"drawings\">{SetupDrawing.Span()}<div class=\"beside\">",
            SheetHtml.Steps(
                "Frame square, carriage free. Run it end to end three times, stop from the same side.",
                "<b>Off and unplugged.</b> Park it; measure the free span.",
                "Pluck the middle gently, phone close by; write the lowest note that stays.",
                "Five plucks a belt. Then come from the other side and pluck again."),
            "</div></div>\n",
            SheetHtml.Caution(Unplugged),
            SheetHtml.Table(
                "Span, and how sure you are of it", ["<td></td>" + SheetHtml.Head("<b>first</b> belt, name:", 1, "thick") + SheetHtml.Head("<b>second</b> belt, name:", 1, "thick")],
                ["reel", "span, mm", "+/- mm"], (2, 1), RowMm),
            SheetHtml.Table(
                "Notes in Hz", ["<th scope=\"col\" rowspan=\"2\"><b>pluck</b></th>" + SheetHtml.Head("<b>first</b> belt", 2, "thick") + SheetHtml.Head("<b>second</b> belt", 2, "thick"), string.Concat(Enumerable.Repeat(SheetHtml.Head("stopped from<br>the same side", 1, "thick") + SheetHtml.Head("stopped from<br>the other side"), 2))],
                Numbered(Plucks), (2, 2), RowMm),
            SheetHtml.Goes("Type into <code>belts/spans.csv</code>, one line a pluck of the same side: <code>left,reel 1,fixture,180 mm u 0.3 mm,8.4 g/m u 0.1 g/m,96.1 Hz u 0.4 Hz</code> (an example). Half the difference to the other side is the friction band."),
            SheetHtml.Table(
                "After a turn of the second belt's screw", [SheetHtml.Head("<b>step</b>") + SheetHtml.Head("turned, turns (+ tighter)") + SheetHtml.Head("note, <b>Hz</b>") + SheetHtml.Head("note again, <b>Hz</b>")],
                Numbered(3), (1, 3), RowMm),
            SheetHtml.Goes("Goes into <code>turned</code> and <code>afterTurn</code> of <code>tension-belts</code>. Pluck again after a day: new belts settle."));

    private static IEnumerable<string> Numbered(int count) => Enumerable.Range(1, count).Select(i => i.ToString(CultureInfo.InvariantCulture));
}
