namespace Waywright.Notebooks;

/// <summary>What a data sheet says of itself before anybody filled it in.</summary>
internal static class SheetText
{
    /// <summary>Begins the comment line of a table, or the note of a JSON document, that tells what to measure first.</summary>
    public const string ToDo = "To do:";

    /// <summary>Begins it where a build can do without the sheet.</summary>
    public const string IfYouLike = "If you like:";

    // What a spreadsheet puts around a comment when it saves the sheet.
    private static readonly char[] Margin = [' ', '\t', '"', ',', ';'];

    /// <summary>How a sheet stands, and notes it as data of the build: a rerun has to find empty what was empty.</summary>
    public static SheetState Noted(string path)
    {
        if (File.Exists(path))
            Notebook.Data(path);
        return Of(path, BuildFolder.NameOf(Path.GetFullPath(path)) ?? path);
    }

    /// <summary>How a sheet stands; what is wrong in a sheet that is filled is left to its reader.</summary>
    /// <param name="path">Where the file is.</param>
    /// <param name="name">What the reader calls it.</param>
    public static SheetState Of(string path, string name)
    {
        if (!File.Exists(path))
            return new SheetState(name, IsFilled: false, IsOptional: false, "no such file: put it back, or take its name out of the parameters cell");
        try
        {
            return path.EndsWith(".json", StringComparison.OrdinalIgnoreCase) ? OfDocument(path, name) : OfTable(path, name);
        }
        catch (Exception e) when (e is InputException or System.Text.DecoderFallbackException)
        {
            return new SheetState(name, IsFilled: true, IsOptional: false, "");
        }
    }

    private static SheetState OfTable(string path, string name)
    {
        using var text = TextSource.Open(path);
        var note = "";
        var lines = 0;
        while (text.ReadLine() is { } line)
        {
            if (!(lines == 0 ? TableHeader.StandsAbove(line) : TableHeader.HoldsNothing(line)))
                lines++;
            else if (note.Length == 0 && line.Trim(Margin).TrimStart('#').Trim() is var said && IsNote(said))
                note = said;
        }

        // A header alone is an empty sheet; nothing at all is a file that its reader has to refuse.
        return Said(name, note, isFilled: lines != 1, "holds a header and no rows");
    }

    private static SheetState OfDocument(string path, string name)
    {
        var root = JsonPlace.Read(TextSource.ReadAll(path), new ProblemList(name));
        var note = root.Member("note") is { Kind: System.Text.Json.JsonTokenType.String } found ? found.Raw.Trim() : "";
        return Said(name, note, isFilled: !IsNote(note), "");
    }

    private static SheetState Said(string name, string note, bool isFilled, string otherwise)
    {
        var optional = note.StartsWith(IfYouLike, StringComparison.Ordinal);
        return new SheetState(name, isFilled, optional, IsNote(note) ? Shown.First(note[(note.IndexOf(':', StringComparison.Ordinal) + 1)..].Trim()) : otherwise);
    }

    private static bool IsNote(string text) => text.StartsWith(ToDo, StringComparison.Ordinal) || text.StartsWith(IfYouLike, StringComparison.Ordinal);
}
