using System.Diagnostics;
using System.Text.Json.Nodes;
using Waywright.Kernel;

namespace Waywright.Benchmarks;

/// <summary>How long a person waits for the first chart in Jupyter, against the engine's own tool and its first sum.</summary>
internal sealed class KernelBenchmark : Benchmark
{
    private const int Rounds = 7;
    private const string Tool = "Microsoft.dotnet-interactive";
    private const string ToolVersion = "1.0.712001";

    public override string Name => "kernel";

    public override string Title => "A kernel until its first chart";

    public override Findings Run()
    {
        var folder = Directory.CreateTempSubdirectory("waywright-");
        try
        {
            var ours = JupyterFolders.Of(folder.FullName);
            KernelInstall.Install(ours);
            var kernels = Path.GetDirectoryName(ours.Spec)!;
            DescribeStock(Path.Combine(kernels, "stock"), InstallStock(Path.Combine(folder.FullName, "tools")));
            using var peer = new PythonPeer("Kernel/peer.py", Path.GetDirectoryName(kernels)!, CarriedPackages.Version);
            Contender[] contenders =
            [
                peer.Contender("chart", "ours to first chart", "from the start of the installed kernel, until it is ready, through the first cell of every notebook, to the picture of a belt with its 1.5 MB of script."),
                peer.Contender("own", "ours to first 1+1", "from the start of the installed kernel, until it is ready, to the answer to `1+1`."),
                peer.Contender("stock", "stock tool to first 1+1", "from the start of the engine's own tool, until it is ready, to the answer to `1+1`; no package is asked for."),
            ];
            return new Findings(
                [$"What a person waits for in Jupyter, by Debian's jupyter_client, which starts a new kernel for every time and kills it after. {Rounds} rounds in one run; in each, every contender runs once, one after the other. A ratio is the median of the ratios within rounds."],
                Interleaved.Measure(contenders, Rounds),
                [new("ours to first chart", "stock tool to first 1+1", "at most 1"), new("ours to first 1+1", "stock tool to first 1+1", "no target")],
                [peer.Ask("versions"), $"{Tool} {ToolVersion}"]);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static string InstallStock(string folder)
    {
        using var install = Process.Start(new ProcessStartInfo("dotnet", ["tool", "install", Tool, "--version", ToolVersion, "--tool-path", folder]) { RedirectStandardOutput = true })!;
        install.StandardOutput.ReadToEnd();
        install.WaitForExit();
        return install.ExitCode == 0 ? Path.Combine(folder, "dotnet-interactive") : throw new InvalidOperationException($"{Tool} could not be installed, so there is nothing to compare with.");
    }

    private static void DescribeStock(string folder, string program)
    {
        Directory.CreateDirectory(folder);
        File.WriteAllText(Path.Combine(folder, "kernel.json"), new JsonObject
        {
            ["argv"] = new JsonArray(program, "jupyter", "--default-kernel", "csharp", "{connection_file}", "--http-local-only"),
            ["display_name"] = "stock",
            ["language"] = "C#",
            ["interrupt_mode"] = "message",
            ["env"] = new JsonObject { ["DOTNET_INTERACTIVE_CLI_TELEMETRY_OPTOUT"] = "1", ["DOTNET_INTERACTIVE_SKIP_FIRST_TIME_EXPERIENCE"] = "1" },
        }.ToJsonString());
    }
}
