using System.Globalization;
using System.Text;

namespace Waywright.Publishing;

/// <summary>How it was measured: every figure, and all that is needed to find it again.</summary>
internal sealed class MeasuredSection(PageMap map, PageContent content)
{
    private readonly StringBuilder _html = new();

    public string ToHtml()
    {
        _html.Append("<section id=\"measured\" aria-labelledby=\"measured-title\">\n<h2 id=\"measured-title\">How it was measured</h2>\n");
        if (content.Failure is null)
        {
            _html.Append("<p>Every figure of this page, with the files and parameters that it was found from. <code>waywright verify</code> on this folder runs the notebooks again on the same inputs and compares each figure within its tolerance.</p>\n");
            Figures();
        }

        Inputs();
        Parameters();
        Table("software", "Software", ["Name", "Version"], Software.List.OrderBy(s => s.Name, StringComparer.Ordinal).Select(s => Row(Html.Encode(s.Name), Html.Encode(s.Version))));
        return _html.Append("</section>\n").ToString();
    }

    private void Figures()
    {
        var bodies = content.Findings.Kept.Where(kept => kept.Result.Figures.Count > 0).Select(kept =>
            $"<tbody><tr><th colspan=\"5\" scope=\"rowgroup\"><a href=\"#{map.Result(kept.Result.Id)}\">{Html.Encode(kept.Result.Id)}</a></th></tr>\n{string.Concat(kept.Result.Figures.Select(Row))}</tbody>\n").ToList();
        if (bodies.Count == 0)
            _html.Append("<p class=\"ww-note\">No cell kept a result: there is nothing to compare a rerun by.</p>\n");
        else
            Open("figures", "Figures", ["Figure", "Value", "U or interval", "Unit", "How"], string.Concat(bodies));
    }

    private string Row(Figure figure)
    {
        var anchor = map.Anchors.Take("figure", figure.Id);
        var found = figure.Text is { } text
            ? $"<td colspan=\"3\">{Html.Encode(text)}</td>"
            : $"<td class=\"ww-num\">{FigureText.Value(figure)}</td><td class=\"ww-num\">{FigureText.Uncertainty(figure)}</td><td>{Html.Encode(figure.UnitSymbol)}</td>";
        return $"<tr id=\"{anchor}\"><th scope=\"row\"><a href=\"#{anchor}\">{Html.Encode(figure.Name)}</a></th>{found}<td class=\"ww-text\">{Html.Encode(figure.Method)}</td></tr>\n";
    }

    private void Inputs()
    {
        if (content.Findings.Inputs.Count == 0)
            _html.Append("<h3 id=\"inputs\">Inputs</h3>\n<p class=\"ww-note\">No cell named a file that it read.</p>\n");
        else
            Table("inputs", "Inputs", ["File", "Bytes", "SHA-256"], content.Findings.Inputs.Select(InputRow));
    }

    private static string InputRow(InputFile input)
    {
        var link = "inputs/" + string.Join('/', input.Path.Split('/').Select(Uri.EscapeDataString));
        return $"<tr><th scope=\"row\"><a href=\"{Html.Encode(link)}\">{Html.Encode(input.Path)}</a></th><td class=\"ww-num\">{input.Bytes.ToString(CultureInfo.InvariantCulture)}</td><td><code class=\"hash\">{input.Sha256}</code></td></tr>\n";
    }

    private void Parameters()
    {
        var rows = content.Runs.SelectMany(run => run.Parameters.Select(parameter => Row(
            $"<code>{Html.Encode(parameter.Name)}</code>",
            $"<code>{Html.Encode(parameter.Value)}</code>{(parameter.IsSet ? " <span class=\"quiet\">set for this run</span>" : "")}",
            Html.Encode(parameter.Note),
            $"<a href=\"#{map.Notebook(run.Path)}\">{Html.Encode(map.Title(run.Path))}</a>"))).ToList();
        if (rows.Count > 0)
            Table("parameters", "Parameters", ["Name", "Value", "Meaning", "Notebook"], rows);
    }

    private void Table(string id, string title, string[] heads, IEnumerable<string> rows) => Open(id, title, heads, $"<tbody>{string.Concat(rows)}</tbody>");

    private void Open(string id, string title, string[] heads, string bodies)
    {
        var head = string.Concat(heads.Select(h => $"<th scope=\"col\"{(h is "Value" && id == "figures" || h is "Bytes" or "U or interval" ? " class=\"ww-num\"" : "")}>{h}</th>"));
        _html.Append(CultureInfo.InvariantCulture, $"<h3 id=\"{id}\">{title}</h3>\n")
            .Append(Html.Scroll(title, $"<table class=\"ww-table\"><thead><tr>{head}</tr></thead>\n{bodies}</table>"));
    }

    private static string Row(string head, params string[] cells) => $"<tr><th scope=\"row\">{head}</th>{string.Concat(cells.Select(cell => $"<td{(cell.Length > 24 ? " class=\"ww-text\"" : "")}>{cell}</td>"))}</tr>\n";
}
