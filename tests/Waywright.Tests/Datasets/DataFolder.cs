using System.Globalization;
using System.Text.Json.Nodes;

namespace Waywright.Tests.Datasets;

/// <summary>A folder under <c>datasets/</c> and what its <c>datapackage.json</c> says of it.</summary>
sealed class DataFolder
{
    DataFolder(string path) => (Path, Package) = (path, JsonNode.Parse(File.ReadAllText(System.IO.Path.Combine(path, "datapackage.json")))!.AsObject());

    public static string Root { get; } = FindRoot();

    public string Path { get; }

    public JsonObject Package { get; }

    public IEnumerable<JsonObject> Resources => Package["resources"]!.AsArray().Select(resource => resource!.AsObject());

    public static DataFolder Named(string name) => new(System.IO.Path.Combine(Root, name));

    public string PathOf(string name) => System.IO.Path.Combine(Path, name);

    /// <summary>Header and rows without comments; no field of our tables but the shape's formula holds a comma.</summary>
    public (string[] Header, IReadOnlyList<string[]> Rows) Table(string name)
    {
        var lines = File.ReadAllLines(PathOf(name)).Where(line => line.Length > 0 && line[0] != '#').ToArray();
        return (lines[0].Split(','), [.. lines.Skip(1).Select(line => line.Split(','))]);
    }

    public static double Number(string text) => double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);

    static string FindRoot()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(System.IO.Path.Combine(folder.FullName, "Waywright.slnx")))
            folder = folder.Parent;
        return System.IO.Path.Combine(folder?.FullName ?? throw new InvalidOperationException("no Waywright.slnx above the tests"), "datasets");
    }
}
