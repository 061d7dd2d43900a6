using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;

namespace Waywright;

/// <summary>Turns the rows of a drag log into runs; everything that is wrong is listed.</summary>
internal sealed class DragLogReader
{
    private const int LongestName = 64;
    private const int LongestNote = 200;
    private const double MostMm = 100_000;
    private const double MostN = 10_000;
    private const double LeastN = 1e-6;

    private static readonly string[] Needed = ["rail", "carriage", "direction", "position_mm", "force_n"];

    private readonly TableReader _table;
    private readonly int[] _columns;
    private readonly int _note;
    private readonly List<(string Rail, string Carriage)> _order = [];
    private readonly List<OpenRun> _runs = [];
    private readonly Dictionary<(string Rail, string Carriage), List<string>> _notes = [];

    public DragLogReader(TableReader table)
    {
        _table = table;
        _columns = [.. Needed.Select(table.IndexOf)];
        _note = table.IndexOf("note");
        foreach (var name in Needed.Where(name => table.IndexOf(name) < 0))
            table.Problems.Add(table.HeaderLine, null, $"no column {name}", $"the columns {string.Join(',', Needed)}");
        table.Problems.ThrowIfAny();
    }

    private sealed record OpenRun(string Rail, string Carriage, string Direction, int Line)
    {
        public List<double> PositionsMm { get; } = [];

        public List<double> ForcesN { get; } = [];

        public bool GoesOn(string rail, string carriage, string direction, double positionMm)
            => (Rail, Carriage, Direction) == (rail, carriage, direction) && (direction == "forward" ? positionMm > PositionsMm[^1] : positionMm < PositionsMm[^1]);
    }

    public DragLog Read(string source, GradeRules rules)
    {
        var rows = 0;
        while (_table.MoveNext())
        {
            rows++;
            Add();
        }

        if (rows == 0 && !_table.Problems.Any)
            _table.Problems.Add(_table.HeaderLine, null, "a header and no rows", "a row for each reading");
        // A row that was refused would cut its run in two, so runs are judged where all rows are sound.
        _table.Problems.ThrowIfAny();
        var runs = _runs.Select(Judged).OfType<DragRun>().ToArray();
        _table.Problems.ThrowIfAny();
        var unused = _table.Columns.Where((_, i) => i != _note && !_columns.Contains(i)).ToArray();
        var own = runs.ToLookup(r => (r.Rail, r.Carriage));
        var carriages = _order.Select(c => CarriageDrag.Of(c.Rail, c.Carriage, [.. own[c]], FixedList<string>.Copy(_notes[c])) with { Rules = rules });
        return new DragLog(source, $"{_table.ReadAs}{(unused.Length == 0 ? "" : $"; not used: {string.Join(", ", unused)}")}", carriages, runs, rules);
    }

    private void Add()
    {
        var rail = Text(0, LongestName, "a rail's name of 1 to 64 printable characters");
        var carriage = Text(1, LongestName, "a carriage's name of 1 to 64 printable characters");
        var direction = _table.Text(_columns[2]).ToString();
        var isDirection = direction is "forward" or "back";
        if (!isDirection)
            _table.Reject(_columns[2], direction, "the direction: forward or back");
        var position = Number(3, MostMm);
        var note = Note();
        var isNoteOnly = note is { Length: > 0 } && _table.Text(_columns[4]).IsEmpty;
        var force = isNoteOnly ? null : Number(4, MostN);
        if (rail is null || carriage is null || !isDirection || position is null || note is null || (force is null && !isNoteOnly))
            return;
        if (!_notes.TryGetValue((rail, carriage), out var notes))
        {
            _notes[(rail, carriage)] = notes = [];
            _order.Add((rail, carriage));
        }

        if (note.Length > 0)
            notes.Add($"{NumberText.Plain(position.Value)} mm, {direction}: {note}");
        if (force is not null)
            Add(rail, carriage, direction, position.Value, force.Value);
    }

    private void Add(string rail, string carriage, string direction, double positionMm, double forceN)
    {
        if (_runs.Count == 0 || !_runs[^1].GoesOn(rail, carriage, direction, positionMm))
            _runs.Add(new OpenRun(rail, carriage, direction, _table.Line));
        _runs[^1].PositionsMm.Add(positionMm);
        _runs[^1].ForcesN.Add(forceN);
    }

    private DragRun? Judged(OpenRun open)
    {
        var count = open.ForcesN.Count;
        if (count < DragRun.LeastReadings)
        {
            _table.Problems.Add(open.Line, null, string.Create(CultureInfo.InvariantCulture, $"a run of {count} {(count == 1 ? "reading" : "readings")}"),
                "5 readings or more to a run, positions rising forward and falling back");
            return null;
        }

        var run = new DragRun(open.Rail, open.Carriage, open.Direction, open.PositionsMm, open.ForcesN);
        if (run.MedianN >= LeastN)
            return run;
        _table.Problems.Add(open.Line, null, "a run that shows no force in half of its readings", "a gauge that shows the drag");
        return null;
    }

    private string? Text(int column, int longest, string expected)
    {
        var text = _table.Text(_columns[column]).ToString();
        if (text.Length > 0 && text.Length <= longest && PrintableText.Is(text))
            return text;
        _table.Reject(_columns[column], text, expected);
        return null;
    }

    private string? Note()
    {
        var note = _note < 0 ? "" : _table.Text(_note).ToString();
        if (note.Length <= LongestNote && PrintableText.Is(note))
            return note;
        _table.Reject(_note, note, "a note of up to 200 printable characters");
        return null;
    }

    private double? Number(int column, double most)
    {
        if (!_table.TryNumber(_columns[column], out var value))
            return null;
        if (value >= 0 && value <= most)
            return value;
        _table.Reject(_columns[column], _table.Text(_columns[column]), string.Create(CultureInfo.InvariantCulture, $"{Needed[column]} from 0 to {most}"));
        return null;
    }
}
