using System.Globalization;
using System.Text;

namespace Waywright.Notebooks;

/// <summary>Writes words and numbers into SVG and HTML.</summary>
internal static class SvgText
{
    /// <summary>Words as character data that is also well-formed XML: what XML can't hold becomes U+FFFD.</summary>
    public static string Encode(string words)
    {
        var encoded = new StringBuilder(words.Length);
        foreach (var rune in words.EnumerateRunes())
        {
            switch (rune.Value)
            {
                case '&':
                    encoded.Append("&amp;");
                    break;
                case '<':
                    encoded.Append("&lt;");
                    break;
                case '>':
                    encoded.Append("&gt;");
                    break;
                case '"':
                    encoded.Append("&quot;");
                    break;
                case '\'':
                    encoded.Append("&#39;");
                    break;
                case var hidden when PrintableText.IsHidden(hidden):
                    encoded.Append('\ufffd');
                    break;
                default:
                    encoded.Append(rune.ToString());
                    break;
            }
        }

        return encoded.ToString();
    }

    /// <summary>A share of one.</summary>
    public static string Share(double share) => share.ToString("0.##", CultureInfo.InvariantCulture);

    /// <summary>A length in px to a tenth.</summary>
    public static string Px(double length) => (Math.Round(length, 1) + 0.0).ToString("0.#", CultureInfo.InvariantCulture);
}
