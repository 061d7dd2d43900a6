using System.Security.Cryptography;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace Waywright.Publishing;

/// <summary>A notebook file (nbformat 4) as the JSON that it is: what we don't know stays as it was.</summary>
internal sealed class NotebookDocument
{
    private static readonly JsonSerializerOptions Layout = new()
    {
        WriteIndented = true,
        IndentSize = 1,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    private readonly JsonObject _root;

    private NotebookDocument(JsonObject root, List<NotebookCell> cells) => (_root, Cells) = (root, cells);

    /// <summary>The cells in order.</summary>
    public IReadOnlyList<NotebookCell> Cells { get; private set; }

    /// <summary>Its place among the notebooks of a build: the number <c>waywright.order</c> of its metadata; without one it comes after those that have one.</summary>
    public int Order => _root["metadata"]?["waywright"]?["order"] is JsonValue value && value.TryGetValue<int>(out var order) ? order : int.MaxValue;

    /// <summary>Reads a notebook.</summary>
    /// <param name="text">The file's text.</param>
    /// <param name="source">The file as messages name it.</param>
    /// <exception cref="InputException">Not JSON, another nbformat, no list of cells, a cell that is none, another language than C#.</exception>
    public static NotebookDocument Parse(string text, string source)
    {
        var root = NotebookCheck.Root(text, source);
        var cells = ((JsonArray)root["cells"]!).Select(cell => new NotebookCell((JsonObject)cell!)).ToList();
        NameCells(cells);
        root["nbformat_minor"] = Math.Max(5, (int?)root["nbformat_minor"] ?? 0);
        return new NotebookDocument(root, cells);
    }

    /// <summary>Puts a new cell after the one at <paramref name="index"/>.</summary>
    public void InsertAfter(int index, NotebookCell cell)
    {
        ((JsonArray)_root["cells"]!).Insert(index + 1, cell.Json);
        Cells = [.. Cells.Take(index + 1), cell, .. Cells.Skip(index + 1)];
    }

    /// <summary>Takes away what a run adds: outputs, counts, injected cells, our notes.</summary>
    public void Strip()
    {
        foreach (var injected in Cells.Where(cell => cell.Has(NotebookCell.InjectedTag)))
            ((JsonArray)_root["cells"]!).Remove(injected.Json);
        Cells = [.. Cells.Where(cell => !cell.Has(NotebookCell.InjectedTag))];
        foreach (var cell in Cells)
            cell.Strip();
    }

    /// <summary>The text as the file is written: indented by one blank as is usual for notebooks, LF.</summary>
    public string ToText() => _root.ToJsonString(Layout) + "\n";

    /// <summary>SHA-256 of the notebook as it was before a run, lower-case hexadecimal: equal for the same notebook before and after.</summary>
    public string SourceSha256()
    {
        var source = new NotebookDocument((JsonObject)_root.DeepClone(), []);
        source.Cells = [.. ((JsonArray)source._root["cells"]!).Select(cell => new NotebookCell((JsonObject)cell!))];
        source.Strip();
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(source.ToText())));
    }

    // nbformat 4.5 wants an id for each cell; older notebooks have none.
    private static void NameCells(List<NotebookCell> cells)
    {
        var taken = cells.Select(cell => cell.Id).ToHashSet(StringComparer.Ordinal);
        for (var i = 0; i < cells.Count; i++)
        {
            var id = FormattableString.Invariant($"cell-{i + 1:d3}");
            while (cells[i].Id.Length == 0 && !taken.Add(id))
                id += "-";
            cells[i].NameIfNameless(id);
        }
    }
}
