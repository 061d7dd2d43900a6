using System.Text;

namespace Waywright.Publishing;

/// <summary>Starts a build: a folder with notebooks, empty data sheets and measuring sheets to print.</summary>
public static class NewBuild
{
    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);

    /// <summary>Makes the folder; what goes wrong half way leaves nothing behind.</summary>
    /// <param name="path">A folder that isn't there yet, or is empty; the folder around it has to exist.</param>
    /// <param name="rails">What the measuring sheets are made for.</param>
    /// <returns>The folder's full path.</returns>
    /// <exception cref="InputException">There is something already, or it can't be written; nothing was changed.</exception>
    public static string Make(string path, SheetRails rails)
    {
        ArgumentNullException.ThrowIfNull(rails);
        var full = FullPath(path);
        return Make(path, full, StartFiles.Of(Path.GetFileName(full), rails));
    }

    internal static string Make(string path, IEnumerable<StartFile> files) => Make(path, FullPath(path), files);

    private static string Make(string path, string full, IEnumerable<StartFile> files)
    {
        Check(path, full);
        var isThere = Directory.Exists(full);
        // In an empty folder rather than beside it: somebody may stand in that folder, and only it need be writable.
        var made = Path.Combine(isThere ? full : Path.GetDirectoryName(full)!, $".{Path.GetFileName(full)}.waywright-new-{Path.GetRandomFileName()}");
        try
        {
            Directory.CreateDirectory(made);
            foreach (var file in files)
            {
                var target = Path.Combine(made, file.Path);
                Directory.CreateDirectory(Path.GetDirectoryName(target)!);
                File.WriteAllText(target, file.Text, Utf8);
            }

            if (isThere)
                MoveUp(made, full);
            else
                Directory.Move(made, full);
            return full;
        }
        catch (UnauthorizedAccessException)
        {
            throw Problem(path, "a folder that may not be written", "a folder with write permission");
        }
        catch (IOException e)
        {
            throw Problem(path, "a folder that can't be written: " + e.Message, "a folder to start a build in");
        }
        finally
        {
            if (Directory.Exists(made))
                Directory.Delete(made, recursive: true);
        }
    }

    private static string FullPath(string path)
    {
        if (string.IsNullOrWhiteSpace(path) || path.Contains('\0', StringComparison.Ordinal))
            throw Problem("DIR", $"'{path.Replace("\0", "", StringComparison.Ordinal)}'", "the name of a folder");
        var full = Path.TrimEndingDirectorySeparator(Path.GetFullPath(path));
        return Path.GetFileName(full).Length > 0 ? full : throw Problem(path, "the root of a drive", "a folder to start a build in");
    }

    private static void Check(string path, string full)
    {
        const string fresh = "a new name, or an empty folder: nothing is overwritten";
        if (File.Exists(full))
            throw Problem(path, "a file", fresh);
        if (!Directory.Exists(full))
        {
            if (new FileInfo(full).LinkTarget is not null)
                throw Problem(path, "a link that leads nowhere", fresh);
            if (!Directory.Exists(Path.GetDirectoryName(full)))
                throw Problem(path, "no folder to make it in", "a folder around it that is there already");
            return;
        }

        try
        {
            if (Directory.EnumerateFileSystemEntries(full).FirstOrDefault(entry => !Ownership.IsDesktop(entry)) is { } entry)
                throw Problem(path, $"a folder with files in it, such as '{Path.GetFileName(entry)}'", fresh);
        }
        catch (Exception e) when (e is UnauthorizedAccessException or IOException)
        {
            throw Problem(path, "a folder that may not be read", fresh);
        }
    }

    // Each a rename within one folder; if one fails, those before it are taken back.
    private static void MoveUp(string made, string full)
    {
        var moved = new List<string>();
        try
        {
            foreach (var entry in Directory.EnumerateFileSystemEntries(made).ToList())
            {
                var target = Path.Combine(full, Path.GetFileName(entry));
                Directory.Move(entry, target);
                moved.Add(target);
            }
        }
        catch
        {
            foreach (var target in moved)
                Directory.Move(target, Path.Combine(made, Path.GetFileName(target)));
            throw;
        }
    }

    private static InputException Problem(string source, string found, string expected) => new(new InputProblem(source, null, null, found, expected));
}
