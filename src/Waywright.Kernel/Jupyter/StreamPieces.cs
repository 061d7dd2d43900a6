using System.Text;

namespace Waywright.Kernel;

/// <summary>
/// Joins the pieces that a cell writes into messages of some size: a front end stops listening to a kernel that sends a thousand messages a second.
/// </summary>
/// <param name="send">Takes the stream's name and its text.</param>
internal sealed class StreamPieces(Action<string, string> send) : IDisposable
{
    private const int EnoughLetters = 16_384;
    private static readonly TimeSpan LongestWait = TimeSpan.FromMilliseconds(50);

    private readonly Lock _gate = new();
    private readonly StringBuilder _held = new();
    private Timer? _timer;
    private string _name = "";

    public void Add(string name, string text)
    {
        lock (_gate)
        {
            if (name != _name) Send();
            _name = name;
            _held.Append(text);
            if (_held.Length >= EnoughLetters) Send();
            else (_timer ??= new Timer(_ => Flush())).Change(LongestWait, Timeout.InfiniteTimeSpan);
        }
    }

    /// <summary>Sends what is held, before anything else is sent.</summary>
    public void Flush()
    {
        lock (_gate) Send();
    }

    public void Dispose()
    {
        _timer?.Dispose();
        Flush();
    }

    private void Send()
    {
        if (_held.Length == 0) return;
        send(_name, _held.ToString());
        _held.Clear();
    }
}
