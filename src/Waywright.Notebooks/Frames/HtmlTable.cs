using System.Text;

namespace Waywright.Notebooks;

/// <summary>A table of a frame as HTML: every cell encoded, the first column as row headings, columns of numbers to the right.</summary>
internal sealed record HtmlTable(IReadOnlyList<string> Columns, IReadOnlyList<IReadOnlyList<string>> Rows, IReadOnlyList<bool> AreNumbers)
{
    public string Html(string name)
    {
        var html = new StringBuilder("<div class=\"ww-scroll\" role=\"group\" tabindex=\"0\" aria-label=\"").Append(SvgText.Encode(name)).Append("\"><table class=\"ww-table\"><thead><tr>");
        for (var c = 0; c < Columns.Count; c++)
            html.Append(Heading(c));
        html.Append("</tr></thead><tbody>");
        foreach (var row in Rows)
        {
            html.Append("<tr>");
            for (var c = 0; c < row.Count; c++)
                html.Append(c == 0 ? "<th scope=\"row\"" : "<td").Append(ClassOf(c)).Append('>').Append(SvgText.Encode(row[c])).Append(c == 0 ? "</th>" : "</td>");
            html.Append("</tr>");
        }

        return html.Append("</tbody></table></div>").ToString();
    }

    // A heading without words is no heading: screen readers would announce nothing.
    private string Heading(int column) => Columns[column].Length == 0 ? "<td></td>" : $"<th scope=\"col\"{ClassOf(column)}>{SvgText.Encode(Columns[column])}</th>";

    private string ClassOf(int column) => AreNumbers[column] ? " class=\"ww-num\"" : "";
}
