namespace Waywright.Publishing;

/// <summary>
/// The folder that a build is published to. A new build is made beside it and takes its place by renames at the very end;
/// what a run that died left beside it is cleaned up by the next.
/// </summary>
internal sealed class OutFolder : IDisposable
{
    private readonly string _out;
    private readonly string _old;
    private readonly FileStream _lock;

    private OutFolder(string path, FileStream @lock) => (_out, _old, _lock) = (path, Beside(path, "old"), @lock);

    /// <summary>Where the new build is made.</summary>
    public string New => Beside(_out, "new");

    /// <summary>Where what there is of a failed run is kept.</summary>
    public string Failed => _out + "-failed";

    /// <summary>Takes the folder for this run: nothing in it changes before <see cref="Publish"/>.</summary>
    /// <exception cref="InputException">It or its '-failed' neighbour holds other files, is in use by another run, or can't be written.</exception>
    public static OutFolder Take(string path)
    {
        var full = Path.TrimEndingDirectorySeparator(Path.GetFullPath(path));
        if (Path.GetDirectoryName(full) is not { } parent)
            throw Problem(path, "the root of a drive", "a folder to publish to");
        if (new DirectoryInfo(full) is { LinkTarget: not null } link && link.ResolveLinkTarget(returnFinalTarget: true) is { } target)
            (full, parent) = (target.FullName, Path.GetDirectoryName(target.FullName)!);
        try
        {
            Directory.CreateDirectory(parent);
            var taken = new OutFolder(full, Lock(full, path));
            try
            {
                taken.CleanUp();
                taken.Check(path);
                Directory.CreateDirectory(taken.New);
                return taken;
            }
            catch
            {
                taken.Dispose();
                throw;
            }
        }
        catch (UnauthorizedAccessException)
        {
            throw Problem(path, "a folder that may not be written", "a folder with write permission");
        }
        catch (IOException e)
        {
            throw Problem(path, "a folder that can't be written: " + e.Message, "a folder to publish to");
        }
    }

    /// <summary>Puts the new build in the folder's place. If that fails, the earlier build is back.</summary>
    /// <exception cref="InputException">The folder can't be renamed: another program holds it open.</exception>
    public string Publish()
    {
        try
        {
            if (Directory.Exists(_out))
                Directory.Move(_out, _old);
            Directory.Move(New, _out);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            Restore();
            throw Problem(_out, "a folder that can't be replaced: " + e.Message, "a folder that no other program holds open");
        }

        Delete(_old);
        Delete(Failed);
        return _out;
    }

    /// <summary>Keeps the unfinished build beside the folder; the folder itself is not touched.</summary>
    public string KeepFailed()
    {
        Delete(Failed);
        Directory.Move(New, Failed);
        return Failed;
    }

    /// <summary>Lets go of the folder; an unfinished build that nobody kept is deleted.</summary>
    public void Dispose()
    {
        Delete(New);
        _lock.Dispose();
    }

    // We hold the lock, so whatever stands here belongs to a run that is dead.
    private void CleanUp()
    {
        Restore();
        Delete(_old);
        Delete(New);
    }

    // A run that died between the two renames left the earlier build under its other name.
    private void Restore()
    {
        if (Directory.Exists(_old) && !Directory.Exists(_out))
            Directory.Move(_old, _out);
    }

    private void Check(string named)
    {
        if (Ownership.Foreign(_out, published: true) is { } found)
            throw Problem(named, found, "an empty folder or an earlier build: move the files away or choose another --out");
        if (Ownership.Foreign(Failed, published: false) is { } besides)
            throw Problem(named + "-failed", besides, "nothing, or what an earlier failed run kept: move the files away");
    }

    private static FileStream Lock(string path, string named)
    {
        try
        {
            return new FileStream(Beside(path, "lock"), FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None, 1, FileOptions.DeleteOnClose);
        }
        catch (IOException) when (File.Exists(Beside(path, "lock")))
        {
            throw Problem(named, "a folder that another run is publishing to", "one run at a time");
        }
    }

    private static string Beside(string path, string what) => Path.Combine(Path.GetDirectoryName(path)!, $".{Path.GetFileName(path)}.waywright-{what}");

    private static void Delete(string folder)
    {
        if (Directory.Exists(folder))
            Directory.Delete(folder, recursive: true);
    }

    private static InputException Problem(string source, string found, string expected) => new(new InputProblem(source, null, null, found, expected));
}
