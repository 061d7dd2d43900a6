using System.Globalization;
using System.Text;
using Waywright.Notebooks;
using Waywright.Publishing;

namespace Waywright.Cli;

/// <summary>
/// How far a verb is, on standard error: on a terminal one line that is rewritten and goes at the end, elsewhere a plain line now and then;
/// nothing at all for what is over in a second.
/// </summary>
internal sealed class ProgressLine(TextWriter writer, int? width, TimeProvider clock, string work = "") : IProgress<double>, IProgress<PublishProgress>, IDisposable
{
    private static readonly TimeSpan Quiet = TimeSpan.FromSeconds(1);
    private static readonly TimeSpan BetweenRewrites = TimeSpan.FromMilliseconds(100);
    private static readonly TimeSpan BetweenLines = TimeSpan.FromSeconds(10);

    private readonly TimeLeft _left = new(clock);
    private readonly Lock _lock = new();
    private TimeSpan? _shownAt;
    private int _length;

    /// <summary>On this process's standard error.</summary>
    /// <param name="work">What is told before the share; not needed for a publish.</param>
    public static ProgressLine Start(string work = "")
        => new(new StreamWriter(Console.OpenStandardError(), new UTF8Encoding(encoderShouldEmitUTF8Identifier: false)) { AutoFlush = true }, Console.IsErrorRedirected ? null : Width(), TimeProvider.System, work);

    public void Report(double value)
    {
        lock (_lock)
        {
            _left.Note(value);
            Show(string.Create(CultureInfo.InvariantCulture, $"{work} · {100 * _left.Share:0} %"));
        }
    }

    public void Report(PublishProgress value)
    {
        lock (_lock)
        {
            _left.Note((double)value.CellsBefore / value.CellsInAll);
            Show(string.Create(CultureInfo.InvariantCulture, $"cell {value.CellsBefore + 1} of {value.CellsInAll} · {Path.GetFileNameWithoutExtension(value.Notebook)}"));
        }
    }

    public void Dispose()
    {
        lock (_lock)
        {
            if (_length > 0)
                writer.Write("\r" + new string(' ', _length) + "\r");
            _length = 0;
        }
    }

    private void Show(string where)
    {
        var now = _left.Elapsed;
        if (now < Quiet || now - _shownAt < (width is null ? BetweenLines : BetweenRewrites))
            return;
        _shownAt = now;
        var text = Markup.Seen(_left.Words() is { Length: > 0 } left ? $"{where} · {left}" : where).Replace('\n', ' ');
        if (width is null)
        {
            writer.WriteLine(text);
            return;
        }

        // One column free: a full line would wrap, and be rewritten on the next.
        text = text.Length < width ? text : text[..Math.Max(0, width.Value - 1)];
        writer.Write("\r" + text.PadRight(_length));
        _length = text.Length;
    }

    private static int Width()
    {
        try
        {
            return Console.WindowWidth > 0 ? Console.WindowWidth : 80;
        }
        catch (IOException)
        {
            return 80;
        }
    }
}
