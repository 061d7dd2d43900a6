using System.Net;
using System.Text;

namespace Waywright.Notebooks;

/// <summary>The few pieces of HTML that views are made of. Every text that comes from data goes through <see cref="Encode"/>.</summary>
internal static partial class Markup
{
    // A notebook front end has no page stylesheet; the published page has, so this stretch is taken out there.
    private const string Style = "<!--ww:live--><style>"
        + ".ww-verdict{font-weight:600}"
        + ".ww-table td,.ww-table th{text-align:left!important;padding:.2em .8em .2em 0}.ww-table .ww-num{text-align:right!important;font-variant-numeric:tabular-nums}"
        + ".ww-bar{display:inline-block;width:8em;height:.6em;background:linear-gradient(#0072B2,#0072B2) no-repeat 0 / var(--share,0%) 100%}"
        + ".ww-cards{display:grid;grid-template-columns:1fr 1fr;gap:1em}.ww-card{border:1px dashed;padding:.7em 1em;break-inside:avoid}.ww-card p{margin:.3em 0}"
        + ".ww-view summary{display:list-item;cursor:pointer}"
        + "</style><!--/ww:live-->";

    public static string Encode(string text) => WebUtility.HtmlEncode(Seen(text));

    /// <summary>The text with a sign in the place of each that nobody would see.</summary>
    public static string Seen(string text)
        => text.Any(IsHidden) ? string.Concat(text.Select(c => IsHidden(c) ? '\ufffd' : c)) : text;

    public static bool IsHidden(char c) => PrintableText.IsHidden(c);

    /// <summary>A whole view: the verdict, then the rest.</summary>
    public static string View(string verdict, params ReadOnlySpan<string> parts)
    {
        var html = new StringBuilder(Style).Append("<div class=\"ww-view\"><p class=\"ww-verdict\">").Append(Words(verdict)).Append("</p>");
        foreach (var part in parts)
            html.Append(part);
        return html.Append("</div>").ToString();
    }

    /// <summary>A table in a region of its own that scrolls sideways on a phone. Cells are encoded.</summary>
    public static string Table(TextTable table, string caption)
    {
        var html = new StringBuilder("<div class=\"ww-scroll\" role=\"group\" tabindex=\"0\" aria-label=\"").Append(Encode(caption)).Append("\"><table class=\"ww-table\"><thead><tr>");
        for (var c = 0; c < table.Columns.Count; c++)
            html.Append("<th scope=\"col\"").Append(ClassOf(table.KindOf(c))).Append('>').Append(Words(table.Columns[c])).Append("</th>");
        html.Append("</tr></thead><tbody>");
        foreach (var row in table.Rows)
        {
            html.Append("<tr>");
            for (var c = 0; c < row.Count; c++)
                html.Append("<td").Append(ClassOf(table.KindOf(c))).Append('>').Append(Cell(table.KindOf(c), row[c])).Append("</td>");
            html.Append("</tr>");
        }

        return html.Append("</tbody></table></div>").ToString();
    }

    /// <summary>A grade as a word with a mark of its own shape and colour.</summary>
    public static string Badge(string grade) => $"<span class=\"ww-badge{MarkOf(grade)}\">{Encode(grade)}</span>";

    /// <summary>How many of each grade, best seen at a glance.</summary>
    public static string Counts(IEnumerable<KeyValuePair<string, int>> counts)
        => $"<ul class=\"ww-counts\">{string.Concat(counts.Select(c => $"<li><span class=\"ww-badge{MarkOf(c.Key)}\">{Shown.Count(c.Value)} {Encode(c.Key)}</span></li>"))}</ul>";

    /// <summary>A remark under a picture or table; one that cautions is boxed.</summary>
    public static string Note(string text)
    {
        var at = text.IndexOf("Caution:", StringComparison.Ordinal);
        var note = at < 0 ? text : text[..at].TrimEnd();
        var caution = at < 0 ? "" : $"<aside class=\"ww-caution\"><p><strong>Caution</strong> {Words(Shown.First(text[(at + "Caution:".Length)..].Trim()))}</p></aside>";
        return (note.Length == 0 ? "" : $"<p class=\"ww-note\">{Words(note)}</p>") + caution;
    }

    /// <summary>Encoded, with the micro sign for um: for sentences and headings of our own, not for names from data.</summary>
    public static string Words(string text) => Encode(Micro(text));

    /// <summary>The micro sign for um.</summary>
    public static string Micro(string text) => MicroPattern().Replace(text, "\u00B5m");

    /// <summary>A folded part.</summary>
    public static string Details(string summary, string inner) => $"<details class=\"ww-details\"><summary>{Words(summary)}</summary>{inner}</details>";

    /// <summary>A list of sentences.</summary>
    public static string List(params IEnumerable<string> items) => $"<ul>{string.Concat(items.Select(i => $"<li>{Words(i)}</li>"))}</ul>";

    private static string Cell(ColumnKind kind, string text) => kind switch
    {
        ColumnKind.Grade => Badge(text),
        ColumnKind.Sentence => Words(text),
        _ => Encode(text),
    };

    private static string ClassOf(ColumnKind kind) => kind switch
    {
        ColumnKind.Number => " class=\"ww-num\"",
        ColumnKind.Sentence => " class=\"ww-text\"",
        _ => "",
    };

    private static string MarkOf(string grade) => grade switch
    {
        GradedBatch.Return => " ww-rejected",
        GradedBatch.MeasureAgain => " ww-undecided",
        "gantry" => " ww-chosen",
        "z" => " ww-second",
        _ => "",
    };

    [System.Text.RegularExpressions.GeneratedRegex(@"(?<=^|[ (/])um(?=$|[ ,.;:)/])")]
    private static partial System.Text.RegularExpressions.Regex MicroPattern();
}
