namespace Waywright.Tests;

/// <summary>Finds the repository from the running tests.</summary>
internal static class Repository
{
    public static string Root { get; } = FindRoot();

    public static string PathOf(params string[] parts) => Path.Combine([Root, .. parts]);

    private static string FindRoot()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "Waywright.slnx")))
                return folder.FullName;
        }

        throw new InvalidOperationException("The tests run outside the repository.");
    }
}
