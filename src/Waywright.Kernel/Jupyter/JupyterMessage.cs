using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace Waywright.Kernel;

/// <summary>A request as it came in, over shell or control.</summary>
/// <param name="Channel">Where the reply goes.</param>
/// <param name="Peers">Routing frames: whom the reply goes to.</param>
/// <param name="Header">The request's header, which every answer carries as its parent.</param>
/// <param name="Metadata">What the front end adds, such as the cell's id.</param>
/// <param name="Content">The request itself.</param>
internal sealed record JupyterRequest(RequestChannel Channel, IReadOnlyList<byte[]> Peers, JsonObject Header, JsonObject Metadata, JsonObject Content)
{
    public string Type { get; } = Header["msg_type"]!.GetValue<string>();

    /// <summary>A field of the content; the default where it is missing or of another kind.</summary>
    public T Get<T>(string name, T otherwise) => Content[name] is JsonValue value && value.TryGetValue(out T? found) ? found : otherwise;
}

/// <summary>The two sockets that requests come by.</summary>
internal enum RequestChannel
{
    Shell,
    Control,
}

/// <summary>Messages as frames, signed: routing, delimiter, signature, header, parent, metadata, content.</summary>
internal sealed class JupyterFrames(Signature signature)
{
    /// <summary>The protocol's version that this kernel speaks.</summary>
    public const string Version = "5.3";

    private static readonly byte[] Delimiter = "<IDS|MSG>"u8.ToArray();
    private static readonly byte[] Nothing = "{}"u8.ToArray();
    private static readonly JsonSerializerOptions Relaxed = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping, MaxDepth = 256 };

    private readonly string _session = Guid.NewGuid().ToString("N");

    /// <summary>The request, or null for what has no place here: a bad signature, missing frames, text that is no JSON.</summary>
    public JupyterRequest? Read(RequestChannel channel, IReadOnlyList<byte[]> frames)
    {
        var at = 0;
        while (at < frames.Count && !frames[at].AsSpan().SequenceEqual(Delimiter)) at++;
        if (frames.Count < at + 6) return null;
        var parts = frames.Skip(at + 2).Take(4).ToArray();
        if (!signature.Holds(parts, frames[at + 1])) return null;
        try
        {
            var read = parts.Select(part => JsonNode.Parse(part) as JsonObject).ToArray();
            return read is [{ } header, _, { } metadata, { } content] && header["msg_type"] is JsonValue type && type.TryGetValue(out string? _)
                ? new JupyterRequest(channel, [.. frames.Take(at)], header, metadata, content)
                : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }

    public IReadOnlyList<byte[]> Write(IEnumerable<byte[]> peers, string type, JsonObject? parent, JsonObject content)
    {
        var header = new JsonObject
        {
            ["msg_id"] = Guid.NewGuid().ToString("N"),
            ["session"] = _session,
            ["username"] = "waywright",
            ["date"] = DateTime.UtcNow.ToString("yyyy-MM-ddTHH:mm:ss.ffffffZ", System.Globalization.CultureInfo.InvariantCulture),
            ["msg_type"] = type,
            ["version"] = Version,
        };
        byte[][] parts = [Bytes(header), parent is null ? Nothing : Bytes(parent), Nothing, Bytes(content)];
        return [.. peers, Delimiter, signature.Of(parts), .. parts];
    }

    private static byte[] Bytes(JsonObject json) => JsonSerializer.SerializeToUtf8Bytes(json, Relaxed);
}
