using System.Security.Cryptography;

namespace Waywright.Publishing;

/// <summary>Copies the files that cells read, byte for byte, and holds each to the hash that the cell named.</summary>
internal sealed class InputStore(string buildFolder, string copies)
{
    private readonly Dictionary<string, InputFile> _files = new(StringComparer.Ordinal);
    private readonly HashSet<string> _changed = new(StringComparer.Ordinal);

    public IReadOnlyList<InputFile> Files => [.. _files.Values.OrderBy(file => file.Path, StringComparer.Ordinal)];

    /// <summary>Copies one file; a file that is known already must still be the same.</summary>
    /// <returns>Null, or the sentence that says what is wrong with it.</returns>
    /// <exception cref="IOException">The copy can't be written.</exception>
    public string? Take(InputFile input)
    {
        if (_files.TryGetValue(input.Path, out var known) && known != input)
            return Changed(input, $"{input.Path} changed between two readings: the figures before and after come from different data");
        if (known is not null)
            return null;
        if (Read(input.Path, out var why) is not { } bytes)
            return why;
        if (!IsSame(input, bytes))
            return Changed(input, $"{input.Path} changed while it was read: run again when no other program writes to it");
        var to = Path.Combine(copies, input.Path);
        Directory.CreateDirectory(Path.GetDirectoryName(to)!);
        File.WriteAllBytes(to, bytes);
        _files.Add(input.Path, input);
        return null;
    }

    /// <summary>Files that are not any more what a cell read: figures of this run may come from either.</summary>
    public IReadOnlyList<string> FindChanged()
        => [.. _files.Values.Where(file => Read(file.Path, out _) is not { } bytes || !IsSame(file, bytes)).Select(file => file.Path).Union(_changed).Order(StringComparer.Ordinal)];

    private string Changed(InputFile input, string why)
    {
        _changed.Add(input.Path);
        return why;
    }

    private byte[]? Read(string path, out string? why)
    {
        why = null;
        try
        {
            var from = Path.GetFullPath(path, buildFolder);
            if (IsInside(from))
                return File.ReadAllBytes(from);
            why = $"{path} leads out of the build folder through a link: copy the file into the build folder";
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            why = $"{path} was read by a cell and is gone";
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            why = $"{path} can't be copied: {e.Message}";
        }

        return null;
    }

    private static bool IsSame(InputFile input, byte[] bytes) => bytes.LongLength == input.Bytes && Convert.ToHexStringLower(SHA256.HashData(bytes)) == input.Sha256;

    // Each part of the path may be a link; none may lead out.
    private bool IsInside(string path)
    {
        for (FileSystemInfo at = new FileInfo(path); at.FullName.Length > buildFolder.Length; at = Directory.GetParent(at.FullName)!)
        {
            if (at.ResolveLinkTarget(returnFinalTarget: true) is { } target && !IsBelow(target.FullName))
                return false;
        }

        return true;
    }

    private bool IsBelow(string path) => path.StartsWith(buildFolder.TrimEnd(Path.DirectorySeparatorChar) + Path.DirectorySeparatorChar, StringComparison.Ordinal);
}
