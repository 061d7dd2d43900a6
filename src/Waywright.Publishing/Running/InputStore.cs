using System.Security.Cryptography;

namespace Waywright.Publishing;

/// <summary>Copies the files that cells read, byte for byte, and holds each to the hash that the cell named.</summary>
internal sealed class InputStore(string buildFolder, string copies)
{
    private readonly Dictionary<string, InputFile> _files = new(StringComparer.Ordinal);

    public IReadOnlyList<InputFile> Files => [.. _files.Values.OrderBy(file => file.Path, StringComparer.Ordinal)];

    /// <summary>Copies one file; a file that is known already must still be the same.</summary>
    /// <returns>Null, or the sentence that says what is wrong with it.</returns>
    public string? Take(InputFile input)
    {
        if (_files.TryGetValue(input.Path, out var known))
            return known == input ? null : $"{input.Path} changed between two readings: the figures before and after come from different data";
        var from = Path.GetFullPath(input.Path, buildFolder);
        try
        {
            if (!IsInside(from))
                return $"{input.Path} leads out of the build folder through a link: copy the file into the build folder";
            var to = Path.Combine(copies, input.Path);
            Directory.CreateDirectory(Path.GetDirectoryName(to)!);
            var (sha256, bytes) = Copy(from, to);
            if (sha256 != input.Sha256 || bytes != input.Bytes)
                return $"{input.Path} changed while it was read: run again when no other program writes to it";
            _files.Add(input.Path, input);
            return null;
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            return $"{input.Path} was read by a cell and is gone";
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return $"{input.Path} can't be copied: {e.Message}";
        }
    }

    private static (string Sha256, long Bytes) Copy(string from, string to)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        using var source = File.OpenRead(from);
        using var target = File.Create(to);
        var buffer = new byte[1 << 16];
        var bytes = 0L;
        for (int length; (length = source.Read(buffer)) > 0; bytes += length)
        {
            hash.AppendData(buffer, 0, length);
            target.Write(buffer, 0, length);
        }

        return (Convert.ToHexStringLower(hash.GetHashAndReset()), bytes);
    }

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
