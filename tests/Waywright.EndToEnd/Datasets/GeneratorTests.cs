using System.Diagnostics;

namespace Waywright.EndToEnd.Datasets;

/// <summary>The demo batch is what its generator writes: the program is run as a reader would run it.</summary>
public sealed class GeneratorTests
{
    [Fact]
    public async Task The_generator_writes_every_demo_file_byte_for_byte()
    {
        var demo = Path.Combine(Root(), "datasets", "demo");
        var fresh = Directory.CreateTempSubdirectory("waywright-demo-").FullName;
        try
        {
            var (exit, output) = await Run("run", Path.Combine(demo, "generate.cs"), "--", fresh);
            Assert.True(exit == 0 && output.Length == 0, output);
            var written = Files(fresh);
            // The recordings have a generator of their own, and a test beside it.
            Assert.Equal(Files(demo).Where(file => file is not ("datapackage.json" or "generate.cs") && !file.EndsWith(".wav", StringComparison.Ordinal)), written);
            Assert.Equal(7, written.Length);
            foreach (var file in written)
                Assert.True(File.ReadAllBytes(Path.Combine(demo, file)).AsSpan().SequenceEqual(File.ReadAllBytes(Path.Combine(fresh, file))), file);
        }
        finally
        {
            Directory.Delete(fresh, recursive: true);
        }
    }

    [Fact]
    public async Task The_generator_without_a_folder_says_what_it_expects()
    {
        var (exit, output) = await Run("run", Path.Combine(Root(), "datasets", "demo", "generate.cs"));
        Assert.Equal(2, exit);
        Assert.Equal("expected one argument: the folder to write to", output.Trim());
    }

    static string[] Files(string folder)
        => [.. Directory.GetFiles(folder, "*", SearchOption.AllDirectories).Select(file => Path.GetRelativePath(folder, file)).Order(StringComparer.Ordinal)];

    static async Task<(int Exit, string Output)> Run(params string[] arguments)
    {
        var start = new ProcessStartInfo("dotnet", arguments) { RedirectStandardOutput = true, RedirectStandardError = true };
        start.Environment["LC_ALL"] = "de_DE.UTF-8"; // a language with a decimal comma must change nothing
        start.Environment["DOTNET_NOLOGO"] = "1";
        using var process = Process.Start(start)!;
        var (output, errors) = (process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken), process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken));
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        return (process.ExitCode, await output + await errors);
    }

    static string Root()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Waywright.slnx")))
            folder = folder.Parent;
        return folder?.FullName ?? throw new InvalidOperationException("no Waywright.slnx above the tests");
    }
}
