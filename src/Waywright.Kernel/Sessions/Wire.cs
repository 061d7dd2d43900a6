using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace Waywright.Kernel;

/// <summary>What a session's two processes say to each other: one JSON object a line.</summary>
[JsonPolymorphic(TypeDiscriminatorPropertyName = "say")]
[JsonDerivedType(typeof(RunCell), "run")]
[JsonDerivedType(typeof(SessionReady), "ready")]
[JsonDerivedType(typeof(CellSaid), "said")]
[JsonDerivedType(typeof(CellOver), "over")]
internal abstract record SessionMessage;

/// <summary>Parent to child: run this cell.</summary>
internal sealed record RunCell(int Number, string CellId, string Code) : SessionMessage;

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
