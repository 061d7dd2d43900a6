using System.Text;
using System.Text.Json.Nodes;

namespace Waywright.Kernel;

/// <summary>Gathers what a cell said into nbformat 4.5 output objects: pieces of a stream joined, updates in the place of what they update.</summary>
/// <param name="count">The cell's execution count.</param>
/// <param name="onOutput">Told of each output as it comes; gets a copy.</param>
/// <param name="onEvent">Told of each event as it comes, up to the same size.</param>
internal sealed class CellOutputs(int count, Action<JsonObject>? onOutput, Action<CellEvent>? onEvent = null)
{
    /// <summary>A cell's outputs are kept up to this size, so that a loop that prints cannot fill the memory.</summary>
    public const int LargestBytes = 64_000_000;

    /// <summary>Text written past the engine is kept up to this length.</summary>
    public const int LongestRawText = 1_000_000;

    private readonly List<Output> _outputs = [];
    private readonly Dictionary<string, JsonObject> _displays = [];
    private readonly StringBuilder _rawError = new();
    private long _size;
    private int _rawLength;
    private bool _full;

    /// <summary>What the process wrote to its raw error stream: the runtime's last words, if it crashed.</summary>
    public string RawError => _rawError.ToString();

    /// <param name="said">What the cell said.</param>
    /// <param name="size">Its size in bytes, about.</param>
    public void Add(CellEvent said, int size)
    {
        if (!HasRoom(size)) return;
        if (said is not StreamWritten) onEvent?.Invoke(said);
        switch (said)
        {
            case StreamWritten written:
                Write(written.Name, written.Text);
                break;
            case DisplayUpdated updated when _displays.TryGetValue(updated.DisplayId, out var earlier):
                earlier["data"] = updated.Data;
                break;
            case DisplayUpdated updated:
                // What it updates was shown by an earlier cell, which is over: shown again here.
                Show(updated.DisplayId, updated.Data);
                break;
            case ValueDisplayed displayed:
                Show(displayed.DisplayId, displayed.Data);
                break;
            case ValueReturned returned:
                Append(new JsonObject { ["data"] = returned.Data, ["execution_count"] = count, ["metadata"] = new JsonObject(), ["output_type"] = "execute_result" });
                break;
        }
    }

    public void Add(RawText raw)
    {
        if (_rawLength > LongestRawText) return;
        _rawLength += raw.Text.Length;
        var text = _rawLength <= LongestRawText
            ? raw.Text
            : $"{raw.Text[..^(_rawLength - LongestRawText)]}\nwaywright: what the cell wrote past Console.Out and Console.Error is cut here, at {LongestRawText / 1_000_000} MB\n";
        if (raw.Name == "stderr") _rawError.Append(text);
        if (HasRoom(text.Length)) Write(raw.Name, text);
    }

    public void Add(CellFailed failure) => Append(new JsonObject
    {
        ["ename"] = failure.Name,
        ["evalue"] = failure.Value,
        ["output_type"] = "error",
        ["traceback"] = new JsonArray([.. failure.Trace.Select(line => (JsonNode)line)]),
    });

    public IReadOnlyList<JsonObject> ToList() => [.. _outputs.Select(output => output.ToJson())];

    private bool HasRoom(int size)
    {
        _size += size;
        if (_size <= LargestBytes) return true;
        if (!_full) Write("stderr", $"waywright: the cell's outputs are cut here, at {LargestBytes / 1_000_000} MB\n");
        _full = true;
        return false;
    }

    private void Write(string name, string text)
    {
        if (_outputs.LastOrDefault() is not Stream stream || stream.Name != name) _outputs.Add(stream = new Stream(name));
        stream.Text.Append(text);
        onOutput?.Invoke(Stream.Json(name, text));
        onEvent?.Invoke(new StreamWritten(name, text));
    }

    private void Show(string? displayId, JsonObject data)
    {
        var output = new JsonObject { ["data"] = data, ["metadata"] = new JsonObject(), ["output_type"] = "display_data" };
        if (displayId is not null) _displays[displayId] = output;
        Append(output);
    }

    private void Append(JsonObject output)
    {
        _outputs.Add(new Whole(output));
        onOutput?.Invoke((JsonObject)output.DeepClone());
    }

    private abstract class Output
    {
        public abstract JsonObject ToJson();
    }

    private sealed class Whole(JsonObject json) : Output
    {
        public override JsonObject ToJson() => json;
    }

    private sealed class Stream(string name) : Output
    {
        public string Name => name;

        public StringBuilder Text { get; } = new();

        public static JsonObject Json(string name, string text) => new() { ["name"] = name, ["output_type"] = "stream", ["text"] = text };

        public override JsonObject ToJson() => Json(name, Text.ToString());
    }
}
