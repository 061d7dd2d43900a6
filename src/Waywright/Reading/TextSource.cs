using System;
using System.IO;
using System.Text;

namespace Waywright;

/// <summary>Opens a text file for the readers: every way in which a path is not a UTF-8 text file becomes one plain problem.</summary>
internal static class TextSource
{
    private const int Peek = 4096;

    // Less than LineReader asks for at once, so that text is decoded straight into its buffer.
    private const int BufferSize = 1 << 15;

    /// <summary>The file's name as messages show it: the path the caller gave.</summary>
    /// <exception cref="InputException">No such file, a directory, not permitted, empty, binary, not UTF-8.</exception>
    public static TextReader Open(string path) => Open(path, "a header line and rows");

    private static StreamReader Open(string path, string wanted)
    {
        var stream = OpenFile(path);
        try
        {
            CheckText(path, stream, wanted);
            return new StreamReader(stream, new UTF8Encoding(false, throwOnInvalidBytes: true), detectEncodingFromByteOrderMarks: true, BufferSize);
        }
        catch
        {
            stream.Dispose();
            throw;
        }
    }

    /// <summary>All bytes of a file that is no text.</summary>
    /// <exception cref="InputException">No such file, a directory, not permitted, larger than 1 GB.</exception>
    public static byte[] ReadBytes(string path)
    {
        using var stream = OpenFile(path);
        if (stream.Length > int.MaxValue / 2)
            throw Problem(path, "a file of more than 1 GB", "a recording of some seconds");
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }

    private static FileStream OpenFile(string path)
    {
        try
        {
            if (Directory.Exists(path))
                throw Problem(path, "a folder", "a file");
            return new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite, 0, FileOptions.SequentialScan);
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            throw Problem(path, "no such file", "the path of an existing file");
        }
        catch (UnauthorizedAccessException)
        {
            throw Problem(path, "a file that may not be read", "read permission");
        }
        catch (Exception e) when (e is IOException or ArgumentException or NotSupportedException)
        {
            throw Problem(path, "a path that can't be opened", "the path of an existing file");
        }
    }

    /// <summary>The whole of a JSON file as text.</summary>
    public static string ReadAll(string path)
    {
        using var reader = Open(path, "a JSON document");
        try
        {
            return reader.ReadToEnd();
        }
        catch (DecoderFallbackException)
        {
            throw NotUtf8(path);
        }
    }

    /// <summary>Names the first byte that is not UTF-8, by reading the file again.</summary>
    public static InputException NotUtf8(string path)
    {
        ReadOnlySpan<byte> rest = File.ReadAllBytes(path);
        var line = 1;
        while (!rest.IsEmpty && Rune.DecodeFromUtf8(rest, out var rune, out var used) == System.Buffers.OperationStatus.Done)
        {
            line += rune.Value == '\n' ? 1 : 0;
            rest = rest[used..];
        }

        return new InputException(new InputProblem(path, line, null, "bytes that are not UTF-8", "text saved as UTF-8"));
    }

    private static void CheckText(string path, FileStream stream, string wanted)
    {
        Span<byte> head = stackalloc byte[Peek];
        var length = stream.ReadAtLeast(head, Peek, throwOnEndOfStream: false);
        stream.Position = 0;
        head = head[..length];
        if (length == 0)
            throw Problem(path, "an empty file", wanted);
        if (head.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xFE]) || head.StartsWith((ReadOnlySpan<byte>)[0xFE, 0xFF]))
            throw new InputException(new InputProblem(path, 1, 1, "UTF-16 text", "text saved as UTF-8 (in a spreadsheet: 'CSV UTF-8')"));
        var zero = head.IndexOf((byte)0);
        if (zero >= 0)
            throw new InputException(new InputProblem(path, 1 + head[..zero].Count((byte)'\n'), null, "binary data", "text saved as UTF-8"));
    }

    private static InputException Problem(string path, string found, string expected) => new(new InputProblem(string.IsNullOrWhiteSpace(path) ? "the file's path" : path, null, null, string.IsNullOrWhiteSpace(path) ? "nothing" : found, expected));
}
