using System.Text.Json.Nodes;

namespace Waywright.Publishing;

/// <summary>Texts of a notebook file stand as one string or as a list of lines; both mean the same.</summary>
internal static class NotebookText
{
    public static string Joined(JsonNode? node) => node switch
    {
        JsonArray lines => string.Concat(lines.Select(line => (string?)line)),
        JsonValue value when value.TryGetValue(out string? text) => text,
        _ => "",
    };

    public static bool IsText(JsonNode? node)
        => node is JsonArray lines ? lines.All(line => line is JsonValue value && value.TryGetValue(out string? _)) : node is JsonValue text && text.TryGetValue(out string? _);

    /// <summary>An output as a notebook file holds it.</summary>
    public static JsonObject Stored(JsonObject output, int count)
    {
        var stored = (JsonObject)output.DeepClone();
        stored.Remove("transient"); // part of the message protocol, not of the file
        if (stored["text"] is { } text)
            stored["text"] = Lines(text);
        foreach (var (type, value) in (stored["data"] as JsonObject)?.ToArray() ?? [])
        {
            if (!IsJsonType(type) && value is not null)
                stored["data"]![type] = Lines(value);
        }

        if ((string?)stored["output_type"] == "execute_result")
            stored["execution_count"] = count;
        return stored;
    }

    public static bool IsJsonType(string mimeType) => mimeType.EndsWith("json", StringComparison.Ordinal);

    private static JsonArray Lines(JsonNode text)
    {
        var lines = new JsonArray();
        var rest = Joined(text).AsSpan();
        while (!rest.IsEmpty)
        {
            var length = rest.IndexOf('\n') + 1;
            var line = length == 0 ? rest : rest[..length];
            lines.Add(line.ToString());
            rest = rest[line.Length..];
        }

        return lines;
    }
}
