using System.Text;
using System.Text.RegularExpressions;
using Waywright.Notebooks;

namespace Waywright.Publishing;

/// <summary>Text as HTML text: nothing in it can become a tag, an attribute or an entity.</summary>
internal static partial class Html
{
    public static string Encode(string text)
    {
        var encoded = new StringBuilder(text.Length + 16);
        foreach (var c in Markup.Seen(text.Replace("\r", "", StringComparison.Ordinal)))
        {
            _ = c switch
            {
                '&' => encoded.Append("&amp;"),
                '<' => encoded.Append("&lt;"),
                '>' => encoded.Append("&gt;"),
                '"' => encoded.Append("&quot;"),
                '\'' => encoded.Append("&#39;"),
                _ => encoded.Append(c),
            };
        }

        return encoded.ToString();
    }

    /// <summary>A sentence: words between backticks are names, a number stays with its unit, and um has its sign.</summary>
    public static string Sentence(string text)
    {
        var encoded = Micrometre().Replace(BeforeUnit().Replace(Encode(text), "\u202F"), "\u00B5m");
        var parts = encoded.Split('`');
        if (parts.Length % 2 == 0)
            return encoded;
        return string.Concat(parts.Index().Select(part => part.Index % 2 == 1 ? $"<code>{part.Item}</code>" : part.Item));
    }

    /// <summary>A box that scrolls sideways by itself, so that the page never does; reached by keyboard, and named for it. A group: as a region, each would be a landmark.</summary>
    public static string Scroll(string label, string content)
        => $"<div class=\"ww-scroll\" role=\"group\" tabindex=\"0\" aria-label=\"{Encode(label)}\">{content}</div>\n";

    /// <summary>Program text or output, as it is.</summary>
    public static string Pre(string label, string className, string text)
        => $"<pre class=\"{className}\" role=\"group\" tabindex=\"0\" aria-label=\"{Encode(label)}\">{Encode(text)}</pre>\n";

    [GeneratedRegex(@"(?<=\d) (?=(%|°|(k|M)?Hz|[mcµuk]?m|k?g|k?N|s)(?![\w/]))", RegexOptions.CultureInvariant)]
    private static partial Regex BeforeUnit();

    [GeneratedRegex(@"(?<=[\d)][ \u202F]?)um(?![\w/])", RegexOptions.CultureInvariant)]
    private static partial Regex Micrometre();
}
