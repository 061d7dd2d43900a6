using System.Globalization;
using System.Text;

namespace Waywright.Publishing;

/// <summary>What all measuring sheets are made of: a frame that prints in black on one size of paper, boxes for a pencil.</summary>
internal static class SheetHtml
{
    private static readonly string Style = PageAssets.Read("sheet.css");

    public static string Frame(Paper paper, string title, IEnumerable<string> pages)
        => $$"""
            <!DOCTYPE html>
            <html lang="en">
            <head>
            <meta charset="utf-8">
            <meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'">
            <meta name="viewport" content="width=device-width, initial-scale=1">
            <title>{{title}}</title>
            <link rel="icon" href="data:,">
            <style>
            @page { size: {{paper.Size}}; margin: 9mm {{Mm(Paper.MarginMm)}}mm; }
            :root { --column: {{Mm(paper.ColumnMm)}}mm; }
            {{Style}}</style>
            </head>
            <body>
            <main>
            {{string.Concat(pages)}}</main>
            </body>
            </html>

            """;

    /// <summary>A page or more of paper: heading, lines to fill in, the rest.</summary>
    public static string Page(string heading, string blanks, params IEnumerable<string> parts)
        => $"<section class=\"sheet\">\n<div class=\"head\"><h1>{heading}</h1>{blanks}</div>\n{string.Concat(parts)}</section>\n";

    /// <summary>A line to write on, with its name before it.</summary>
    public static string Blank(string name, int widthMm, string unit = "") => FormattableString.Invariant($"<span class=\"blank\">{name} <i style=\"width:{widthMm}mm\"></i>{(unit.Length == 0 ? "" : $" {unit}")}</span>");

    /// <summary>Squares to tick, one for each choice.</summary>
    public static string Choice(string name, params IEnumerable<string> choices) => $"<span class=\"blank\">{name}: {string.Concat(choices.Select(c => $"<i class=\"tick\"></i>{c} "))}</span>";

    public static string Lines(params IEnumerable<string> blanks) => $"<p class=\"blanks\">{string.Concat(blanks)}</p>\n";

    public static string Steps(params IEnumerable<string> steps) => $"<ol class=\"steps\">{string.Concat(steps.Select(s => $"<li>{s}</li>"))}</ol>\n";

    public static string Caution(string text) => $"<p class=\"caution\"><strong>Caution</strong> {text}</p>\n";

    public static string Goes(string text) => $"<p class=\"goes\">{text}</p>\n";

    /// <summary>A table of empty boxes; a row's first cell is given.</summary>
    /// <param name="caption">What it is for.</param>
    /// <param name="heads">Rows of the heading, each as finished cells.</param>
    /// <param name="rows">The given cell of each row.</param>
    /// <param name="blocks">Empty boxes after them: how many blocks, divided by thick lines, of how many boxes.</param>
    /// <param name="rowMm">Height of a row.</param>
    public static string Table(string caption, IEnumerable<string> heads, IEnumerable<string> rows, (int Count, int Boxes) blocks, double rowMm)
    {
        var boxes = string.Concat(Enumerable.Repeat("<td class=\"thick\"></td>" + string.Concat(Enumerable.Repeat("<td></td>", blocks.Boxes - 1)), blocks.Count));
        var html = new StringBuilder("<table style=\"--row:").Append(Mm(rowMm)).Append("mm\"><caption>").Append(caption).Append("</caption><thead>");
        foreach (var head in heads)
            html.Append("<tr>").Append(head).Append("</tr>");
        html.Append("</thead><tbody>\n");
        foreach (var row in rows)
            html.Append("<tr><th scope=\"row\">").Append(row).Append("</th>").Append(boxes).Append("</tr>\n");

        return html.Append("</tbody></table>\n").ToString();
    }

    public static string Head(string text, int columns = 1, string kind = "") => FormattableString.Invariant($"<th scope=\"{(columns > 1 ? "colgroup" : "col")}\" colspan=\"{columns}\"{(kind.Length == 0 ? "" : $" class=\"{kind}\"")}>{text}</th>");

    public static string Mm(double mm) => mm.ToString("0.###", CultureInfo.InvariantCulture);
}
