using System;
using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>Turns the rows of a sweeps table into sweeps; a row with a problem is noted and left out, and the whole is refused at the end.</summary>
internal sealed class SweepTable
{
    private readonly TableReader _table;
    private readonly SweepColumns _columns;
    private readonly SetupBook? _setups;
    private readonly string _source;
    private readonly List<FaceRows> _faces = [];
    private readonly Dictionary<string, FaceRows> _byName = new(StringComparer.Ordinal);
    private FaceRows? _face;
    private PassRows? _pass;

    // The last sound row but for its position and reading: a row that only differs there belongs to the same pass.
    private readonly HashSet<string> _names = new(StringComparer.Ordinal);
    private FixedList<double> _stations = FixedList<double>.Empty;
    private int _rowsOfLastPass;
    private string _before = "";
    private string _behind = "";

    private SweepTable(TableReader table, string source, SetupBook? setups)
        => (_table, _columns, _setups, _source) = (table, new SweepColumns(table), setups, source);

    public static SweepBatch Read(TableReader table, string source, SetupBook? setups)
    {
        var reader = new SweepTable(table, source, setups);
        var rows = 0;
        while (table.MoveNext())
        {
            rows++;
            reader.Add();
        }

        if (rows == 0 && !table.Problems.Any)
            table.Problems.Add(table.HeaderLine, null, "a header and no rows", "at least two rows of readings");
        var sweeps = table.Problems.Any ? [] : reader._faces.Select(reader.Finish).ToArray();
        table.Problems.ThrowIfAny();
        var passedOver = reader._columns.PassedOver.Count == 0 ? "" : $"; not used: {string.Join(", ", reader._columns.PassedOver)}";
        return new SweepBatch(source, sweeps, $"{table.ReadAs}; readings in {reader._columns.Unit}{passedOver}");
    }

    private void Add()
    {
        var row = _table.Row;
        var position = _table.Field(_columns.Position);
        var reading = _table.Field(_columns.Reading);
        var isSplit = row.Overlaps(position, out var start) & row.Overlaps(reading, out var end) && _columns.Reading == _columns.Position + 1;
        var before = isSplit ? row[..start] : [];
        var behind = isSplit ? row[(end + reading.Length)..] : [];
        if (isSplit && _pass is not null && before.SequenceEqual(_before) && behind.SequenceEqual(_behind))
        {
            if (ReadNumbers(out var x, out var z))
                _pass.Add(x, z, _table.Line);
            return;
        }

        if (!AddNamed() || !isSplit)
            return;
        (_before, _behind) = (before.ToString(), behind.ToString());
    }

    private bool ReadNumbers(out double position, out double reading)
    {
        var sound = _table.TryNumber(_columns.Position, out position) & _table.TryNumber(_columns.Reading, out reading);
        if (_columns.IsBare || position >= 0)
            return sound;
        _table.Reject(_columns.Position, _table.Text(_columns.Position), "a position from 0 mm, the end with the dot");
        return false;
    }

    private bool AddNamed()
    {
        var sound = ReadNumbers(out var position, out var reading);
        if (_columns.Temperature >= 0 && !_table.Text(_columns.Temperature).IsEmpty)
            sound &= _table.TryNumber(_columns.Temperature, out _);
        if ((!_columns.IsBare && !IsNamed()) || !sound)
            return false;
        GoToPass();
        _pass!.Add(position, reading, _table.Line);
        return true;
    }

    private bool IsNamed()
    {
        var rail = _table.Text(_columns.Rail);
        if (rail.IsEmpty || rail.Length > 64 || rail.ContainsAnyInRange('\0', '\x1f'))
            _table.Reject(_columns.Rail, rail, "a rail's name of 1 to 64 characters");
        var face = _table.Text(_columns.Face);
        if (face is not ("side" or "top"))
            _table.Reject(_columns.Face, face, "the face: side or top");
        var direction = _table.Text(_columns.Direction);
        if (direction is not ("forward" or "back"))
            _table.Reject(_columns.Direction, direction, "the direction: forward or back");
        if (_table.Text(_columns.Pass).IsEmpty)
            _table.Reject(_columns.Pass, [], "the pass: a number or a name");
        return !rail.IsEmpty && face is "side" or "top";
    }

    private ReadOnlySpan<char> Text(int column) => column < 0 ? [] : _table.Text(column);

    private void GoToPass()
    {
        var rail = Text(_columns.Rail);
        var face = Text(_columns.Face);
        if (_face is null || !rail.SequenceEqual(_face.Rail) || !face.SequenceEqual(_face.Face))
        {
            _rowsOfLastPass = _pass?.Count ?? 0;
            var name = $"{rail}\n{face}";
            if (!_byName.TryGetValue(name, out _face))
            {
                _face = new FaceRows(Known(rail), Known(face), Known(Text(_columns.Setup)), Known(Text(_columns.Track)));
                _byName.Add(name, _face);
                _faces.Add(_face);
            }

            _pass = null;
        }

        if (!Text(_columns.Setup).SequenceEqual(_face.Setup))
            _table.Reject(_columns.Setup, Text(_columns.Setup), $"one set-up for {_face.Name}: an earlier row has {ProblemList.Shown(_face.Setup)}");
        if (!Text(_columns.Track).SequenceEqual(_face.Track))
            _table.Reject(_columns.Track, Text(_columns.Track), $"one track for {_face.Name}: an earlier row has {ProblemList.Shown(_face.Track)}");
        if (_pass is null || !Text(_columns.Pass).SequenceEqual(_pass.Pass) || !Text(_columns.Direction).SequenceEqual(_pass.Direction) || !Text(_columns.Lay).SequenceEqual(_pass.Lay))
            _pass = _face.PassOf(Text(_columns.Pass), Text(_columns.Direction), Text(_columns.Lay)) ?? NewPass(_face);
    }

    private PassRows NewPass(FaceRows face)
    {
        // As many rows as the pass before had: most batches are swept at the same stations throughout.
        var added = new PassRows(Known(Text(_columns.Pass)), Known(Text(_columns.Direction)), Known(Text(_columns.Lay)), _table.Line, _pass?.Count ?? _rowsOfLastPass);
        face.Passes.Add(added);
        return added;
    }

    /// <summary>One string for equal names, however often they stand in the file.</summary>
    private string Known(ReadOnlySpan<char> name)
    {
        var names = _names.GetAlternateLookup<ReadOnlySpan<char>>();
        if (!names.TryGetValue(name, out var known))
        {
            known = name.ToString();
            _names.Add(known);
        }

        return known;
    }

    private Sweep Finish(FaceRows face)
    {
        var setup = SetupOf(face);
        var factor = _columns.Unit switch
        {
            "mm" => 1000,
            "in" => 25400,
            "div" => setup?.DivisionUm ?? double.NaN,
            _ => 1,
        };
        if (double.IsNaN(factor))
        {
            _table.Problems.Add(_table.HeaderLine, null, "readings in divisions and no set-up that says how large a division is", "a set-ups file with the dial's division_um");
            factor = 1;
        }

        var passes = new SweepPass[face.Passes.Count];
        for (var i = 0; i < passes.Length; i++)
            passes[i] = face.Passes[i].Finish(factor, ref _stations);
        if (IsOneStation(passes))
            _table.Problems.Add(face.Passes[^1].LastLine, null, $"one station for {face.Name}", "at least two stations at different positions");
        RailFace? which = face.Face switch
        {
            "side" => RailFace.Side,
            "top" => RailFace.Top,
            _ => null,
        };
        return new Sweep(which is null ? null : face.Rail, which, face.Setup.Length == 0 ? null : face.Setup, setup, FixedList<SweepPass>.Own(passes), _source) { Track = face.Track.Length == 0 ? null : face.Track };
    }

    private static bool IsOneStation(SweepPass[] passes)
    {
        var first = passes[0].PositionsMm[0];
        return passes.All(p => p.PositionsMm[0] == first && p.PositionsMm[^1] == first);
    }

    private Setup? SetupOf(FaceRows face)
    {
        if (_setups is null)
            return null;
        var setup = face.Setup.Length > 0 ? _setups.Find(face.Setup) : _setups.Setups.Count == 1 ? _setups.Setups[0] : null;
        if (setup is null)
        {
            _table.Problems.Add(face.Passes[0].FirstLine, null, face.Setup.Length > 0 ? $"the set-up {ProblemList.Shown(face.Setup)}" : $"no set-up for {face.Name}",
                $"a set-up of {_setups.Source}: {string.Join(", ", _setups.Setups.Select(s => s.Id))}");
        }

        return setup;
    }

    private sealed class FaceRows(string rail, string face, string setup, string track)
    {
        public string Rail { get; } = rail;

        public string Face { get; } = face;

        public string Setup { get; } = setup;

        public string Track { get; } = track;

        public string Name => Rail.Length == 0 ? "the profile" : $"{Rail} {Face}";

        public List<PassRows> Passes { get; } = [];

        public PassRows? PassOf(ReadOnlySpan<char> pass, ReadOnlySpan<char> direction, ReadOnlySpan<char> lay)
        {
            foreach (var known in Passes)
            {
                if (pass.SequenceEqual(known.Pass) && direction.SequenceEqual(known.Direction) && lay.SequenceEqual(known.Lay))
                    return known;
            }

            return null;
        }
    }
}
