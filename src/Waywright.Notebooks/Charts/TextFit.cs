using System.Text;

namespace Waywright.Notebooks;

/// <summary>Estimates how wide words are in a system sans-serif font and breaks lines by it: a static picture can't ask the browser.</summary>
internal static class TextFit
{
    /// <summary>Width in px at a font size.</summary>
    public static double Width(string words, double fontSize)
    {
        var ems = 0.0;
        foreach (var rune in words.EnumerateRunes())
            ems += Ems(rune);
        return ems * fontSize;
    }

    /// <summary>Lines no wider than a width; the last of at most <paramref name="lines"/> ends in an ellipsis when words are left.</summary>
    public static IReadOnlyList<string> Wrap(string words, double width, double fontSize, int lines)
    {
        var wrapped = new List<string>();
        var line = "";
        foreach (var word in words.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            var longer = line.Length == 0 ? word : $"{line} {word}";
            if (line.Length > 0 && Width(longer, fontSize) > width)
            {
                wrapped.Add(line);
                longer = word;
            }

            line = longer;
        }

        if (line.Length > 0)
            wrapped.Add(line);
        var shown = wrapped.Take(lines).Select(l => Shorten(l, width, fontSize, always: false)).ToList();
        if (wrapped.Count > lines)
            shown[^1] = Shorten(wrapped[lines - 1], width, fontSize, always: true);
        return shown;
    }

    /// <summary>The words, or as many letters of them as fit before an ellipsis.</summary>
    public static string Shorten(string words, double width, double fontSize, bool always = false)
    {
        if (!always && Width(words, fontSize) <= width)
            return words;
        var kept = new StringBuilder();
        var used = Width("…", fontSize);
        foreach (var rune in words.EnumerateRunes())
        {
            used += Ems(rune) * fontSize;
            if (used > width)
                break;
            kept.Append(rune);
        }

        return kept.ToString().TrimEnd() + "…";
    }

    // Rounded from the advance widths of common sans-serif fonts.
    private static double Ems(Rune rune) => rune.Value switch
    {
        ' ' or '.' or ',' or ':' or ';' or 'i' or 'j' or 'l' or '\'' or '|' or '!' or 'I' => 0.29,
        'f' or 't' or 'r' or '(' or ')' or '[' or ']' or '-' or '/' => 0.36,
        'm' or 'M' or 'w' or 'W' or '%' or '@' or '—' => 0.88,
        >= 'A' and <= 'Z' => 0.69,
        < 0x1100 => 0.57,
        _ => 1,
    };
}
