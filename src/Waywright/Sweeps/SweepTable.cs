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
        var sound = _table.TryNumber(_columns.Position, out var position) & _table.TryNumber(_columns.Reading, out var reading);
        if (_columns.Temperature >= 0 && !_table.Text(_columns.Temperature).IsEmpty)
            sound &= _table.TryNumber(_columns.Temperature, out _);
        if (!_columns.IsBare && !IsNamed())
            return;
        if (!_columns.IsBare && position < 0)
        {
            _table.Reject(_columns.Position, _table.Text(_columns.Position), "a position from 0 mm, the end with the dot");
            return;
        }

        if (!sound)
            return;
        GoToPass();
        _pass!.Positions.Add(position);
        _pass.Readings.Add(reading);
        _pass.LastLine = _table.Line;
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
            var name = $"{rail}\n{face}";
            if (!_byName.TryGetValue(name, out _face))
            {
                _face = new FaceRows(rail.ToString(), face.ToString(), Text(_columns.Setup).ToString(), Text(_columns.Track).ToString());
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
            _pass = _face.PassOf(Text(_columns.Pass), Text(_columns.Direction), Text(_columns.Lay), _table.Line);
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

        var passes = face.Passes.Select(p => p.Finish(factor)).ToArray();
        if (passes.SelectMany(p => p.PositionsMm).Distinct().Take(2).Count() < 2)
            _table.Problems.Add(face.Passes[^1].LastLine, null, $"one station for {face.Name}", "at least two stations at different positions");
        RailFace? which = face.Face switch
        {
            "side" => RailFace.Side,
            "top" => RailFace.Top,
            _ => null,
        };
        return new Sweep(which is null ? null : face.Rail, which, face.Setup.Length == 0 ? null : face.Setup, setup, FixedList<SweepPass>.Own(passes), _source);
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

        public PassRows PassOf(ReadOnlySpan<char> pass, ReadOnlySpan<char> direction, ReadOnlySpan<char> lay, int line)
        {
            foreach (var known in Passes)
            {
                if (pass.SequenceEqual(known.Pass) && direction.SequenceEqual(known.Direction) && lay.SequenceEqual(known.Lay))
                    return known;
            }

            var added = new PassRows(pass.ToString(), direction.ToString(), lay.ToString(), line);
            Passes.Add(added);
            return added;
        }
    }

    private sealed class PassRows(string pass, string direction, string lay, int firstLine)
    {
        public string Pass { get; } = pass;

        public string Direction { get; } = direction;

        public string Lay { get; } = lay;

        public List<double> Positions { get; } = [];

        public List<double> Readings { get; } = [];

        public int LastLine { get; set; }

        public int FirstLine { get; } = firstLine;

        public SweepPass Finish(double factor)
        {
            var positions = Positions.ToArray();
            var readings = Readings.ToArray();
            Array.Sort(positions, readings);
            for (var i = 0; i < readings.Length; i++)
                readings[i] *= factor;
            return new SweepPass(Pass, Direction, Lay, FixedList<double>.Own(positions), FixedList<double>.Own(readings));
        }
    }
}
