namespace Waywright.Notebooks;

/// <summary>Splits a text into what has to be done and what else is to be known.</summary>
internal static class Sentences
{
    /// <summary>The first sentence: up to a full stop that a blank and a capital letter follow.</summary>
    public static string First(string text) => text[..EndOfFirst(text)];

    /// <summary>All after the first sentence; empty when there is one only.</summary>
    public static string Rest(string text) => text[EndOfFirst(text)..].TrimStart();

    private static int EndOfFirst(string text)
    {
        for (var i = 0; i + 2 < text.Length; i++)
        {
            if (text[i] == '.' && text[i + 1] == ' ' && char.IsUpper(text[i + 2]))
                return i + 1;
        }

        return text.Length;
    }
}
