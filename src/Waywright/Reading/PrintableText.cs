using System;
using System.Globalization;

namespace Waywright;

/// <summary>Whether all of a text can be seen when it is printed.</summary>
internal static class PrintableText
{
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
