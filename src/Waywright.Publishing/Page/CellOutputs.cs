using System.Buffers.Text;
using System.Text;
using System.Text.Json.Nodes;

namespace Waywright.Publishing;

/// <summary>Outputs of code cells as HTML: the richest form that a page without network can show.</summary>
internal static class CellOutputs
{
    private const string LiveStart = "<!--ww:live-->";
    private const string LiveEnd = "<!--/ww:live-->";

    private static readonly string[] Pictures = ["image/png", "image/jpeg", "image/gif", "image/webp"];

    public static string ToHtml(JsonObject output, int cellNumber) => (string?)output["output_type"] switch
    {
        "stream" => Html.Pre((string?)output["name"] == "stderr" ? "Messages of this cell" : "Text output of this cell", "stream", WithoutColours(NotebookText.Joined(output["text"]))),
        "error" => Error(output),
        _ => Data(output["data"] as JsonObject ?? [], cellNumber),
    };

    /// <summary>Views carry what a notebook front end needs between two marks; the page has its own means.</summary>
    public static string WithoutLive(string html)
    {
        var kept = new StringBuilder();
        var rest = html.AsSpan();
        for (int start; (start = rest.IndexOf(LiveStart)) >= 0;)
        {
            kept.Append(rest[..start]);
            rest = rest[start..];
            var end = rest.IndexOf(LiveEnd);
            rest = end < 0 ? [] : rest[(end + LiveEnd.Length)..];
        }

        return kept.Append(rest).ToString();
    }

    private static string Data(JsonObject data, int cellNumber)
    {
        // What a notebook tells the host (data opened, results kept) stands in the page's own sections.
        if (data.Any(entry => entry.Key.StartsWith("application/vnd.waywright.", StringComparison.Ordinal)) && data["text/html"] is null)
            return "";
        if (data["text/html"] is { } html)
            return $"<div class=\"output\">{WithoutLive(NotebookText.Joined(html))}</div>\n";
        if (data["image/svg+xml"] is { } svg)
            return Picture("image/svg+xml", Convert.ToBase64String(Encoding.UTF8.GetBytes(NotebookText.Joined(svg))), cellNumber);
        if (Array.Find(Pictures, type => data[type] is not null) is { } type)
            return Picture(type, NotebookText.Joined(data[type]).ReplaceLineEndings(""), cellNumber);
        if (data["text/plain"] is { } text)
            return Html.Pre("Result of this cell", "result", NotebookText.Joined(text));
        return data.FirstOrDefault(entry => NotebookText.IsJsonType(entry.Key)).Value is { } json
            ? Html.Pre("Result of this cell", "result", json.ToJsonString())
            : "";
    }

    /// <summary>A picture as a data URL; null when it is none: another type, or bytes that are not base64.</summary>
    public static string? PictureUrl(string type, string base64)
        => (type == "image/svg+xml" || Pictures.Contains(type)) && Base64.IsValid(base64) ? $"data:{type};base64,{base64}" : null;

    private static string Picture(string type, string base64, int cellNumber)
        => PictureUrl(type, base64) is not { } url
            ? FormattableString.Invariant($"<p class=\"ww-note\">Code cell {cellNumber} gave a picture that can't be read.</p>\n")
            : FormattableString.Invariant($"<div class=\"output\"><img src=\"{Html.Encode(url)}\" alt=\"Picture that code cell {cellNumber} drew\"></div>\n");

    private static string Error(JsonObject output)
    {
        var trace = WithoutColours(string.Join('\n', (output["traceback"] as JsonArray ?? []).Select(line => NotebookText.Joined(line))));
        var folded = trace.Length == 0 ? "" : $"<details class=\"ww-details\"><summary>Trace</summary>{Html.Pre("Trace of the error", "stream", trace)}</details>";
        return $"<div class=\"failed\"><p><strong>This cell failed.</strong> {Html.Encode(NotebookText.Joined(output["ename"]))}</p><pre class=\"reason\">{Html.Encode(WithoutColours(NotebookText.Joined(output["evalue"])))}</pre>{folded}</div>\n";
    }

    // Terminal colour codes: ESC [ ... letter.
    private static string WithoutColours(string text)
    {
        var plain = new StringBuilder();
        for (var i = 0; i < text.Length; i++)
        {
            if (text[i] == '\u001b' && i + 1 < text.Length && text[i + 1] == '[')
            {
                for (i += 2; i < text.Length && !char.IsAsciiLetter(text[i]);)
                    i++;
            }
            else
            {
                plain.Append(text[i]);
            }
        }

        return plain.ToString();
    }
}
