using System.Security.Cryptography;
using System.Text.Json;

namespace Waywright.Publishing;

/// <summary>A published folder as it is read back: its record, and what of its files is no longer as published.</summary>
internal sealed class PublishedBuild
{
    private readonly string _folder;
    private readonly Dictionary<string, string> _hashes;

    private PublishedBuild(string folder, BuildRecord record, Dictionary<string, string> hashes) => (_folder, Record, _hashes) = (folder, record, hashes);

    public BuildRecord Record { get; }

    /// <summary>Reads what says of a folder that it is a published build.</summary>
    /// <exception cref="InputException">No such folder, no or a broken record.json or run.json.</exception>
    public static PublishedBuild Open(string folder)
    {
        if (!Directory.Exists(folder))
            throw Problem(folder, File.Exists(folder) ? "a file" : "no such folder");
        foreach (var name in new[] { Ownership.RecordFile, Ownership.RunFile })
        {
            if (!File.Exists(Path.Combine(folder, name)))
                throw Problem(folder, $"a folder without {name}");
        }

        if (!Ownership.IsBuild(folder))
            throw Problem(Path.Combine(folder, Ownership.RunFile), "a file that Waywright did not write");
        try
        {
            var record = BuildRecord.Parse(File.ReadAllText(Path.Combine(folder, Ownership.RecordFile)), Path.Combine(folder, Ownership.RecordFile));
            using var run = JsonDocument.Parse(File.ReadAllBytes(Path.Combine(folder, Ownership.RunFile)));
            return new PublishedBuild(Path.GetFullPath(folder), record, run.RootElement.GetProperty("files").EnumerateObject().ToDictionary(file => file.Name, file => file.Value.ToString(), StringComparer.Ordinal));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw Problem(folder, "a folder that can't be read: " + e.Message);
        }
    }

    public string PathOf(string name) => Path.Combine(_folder, name);

    /// <summary>Data files that are not those that the figures were found from.</summary>
    public IReadOnlyList<string> ChangedData() =>
    [
        .. Record.Inputs.Select(input => (input.Path, Found: Hash(PathOf("inputs/" + input.Path)), input.Sha256))
            .Where(input => input.Found != input.Sha256)
            .Select(input => $"inputs/{input.Path}: {(input.Found is null ? "gone" : "not the file that the figures were found from")}"),
    ];

    /// <summary>Notebooks whose cells are not those that ran.</summary>
    public IReadOnlyList<string> ChangedNotebooks() =>
    [
        .. Record.Notebooks.Select(notebook => (notebook.Path, Found: SourceHash(notebook.Path), notebook.SourceSha256))
            .Where(notebook => notebook.Found != notebook.SourceSha256)
            .Select(notebook => $"{notebook.Path}: {(notebook.Found is null ? "gone or no notebook any more" : "not the cells that the figures were found by")}"),
    ];

    /// <summary>Other files of the folder that were changed after it was published, and files that came later.</summary>
    public IReadOnlyList<string> ChangedFiles()
    {
        var data = Record.Inputs.Select(input => "inputs/" + input.Path).ToHashSet(StringComparer.Ordinal);
        return [.. _hashes.Where(file => !data.Contains(file.Key)).Select(file => (file.Key, Found: Hash(PathOf(file.Key)), file.Value))
            .Where(file => file.Found != file.Value)
            .Select(file => $"{file.Key}: {(file.Found is null ? "gone" : "changed since it was published")}"), .. Added()];
    }

    private IEnumerable<string> Added()
        => Directory.EnumerateFiles(_folder, "*", SearchOption.AllDirectories)
            .Select(file => Path.GetRelativePath(_folder, file).Replace('\\', '/'))
            .Where(file => file != Ownership.RunFile && !_hashes.ContainsKey(file) && !Ownership.IsDesktop(file))
            .Order(StringComparer.Ordinal)
            .Select(file => $"{file}: added since it was published");

    private string? SourceHash(string path)
    {
        try
        {
            return File.Exists(PathOf(path)) ? NotebookDocument.Parse(File.ReadAllText(PathOf(path)), path).SourceSha256() : null;
        }
        catch (InputException)
        {
            return null;
        }
    }

    private static string? Hash(string file)
    {
        if (!File.Exists(file))
            return null;
        using var bytes = File.OpenRead(file);
        return Convert.ToHexStringLower(SHA256.HashData(bytes));
    }

    private static InputException Problem(string source, string found) => new(new InputProblem(source, null, null, found, "a build that waywright published"));
}
