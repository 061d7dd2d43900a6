using System.Diagnostics;
using System.Security.Cryptography;
using System.Text.Json.Nodes;
using Waywright.EndToEnd.Commands;
using Waywright.Kernel;

namespace Waywright.EndToEnd.Faults;

/// <summary>A build of two small notebooks and one data file, the folder that it is published to, and a folder for what the processes leave behind.</summary>
internal sealed class TinyBuild : IDisposable
{
    private readonly TemporaryFolder _folder = new();
    private int _runs;

    public TinyBuild()
    {
        Directory.CreateDirectory(Site);
        Out = Path.Combine(Site, "page");
        Directory.CreateDirectory(Temporary);
        Write("data/notes.txt", "invented\n");
        Write("notebooks/a.ipynb", Notebook("int run = 0;", "using Waywright.Notebooks;\nNotebook.Start();\nvar notes = System.IO.File.ReadAllText(Notebook.Data(\"../data/notes.txt\"));\n$\"{notes} {run}\""));
        Write("notebooks/b.ipynb", Notebook("int other = 1;", "other + 1"));
    }

    /// <summary>The published folder; nothing but it stands in <see cref="Site"/> when all is well.</summary>
    public string Out { get; set; } = "";

    public string Root => Path.Combine(_folder.Path, "build");

    public string Site => Path.Combine(_folder.Path, "site");

    /// <summary>Where pipes and other temporary files of the processes go.</summary>
    public string Temporary => Path.Combine(_folder.Path, "tmp");

    public string Write(string name, string text) => _folder.Write(Path.Combine("build", name), text);

    /// <summary>Every run sets another parameter, so that no two pages are equal.</summary>
    public Process Start(params string[] notebooks)
    {
        var usual = ChildCommand.Default();
        var start = new ProcessStartInfo(usual.File, [.. usual.Arguments, "publish", .. notebooks, "--out", Out, "--date", "2026-03-01", "--set", FormattableString.Invariant($"run={++_runs}")])
        {
            WorkingDirectory = Root,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.Environment["TMPDIR"] = Temporary;
        // The runtime's own debugging sockets would stay behind a killed process.
        start.Environment["DOTNET_EnableDiagnostics"] = "0";
        return Process.Start(start)!;
    }

    public async Task<Command> PublishAsync()
    {
        using var process = Start();
        return await EndAsync(process);
    }

    public static async Task<Command> EndAsync(Process process)
    {
        var (output, error) = (process.StandardOutput.ReadToEndAsync(), process.StandardError.ReadToEndAsync());
        await process.WaitForExitAsync();
        return new Command(process.ExitCode, await output, await error);
    }

    /// <summary>Null when every file of the page is there as its run.json lists it, and no other.</summary>
    public string? Harm() => Directory.Exists(Out) ? Harm(Out) : "no page";

    /// <summary>Tells the page's edition from any other.</summary>
    public string Edition() => Hash(Path.Combine(Out, "record.json"));

    /// <summary>Names in <see cref="Site"/> beside the page.</summary>
    public string[] Neighbours() => [.. Directory.EnumerateFileSystemEntries(Path.GetDirectoryName(Out)!).Where(path => path != Out).Select(path => Path.GetFileName(path)).Order(StringComparer.Ordinal)];

    public void Dispose() => _folder.Dispose();

    private static string? Harm(string page)
    {
        var listed = JsonNode.Parse(File.ReadAllText(Path.Combine(page, "run.json")))!["files"]!.AsObject();
        var found = Directory.EnumerateFiles(page, "*", SearchOption.AllDirectories).Select(file => Path.GetRelativePath(page, file)).Where(file => file != "run.json").ToHashSet();
        if (!found.SetEquals(listed.Select(file => file.Key)))
            return "files missing or added";
        return listed.FirstOrDefault(file => (string)file.Value! != Hash(Path.Combine(page, file.Key))).Key is { } file ? $"{file} is not whole" : null;
    }

    private static string Hash(string file) => Convert.ToHexStringLower(SHA256.HashData(File.ReadAllBytes(file)));

    private static string Notebook(params string[] cells) => new JsonObject
    {
        ["cells"] = new JsonArray([.. cells.Select((code, i) => new JsonObject
        {
            ["cell_type"] = "code",
            ["execution_count"] = null,
            ["id"] = $"cell-{i + 1}",
            ["metadata"] = i == 0 ? new JsonObject { ["tags"] = new JsonArray("parameters") } : new JsonObject(),
            ["outputs"] = new JsonArray(),
            ["source"] = code,
        })]),
        ["metadata"] = new JsonObject(),
        ["nbformat"] = 4,
        ["nbformat_minor"] = 5,
    }.ToJsonString();
}
