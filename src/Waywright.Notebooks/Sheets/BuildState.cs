namespace Waywright.Notebooks;

/// <summary>Which sheets of a build are filled, which are still missing, and what to do next.</summary>
public sealed record BuildState
{
    internal BuildState(IReadOnlyList<SheetState> sheets) => Sheets = sheets;

    /// <summary>In the order of the work.</summary>
    public IReadOnlyList<SheetState> Sheets { get; }

    /// <summary>Sheets that the build can't do without and that are not filled.</summary>
    public IReadOnlyList<SheetState> Missing => [.. Sheets.Where(s => s is { IsFilled: false, IsOptional: false })];

    /// <summary>Looks at the sheets: a table with a header and no rows is empty, a JSON document whose note begins with <c>To do:</c> is not yet edited, a file that isn't there is missing.</summary>
    /// <param name="paths">Relative to the notebook's folder, in the order of the work.</param>
    /// <exception cref="InputException">A file lies outside the build folder, where a published build could not carry it.</exception>
    public static BuildState Of(params IEnumerable<string> paths)
    {
        ArgumentNullException.ThrowIfNull(paths);
        return new BuildState([.. paths.Select(SheetText.Noted)]);
    }
}
