using System.Text;
using Waywright.Notebooks;

namespace Waywright.Cli;

/// <summary>Writes text to a terminal as text: names from data files, arguments and cells can't move its cursor, colour it, or turn a line round.</summary>
internal sealed class PlainWriter(TextWriter terminal) : TextWriter
{
    public override Encoding Encoding => terminal.Encoding;

    public override void Write(char value) => Write(value.ToString());

    public override void Write(char[] buffer, int index, int count) => Write(new string(buffer, index, count));

    public override void Write(string? value) => terminal.Write(Markup.Seen((value ?? "").Replace("\r\n", "\n", StringComparison.Ordinal)));

    public override void WriteLine(string? value) => Write(value + "\n");

    public override void Flush() => terminal.Flush();
}
