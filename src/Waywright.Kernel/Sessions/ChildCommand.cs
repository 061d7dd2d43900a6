namespace Waywright.Kernel;

/// <summary>How to start the child: this same program again.</summary>
/// <param name="File">The executable.</param>
/// <param name="Arguments">What comes before the verb.</param>
internal sealed record ChildCommand(string File, IReadOnlyList<string> Arguments)
{
    /// <summary>The command's assembly beside this one, on the runtime that runs this process.</summary>
    /// <remarks>Not simply <see cref="Environment.ProcessPath"/>: that is <c>dotnet</c> for a tool or <c>dotnet run</c>, and a test host in tests.</remarks>
    public static ChildCommand Default()
    {
        var program = Path.Combine(AppContext.BaseDirectory, "Waywright.Cli.dll");
        var runtime = Path.GetDirectoryName(typeof(object).Assembly.Location)!;
        var dotnet = Path.GetFullPath(Path.Combine(runtime, "..", "..", "..", OperatingSystem.IsWindows() ? "dotnet.exe" : "dotnet"));
        return System.IO.File.Exists(program) && System.IO.File.Exists(dotnet)
            ? new ChildCommand(dotnet, [program])
            : new ChildCommand(Environment.ProcessPath!, []);
    }
}
