using System.Diagnostics;
using Waywright.EndToEnd.Pages;

namespace Waywright.EndToEnd.Jupyter;

/// <summary>What the tests of the kernel need of Debian: without it they are skipped, unless WAYWRIGHT_REQUIRE_ALL=1.</summary>
internal static class Needed
{
    /// <summary>Debian's, which its Jupyter packages belong to.</summary>
    public const string Python = "/usr/bin/python3";

    private static readonly Lazy<bool> Client = new(() => Has("jupyter_client"));
    private static readonly Lazy<bool> Convert = new(() => Has("nbconvert"));
    private static readonly Lazy<bool> Notebook = new(() => Has("notebook"));

    public static bool HasClient => Client.Value;

    public static void OfClient() => Required.Of(HasClient, "python3-jupyter-client");

    public static void OfConverter() => Required.Of(Convert.Value, "jupyter-nbconvert");

    public static void OfNotebook() => Required.Of(Notebook.Value, "jupyter-notebook");

    private static bool Has(string module)
    {
        if (!File.Exists(Python)) return false;
        using var python = Process.Start(new ProcessStartInfo(Python, ["-c", $"import importlib.util, sys; sys.exit(importlib.util.find_spec('{module}') is None)"]))!;
        python.WaitForExit();
        return python.ExitCode == 0;
    }
}
