using System.Text.Json;

namespace Waywright.Publishing;

/// <summary>Tells a folder that a run of ours wrote from any other, so that nobody's files are ever replaced.</summary>
internal static class Ownership
{
    public const string RunFormat = "waywright run 1";
    public const string RunFile = "run.json";
    public const string RecordFile = "record.json";

    // What desktops leave in every folder that they show.
    private static readonly string[] Desktop = [".DS_Store", "Thumbs.db", "desktop.ini"];

    /// <summary>
    /// Null when the folder may be replaced: absent, empty, or ours with nothing foreign in it. Ours means that its run.json is of our format
    /// and names every other file, and, for a published build, that its record.json is of our format too.
    /// </summary>
    /// <returns>What is found instead.</returns>
    public static string? Foreign(string folder, bool published)
    {
        if (File.Exists(folder))
            return "a file";
        if (!Directory.Exists(folder))
            return null;
        var files = Directory.EnumerateFiles(folder, "*", new EnumerationOptions { RecurseSubdirectories = true, AttributesToSkip = FileAttributes.None })
            .Select(file => Path.GetRelativePath(folder, file).Replace('\\', '/'))
            .Where(file => !IsDesktop(file))
            .Order(StringComparer.Ordinal)
            .ToList();
        if (files.Count == 0)
            return null;
        var known = FilesOf(folder);
        if (known is null || (published && FormatOf(Path.Combine(folder, RecordFile)) != BuildRecord.Format))
            return $"a folder with other files in it, such as '{files[0]}'";
        return files.FirstOrDefault(file => file != RunFile && !known.Contains(file)) is { } foreign ? $"'{foreign}', which Waywright did not write" : null;
    }

    /// <summary>True for what desktops leave in every folder that they show.</summary>
    public static bool IsDesktop(string file) => Desktop.Contains(Path.GetFileName(file));

    /// <summary>True for a folder that a run of ours wrote, whatever was added since.</summary>
    public static bool IsBuild(string folder) => FilesOf(folder) is not null;

    private static HashSet<string>? FilesOf(string folder)
        => Root(Path.Combine(folder, RunFile)) is { } root && Format(root) == RunFormat && root.TryGetProperty("files", out var files) && files.ValueKind == JsonValueKind.Object
            ? [.. files.EnumerateObject().Select(file => file.Name)]
            : null;

    private static string? FormatOf(string file) => Root(file) is { } root ? Format(root) : null;

    private static string? Format(JsonElement root) => root.TryGetProperty("format", out var format) && format.ValueKind == JsonValueKind.String ? format.GetString() : null;

    private static JsonElement? Root(string file)
    {
        if (!File.Exists(file))
            return null;
        try
        {
            using var document = JsonDocument.Parse(File.ReadAllBytes(file));
            return document.RootElement.ValueKind == JsonValueKind.Object ? document.RootElement.Clone() : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }
}
