using System.Text;

namespace Waywright.Notebooks;

/// <summary>
/// Words that go into a Plotly figure. Plotly renders a pseudo-HTML in every text (a rail named as a link would become one),
/// fills <c>%{...}</c> in hover texts and hands <c>$...$</c> to a formula renderer where the page has one: all of it is written as entities.
/// </summary>
internal static class PlotlyText
{
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
                case '%':
                    encoded.Append("&#37;");
                    break;
                case '$':
                    encoded.Append("&#36;");
                    break;
                case '\n':
                    encoded.Append("<br>");
                    break;
                case '\t':
                    encoded.Append(' ');
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
}
