using System.Text.Json.Nodes;
using Waywright.Publishing;

namespace Waywright.Tests.Publishing;

/// <summary>What RO-Crate Metadata Specification 1.1 (https://w3id.org/ro/crate/1.1) says a crate MUST have, clause by clause.</summary>
public sealed class RoCrateTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("waywright-test-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void A_crate_has_all_that_the_specification_says_it_must()
    {
        var graph = Crate("CC-BY-4.0");
        var entities = graph.ToDictionary(e => (string)e["@id"]!, StringComparer.Ordinal);
        // RO-Crate JSON-LD: every entity has a unique @id and a @type; the graph is flat.
        Assert.Equal(graph.Count, entities.Count);
        Assert.All(graph, e => Assert.False(string.IsNullOrEmpty((string?)e["@type"])));
        Assert.All(graph.SelectMany(e => e), member => Assert.All(Objects(member.Value), o => Assert.Equal(["@id"], o.Select(m => m.Key))));
        // Root data entity: the descriptor names the root by 'about' and the specification by 'conformsTo'.
        var descriptor = entities["ro-crate-metadata.json"];
        Assert.Equal("CreativeWork", (string)descriptor["@type"]!);
        Assert.Equal("https://w3id.org/ro/crate/1.1", (string)descriptor["conformsTo"]!["@id"]!);
        var root = entities[(string)descriptor["about"]!["@id"]!];
        // Direct properties of the root: type Dataset, an @id that ends in '/', name, description, datePublished (ISO 8601), license.
        Assert.Equal("Dataset", (string)root["@type"]!);
        Assert.EndsWith("/", (string)root["@id"]!, StringComparison.Ordinal);
        Assert.All(["name", "description", "license"], name => Assert.False(string.IsNullOrWhiteSpace((string?)root[name])));
        Assert.Matches("^[0-9]{4}-[0-9]{2}-[0-9]{2}$", (string)root["datePublished"]!);
        // Data entities: each is linked from the root by hasPart, is of type File, and its @id is a relative URI of a file that is there.
        var parts = root["hasPart"]!.AsArray().Select(p => (string)p!["@id"]!).ToArray();
        Assert.Equal(graph.Where(e => (string)e["@type"]! == "File").Select(e => (string)e["@id"]!), parts);
        Assert.All(parts, part =>
        {
            Assert.True(Uri.IsWellFormedUriString(part, UriKind.Relative), part);
            Assert.True(File.Exists(Path.Combine(_folder, Uri.UnescapeDataString(part))), part);
        });
        Assert.Contains("inputs/a%20b/%C3%BC.csv", parts);
        // Every reference within the crate is described in it, but for the specification.
        var links = graph.SelectMany(e => e).SelectMany(m => Objects(m.Value)).Select(o => (string)o["@id"]!).Where(id => !id.StartsWith("https:", StringComparison.Ordinal));
        Assert.All(links, id => Assert.True(entities.ContainsKey(id), id));
    }

    [Fact]
    public void A_build_without_a_licence_says_so()
        => Assert.Contains("No licence is stated", (string)Crate("").Single(e => (string)e["@id"]! == "./")["license"]!, StringComparison.Ordinal);

    private List<JsonObject> Crate(string licence)
    {
        foreach (var file in new[] { "index.html", "record.json", "notebooks/rails.ipynb", "inputs/a b/ü.csv", "run.json" })
        {
            Directory.CreateDirectory(Path.GetDirectoryName(Path.Combine(_folder, file))!);
            File.WriteAllText(Path.Combine(_folder, file), "x");
        }

        const string hash = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
        var record = new BuildRecord("A <gantry>", new DateOnly(2027, 3, 1), null, licence, [], [new RecordedNotebook("notebooks/rails.ipynb", hash)], [new InputFile("a b/ü.csv", hash, 1)], [], [], [new SoftwareVersion("plotly.js", "3.0"), new SoftwareVersion(".NET", "10")]);
        RoCrate.Write(_folder, record);
        var crate = JsonNode.Parse(File.ReadAllText(Path.Combine(_folder, "ro-crate-metadata.json")))!;
        Assert.Equal("https://w3id.org/ro/crate/1.1/context", (string)crate["@context"]!);
        return [.. crate["@graph"]!.AsArray().Select(e => e!.AsObject())];
    }

    private static IEnumerable<JsonObject> Objects(JsonNode? node) => node switch
    {
        JsonObject o => [o],
        JsonArray list => list.OfType<JsonObject>(),
        _ => [],
    };
}
