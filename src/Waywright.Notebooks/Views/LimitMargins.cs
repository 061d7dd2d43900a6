namespace Waywright.Notebooks;

/// <summary>Limits beside what the set-ups are uncertain by.</summary>
internal static class LimitMargins
{
    private const int Most = 40;

    /// <summary>A sentence on limits under three times U; null where there is none.</summary>
    public static string? Narrow(IReadOnlyList<LimitMargin> margins)
    {
        var narrow = margins.Where(m => m.IsNarrow).ToArray();
        if (narrow.Length == 0)
            return null;
        var told = narrow.Take(3).Select(m => $"{m.Grade} {m.Feature} {Shown.Limit(m.LimitUm)} um (U {Shown.ToSpread(m.ExpandedUm, m.ExpandedUm)} um with {m.Setup})");
        var more = narrow.Length > 3 ? $" and {Shown.Count(narrow.Length - 3)} more" : "";
        return $"Under three times the set-up's U, so few rails near it can be decided: {string.Join("; ", told)}{more}. A finer dial, a better guide or more stations would help.";
    }

    public static string Html(IReadOnlyList<LimitMargin> margins) => margins.Count == 0 ? "" : Markup.Table(Table(margins), "Each limit beside the largest U of its set-up, k = 2");

    private static TextTable Table(IReadOnlyList<LimitMargin> margins)
    {
        var table = new TextTable("set-up", "feature", "!grade", "#limit um", "#U um, k = 2", "limit / U");
        foreach (var m in margins.Take(Most))
            table.Add(m.Setup, m.Feature, m.Grade, Shown.Limit(m.LimitUm), Shown.ToSpread(m.ExpandedUm, m.ExpandedUm), m.IsNarrow ? "under 3: few can be decided" : "3 or more");
        return table;
    }
}
