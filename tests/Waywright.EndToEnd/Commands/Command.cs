using System.Diagnostics;
using System.Text.Json.Nodes;
using Waywright.Kernel;

namespace Waywright.EndToEnd.Commands;

/// <summary>Runs the built command as a person would, and keeps what it said.</summary>
internal sealed record Command(int ExitCode, string Out, string Error)
{
    public static string Repository { get; } = FindRepository();

    public JsonNode Json => JsonNode.Parse(Out)!;

    public static Task<Command> RunAsync(params string[] arguments) => RunInAsync(Repository, arguments);

    public static async Task<Command> RunInAsync(string folder, params string[] arguments)
    {
        using var process = Start(folder, arguments);
        var output = process.StandardOutput.ReadToEndAsync();
        var error = process.StandardError.ReadToEndAsync();
        await process.WaitForExitAsync();
        return new Command(process.ExitCode, await output, await error);
    }

    public static Process Start(string folder, params string[] arguments)
    {
        var usual = ChildCommand.Default();
        var start = new ProcessStartInfo(usual.File, [.. usual.Arguments, .. arguments]) { WorkingDirectory = folder, RedirectStandardOutput = true, RedirectStandardError = true, RedirectStandardInput = true };
        start.Environment["NO_COLOR"] = "1";
        var process = Process.Start(start)!;
        process.StandardInput.Close();
        return process;
    }

    /// <summary>Exit 2, nothing on standard output, no stack trace, no NaN.</summary>
    public void IsRefused(params string[] said)
    {
        Assert.Equal(2, ExitCode);
        Assert.Equal("", Out);
        Assert.DoesNotContain("   at ", Error);
        Assert.DoesNotContain("Exception", Error);
        Assert.DoesNotMatch("(?<!found ')NaN", Error);
        Assert.All(said, part => Assert.Contains(part, Error));
    }

    private static string FindRepository()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "Waywright.slnx")))
                return folder.FullName;
        }

        throw new InvalidOperationException("The tests run outside the repository.");
    }
}

/// <summary>A folder that goes when the test ends.</summary>
internal sealed class TemporaryFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("waywright-").FullName;

    public string Write(string name, string text)
    {
        var path = System.IO.Path.Combine(Path, name);
        Directory.CreateDirectory(System.IO.Path.GetDirectoryName(path)!);
        File.WriteAllText(path, text);
        return path;
    }

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
