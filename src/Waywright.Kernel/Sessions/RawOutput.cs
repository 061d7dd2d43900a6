using System.Globalization;
using System.Text;
using System.Threading.Channels;

namespace Waywright.Kernel;

/// <summary>Drains one raw output stream of the child, and finds in it the marks that end a cell.</summary>
internal static class RawOutput
{
    /// <summary>Reads until the stream ends.</summary>
    public static async Task DrainAsync(Stream stream, string name, string secret, ChannelWriter<Received> received, CancellationToken cancel)
    {
        using var reader = new StreamReader(stream, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false));
        var start = $"\u0002{secret}:";
        var held = "";
        var buffer = new char[16_384];
        int read;
        while ((read = await reader.ReadAsync(buffer, cancel)) > 0)
        {
            held += new string(buffer, 0, read);
            while (Next(ref held, name, start) is { } message) await received.WriteAsync(new Received(message, held.Length), cancel);
        }

        if (held.Length > 0) await received.WriteAsync(new Received(new RawText(name, held), held.Length), cancel);
    }

    // The text before a mark, the mark, or null when what is held may be the beginning of a mark.
    private static SessionMessage? Next(ref string held, string name, string start)
    {
        var from = held.IndexOf('\u0002', StringComparison.Ordinal);
        while (from >= 0 && !BeginsMark(held.AsSpan(from), start)) from = held.IndexOf('\u0002', from + 1);
        if (from != 0) return Take(ref held, name, from < 0 ? held.Length : from);
        var end = held.IndexOf('\u0003', StringComparison.Ordinal);
        if (end < 0) return null;
        _ = int.TryParse(held.AsSpan(start.Length, end - start.Length), NumberStyles.None, CultureInfo.InvariantCulture, out var number);
        held = held[(end + 1)..];
        return new RawMark(name, number);
    }

    private static bool BeginsMark(ReadOnlySpan<char> text, string start) =>
        text.Length < start.Length ? start.AsSpan().StartsWith(text, StringComparison.Ordinal) : text.StartsWith(start, StringComparison.Ordinal);

    private static RawText? Take(ref string held, string name, int length)
    {
        if (length == 0) return null;
        var text = held[..length];
        held = held[length..];
        return new RawText(name, text);
    }
}
