using System.Globalization;
using System.Text;

namespace Waywright.Kernel;

/// <summary>What a cell sees as <see cref="Console.Out"/> or <see cref="Console.Error"/>: each piece goes out at once, so that nothing is lost when the cell ends the process.</summary>
internal sealed class CellConsole : TextWriter
{
    private const int LongestPiece = 32_768;

    private readonly string _name;
    private readonly CurrentCell _cell;
    private char? _firstOfPair;

    public CellConsole(string name, CurrentCell cell)
        : base(CultureInfo.InvariantCulture)
    {
        _name = name;
        _cell = cell;
        CoreNewLine = ['\n'];
    }

    public override Encoding Encoding => Encoding.UTF8;

    public override void Write(char value) => Write([value]);

    public override void Write(char[] buffer, int index, int count) => Write(buffer.AsSpan(index, count));

    public override void Write(string? value) => Write(value.AsSpan());

    // One piece, not two: the line and its end stay together when two threads write.
    public override void WriteLine(string? value) => Write($"{value}\n".AsSpan());

    public override void Write(ReadOnlySpan<char> buffer)
    {
        while (buffer.Length > 0)
        {
            var piece = buffer[..Math.Min(buffer.Length, LongestPiece)];
            buffer = buffer[piece.Length..];
            Say(piece);
        }
    }

    // Half of a surrogate pair waits for the other half: alone it is no text.
    private void Say(ReadOnlySpan<char> piece)
    {
        var text = _firstOfPair is { } first ? $"{first}{piece}" : piece.ToString();
        _firstOfPair = null;
        if (char.IsHighSurrogate(text[^1]))
        {
            _firstOfPair = text[^1];
            text = text[..^1];
        }

        if (text.Length > 0) _cell.Say(new StreamWritten(_name, text));
    }
}
