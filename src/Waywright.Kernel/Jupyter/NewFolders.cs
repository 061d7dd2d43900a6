namespace Waywright.Kernel;

/// <summary>Folders made on the way to an aim that may fail: unless it is reached, they go again, and what stood before is as it was.</summary>
internal sealed class NewFolders : IDisposable
{
    private readonly Stack<string> _made = new();
    private readonly List<string> _filled = [];
    private bool _isKept;

    /// <summary>A folder and whatever is missing above it; it goes only if it is still empty.</summary>
    public void Make(string folder)
    {
        if (Directory.Exists(folder)) return;
        if (Path.GetDirectoryName(folder) is { } above) Make(above);
        Directory.CreateDirectory(folder);
        _made.Push(folder);
    }

    /// <summary>A folder beside the one that it is to replace, on the same disk; it goes with all that it holds.</summary>
    public string Beside(string target)
    {
        Make(Path.GetDirectoryName(target)!);
        var folder = Path.Combine(Path.GetDirectoryName(target)!, $".{Path.GetFileName(target)}-{Guid.NewGuid():N}");
        Directory.CreateDirectory(folder);
        _filled.Add(folder);
        return folder;
    }

    public void Keep() => _isKept = true;

    /// <summary>Puts a folder in the place of another by two renames.</summary>
    public static void Swap(string folder, string target)
    {
        var old = $"{folder}-old";
        var had = Directory.Exists(target);
        if (had) Directory.Move(target, old);
        try
        {
            Directory.Move(folder, target);
        }
        catch
        {
            if (had) Directory.Move(old, target);
            throw;
        }

        if (had) Directory.Delete(old, recursive: true);
    }

    public void Dispose()
    {
        foreach (var folder in _filled.Where(Directory.Exists)) Directory.Delete(folder, recursive: true);
        if (_isKept) return;
        while (_made.TryPop(out var folder))
        {
            if (!Directory.EnumerateFileSystemEntries(folder).Any()) Directory.Delete(folder);
        }
    }
}
