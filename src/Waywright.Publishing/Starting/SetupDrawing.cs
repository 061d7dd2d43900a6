using System.Globalization;
using System.Text;

namespace Waywright.Publishing;

/// <summary>Draws how the rail, its guide and the dial stand to each other; in black lines, one unit a millimetre of paper.</summary>
internal static class SetupDrawing
{
    private const double Left = 14;
    private const double Right = 84;
    private const int MostMarks = 40;

    private const string Ink = "fill=\"#fff\" stroke=\"#000\" stroke-width=\"0.4\"";
    private const string Thin = "fill=\"none\" stroke=\"#000\" stroke-width=\"0.3\"";

    /// <summary>Seen from above: the tip touches the side face.</summary>
    public static string Side(SheetRails rails)
    {
        var svg = new StringBuilder();
        svg.Append(Guide(31, "guide: straightedge, or edge of the plate"));
        Rail(svg, rails, 6.5, 7, axis: 3.5, stations: true, holes: true);
        svg.Append($"<rect x=\"44\" y=\"25\" width=\"18\" height=\"6\" {Ink}/>");
        svg.Append(Dial(53, 22.5)).Append($"<path d=\"M53 17.7V13.5\" {Thin}/>");
        svg.Append(Arrow(66, 28, 78, 28)).Append(Text(65.5, 24.6, "stand slides along"));
        svg.Append(Arrow(42, 14.5, 42, 20)).Append(Text(40.5, 20, "+ towards the dial", "end"));
        return Figure("Side face, seen from above", "A rail lies beside a guide; the dial's stand slides along the guide, and the tip touches the side of the rail. The dot marks x = 0.", svg);
    }

    /// <summary>Seen from the side: the tip touches the top face.</summary>
    public static string Top(SheetRails rails)
    {
        var svg = new StringBuilder();
        svg.Append(Guide(31, "guide: plate"));
        svg.Append($"<rect x=\"52.5\" y=\"4\" width=\"2\" height=\"27\" {Ink}/><rect x=\"45\" y=\"27.5\" width=\"15\" height=\"3.5\" {Ink}/><rect x=\"43\" y=\"6\" width=\"11\" height=\"1.4\" {Ink}/>");
        foreach (var at in (double[])[rails.SupportsMm.Near, rails.SupportsMm.Far])
        {
            var x = X(rails, at);
            svg.Append(CultureInfo.InvariantCulture, $"<path d=\"M{x:0.##} 25L{x - 2.4:0.##} 31H{x + 2.4:0.##}Z\" {Ink}/>").Append(Text(x, 29.9, $"{SheetHtml.Mm(at)} mm", x < 50 ? "end" : "start", x < 50 ? -3 : 3));
        }

        Rail(svg, rails, 21, 4, axis: 37.5, stations: true, holes: false);
        svg.Append(Dial(43, 8)).Append($"<path d=\"M43 12.8V21\" {Thin}/>");
        svg.Append(Arrow(60, 9, 72, 9)).Append(Text(58, 6.4, "stand slides along"));
        svg.Append(Arrow(34, 19.5, 34, 14)).Append(Text(32.5, 16.5, "+ towards the dial", "end"));
        return Figure("Top face, seen from the side", "A rail lies face up on two supports on a plate; the dial's stand slides on the plate, and the tip touches the top of the rail. The dot marks x = 0.", svg);
    }

    /// <summary>Seen from the side: a gauge pulls the carriage along the clamped rail.</summary>
    public static string Drag(SheetRails rails)
    {
        var svg = new StringBuilder();
        svg.Append(Guide(25, "bench"));
        Rail(svg, rails, 21, 4, axis: 32, stations: false, holes: false);
        foreach (var x in (double[])[19, 80])
            svg.Append(CultureInfo.InvariantCulture, $"<path d=\"M{x} 18v3M{x - 2} 18h4\" {Thin} stroke-width=\"0.6\"/>").Append(Text(x, 17, "clamp", "middle"));
        svg.Append($"<rect x=\"34\" y=\"15.5\" width=\"12\" height=\"7\" {Ink}/>").Append(Text(40, 20, "carriage", "middle", 0, 2.6));
        svg.Append($"<path d=\"M46 18h4\" {Thin}/><rect x=\"50\" y=\"16.3\" width=\"14\" height=\"3.4\" rx=\"1.6\" {Ink}/><path d=\"M52 18h1l.7-1 1.4 2 1.4-2 1.4 2 1.4-2 .7 1h1\" {Thin}/>");
        svg.Append(Arrow(64, 18, 72, 18)).Append(Text(50, 13.6, "spring gauge, held level"));
        return Figure("The pull, seen from the side", "A rail is clamped to the bench; a spring gauge, held level, pulls the carriage along it. The dot marks x = 0.", svg);
    }

    /// <summary>A belt's free span between the tangent points of a pulley and the carriage's clamp.</summary>
    public static string Span()
    {
        var svg = new StringBuilder();
        svg.Append($"<circle cx=\"14\" cy=\"18\" r=\"7\" {Ink}/><circle cx=\"14\" cy=\"18\" r=\"1\" {Ink}/>").Append(Text(14, 30, "pulley", "middle"));
        svg.Append($"<rect x=\"64\" y=\"8\" width=\"18\" height=\"20\" {Ink}/>").Append(Text(73, 19.5, "carriage", "middle"));
        svg.Append($"<path d=\"M14 11H64\" {Thin} stroke-width=\"0.9\"/><path d=\"M14 25H64\" {Thin} stroke-width=\"0.9\"/><path d=\"M14 11Q39 5 64 11Q39 17 14 11\" {Thin} stroke-dasharray=\"1 1\"/>");
        svg.Append(Arrow(39, 3.5, 39, 9)).Append(Text(41, 5, "pluck here, gently"));
        svg.Append($"<path d=\"M14 33.5v4M64 33.5v4\" {Thin}/>").Append(Arrow(40, 35.5, 14, 35.5)).Append(Arrow(38, 35.5, 64, 35.5)).Append(Text(39, 39.5, "free span: tangent point to clamp", "middle"));
        return Figure("The span", "A belt runs from a pulley to the carriage; its free span is from the tangent point on the pulley to the clamp, and it is plucked in the middle.", svg);
    }

    /// <summary>A belt on a scale beside a weight.</summary>
    public static string Scale()
    {
        var svg = new StringBuilder();
        svg.Append($"<path d=\"M20 24H70L74 34H16Z\" {Ink}/><rect x=\"38\" y=\"27\" width=\"14\" height=\"4.4\" {Ink}/>").Append(Text(45, 30.3, "g", "middle"));
        svg.Append($"<path d=\"M14 22H76\" {Thin} stroke-width=\"0.9\"/><path d=\"M45 22v2\" {Thin}/><rect x=\"24\" y=\"12\" width=\"11\" height=\"10\" {Ink}/>").Append(Text(29.5, 18, "weight", "middle", 0, 2.6));
        svg.Append($"<circle cx=\"58\" cy=\"15\" r=\"7\" {Ink}/><circle cx=\"58\" cy=\"15\" r=\"5\" {Thin}/><circle cx=\"58\" cy=\"15\" r=\"3\" {Thin}/>").Append(Text(66.5, 12, "belt, coiled"));
        svg.Append(Text(14, 5.4, "the weight stays on the pan all the while"));
        return Figure("The scale", "A coiled belt lies on a kitchen scale beside a weight that stays there all the while.", svg);
    }

    private static void Rail(StringBuilder svg, SheetRails rails, double y, double height, double axis, bool stations, bool holes)
    {
        var rail = rails.Rail;
        svg.Append(CultureInfo.InvariantCulture, $"<rect x=\"{Left}\" y=\"{y}\" width=\"{Right - Left}\" height=\"{height}\" {Ink}/>");
        if (holes && rail.HolesMm.Count <= MostMarks)
        {
            foreach (var at in rail.HolesMm)
                svg.Append(CultureInfo.InvariantCulture, $"<circle cx=\"{X(rails, at):0.##}\" cy=\"{y + (height / 2)}\" r=\"0.9\" {Thin}/>");
        }

        var face = y + (holes ? height : 0);
        if (stations && rail.StationsMm.Count <= MostMarks)
            svg.Append(CultureInfo.InvariantCulture, $"<path d=\"{string.Concat(rail.StationsMm.Select(at => FormattableString.Invariant($"M{X(rails, at):0.##} {face - 0.9}v1.8")))}\" {Thin}/>");
        svg.Append(CultureInfo.InvariantCulture, $"<circle cx=\"{Left}\" cy=\"{y + (height / 2)}\" r=\"1.7\"/>").Append(Text(Left - 2.4, y + (height / 2) + 1, "dot", "end"));
        svg.Append(Arrow(Left, axis, Right, axis)).Append(CultureInfo.InvariantCulture, $"<path d=\"M{Left} {axis - 1.4}v2.8\" {Thin}/>")
            .Append(Text(Left - 1, axis + 1, "x = 0", "end")).Append(Text(Right, axis + (axis < y ? -1.2 : 3.6), "x, mm from the dot", "end"));
    }

    private static double X(SheetRails rails, double mm) => Left + ((Right - Left) * mm / rails.Rail.LengthMm);

    private static string Guide(double y, string name)
        => FormattableString.Invariant($"<rect x=\"4\" y=\"{y}\" width=\"84\" height=\"4\" fill=\"url(#hatch)\" stroke=\"#000\" stroke-width=\"0.4\"/><rect x=\"5.5\" y=\"{y + 0.5}\" width=\"{(1.55 * name.Length) + 2}\" height=\"3\" fill=\"#fff\"/>") + Text(6.5, y + 2.9, name);

    private static string Dial(double x, double y)
        => FormattableString.Invariant($"<circle cx=\"{x}\" cy=\"{y}\" r=\"4.8\" {Ink}/><circle cx=\"{x}\" cy=\"{y}\" r=\"3.6\" {Thin}/><path d=\"M{x} {y}L{x + 1.9} {y - 2.2}\" {Thin} stroke-width=\"0.5\"/>");

    private static string Arrow(double x1, double y1, double x2, double y2)
        => FormattableString.Invariant($"<path d=\"M{x1} {y1}L{x2} {y2}\" {Thin} marker-end=\"url(#tip)\"/>");

    private static string Text(double x, double y, string text, string anchor = "start", double dx = 0, double size = 3)
        => text.Length == 0 ? "" : FormattableString.Invariant($"<text x=\"{x + dx:0.##}\" y=\"{y:0.##}\" text-anchor=\"{anchor}\" style=\"font-size:{size}px\">{text}</text>");

    private static string Figure(string caption, string told, StringBuilder svg)
        => $"<figure><figcaption>{caption}</figcaption><svg viewBox=\"0 0 92 42\" role=\"img\" aria-label=\"{told}\"><defs>"
            + "<pattern id=\"hatch\" width=\"2\" height=\"2\" patternUnits=\"userSpaceOnUse\"><path d=\"M0 2L2 0\" stroke=\"#000\" stroke-width=\"0.2\"/></pattern>"
            + "<marker id=\"tip\" viewBox=\"0 0 6 6\" refX=\"6\" refY=\"3\" markerWidth=\"6\" markerHeight=\"6\" orient=\"auto\"><path d=\"M0 0.8L6 3L0 5.2Z\"/></marker>"
            + $"</defs>{svg}</svg></figure>\n";
}
