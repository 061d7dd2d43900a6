namespace Waywright.Notebooks;

/// <summary>The folder that a build's files are named relative to.</summary>
internal static class BuildFolder
{
    /// <summary>Set by the host that runs the notebook.</summary>
    public const string Variable = "WAYWRIGHT_BUILD_FOLDER";

    /// <summary>The host's folder; else the parent of a working folder called <c>notebooks</c>, else the working folder.</summary>
    public static string Current
    {
        get
        {
            if (Environment.GetEnvironmentVariable(Variable) is { Length: > 0 } given)
                return Path.GetFullPath(given);
            var working = Path.TrimEndingDirectorySeparator(Path.GetFullPath(Directory.GetCurrentDirectory()));
            return Path.GetFileName(working) == "notebooks" ? Path.GetDirectoryName(working)! : working;
        }
    }

    /// <summary>A file's name relative to the build folder with forward slashes, or null when it lies outside.</summary>
    public static string? NameOf(string fullPath)
    {
        var relative = Path.GetRelativePath(Current, fullPath).Replace('\\', '/');
        return Path.IsPathRooted(relative) || relative == ".." || relative.StartsWith("../", StringComparison.Ordinal) ? null : relative;
    }
}
