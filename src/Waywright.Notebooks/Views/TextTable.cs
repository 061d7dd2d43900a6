using System.Text;

namespace Waywright.Notebooks;

/// <summary>What a column of a table holds.</summary>
internal enum ColumnKind
{
    Word,
    Number,
    Sentence,
    Grade,
}

/// <summary>A small table of texts that can be written as plain text or as HTML.</summary>
internal sealed class TextTable
{
    private readonly ColumnKind[] _kinds;
    private readonly List<IReadOnlyList<string>> _rows = [];

    /// <param name="columns">Headings; one that begins with <c>#</c> holds figures and is right-aligned, with <c>~</c> sentences, with <c>!</c> grades.</param>
    public TextTable(params string[] columns)
    {
        _kinds = columns.Select(c => c[0] switch { '#' => ColumnKind.Number, '~' => ColumnKind.Sentence, '!' => ColumnKind.Grade, _ => ColumnKind.Word }).ToArray();
        Columns = columns.Select(c => c.TrimStart('#', '~', '!')).ToArray();
    }

    public IReadOnlyList<string> Columns { get; }

    public IReadOnlyList<IReadOnlyList<string>> Rows => _rows;

    public ColumnKind KindOf(int column) => _kinds[column];

    public TextTable Add(params string[] cells)
    {
        _rows.Add(cells);
        return this;
    }

    /// <summary>Columns in line, two blanks between them, a rule under the heading.</summary>
    public override string ToString()
    {
        var widths = Columns.Select((c, i) => _rows.Select(r => r[i].Length).Append(c.Length).Max()).ToArray();
        var text = new StringBuilder();
        Write(text, Columns, widths);
        Write(text, widths.Select(w => new string('-', w)).ToArray(), widths);
        foreach (var row in _rows)
            Write(text, row, widths);
        return text.ToString().TrimEnd('\n');
    }

    private void Write(StringBuilder text, IReadOnlyList<string> cells, int[] widths)
    {
        var line = new StringBuilder();
        for (var i = 0; i < cells.Count; i++)
            line.Append(i == 0 ? "" : "  ").Append(_kinds[i] == ColumnKind.Number ? cells[i].PadLeft(widths[i]) : cells[i].PadRight(widths[i]));
        text.Append(line.ToString().TrimEnd()).Append('\n');
    }
}
