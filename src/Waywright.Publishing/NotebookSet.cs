namespace Waywright.Publishing;

/// <summary>Notebooks of one build: the folder that their data is named relative to, and their files in the order in which they run.</summary>
/// <param name="BuildFolder">Full path.</param>
/// <param name="Files">Full paths, sorted by their path in the build.</param>
public sealed record NotebookSet(string BuildFolder, IReadOnlyList<string> Files)
{
    private const string FolderName = "notebooks";

    /// <summary>Finds the notebooks that the caller means.</summary>
    /// <param name="arguments">Notebook files and folders; empty: the folder <c>notebooks</c>, looked for upwards from the working folder.</param>
    /// <param name="workingFolder">What relative paths are relative to.</param>
    /// <exception cref="InputException">Nothing there, a file that is no notebook, notebooks of two builds.</exception>
    public static NotebookSet Find(IReadOnlyList<string> arguments, string workingFolder)
    {
        var files = arguments.Count == 0
            ? InFolder(Upwards(workingFolder), FolderName)
            : [.. arguments.SelectMany(argument => Named(argument, workingFolder))];
        var sorted = files.Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).ToList();
        var folders = sorted.Select(BuildFolderOf).Distinct(StringComparer.Ordinal).ToList();
        return folders.Count == 1
            ? new NotebookSet(folders[0], sorted)
            : throw Problem(string.Join(", ", arguments), $"notebooks of {folders.Count} build folders", "notebooks of one: publish each build by itself");
    }

    /// <summary>A notebook's path in the published folder: under <c>notebooks/</c>, forward slashes.</summary>
    internal string PathInBuild(string file)
    {
        var relative = Path.GetRelativePath(BuildFolder, file).Replace('\\', '/');
        return relative.StartsWith(FolderName + "/", StringComparison.Ordinal) ? relative : $"{FolderName}/{relative}";
    }

    private static List<string> Named(string argument, string workingFolder)
    {
        var path = Path.GetFullPath(argument, workingFolder);
        if (Directory.Exists(path))
            return InFolder(Directory.Exists(Path.Combine(path, FolderName)) ? Path.Combine(path, FolderName) : path, argument);
        if (!File.Exists(path))
            throw Problem(argument, "no such file or folder", "a notebook (.ipynb) or a folder with notebooks");
        return path.EndsWith(".ipynb", StringComparison.OrdinalIgnoreCase) ? [path] : throw Problem(argument, "a file that is no notebook", "a notebook (.ipynb)");
    }

    private static string Upwards(string workingFolder)
    {
        for (var folder = new DirectoryInfo(workingFolder); folder is not null; folder = folder.Parent)
        {
            if (Directory.Exists(Path.Combine(folder.FullName, FolderName)))
                return Path.Combine(folder.FullName, FolderName);
        }

        throw Problem(FolderName, "no such folder here or above", "a build folder that holds 'notebooks', or the path of a notebook");
    }

    private static List<string> InFolder(string folder, string named)
    {
        var files = Below(folder).ToList();
        return files.Count > 0 ? files : throw Problem(named, "a folder without notebooks", "at least one .ipynb file");
    }

    // Editors keep copies in folders whose names start with a dot; a published build holds notebooks that have run.
    private static IEnumerable<string> Below(string folder)
        => Directory.EnumerateFiles(folder, "*.ipynb").Concat(Directory.EnumerateDirectories(folder)
            .Where(below => !Path.GetFileName(below).StartsWith('.') && !Ownership.IsBuild(below))
            .SelectMany(Below));

    // The folder that holds 'notebooks'; without one, the notebook's own folder.
    private static string BuildFolderOf(string file)
    {
        for (var folder = Directory.GetParent(file); folder?.Parent is not null; folder = folder.Parent)
        {
            if (folder.Name == FolderName)
                return folder.Parent.FullName;
        }

        return Path.GetDirectoryName(file)!;
    }

    private static InputException Problem(string source, string found, string expected) => new(new InputProblem(source, null, null, found, expected));
}
