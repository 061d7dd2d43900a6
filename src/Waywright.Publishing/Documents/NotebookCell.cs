using System.Text.Json.Nodes;

namespace Waywright.Publishing;

/// <summary>One cell of a notebook, over its own JSON.</summary>
internal sealed class NotebookCell(JsonObject json)
{
    /// <summary>Tag of the cell that declares parameters.</summary>
    public const string ParametersTag = "parameters";

    /// <summary>Tag of the cell that a run sets parameters with.</summary>
    public const string InjectedTag = "injected-parameters";

    /// <summary>Tag of a cell that is meant to fail.</summary>
    public const string MayRaiseTag = "raises-exception";

    // Our notes on a cell's run stand under this name in its metadata.
    private const string Note = "waywright";

    public JsonObject Json { get; } = json;

    public string Id => (string?)Json["id"] ?? "";

    public bool IsCode => Kind == "code";

    public bool IsMarkdown => Kind == "markdown";

    public string Source => NotebookText.Joined(Json["source"]);

    public IEnumerable<JsonObject> Outputs => (Json["outputs"] as JsonArray ?? []).OfType<JsonObject>();

    /// <summary>How the cell ended, if not well: a sentence; else null.</summary>
    public string? Failure => (string?)Json["metadata"]?[Note]?["why"];

    private string Kind => (string?)Json["cell_type"] ?? "";

    /// <summary>A code cell that sets parameters.</summary>
    public static NotebookCell Injected(string code) => new(new JsonObject
    {
        ["cell_type"] = "code",
        ["execution_count"] = null,
        ["id"] = InjectedTag,
        ["metadata"] = new JsonObject { ["tags"] = new JsonArray(InjectedTag) },
        ["outputs"] = new JsonArray(),
        ["source"] = code,
    });

    public bool Has(string tag) => Json["metadata"]?["tags"] is JsonArray tags && tags.Any(t => t is JsonValue value && value.TryGetValue(out string? text) && text == tag);

    public void NameIfNameless(string id)
    {
        if (Id.Length == 0)
            Json["id"] = id;
    }

    public void Strip()
    {
        if (IsCode)
            (Json["outputs"], Json["execution_count"]) = (new JsonArray(), null);
        (Json["metadata"] as JsonObject)?.Remove(Note);
    }

    /// <summary>Writes a run's outputs into the cell; texts become lists of lines, as notebook files have them.</summary>
    public void SetRun(int count, IReadOnlyList<JsonObject> outputs)
    {
        Json["execution_count"] = count;
        Json["outputs"] = new JsonArray([.. outputs.Select(output => NotebookText.Stored(output, count))]);
    }

    public void SetFailure(string outcome, string why)
    {
        var metadata = Json["metadata"] as JsonObject ?? [];
        metadata[Note] = new JsonObject { ["outcome"] = outcome, ["why"] = why };
        Json["metadata"] = metadata;
    }
}
