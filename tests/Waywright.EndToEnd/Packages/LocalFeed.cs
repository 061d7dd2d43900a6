using System.Diagnostics;
using Waywright.EndToEnd.Commands;
using Waywright.Kernel;

namespace Waywright.EndToEnd.Packages;

/// <summary>What this build packs, in a feed of its own, and a folder whose projects are fed from it alone for Waywright's packages.</summary>
public sealed class LocalFeed : IAsyncLifetime
{
    private readonly TemporaryFolder _folder = new();

    public static string Version => CarriedPackages.Version;

    /// <summary>A folder below which NuGet knows the feed; nothing goes into the packages of the machine's user.</summary>
    public string Folder => _folder.Path;

    /// <summary>Where packages of this feed are unpacked.</summary>
    public string Packages => Path.Combine(Folder, "packages");

    /// <summary>Where the packages lie that this build was restored from: nothing is fetched twice.</summary>
    public static string MachinePackages { get; } =
        Environment.GetEnvironmentVariable("NUGET_PACKAGES") ?? Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.UserProfile), ".nuget", "packages");

    private string Feed => Path.Combine(Folder, "feed");

    public async ValueTask InitializeAsync()
    {
        // What the tests were built as: packing builds nothing again. Natives of other machines are left out here, they only take time.
        var configuration = Path.GetFileName(Path.TrimEndingDirectorySeparator(AppContext.BaseDirectory)).Split('_')[0];
        var (exit, said) = await RunAsync(Command.Repository, "pack", "Waywright.slnx", "--no-build", "-c", configuration, "-p:KeepForeignNatives=false", "-o", Feed, "-v", "q");
        Assert.True(exit == 0, said);
        _folder.Write("NuGet.config", $"""
            <configuration>
              <config><add key="globalPackagesFolder" value="{Packages}" /></config>
              <packageSources><add key="waywright" value="{Feed}" /></packageSources>
              <fallbackPackageFolders><add key="machine" value="{MachinePackages}" /></fallbackPackageFolders>
            </configuration>
            """);
    }

    /// <summary>The names of the packages that were packed.</summary>
    internal string[] Names(string ending) => [.. Directory.GetFiles(Feed, "*" + ending).Select(file => Path.GetFileName(file)!).Order(StringComparer.Ordinal)];

    internal string Write(string name, string text) => _folder.Write(name, text);

    internal string Package(string name) => Path.Combine(Feed, $"{name}.{Version}.nupkg");

    internal static async Task<(int Exit, string Said)> RunAsync(string folder, params string[] arguments)
    {
        var start = new ProcessStartInfo("dotnet", arguments) { WorkingDirectory = folder, RedirectStandardOutput = true, RedirectStandardError = true };
        start.Environment["DOTNET_NOLOGO"] = "1";
        start.Environment["DOTNET_CLI_TELEMETRY_OPTOUT"] = "1";
        start.Environment["MSBUILDDISABLENODEREUSE"] = "1";
        using var process = Process.Start(start)!;
        var (output, errors) = (process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken), process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken));
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        return (process.ExitCode, await output + await errors);
    }

    public ValueTask DisposeAsync()
    {
        _folder.Dispose();
        return ValueTask.CompletedTask;
    }
}

/// <summary>The classes that share the feed; they run one after another.</summary>
[CollectionDefinition(Name)]
public sealed class FeedUsers : ICollectionFixture<LocalFeed>
{
    public const string Name = "users of the local feed";
}
