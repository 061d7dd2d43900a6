namespace Waywright.Kernel;

/// <summary>Where an installed kernel lies.</summary>
/// <param name="Spec">The folder in which Jupyter looks for this kernel's description.</param>
/// <param name="Hosts">The folder that holds the program, in a folder for each version.</param>
internal sealed record JupyterFolders(string Spec, string Hosts)
{
    /// <summary>The program of the version that runs now.</summary>
    public string Host => Path.Combine(Hosts, CarriedPackages.Version);

    /// <summary>Below a prefix, as <c>share/...</c>; without one, in the user's own data folders.</summary>
    public static JupyterFolders Of(string? prefix)
    {
        var data = prefix is null ? Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData, Environment.SpecialFolderOption.DoNotVerify) : Path.Combine(Path.GetFullPath(prefix), "share");
        var jupyter = prefix is null ? OfUser(data) : Path.Combine(data, "jupyter");
        return new JupyterFolders(Path.Combine(jupyter, "kernels", KernelInfo.Name), Path.Combine(data, "waywright", "kernel"));
    }

    // As Jupyter's own documentation lists them for each system.
    private static string OfUser(string data)
    {
        if (Environment.GetEnvironmentVariable("JUPYTER_DATA_DIR") is { Length: > 0 } given) return Path.GetFullPath(given);
        if (OperatingSystem.IsWindows()) return Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.ApplicationData), "jupyter");
        return OperatingSystem.IsMacOS() ? Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.UserProfile), "Library", "Jupyter") : Path.Combine(data, "jupyter");
    }
}
