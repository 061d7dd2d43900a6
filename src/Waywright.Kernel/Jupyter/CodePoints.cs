namespace Waywright.Kernel;

/// <summary>Places in a cell: the protocol counts Unicode code points, C# counts UTF-16 units.</summary>
internal static class CodePoints
{
    /// <summary>The UTF-16 index of a place given in code points; the end of the text for a place beyond it.</summary>
    public static int ToUnits(string text, int points)
    {
        var at = 0;
        for (; points > 0 && at < text.Length; points--) at += Width(text, at);
        return at;
    }

    public static int FromUnits(string text, int units)
    {
        var points = 0;
        for (var at = 0; at < units; at += Width(text, at)) points++;
        return points;
    }

    private static int Width(string text, int at) => char.IsHighSurrogate(text[at]) && at + 1 < text.Length && char.IsLowSurrogate(text[at + 1]) ? 2 : 1;
}
