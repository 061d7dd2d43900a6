using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization;

namespace Waywright.Kernel;

/// <summary>What a session's two processes say to each other: one JSON object a line.</summary>
[JsonPolymorphic(TypeDiscriminatorPropertyName = "say")]
[JsonDerivedType(typeof(RunCell), "run")]
[JsonDerivedType(typeof(StopCell), "stop")]
[JsonDerivedType(typeof(AskAbout), "ask")]
[JsonDerivedType(typeof(SessionReady), "ready")]
[JsonDerivedType(typeof(Completed), "completed")]
[JsonDerivedType(typeof(Inspected), "inspected")]
[JsonDerivedType(typeof(CellSaid), "said")]
[JsonDerivedType(typeof(CellOver), "over")]
internal abstract record SessionMessage;

/// <summary>Parent to child: run this cell.</summary>
internal sealed record RunCell(int Number, string CellId, string Code) : SessionMessage;

/// <summary>Parent to child: cancel what this cell was told to look at; it may go on all the same.</summary>
internal sealed record StopCell(int Number) : SessionMessage;

/// <summary>What can be asked about a place in a cell that is being written.</summary>
internal enum Question
{
    /// <summary>Which words may stand there.</summary>
    Complete,

    /// <summary>What the word there is.</summary>
    Inspect,
}

/// <summary>Parent to child, between cells: lines and columns are counted from 0.</summary>
internal sealed record AskAbout(Question Question, string Code, int Line, int Column) : SessionMessage;

/// <summary>Child to parent: the answer to <see cref="Question.Complete"/>.</summary>
internal sealed record Completed(IReadOnlyList<Suggestion> Suggestions) : SessionMessage;

/// <summary>A word that may stand at a place.</summary>
/// <param name="Text">The word.</param>
/// <param name="Kind">Method, Property, Class and so on.</param>
internal sealed record Suggestion(string Text, string Kind);

/// <summary>Child to parent: the answer to <see cref="Question.Inspect"/>, a MIME bundle; null when there is nothing to tell.</summary>
internal sealed record Inspected(JsonObject? Data) : SessionMessage;

/// <summary>Child to parent: cells may come.</summary>
internal sealed record SessionReady : SessionMessage;

/// <summary>Child to parent: the running cell says something.</summary>
internal sealed record CellSaid(CellEvent Event) : SessionMessage;

/// <summary>Child to parent: the cell has ended, and why if it failed.</summary>
internal sealed record CellOver(int Number, CellFailed? Failure) : SessionMessage;

/// <summary>Text written past the engine to the child's own output streams. Never on the wire: the parent reads it where it comes out.</summary>
internal sealed record RawText(string Name, string Text) : SessionMessage;

/// <summary>All raw text of a stream up to the end of a cell has been read.</summary>
internal sealed record RawMark(string Name, int Number) : SessionMessage;

/// <summary>Reads and writes the lines.</summary>
internal static class Wire
{
    private static readonly WireContext Context = new(new JsonSerializerOptions
    {
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        MaxDepth = 256,
    });

    public static byte[] Line(SessionMessage message)
    {
        using var buffer = new MemoryStream();
        JsonSerializer.Serialize(buffer, message, Context.SessionMessage);
        buffer.WriteByte((byte)'\n');
        return buffer.ToArray();
    }

    public static SessionMessage Read(string line) =>
        JsonSerializer.Deserialize(line, Context.SessionMessage) ?? throw new JsonException("an empty message");

    /// <summary>The mark that ends a cell's raw text: no text that anybody writes by chance.</summary>
    public static string Mark(string secret, int cell) => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"\u0002{secret}:{cell}\u0003");
}

[JsonSerializable(typeof(SessionMessage))]
internal sealed partial class WireContext : JsonSerializerContext;
