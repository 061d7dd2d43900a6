using System.Text.Json;
using System.Text.Json.Nodes;

namespace Waywright.Kernel;

/// <summary>
/// Copies this program to where it stays, and tells Jupyter of it. A copy, because what runs this may be a clone or a tool's folder that goes with its next version.
/// </summary>
internal static class KernelInstall
{
    private const string SpecFile = "kernel.json";

    private static readonly JsonSerializerOptions Indented = new() { WriteIndented = true, NewLine = "\n", Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>Installs, or replaces what an earlier call installed.</summary>
    /// <exception cref="InputException">A folder can't be written, or another program's kernel has the name; nothing is changed then.</exception>
    public static void Install(JupyterFolders folders)
    {
        RefuseForeign(folders.Spec);
        var program = ChildCommand.Default();
        try
        {
            using var made = new NewFolders();
            var spec = made.Beside(folders.Spec);
            File.WriteAllText(Path.Combine(spec, SpecFile), Describe(program.File, folders.Host) + "\n");
            var host = made.Beside(folders.Host);
            Copy(AppContext.BaseDirectory, host);
            NewFolders.Swap(host, folders.Host);
            NewFolders.Swap(spec, folders.Spec);
            made.Keep();
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw NotWritable(folders, e);
        }
    }

    /// <summary>Takes away the description and the program, of every version.</summary>
    /// <returns>Whether there was anything to take away.</returns>
    /// <exception cref="InputException">A folder can't be written, or the name is another program's kernel.</exception>
    public static bool Remove(JupyterFolders folders)
    {
        RefuseForeign(folders.Spec);
        var found = new[] { folders.Spec, folders.Hosts }.Where(Directory.Exists).ToList();
        try
        {
            foreach (var folder in found) Directory.Delete(folder, recursive: true);
            var own = Path.GetDirectoryName(folders.Hosts)!;
            if (Directory.Exists(own) && !Directory.EnumerateFileSystemEntries(own).Any()) Directory.Delete(own);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw NotWritable(folders, e);
        }

        return found.Count > 0;
    }

    // Full paths: a front end starts kernels with a search path of its own, or none.
    private static string Describe(string dotnet, string host) => new JsonObject
    {
        ["argv"] = new JsonArray(dotnet, Path.Combine(host, "Waywright.Cli.dll"), "kernel", "run", "{connection_file}"),
        ["display_name"] = KernelInfo.DisplayName,
        ["language"] = KernelInfo.Language,
        ["interrupt_mode"] = "message",
        ["metadata"] = new JsonObject { ["waywright"] = new JsonObject { ["version"] = CarriedPackages.Version } },
    }.ToJsonString(Indented);

    private static void Copy(string from, string to)
    {
        foreach (var folder in Directory.EnumerateDirectories(from, "*", SearchOption.AllDirectories))
            Directory.CreateDirectory(Path.Combine(to, Path.GetRelativePath(from, folder)));
        foreach (var file in Directory.EnumerateFiles(from, "*", SearchOption.AllDirectories))
            File.Copy(file, Path.Combine(to, Path.GetRelativePath(from, file)));
    }

    private static void RefuseForeign(string spec)
    {
        if (!Directory.Exists(spec) || IsOurs(Path.Combine(spec, SpecFile))) return;
        throw new InputException(new InputProblem(spec, null, null, "a kernel of this name that waywright did not install", "no such folder, or one of waywright's"));
    }

    private static bool IsOurs(string file)
    {
        try
        {
            return JsonNode.Parse(File.ReadAllBytes(file)) is JsonObject spec && spec["metadata"] is JsonObject metadata && metadata.ContainsKey("waywright");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or JsonException)
        {
            return false;
        }
    }

    private static InputException NotWritable(JupyterFolders folders, Exception why) =>
        new(new InputProblem(Path.GetDirectoryName(folders.Spec)!, null, null, $"a folder that can't be written ({why.Message})", "a folder of yours; --prefix DIR names another"));
}
