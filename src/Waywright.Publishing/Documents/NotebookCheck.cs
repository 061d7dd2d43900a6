using System.Text.Json;
using System.Text.Json.Nodes;

namespace Waywright.Publishing;

/// <summary>Decides whether a text is a notebook that we can run, and says in one sentence why not.</summary>
internal static class NotebookCheck
{
    public static JsonObject Root(string text, string source)
    {
        JsonNode? node;
        try
        {
            node = JsonNode.Parse(text, documentOptions: new JsonDocumentOptions { AllowDuplicateProperties = false, MaxDepth = 64 });
        }
        catch (JsonException e)
        {
            throw Problem(source, (int?)e.LineNumber + 1, (int?)e.BytePositionInLine + 1, "text that is not JSON", "a notebook file (.ipynb)");
        }
        catch (InvalidOperationException)
        {
            node = null; // a name that is half a character: told below, with its line
        }

        CheckTexts(text, source);
        if (node is not JsonObject root || !root.ContainsKey("nbformat"))
            throw Problem(source, "JSON that is no notebook", "a notebook file (.ipynb) of nbformat 4");
        if (root["nbformat"] is not JsonValue format || !format.TryGetValue(out int version) || version != 4)
            throw Problem(source, $"nbformat {root["nbformat"]?.ToJsonString() ?? "null"}", "nbformat 4: open the notebook in a current editor and save it");
        if (root["nbformat_minor"] is { } minor && !(minor is JsonValue number && number.TryGetValue(out int _)))
            throw Problem(source, "a nbformat_minor that is no number", "nbformat_minor 5");
        if (root["cells"] is not JsonArray cells)
            throw Problem(source, "no list of cells", "a notebook with \"cells\"");
        for (var i = 0; i < cells.Count; i++)
            CheckCell(cells[i], i + 1, source);
        CheckIds(cells, source);
        CheckLanguage(root, source);
        return root;
    }

    // Half of a surrogate pair is legal in JSON and no text: whoever asks for it later would fall.
    private static void CheckTexts(string text, string source)
    {
        var bytes = System.Text.Encoding.UTF8.GetBytes(text);
        var reader = new Utf8JsonReader(bytes);
        try
        {
            while (reader.Read())
            {
                if (reader.TokenType is JsonTokenType.String or JsonTokenType.PropertyName)
                    reader.GetString();
            }
        }
        catch (InvalidOperationException)
        {
            throw Problem(source, bytes.AsSpan(0, (int)reader.TokenStartIndex).Count((byte)'\n') + 1, null, "a text with half of a surrogate pair (\\ud800 to \\udfff)", "texts of whole characters");
        }
    }

    private static void CheckCell(JsonNode? node, int number, string source)
    {
        if (node is not JsonObject cell)
            throw InCell("something that is no object");
        if (Text(cell["cell_type"]) is not ("code" or "markdown" or "raw"))
            throw InCell($"cell_type {cell["cell_type"]?.ToJsonString() ?? "missing"}");
        if (!NotebookText.IsText(cell["source"]))
            throw InCell("no text as its source");
        if (cell["metadata"] is not (null or JsonObject) || cell["outputs"] is not (null or JsonArray))
            throw InCell("metadata or outputs of another shape");
        if (cell["id"] is { } id && Text(id) is null)
            throw InCell("an id that is no text");

        InputException InCell(string found) => Problem(source, FormattableString.Invariant($"in cell {number} {found}"), "code, markdown or raw with a source, as nbformat 4 has it");
    }

    private static void CheckIds(JsonArray cells, string source)
    {
        var twice = cells.Select(cell => Text(cell!["id"])).Where(id => id is not null).GroupBy(id => id, StringComparer.Ordinal).FirstOrDefault(group => group.Count() > 1);
        if (twice is not null)
            throw Problem(source, $"the cell id '{twice.Key}' twice", "each id once");
    }

    // A notebook of another language would fail cell by cell with messages that don't say why.
    private static void CheckLanguage(JsonObject root, string source)
    {
        var metadata = root["metadata"] as JsonObject;
        var language = Text((metadata?["kernelspec"] as JsonObject)?["language"]) ?? Text((metadata?["language_info"] as JsonObject)?["name"]);
        if (language is not null && language.ToUpperInvariant() is not ("C#" or "CSHARP" or "POLYGLOT-NOTEBOOK"))
            throw Problem(source, $"a notebook for {language}", "a notebook for C#");
    }

    private static string? Text(JsonNode? node) => node is JsonValue value && value.TryGetValue(out string? text) ? text : null;

    private static InputException Problem(string source, string found, string expected) => Problem(source, null, null, found, expected);

    private static InputException Problem(string source, int? line, int? column, string found, string expected) => new(new InputProblem(source, line, column, found, expected));
}
