using System.IO.Compression;
using System.Xml.Linq;
using Waywright.EndToEnd.Commands;

namespace Waywright.EndToEnd.Packages;

[Collection(FeedUsers.Name)]
public sealed class PackageTests(LocalFeed feed)
{
    [Fact]
    public void Four_packages_of_one_version_carry_symbols_readme_notices_licence_and_commit()
    {
        string[] packed = [$"Waywright.{LocalFeed.Version}", $"Waywright.Cli.{LocalFeed.Version}", $"Waywright.Notebooks.{LocalFeed.Version}", $"Waywright.Placement.{LocalFeed.Version}"];
        Assert.Equal(packed.Select(name => name + ".nupkg").Order(StringComparer.Ordinal), feed.Names(".nupkg"));
        Assert.Equal(packed.Select(name => name + ".snupkg").Order(StringComparer.Ordinal), feed.Names(".snupkg"));
        foreach (var name in new[] { "Waywright", "Waywright.Placement", "Waywright.Notebooks", "Waywright.Cli" })
        {
            using var package = ZipFile.OpenRead(feed.Package(name));
            Assert.NotNull(package.GetEntry("README.md"));
            using var notices = new StreamReader(package.GetEntry("third-party-notices.md")!.Open());
            Assert.Equal(File.ReadAllText(Path.Combine(Command.Repository, "docs", "third-party-notices.md")), notices.ReadToEnd());
            var about = Nuspec(package, name);
            Assert.Equal("MIT", Value(about, "license"));
            Assert.Matches("^[0-9a-f]{40}$", about.Descendants().Single(node => node.Name.LocalName == "repository").Attribute("commit")!.Value);
        }
    }

    [Fact]
    public void A_package_asks_for_what_it_was_tested_with()
    {
        using var package = ZipFile.OpenRead(feed.Package("Waywright.Placement"));
        var asked = Nuspec(package, "Waywright.Placement").Descendants().Where(node => node.Name.LocalName == "dependency").ToDictionary(node => node.Attribute("id")!.Value, node => node.Attribute("version")!.Value);
        Assert.Equal(LocalFeed.Version, asked["Waywright"]);
        // The solver names a version of it that may not be served: without a floor of ours every consumer would be warned (NU1603).
        Assert.True(System.Version.Parse(asked["Google.Protobuf"]) >= new Version(3, 35, 0), asked["Google.Protobuf"]);
    }

    [Fact]
    public async Task A_plain_file_takes_the_library_by_its_package_line()
    {
        var file = feed.Write("plain/tension.cs", $"""
            #:package Waywright.Placement@{LocalFeed.Version}
            #:property PublishAot=false
            using Waywright;
            var span = new BeltSpan(180.mm, Quantity.Read<UnitsNet.LinearDensity>("8.4 g/m", "density"));
            Console.Write(span.Tension(96.Hz).Tension.Si.Value.ToString("R", System.Globalization.CultureInfo.InvariantCulture));
            """);
        var (exit, said) = await LocalFeed.RunAsync(Path.GetDirectoryName(file)!, "run", file);
        // T = 4 mu L^2 f^2 = 4 x 0.0084 x 0.18^2 x 96^2, by hand.
        Assert.True(exit == 0, said);
        Assert.DoesNotContain("NU1603", said);
        Assert.Equal(10.0329, double.Parse(said, System.Globalization.CultureInfo.InvariantCulture), 4);
    }

    [Fact]
    public async Task The_tool_installs_runs_a_notebook_starts_a_build_and_installs_its_kernel()
    {
        var tools = Path.Combine(feed.Folder, "tools");
        var (exit, said) = await LocalFeed.RunAsync(feed.Folder, "tool", "install", "Waywright.Cli", "--version", LocalFeed.Version, "--tool-path", tools, "--configfile", Path.Combine(feed.Folder, "NuGet.config"));
        Assert.True(exit == 0, said);
        var program = Path.Combine(tools, OperatingSystem.IsWindows() ? "waywright.exe" : "waywright");
        var published = await RunAsync(program, "publish", Path.Combine(Command.Repository, "notebooks", "tension-belts.ipynb"), "--out", Path.Combine(feed.Folder, "page"));
        Assert.True(published.ExitCode == 0, published.Error);
        Assert.True(File.Exists(published.Out.Trim().Split('\n')[^1]));
        var build = Path.Combine(feed.Folder, "own");
        var started = await RunAsync(program, "new", build);
        Assert.True(started.ExitCode == 0, started.Error);
        var empty = await RunAsync(program, "publish", Path.Combine(build, "notebooks"), "--out", Path.Combine(feed.Folder, "empty"));
        Assert.True(empty.ExitCode == 0, empty.Error);
        Assert.StartsWith("Fill in rails/rails.csv next", empty.Out);
        var installed = await RunAsync(program, "kernel", "install", "--prefix", Path.Combine(feed.Folder, "prefix"));
        Assert.True(installed.ExitCode == 0, installed.Error);
        Assert.True(File.Exists(Path.Combine(feed.Folder, "prefix", "share", "waywright", "kernel", LocalFeed.Version, "Waywright.Cli.dll")));
    }

    private static async Task<Command> RunAsync(string program, params string[] arguments)
    {
        using var process = System.Diagnostics.Process.Start(new System.Diagnostics.ProcessStartInfo(program, arguments) { RedirectStandardOutput = true, RedirectStandardError = true })!;
        var (output, errors) = (process.StandardOutput.ReadToEndAsync(), process.StandardError.ReadToEndAsync());
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        return new Command(process.ExitCode, await output, await errors);
    }

    private static XDocument Nuspec(ZipArchive package, string name)
    {
        using var stream = package.GetEntry($"{name}.nuspec")!.Open();
        return XDocument.Load(stream);
    }

    private static string Value(XDocument about, string name) => about.Descendants().Single(node => node.Name.LocalName == name).Value;
}
