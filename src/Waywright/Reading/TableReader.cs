using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Text;
using nietras.SeparatedValues;

namespace Waywright;

/// <summary>
/// Reads a delimited table row by row: header, comma or semicolon or tab, <c>#</c> comment lines, quotes, BOM, CRLF.
/// Sep splits the rows and nothing more; numbers are read by <see cref="Number"/>, and the decimal mark is settled once for the file from what it holds.
/// </summary>
internal sealed class TableReader : IDisposable
{
    private const string Delimiters = ",;\t";

    private readonly string _path;
    private readonly TextReader _text;
    private readonly SepReader _rows;
    private readonly int _linesBefore;
    private DecimalMark _mark;
    private int _markLine;
    private bool _mixed;
    private RowPattern? _pattern;
    private bool _isAhead;
    private bool _isOver;

    private TableReader(TextReader text, string source)
    {
        _path = source;
        _text = text;
        Problems = new ProblemList(source);
        var header = ReadHeader(text, source, out _linesBefore);
        HeaderLine = _linesBefore;
        Delimiter = DelimiterOf(header);
        Columns = Split(header, Delimiter).Select(name => Unquote(name.Trim()).Trim()).ToArray();
        CheckColumns();
        _rows = Sep.New(Delimiter).Reader(o => o with { HasHeader = false, DisableColCountCheck = true, DisableFastFloat = true }).From(text);
    }

    /// <summary>What is wrong so far; the caller throws when it has read all it wants.</summary>
    public ProblemList Problems { get; }

    public char Delimiter { get; }

    public IReadOnlyList<string> Columns { get; }

    public int HeaderLine { get; }

    /// <summary>Line of the current row, from 1.</summary>
    public int Line { get; private set; }

    /// <summary>How the file was taken, for the reader's eye.</summary>
    public string ReadAs => $"fields separated by {NameOf(Delimiter)}, decimal {(_mark == DecimalMark.Comma ? "comma" : "point")}";

    public static TableReader Open(string path)
    {
        var text = TextSource.Open(path);
        try
        {
            return new TableReader(text, path);
        }
        catch (DecoderFallbackException)
        {
            text.Dispose();
            throw TextSource.NotUtf8(path);
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
            var row = _rows.Current;
            Line = LineOf(row);
            if (row.ColCount == Columns.Count && IsPlain(row.Span))
                return true;
            Line -= row.Span.Count('\n');
            if (IsUsable(row))
                return true;
        }

        return false;
    }

    /// <summary>Keeps the current row as a pattern for <see cref="MoveNextAlike"/>: all but the fields of two neighbouring columns.</summary>
    public void Remember(int firstColumn)
    {
        _pattern ??= new RowPattern(Delimiter);
        _pattern.Learn(Row, Field(firstColumn), Field(firstColumn + 1));
    }

    /// <summary>Goes to the next row if it repeats the remembered one but for two plain numbers, and reads these; any other row is left for <see cref="MoveNext"/>.</summary>
    public bool MoveNextAlike(out double first, out double second)
    {
        first = second = 0;
        if (_pattern is null || !Advance())
            return false;
        var row = _rows.Current;
        _isAhead = !_pattern.TryRead(row.Span, _mark, out first, out second);
        if (_isAhead)
            return false;
        Line = LineOf(row);
        return true;
    }

    /// <summary>The current row as it stands in the file.</summary>
    public ReadOnlySpan<char> Row => _rows.Current.Span;

    /// <summary>A field as it stands in the row, quotes and blanks included.</summary>
    public ReadOnlySpan<char> Field(int column) => _rows.Current[column].Span;

    /// <summary>A field's text, without its quotes and outer blanks.</summary>
    public ReadOnlySpan<char> Text(int column)
    {
        var field = _rows.Current[column].Span.Trim();
        if (field.IsEmpty || field[0] != '"')
            return field;
        return Unquote(field).AsSpan().Trim();
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
        var row = _rows.Current;
        var at = 1;
        for (var c = 0; c < column; c++)
            at += row[c].Span.Length + 1;
        return at;
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

    public void Dispose()
    {
        _rows.Dispose();
        _text.Dispose();
    }

    // Without a header of its own Sep says that the first row starts on line 2; where rows end is right.
    private int LineOf(SepReader.Row row) => _linesBefore + row.LineNumberToExcl - 1;

    private bool Advance()
    {
        if (_isAhead)
        {
            _isAhead = false;
            return true;
        }

        try
        {
            _isOver = _isOver || !_rows.MoveNext();
        }
        catch (DecoderFallbackException)
        {
            throw TextSource.NotUtf8(_path);
        }
        catch (Exception e) when (e is InvalidDataException or NotSupportedException)
        {
            // Sep gives up on rows longer than 16 M characters: no measurement table has them.
            Problems.Add(Line + 1, null, "a row too long to be a table's", "one reading a line");
            _isOver = true;
        }

        return !_isOver;
    }

    // Most rows: they begin with a letter or a digit and hold no quotation mark, so they are no comment, not blank, and end on their line.
    private static bool IsPlain(ReadOnlySpan<char> row) => !row.IsEmpty && char.IsAsciiLetterOrDigit(row[0]) && !row.Contains('"');

    private bool IsUsable(SepReader.Row row)
    {
        var span = row.Span;
        if (span.IsWhiteSpace())
            return false;
        if (span.Contains('\n') || HasOpenQuote(row))
        {
            Problems.Add(Line, 1 + Math.Max(0, span.IndexOf('"')), "a quotation mark that is not closed on its line", "a closing quotation mark");
            return false;
        }

        if (span.TrimStart()[0] == '#')
            return false;
        if (row.ColCount == Columns.Count)
            return true;
        Problems.Add(Line, null, Fields(row.ColCount), $"{Fields(Columns.Count)} as in the header{Hint(row)}");
        return false;
    }

    private static bool HasOpenQuote(SepReader.Row row) => int.IsOddInteger(row.Span.Count('"'));

    private string Hint(SepReader.Row row)
    {
        if (row.ColCount > Columns.Count)
            return Delimiter == ',' ? " (where a comma is the decimal mark, separate fields by semicolons)" : "";
        foreach (var other in Delimiters)
        {
            if (other != Delimiter && row.Span.Contains(other) && Columns.Count > 1)
                return $" (fields are separated by {NameOf(Delimiter)} in this file, here is a {NameOf(other)})";
        }

        return "";
    }

    private static string ReadHeader(TextReader text, string source, out int lines)
    {
        lines = 0;
        while (text.ReadLine() is { } line)
        {
            lines++;
            if (!string.IsNullOrWhiteSpace(line) && line.TrimStart()[0] != '#')
                return line;
        }

        throw new InputException(new InputProblem(source, null, null, lines == 0 ? "an empty file" : "no header line", "a header line and rows"));
    }

    private char DelimiterOf(string header)
    {
        var met = Delimiters.Where(d => header.Contains(d, StringComparison.Ordinal)).ToArray();
        if (met.Length > 1)
        {
            Problems.Add(HeaderLine, header.IndexOf(met[1], StringComparison.Ordinal) + 1, $"fields separated by {string.Join(" and by ", met.Select(NameOf))}", "one separator: comma, semicolon or tab");
            Problems.ThrowIfAny();
        }

        return met.Length == 1 ? met[0] : ',';
    }

    private void CheckColumns()
    {
        var seen = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        foreach (var column in Columns)
        {
            if (column.Length == 0)
                Problems.Add(HeaderLine, null, "a column without a name", "a name for each column");
            else if (!seen.Add(column))
                Problems.Add(HeaderLine, null, $"the column {ProblemList.Shown(column)} twice", "each column once");
        }

        Problems.ThrowIfAny();
    }

    private static string[] Split(string header, char delimiter) => header.Split(delimiter);

    private static string Unquote(ReadOnlySpan<char> field)
        => field.Length >= 2 && field[0] == '"' && field[^1] == '"' ? field[1..^1].ToString().Replace("\"\"", "\"", StringComparison.Ordinal) : field.ToString();

    private static string Fields(int count) => count == 1 ? "1 field" : string.Create(CultureInfo.InvariantCulture, $"{count} fields");

    private static string NameOf(char delimiter) => delimiter switch
    {
        ',' => "comma",
        ';' => "semicolon",
        _ => "tab",
    };

    private static string NameOf(DecimalMark mark) => mark == DecimalMark.Comma ? "comma" : "point";
}
