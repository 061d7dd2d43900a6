namespace Waywright.Benchmarks;

/// <summary>Where this repository is.</summary>
internal static class Repository
{
    public static string Root { get; } = Find();

    private static string Find()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "Waywright.slnx")))
                return folder.FullName;
        }

        throw new DirectoryNotFoundException("Benchmarks run from within the repository: no Waywright.slnx was found above them.");
    }
}
