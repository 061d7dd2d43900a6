using System.Text.Json.Nodes;

namespace Waywright.Tests.Reference;

/// <summary>A schema of the docs folder, asked by a general validator: Debian's python3-jsonschema.</summary>
internal sealed class ShippedSchema(string name)
{
    /// <summary>The schema.</summary>
    public JsonNode Root { get; } = JsonNode.Parse(File.ReadAllText(Path.Combine(ReferenceFile.Docs, name)))!;

    /// <summary>Whether each of the documents is valid; skipped without the validator.</summary>
    public IReadOnlyList<bool> Accepts(params IReadOnlyList<string> documents)
    {
        DebianPython.RequireJsonSchema();
        var file = Path.GetTempFileName();
        try
        {
            File.WriteAllText(file, new JsonArray([Root.DeepClone(), .. documents.Select(text => JsonNode.Parse(text))]).ToJsonString());
            var answers = DebianPython.Run("json_schema_answers.py", file);
            Assert.Equal(documents.Count, answers.Length);
            return [.. answers.Select(answer => answer == "valid")];
        }
        finally
        {
            File.Delete(file);
        }
    }

    /// <summary>Asserts that the schema and a reader say the same of each example; of those that no schema can tell, that the reader alone refuses them.</summary>
    public void AgreesWith(Action<string> read, IReadOnlyList<(string Document, string Shown, bool Told)> examples)
    {
        Assert.Equal(examples.Count, examples.DistinctBy(example => example.Document).Count());
        var accepted = Accepts([.. examples.Select(example => example.Document)]);
        foreach (var (example, valid) in examples.Zip(accepted))
            Assert.True(example.Told ? Reads(example.Document) == valid : valid && !Reads(example.Document), $"{example.Shown}: {(valid ? "valid" : "refused")} by the schema, {(Reads(example.Document) ? "read" : "refused")} by the reader");

        bool Reads(string text)
        {
            try
            {
                read(text);
                return true;
            }
            catch (InputException)
            {
                return false;
            }
        }
    }

    /// <summary>Asserts that every member that an object may have says what it is.</summary>
    public void DescribesEveryMember() => Describes(Root);

    private static void Describes(JsonNode schema)
    {
        if (schema is JsonObject { } node)
        {
            if (node["properties"] is JsonObject members && (string?)node["type"] == "object")
                Assert.All(members.Where(member => member.Value is JsonObject { Count: > 0 } && member.Key != "$schema"), member => Assert.True(member.Value!["description"] is not null, member.Key));
            foreach (var (_, child) in node)
            {
                if (child is not null)
                    Describes(child);
            }
        }
        else if (schema is JsonArray list)
        {
            foreach (var child in list)
            {
                if (child is not null)
                    Describes(child);
            }
        }
    }
}
