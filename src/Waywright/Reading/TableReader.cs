using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Text;

namespace Waywright;

/// <summary>
/// Reads a delimited table row by row: header, comma or semicolon or tab, <c>#</c> comment lines, quotes, BOM, CRLF.
/// A row ends with its line. Numbers are read by <see cref="Number"/>, and the decimal mark is settled once for the file from what it holds.
/// </summary>
internal sealed class TableReader : IDisposable
{
    private readonly string _path;
    private readonly TextReader _text;
    private readonly LineReader _lines;
    private readonly RowSplit _fields;
    private readonly RowPattern _pattern;
    private DecimalMark _mark;
    private int _markLine;
    private bool _mixed;
    private bool _isSplit;
    private bool _isOver;

    private TableReader(TextReader text, string source)
    {
        _path = source;
        _text = text;
        _lines = new LineReader(text);
        Problems = new ProblemList(source);
        (Delimiter, Columns) = TableHeader.Read(ReadHeader(), Line, Problems);
        HeaderLine = Line;
        _fields = new RowSplit(Delimiter);
        _pattern = new RowPattern(Delimiter);
    }

    /// <summary>What is wrong so far; the caller throws when it has read all it wants.</summary>
    public ProblemList Problems { get; }

    public char Delimiter { get; }

    public IReadOnlyList<string> Columns { get; }

    public int HeaderLine { get; }

    /// <summary>Line of the current row, from 1.</summary>
    public int Line => _lines.Number;

    /// <summary>How the file was taken, for the reader's eye.</summary>
    public string ReadAs => $"fields separated by {TableHeader.NameOf(Delimiter)}, decimal {(_mark == DecimalMark.Comma ? "comma" : "point")}";

    public static TableReader Open(string path)
    {
        var text = TextSource.Open(path);
        try
        {
            return new TableReader(text, path);
        }
        catch
        {
            text.Dispose();
            throw;
        }
    }

    public static TableReader Parse(string text, string source)
    {
        var reader = new StringReader(text);
        if (reader.Peek() == '\uFEFF')
            reader.Read();
        return new(reader, source);
    }

    /// <summary>Index of a column, or -1.</summary>
    public int IndexOf(string column)
    {
        for (var i = 0; i < Columns.Count; i++)
        {
            if (string.Equals(Columns[i], column, StringComparison.OrdinalIgnoreCase))
                return i;
        }

        return -1;
    }

    /// <summary>Goes to the next row that holds data and has as many fields as the header.</summary>
    public bool MoveNext()
    {
        while (Advance())
        {
            if (!IsBlankOrComment(Row) && IsUsable())
                return true;
        }

        return false;
    }

    /// <summary>Keeps the current row as a pattern: all but its fields in two neighbouring columns.</summary>
    public void Remember(int firstColumn)
    {
        Split();
        _pattern.Learn(Row, _fields.StartOf(firstColumn), _fields.EndOf(firstColumn + 1));
    }

    /// <summary>Whether the current row repeats the remembered one but for those two fields.</summary>
    public bool IsLikeRemembered(int firstColumn)
    {
        Split();
        return _pattern.IsLike(Row, _fields.StartOf(firstColumn), _fields.EndOf(firstColumn + 1));
    }

    /// <summary>
    /// Goes on over the rows that repeat the remembered one but for two plain numbers, and reads these. Any other row is left for <see cref="MoveNext"/>, and so may be some alike.
    /// </summary>
    /// <param name="least">A row whose first number is less is left as well.</param>
    /// <param name="factor">By which the second numbers are multiplied.</param>
    /// <param name="pairs">Gets the numbers.</param>
    public void ReadAlike(double least, double factor, NumberPairs pairs)
    {
        var before = pairs.Count;
        var length = _pattern.Read(_lines.Ahead, _mark, least, factor, pairs);
        _lines.Skip(pairs.Count - before, length);
        _isSplit = false;
    }

    /// <summary>The current row as it stands in the file.</summary>
    public ReadOnlySpan<char> Row => _lines.Current;

    /// <summary>A field as it stands in the row, quotes and blanks included.</summary>
    public ReadOnlySpan<char> Field(int column)
    {
        Split();
        return Row[_fields.StartOf(column).._fields.EndOf(column)];
    }

    /// <summary>A field's text, without its quotes and outer blanks.</summary>
    public ReadOnlySpan<char> Text(int column)
    {
        var field = Field(column);
        if (!field.IsEmpty && char.IsAsciiLetterOrDigit(field[0]) && char.IsAsciiLetterOrDigit(field[^1]))
            return field;
        field = field.Trim();
        if (field.IsEmpty || field[0] != '"')
            return field;
        return TableHeader.Unquote(field).AsSpan().Trim();
    }

    /// <summary>Reads a field as a number; a problem is noted when it is none.</summary>
    public bool TryNumber(int column, out double value)
    {
        var text = Text(column);
        if (!Number.TryRead(text, out value, out var mark))
        {
            Reject(column, text, $"{Columns[column]} to be {Number.Expected}");
            return false;
        }

        if (mark != DecimalMark.None && mark != _mark)
            Settle(column, mark);
        return true;
    }

    /// <summary>Notes a problem at a field of the current row.</summary>
    public void Reject(int column, ReadOnlySpan<char> found, string expected) => Problems.Add(Line, CharacterOf(column), ProblemList.Shown(found), expected);

    /// <summary>Character at which a field of the current row starts, from 1.</summary>
    public int CharacterOf(int column)
    {
        Split();
        return 1 + _fields.StartOf(column);
    }

    /// <summary>Holds a decimal mark met in a quantity text to the file's own.</summary>
    public void Settle(int column, DecimalMark mark)
    {
        if (_mark == DecimalMark.None)
        {
            _mark = mark;
            _markLine = Line;
        }
        else if (_mark != mark && !_mixed)
        {
            _mixed = true;
            Problems.Add(Line, CharacterOf(column), $"a decimal {NameOf(mark)} in {ProblemList.Shown(Text(column))}",
                string.Create(CultureInfo.InvariantCulture, $"one decimal mark in the file: line {_markLine} has a decimal {NameOf(_mark)}"));
        }
    }

    public void Dispose() => _text.Dispose();

    private bool Advance()
    {
        _isSplit = false;
        try
        {
            _isOver = _isOver || !_lines.MoveNext();
        }
        catch (DecoderFallbackException)
        {
            throw TextSource.NotUtf8(_path);
        }
        catch (InvalidDataException)
        {
            Problems.Add(Line + 1, null, "a row too long to be a table's", "one reading a line");
            _isOver = true;
        }

        return !_isOver;
    }

    private void Split()
    {
        if (_isSplit)
            return;
        _fields.Split(Row);
        _isSplit = true;
    }

    private bool IsUsable()
    {
        Split();
        if (int.IsOddInteger(Row.Count('"')))
        {
            Problems.Add(Line, 1 + Row.IndexOf('"'), "a quotation mark that is not closed on its line", "a closing quotation mark");
            return false;
        }

        if (_fields.Count == Columns.Count)
            return true;
        Problems.Add(Line, null, Fields(_fields.Count), $"{Fields(Columns.Count)} as in the header{Hint()}");
        return false;
    }

    private static bool IsBlankOrComment(ReadOnlySpan<char> row)
    {
        if (!row.IsEmpty && char.IsAsciiLetterOrDigit(row[0]))
            return false;
        return TableHeader.HoldsNothing(row);
    }

    private string Hint()
    {
        if (_fields.Count > Columns.Count)
            return Delimiter == ',' ? " (where a comma is the decimal mark, separate fields by semicolons)" : "";
        foreach (var other in TableHeader.Delimiters)
        {
            if (other != Delimiter && Row.Contains(other) && Columns.Count > 1)
                return $" (fields are separated by {TableHeader.NameOf(Delimiter)} in this file, here is a {TableHeader.NameOf(other)})";
        }

        return "";
    }

    private string ReadHeader()
    {
        while (Advance())
        {
            if (!TableHeader.StandsAbove(Row))
                return Row.ToString();
        }

        Problems.ThrowIfAny();
        throw new InputException(new InputProblem(_path, null, null, Line == 0 ? "an empty file" : "no header line", "a header line and rows"));
    }

    private static string Fields(int count) => count == 1 ? "1 field" : string.Create(CultureInfo.InvariantCulture, $"{count} fields");

    private static string NameOf(DecimalMark mark) => mark == DecimalMark.Comma ? "comma" : "point";
}
