using System;
using System.Globalization;

namespace Waywright;

/// <summary>Whether all of a text can be seen when it is printed.</summary>
internal static class PrintableText
{
    /// <summary>
    /// A sign that nobody sees and that misleads who reads on: controls but tab and line feed (ECMA-48: they move a terminal's cursor and colours), the explicit
    /// bidirectional controls (Unicode Standard Annex 9: they show text in another order), and what no text holds (U+FFFE, U+FFFF).
    /// </summary>
    public static bool IsHidden(int rune) => rune is (< 0x20 and not '\n' and not '\t') or (>= 0x7f and < 0xa0) or (>= 0x202a and <= 0x202e) or (>= 0x2066 and <= 0x2069) or 0xfffe or 0xffff;

    /// <summary>No control, format, line or paragraph sign, and no half of a surrogate pair.</summary>
    public static bool Is(ReadOnlySpan<char> text)
    {
        for (var i = 0; i < text.Length; i++)
        {
            if (char.IsSurrogate(text[i]))
            {
                if (i + 1 >= text.Length || !char.IsSurrogatePair(text[i], text[i + 1]))
                    return false;
                i++;
            }
            else if (char.IsControl(text[i]) || char.GetUnicodeCategory(text[i]) is UnicodeCategory.Format or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator)
            {
                return false;
            }
        }

        return true;
    }
}
