using System.Security.Cryptography;
using System.Text;
using System.Text.Json.Nodes;
using Waywright.Publishing;

namespace Waywright.Tests.Publishing;

/// <summary>A build folder of its own for one test, gone afterwards.</summary>
internal sealed class BuildFolder : IDisposable
{
    private readonly string _root = Directory.CreateTempSubdirectory("waywright-test-").FullName;

    public BuildFolder() => Directory.CreateDirectory(Path.Combine(Root, "notebooks"));

    /// <summary>The build folder; the out folder stands beside it.</summary>
    public string Root => Path.Combine(_root, "gantry");

    public string Out => Path.Combine(_root, "published");

    public string Failed => Out + "-failed";

    public string Parent => _root;

    public string Write(string path, string text)
    {
        var file = Path.Combine(Root, path);
        Directory.CreateDirectory(Path.GetDirectoryName(file)!);
        File.WriteAllText(file, text);
        return file;
    }

    /// <summary>Writes a notebook of cells: <c># text</c> and <c>&gt; text</c> start markdown, <c>//#parameters</c> the parameters cell, the rest is code.</summary>
    public string Notebook(string name, params string[] cells)
        => Write($"notebooks/{name}.ipynb", Notebook(cells).ToJsonString());

    public static JsonObject Notebook(params string[] cells) => new()
    {
        ["cells"] = new JsonArray([.. cells.Select((source, i) => Cell(FormattableString.Invariant($"c{i + 1}"), source))]),
        ["metadata"] = new JsonObject { ["kernelspec"] = new JsonObject { ["display_name"] = "C#", ["language"] = "C#", ["name"] = "waywright" } },
        ["nbformat"] = 4,
        ["nbformat_minor"] = 5,
    };

    public InputFile Input(string path)
    {
        var bytes = File.ReadAllBytes(Path.Combine(Root, path));
        return new InputFile(path, Convert.ToHexStringLower(SHA256.HashData(bytes)), bytes.Length);
    }

    public PublishRequest Request() => new()
    {
        Notebooks = NotebookSet.Find([], Root),
        OutFolder = Out,
        Date = new DateOnly(2027, 3, 1),
    };

    public string Published(string path) => File.ReadAllText(Path.Combine(Out, path));

    public IReadOnlyDictionary<string, string> Files(string folder)
        => Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories)
            .ToDictionary(file => Path.GetRelativePath(folder, file).Replace('\\', '/'), file => Encoding.Latin1.GetString(File.ReadAllBytes(file)));

    public void Dispose() => Directory.Delete(_root, recursive: true);

    private static JsonObject Cell(string id, string source)
    {
        if (source.StartsWith('#') || source.StartsWith('>'))
            return new JsonObject { ["cell_type"] = "markdown", ["id"] = id, ["metadata"] = new JsonObject(), ["source"] = source };
        const string parameters = "//#parameters\n";
        var tags = source.StartsWith(parameters, StringComparison.Ordinal) ? new JsonArray("parameters") : [];
        return new JsonObject
        {
            ["cell_type"] = "code",
            ["execution_count"] = null,
            ["id"] = id,
            ["metadata"] = new JsonObject { ["tags"] = tags },
            ["outputs"] = new JsonArray(),
            ["source"] = tags.Count > 0 ? source[parameters.Length..] : source,
        };
    }
}
