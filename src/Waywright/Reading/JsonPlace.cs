using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text;
using System.Text.Json;

namespace Waywright;

/// <summary>A JSON value that knows where it stands, so that a problem can name line and column.</summary>
internal sealed class JsonPlace
{
    private readonly ProblemList _problems;
    private readonly Dictionary<string, JsonPlace> _members = new(StringComparer.Ordinal);
    private readonly List<JsonPlace> _items = [];

    private JsonPlace(ProblemList problems, string path, int line, int column)
        => (_problems, Path, Line, Column) = (problems, path, line, column);

    /// <summary>Where in the document, such as <c>setups[0].guide</c>.</summary>
    public string Path { get; }

    public int Line { get; }

    public int Column { get; }

    public JsonTokenType Kind { get; private set; }

    public string Raw { get; private set; } = "";

    public IReadOnlyList<JsonPlace> Items => _items;

    public IEnumerable<string> Names => _members.Keys;

    /// <summary>Reads a document; nothing is trusted about its shape yet.</summary>
    /// <exception cref="InputException">Not JSON, or a name twice in one object.</exception>
    public static JsonPlace Read(string text, ProblemList problems)
    {
        var bytes = Encoding.UTF8.GetBytes(text);
        var lines = new LineCounter(bytes);
        var reader = new Utf8JsonReader(bytes, new JsonReaderOptions { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true, MaxDepth = 32 });
        try
        {
            reader.Read();
            var root = ReadValue(ref reader, lines, problems, "");
            while (reader.Read())
            {
            }

            problems.ThrowIfAny();
            return root;
        }
        catch (JsonException e)
        {
            problems.Add((int)(e.LineNumber ?? 0) + 1, (int)(e.BytePositionInLine ?? 0) + 1, "text that is not JSON", "a JSON document");
            problems.ThrowIfAny();
            throw;
        }
        catch (InvalidOperationException)
        {
            problems.Add(null, null, "a text with half of a surrogate pair (\\ud800 to \\udfff)", "texts of whole characters");
            problems.ThrowIfAny();
            throw;
        }
    }

    /// <summary>Notes a problem at this value.</summary>
    public void Reject(string expected) => _problems.Add(Line, Column, Kind is JsonTokenType.StartObject ? "an object" : Kind is JsonTokenType.StartArray ? "a list" : ProblemList.Shown(Raw), $"{(Path.Length == 0 ? "the document" : Path)} to be {expected}");

    /// <summary>A member, or null; a problem is noted when it is required and absent.</summary>
    public JsonPlace? Member(string name, bool required = false)
    {
        if (_members.TryGetValue(name, out var member) && member.Kind != JsonTokenType.Null)
            return member;
        if (required && member is not null)
            member.Reject("a value");
        else if (required)
            _problems.Add(Line, Column, $"no \"{name}\"{(Path.Length == 0 ? "" : " in " + Path)}", $"a value for \"{name}\"");
        return null;
    }

    /// <summary>Notes each member that is none of the known ones: a misspelt name must not be passed over.</summary>
    public void OnlyMembers(params ReadOnlySpan<string> known)
    {
        foreach (var (name, member) in _members)
        {
            if (!known.Contains(name))
                _problems.Add(member.Line, member.Column, $"\"{name}\"", $"one of {string.Join(", ", known.ToArray())}");
        }
    }

    public string? Text(string name, bool required = false)
    {
        if (Member(name, required) is not { } member)
            return null;
        if (member.Kind == JsonTokenType.String)
            return member.Raw;
        member.Reject("a text in quotes");
        return null;
    }

    public double? Number(string name, double low, double high, bool required = false)
    {
        if (Member(name, required) is not { } member)
            return null;
        if (member.Kind == JsonTokenType.Number && Waywright.Number.TryRead(member.Raw, out var value, out _) && value >= low && value <= high)
            return value;
        member.Reject(string.Create(CultureInfo.InvariantCulture, $"a number from {low} to {high}"));
        return null;
    }

    /// <summary>A number without decimals; the limits lie within 2^53.</summary>
    public long? Whole(string name, long low, long high, bool required = false)
    {
        if (Member(name, required) is not { } member)
            return null;
        if (member.Kind == JsonTokenType.Number && Waywright.Number.TryRead(member.Raw, out var value, out _) && value >= low && value <= high && Math.Floor(value) == value)
            return (long)value;
        member.Reject(string.Create(CultureInfo.InvariantCulture, $"a whole number from {low} to {high}"));
        return null;
    }

    public string? OneOf(string name, bool required, params ReadOnlySpan<string> choices)
    {
        if (Text(name, required) is not { } text)
            return null;
        if (choices.Contains(text))
            return text;
        Member(name)!.Reject($"one of {string.Join(", ", choices.ToArray())}");
        return null;
    }

    private static JsonPlace ReadValue(ref Utf8JsonReader reader, LineCounter lines, ProblemList problems, string path)
    {
        var (line, column) = lines.At((int)reader.TokenStartIndex);
        var place = new JsonPlace(problems, path, line, column) { Kind = reader.TokenType };
        switch (reader.TokenType)
        {
            case JsonTokenType.StartObject:
                while (reader.Read() && reader.TokenType != JsonTokenType.EndObject)
                {
                    var name = reader.GetString()!;
                    var at = lines.At((int)reader.TokenStartIndex);
                    reader.Read();
                    if (!place._members.TryAdd(name, ReadValue(ref reader, lines, problems, path.Length == 0 ? name : $"{path}.{name}")))
                        problems.Add(at.Line, at.Column, $"\"{name}\" twice", "each name once in an object");
                }

                break;
            case JsonTokenType.StartArray:
                while (reader.Read() && reader.TokenType != JsonTokenType.EndArray)
                    place._items.Add(ReadValue(ref reader, lines, problems, string.Create(CultureInfo.InvariantCulture, $"{path}[{place._items.Count}]")));
                break;
            case JsonTokenType.String:
                place.Raw = reader.GetString()!;
                break;
            default:
                place.Raw = Encoding.UTF8.GetString(reader.ValueSpan);
                break;
        }

        return place;
    }

    /// <summary>Byte offset to line and column, asked in rising order.</summary>
    private sealed class LineCounter(byte[] bytes)
    {
        private int _line = 1;
        private int _lineStart;
        private int _seen;

        public (int Line, int Column) At(int offset)
        {
            for (; _seen < offset; _seen++)
            {
                if (bytes[_seen] == '\n')
                {
                    _line++;
                    _lineStart = _seen + 1;
                }
            }

            return (_line, Encoding.UTF8.GetCharCount(bytes.AsSpan(_lineStart, Math.Max(0, offset - _lineStart))) + 1);
        }
    }
}
