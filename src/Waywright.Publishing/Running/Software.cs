using System.Reflection;

namespace Waywright.Publishing;

/// <summary>The programs and packages that a run's figures and pictures come from.</summary>
internal static class Software
{
    private static readonly string[] Packages = ["Deedle", "FSharp.Core", "Markdig", "MathNet.Numerics", "Microsoft.DotNet.Interactive", "Plotly.NET", "UnitsNet"];

    public static IReadOnlyList<SoftwareVersion> List { get; } =
    [
        new("Waywright", VersionOf(typeof(Figure).Assembly)),
        new(".NET", Environment.Version.ToString()),
        new("plotly.js", PlotlyScript.Version),
        .. Packages.Select(name => (name, assembly: Loaded(name))).Where(p => p.assembly is not null).Select(p => new SoftwareVersion(p.name, WithoutCommit(VersionOf(p.assembly!)))),
    ];

    private static string VersionOf(Assembly assembly)
        => assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion ?? assembly.GetName().Version?.ToString() ?? "unknown";

    private static string WithoutCommit(string version) => version.Split('+')[0];

    // By name: the engine is no reference of this project, and stands beside it all the same.
    private static Assembly? Loaded(string name)
    {
        try
        {
            return Assembly.Load(name);
        }
        catch (Exception e) when (e is FileNotFoundException or FileLoadException or BadImageFormatException)
        {
            return null;
        }
    }
}
