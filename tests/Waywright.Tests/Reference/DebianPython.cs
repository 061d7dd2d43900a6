using System.Diagnostics;

namespace Waywright.Tests.Reference;

/// <summary>Debian's Python with SciPy, for checks against a general library. Tests that need it are skipped without it, unless WAYWRIGHT_REQUIRE_ALL=1.</summary>
internal static class DebianPython
{
    private const string Python = "/usr/bin/python3";

    private static readonly Lazy<bool> HasSciPy = new(() => File.Exists(Python) && Start("-c", "import scipy.optimize").Ended);

    private static readonly Lazy<bool> HasJsonSchema = new(() => File.Exists(Python) && Start("-c", "import jsonschema").Ended);

    public static void RequireSciPy()
    {
        if (Environment.GetEnvironmentVariable("WAYWRIGHT_REQUIRE_ALL") == "1")
            Assert.True(HasSciPy.Value, "WAYWRIGHT_REQUIRE_ALL is set: install python3-scipy.");
        Assert.SkipUnless(HasSciPy.Value, "needs Debian's python3-scipy");
    }

    public static void RequireJsonSchema()
    {
        if (Environment.GetEnvironmentVariable("WAYWRIGHT_REQUIRE_ALL") == "1")
            Assert.True(HasJsonSchema.Value, "WAYWRIGHT_REQUIRE_ALL is set: install python3-jsonschema.");
        Assert.SkipUnless(HasJsonSchema.Value, "needs Debian's python3-jsonschema");
    }

    /// <summary>Runs a script of the Reference folder on a file and gives the lines that it prints.</summary>
    public static string[] Run(string script, string file)
    {
        var (ended, output, error) = Start(ReferenceFile.PathOf(script), file);
        Assert.True(ended, error);
        return output.Split('\n', StringSplitOptions.RemoveEmptyEntries);
    }

    private static (bool Ended, string Output, string Error) Start(params string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo(Python, arguments) { RedirectStandardOutput = true, RedirectStandardError = true })!;
        var error = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode == 0, output, error.Result);
    }
}
