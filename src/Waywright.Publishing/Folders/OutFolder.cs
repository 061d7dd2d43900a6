namespace Waywright.Publishing;

/// <summary>
/// The folder that a build is published to. A new build is made beside it and takes its place at the very end; what a run that died left beside it is
/// cleaned up by the next.
/// </summary>
internal sealed class OutFolder : IDisposable
{
    private readonly string _named;
    private readonly string _out;
    private readonly string _old;
    private readonly string _gone;
    private readonly FileStream _lock;

    private OutFolder(string path, string named, FileStream @lock) => (_out, _named, _old, _gone, _lock) = (path, named, Beside(path, "old"), Beside(path, "gone"), @lock);

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
            var taken = new OutFolder(full, path, Lock(full, path));
            try
            {
                taken.CleanUp();
                taken.Check();
                Directory.CreateDirectory(taken.New);
                return taken;
            }
            catch
            {
                taken.Dispose();
                throw;
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw CannotWrite(path, e);
        }
    }

    /// <summary>What to tell when this run's files can't be written.</summary>
    public InputException CannotWrite(Exception e) => CannotWrite(_named, e);

    /// <summary>Puts the new build in the folder's place. If that fails, the earlier build is back.</summary>
    /// <exception cref="InputException">Somebody put files of their own there meanwhile, or the folder can't be renamed.</exception>
    public string Publish()
    {
        Check();
        try
        {
            if (!Directory.Exists(_out))
            {
                Directory.Move(New, _out);
            }
            else if (!FolderSwap.TryExchange(New, _out))
            {
                Directory.Move(_out, _old);
                Directory.Move(New, _out);
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            Restore();
            throw Problem(_named, "a folder that can't be replaced: " + Reason(e), "a folder that no other program holds open");
        }

        Delete(New);
        Delete(_old);
        DeleteFailed();
        return _out;
    }

    /// <summary>Keeps the unfinished build beside the folder; the folder itself is not touched.</summary>
    public string KeepFailed()
    {
        DeleteFailed();
        Directory.Move(New, Failed);
        return Failed;
    }

    /// <summary>Lets go of the folder; an unfinished build that nobody kept is deleted.</summary>
    public void Dispose()
    {
        try
        {
            Delete(New);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // The next run cleans up; what this one failed of is told already.
        }

        _lock.Dispose();
    }

    // We hold the lock, so whatever stands here belongs to a run that is dead.
    private void CleanUp()
    {
        Restore();
        Delete(_old);
        Delete(_gone);
        Delete(New);
    }

    // Half deleted it would not be known as ours any more: so under a name first that no person looks at.
    private void DeleteFailed()
    {
        if (!Directory.Exists(Failed))
            return;
        Delete(_gone);
        Directory.Move(Failed, _gone);
        Delete(_gone);
    }

    // A run that died between the two renames left the earlier build under its other name.
    private void Restore()
    {
        if (Directory.Exists(_old) && !Directory.Exists(_out))
            Directory.Move(_old, _out);
    }

    private void Check()
    {
        if (Ownership.Foreign(_out, published: true) is { } found)
            throw Problem(_named, found, "an empty folder or an earlier build: move the files away or choose another --out");
        if (Ownership.Foreign(Failed, published: false) is { } besides)
            throw Problem(_named + "-failed", besides, "nothing, or what an earlier failed run kept: move the files away");
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

    private static InputException CannotWrite(string named, Exception e) => e switch
    {
        UnauthorizedAccessException => Problem(named, "a folder that may not be written", "a folder with write permission; an earlier page is untouched"),
        _ when IsFull(e) => Problem(named, "a disk that is full", "room for the new page beside the earlier one, which is untouched"),
        _ => Problem(named, "a folder that can't be written: " + Reason(e), "a folder to publish to; an earlier page is untouched"),
    };

    // ENOSPC and EDQUOT (Linux, macOS), ERROR_HANDLE_DISK_FULL and ERROR_DISK_FULL (Windows): errno.h, winerror.h. Room asked for ahead has no number.
    private static bool IsFull(Exception e)
        => ((e.HResult & 0xffff) is var code && (OperatingSystem.IsWindows() ? code is 39 or 112 : code is 28 or 122 or 69)) || e.Message.Contains("disk was full", StringComparison.Ordinal);

    // Without the path: it is of a folder that the person never named.
    private static string Reason(Exception e) => e.Message.Split(" : '")[0].TrimEnd('.');

    private static string Beside(string path, string what) => Path.Combine(Path.GetDirectoryName(path)!, $".{Path.GetFileName(path)}.waywright-{what}");

    private static void Delete(string folder)
    {
        if (Directory.Exists(folder))
            Directory.Delete(folder, recursive: true);
    }

    private static InputException Problem(string source, string found, string expected) => new(new InputProblem(source, null, null, found, expected));
}
