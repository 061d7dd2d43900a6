using System;
using System.IO;

namespace Waywright;

/// <summary>Lines of a text, one after the other, ended by LF, CR LF or CR. The buffer holds a piece of the text and only grows for a line that is longer.</summary>
internal sealed class LineReader(TextReader text)
{
    private const int Longest = 1 << 24;

    private char[] _buffer = new char[1 << 16];
    private int _start;
    private int _end;
    private int _next;
    private int _filled;
    private bool _isOver;

    /// <summary>Of the current line, from 1.</summary>
    public int Number { get; private set; }

    public ReadOnlySpan<char> Current => _buffer.AsSpan(_start, _end - _start);

    /// <summary>What is in the buffer after the current line; it may end within a line.</summary>
    public ReadOnlySpan<char> Ahead => _buffer.AsSpan(_next, _filled - _next);

    /// <exception cref="InvalidDataException">The line is longer than 16 M characters.</exception>
    public bool MoveNext()
    {
        int length;
        // A CR that ends the buffer may be half a line end.
        while ((length = Ahead.IndexOfAny('\n', '\r')) < 0 || (_buffer[_next + length] == '\r' && _next + length + 1 == _filled))
        {
            if (Fill())
                continue;
            if (length >= 0)
                break;
            if (_next == _filled)
                return false;
            Take(_filled - _next, 0);
            return true;
        }

        Take(length, Ahead[length..].StartsWith("\r\n") ? 2 : 1);
        return true;
    }

    /// <summary>Passes over whole lines at the start of <see cref="Ahead"/>; there is no current line then.</summary>
    /// <param name="lines">How many lines.</param>
    /// <param name="length">How many characters they have with their line ends.</param>
    public void Skip(int lines, int length)
    {
        _start = _end = _next += length;
        Number += lines;
    }

    private void Take(int length, int lineEnd)
    {
        _start = _next;
        _end = _start + length;
        _next = _end + lineEnd;
        Number++;
    }

    private bool Fill()
    {
        if (_isOver)
            return false;
        var rest = _filled - _next;
        if (rest == _buffer.Length)
        {
            if (rest >= Longest)
                throw new InvalidDataException("A line longer than 16 M characters.");
            Array.Resize(ref _buffer, 2 * rest);
        }
        else if (_next > 0)
        {
            _buffer.AsSpan(_next, rest).CopyTo(_buffer);
        }

        (_start, _end, _next) = (0, 0, 0);
        var read = text.Read(_buffer.AsSpan(rest));
        _filled = rest + read;
        _isOver = read == 0;
        return !_isOver;
    }
}
