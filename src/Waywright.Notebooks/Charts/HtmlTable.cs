using System.Text;

namespace Waywright.Notebooks;

/// <summary>A table as HTML: every cell encoded, the first column as row headings.</summary>
internal sealed record HtmlTable(IReadOnlyList<string> Columns, IReadOnlyList<IReadOnlyList<string>> Rows)
{
    public string Html()
    {
        var html = new StringBuilder("<table><thead><tr>");
        foreach (var column in Columns)
            html.Append("<th scope=\"col\">").Append(SvgText.Encode(column)).Append("</th>");
        html.Append("</tr></thead><tbody>");
        foreach (var row in Rows)
        {
            html.Append("<tr>");
            for (var i = 0; i < row.Count; i++)
                html.Append(i == 0 ? "<th scope=\"row\">" : "<td>").Append(SvgText.Encode(row[i])).Append(i == 0 ? "</th>" : "</td>");
            html.Append("</tr>");
        }

        return html.Append("</tbody></table>").ToString();
    }
}
