using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;

namespace Waywright;

/// <summary>Turns the rows of a rails table into rails; everything that is wrong is listed.</summary>
internal sealed class RailStockReader
{
    private const int LongestName = 64;

    // No workshop has a longer rail, and a slip of the unit is found.
    private const double LargestMm = 10_000;
    private const int MostHoles = 2000;

    private static readonly string[] Needed = ["rail", "width_mm", "length_mm", "pitch_mm", "end_distance_mm"];
    private static readonly string[] Optional = ["counterbore_mm", "mass_g", "note"];

    private readonly TableReader _table;
    private readonly List<RailStock.Rail> _rails = [];
    private readonly Dictionary<string, int> _lines = new(StringComparer.Ordinal);

    public RailStockReader(TableReader table)
    {
        _table = table;
        foreach (var name in Needed.Where(name => table.IndexOf(name) < 0))
            table.Problems.Add(table.HeaderLine, null, $"no column {name}", $"the columns {string.Join(',', Needed)}");
        table.Problems.ThrowIfAny();
    }

    public RailStock Read(string source)
    {
        var rows = 0;
        while (_table.MoveNext())
        {
            rows++;
            Add();
        }

        if (rows == 0 && !_table.Problems.Any)
            _table.Problems.Add(_table.HeaderLine, null, "a header and no rows", "a row for each rail");
        _table.Problems.ThrowIfAny();
        var unused = _table.Columns.Where(c => !Needed.Concat(Optional).Contains(c, StringComparer.OrdinalIgnoreCase)).ToArray();
        return new RailStock(source, $"{_table.ReadAs}{(unused.Length == 0 ? "" : $"; not used: {string.Join(", ", unused)}")}", _rails);
    }

    private void Add()
    {
        var name = Name();
        var width = Size("width_mm");
        var length = Size("length_mm");
        var pitch = Size("pitch_mm");
        var end = Size("end_distance_mm");
        var counterbore = Optionally("counterbore_mm", LargestMm);
        var mass = Optionally("mass_g", 1e6);
        if (name is null || width is null || length is null || pitch is null || end is null)
            return;
        if (end >= length)
            Reject("end_distance_mm", $"a first hole within the rail's length of {Plain(length)} mm");
        else if (length / pitch > MostHoles)
            Reject("pitch_mm", $"a pitch that gives at most {Plain(MostHoles)} holes");
        else if (counterbore >= pitch || counterbore >= width)
            Reject("counterbore_mm", "a diameter below width and pitch");
        else
            _rails.Add(new RailStock.Rail(name, width.Value, length.Value, pitch.Value, end.Value, counterbore, mass, _table.IndexOf("note") is var note && note >= 0 ? _table.Text(note).ToString() : ""));
    }

    private string? Name()
    {
        var column = _table.IndexOf("rail");
        var name = _table.Text(column).ToString();
        if (name.Length is 0 or > LongestName || name.Any(c => char.IsControl(c) || char.GetUnicodeCategory(c) == UnicodeCategory.Format))
            _table.Reject(column, name, "a rail's name of 1 to 64 printable characters");
        else if (!_lines.TryAdd(name, _table.Line))
            _table.Reject(column, name, string.Create(CultureInfo.InvariantCulture, $"each rail once: it is in line {_lines[name]} already"));
        else
            return name;
        return null;
    }

    private double? Size(string column, double largest = LargestMm)
    {
        var index = _table.IndexOf(column);
        if (!_table.TryNumber(index, out var value))
            return null;
        if (value > 0 && value <= largest)
            return value;
        Reject(column, $"{column} above 0 and up to {Plain(largest)}");
        return null;
    }

    private double? Optionally(string column, double largest) => _table.IndexOf(column) is var index && (index < 0 || _table.Text(index).IsEmpty) ? null : Size(column, largest);

    private void Reject(string column, string expected) => _table.Reject(_table.IndexOf(column), _table.Text(_table.IndexOf(column)), expected);

    private static string Plain(double? value) => NumberText.Plain(value!.Value);
}
