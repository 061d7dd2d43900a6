using System;
using System.Collections.Generic;
using System.Diagnostics.CodeAnalysis;
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
    private readonly Dictionary<string, FaceRows> _byRail = new(StringComparer.Ordinal);
    private readonly PassRoom _room = new();
    private readonly PassList _shared = new();
    private readonly bool _hasNeighbours;
    private FaceRows? _face;
    private PassRows? _pass;

    private SweepTable(TableReader table, string source, SetupBook? setups)
    {
        (_table, _columns, _setups, _source) = (table, new SweepColumns(table), setups, source);
        _hasNeighbours = _columns.Reading == _columns.Position + 1;
    }

    public static SweepBatch Read(TableReader table, string source, SetupBook? setups)
    {
        var reader = new SweepTable(table, source, setups);
        var any = false;
        while (table.MoveNext())
        {
            any = true;
            reader.Add();
        }

        if (!any && !table.Problems.Any)
            table.Problems.Add(table.HeaderLine, null, "a header and no rows", "at least two rows of readings");
        var sweeps = table.Problems.Any ? [] : reader.Finish();
        table.Problems.ThrowIfAny();
        var passedOver = reader._columns.PassedOver.Count == 0 ? "" : $"; not used: {string.Join(", ", reader._columns.PassedOver)}";
        return new SweepBatch(source, FixedList<Sweep>.Own(sweeps), $"{table.ReadAs}; readings in {reader._columns.Unit}{passedOver}");
    }

    private void Add()
    {
        // A row that differs from the last sound one in position and reading only belongs to the same pass.
        if (_hasNeighbours && _pass is not null && _table.IsLikeRemembered(_columns.Position))
        {
            if (ReadNumbers(out var position, out var reading))
                Add(position, reading);
        }
        else
        {
            if (!AddNamed() || !_hasNeighbours)
                return;
            _table.Remember(_columns.Position);
        }

        _table.ReadAlike(_columns.IsBare ? double.NegativeInfinity : 0, _face!.Factor, _pass!.Open(_room));
        _pass.LastLine = _table.Line;
    }

    private void Add(double position, double reading)
    {
        _pass!.Open(_room).Add(position, reading * _face!.Factor);
        _pass.LastLine = _table.Line;
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
        var rail = Text(_columns.Rail);
        var face = Text(_columns.Face);
        var pass = Text(_columns.Pass);
        var direction = Text(_columns.Direction);
        if ((!_columns.IsBare && !IsNamed(rail, face, pass, direction)) || !sound)
            return false;
        if (_face is null || !rail.SequenceEqual(_face.Rail) || !face.SequenceEqual(_face.Face))
            GoToFace(rail, face);
        CheckFace(_face);
        GoToPass(_face, pass, direction, Text(_columns.Lay));
        Add(position, reading);
        return true;
    }

    // Plain ASCII is told at a glance: this runs for every row.
    private static bool IsPrintable(ReadOnlySpan<char> text) => !text.ContainsAnyExceptInRange(' ', '~') || PrintableText.Is(text);

    private bool IsNamed(ReadOnlySpan<char> rail, ReadOnlySpan<char> face, ReadOnlySpan<char> pass, ReadOnlySpan<char> direction)
    {
        if (rail.IsEmpty || rail.Length > 64 || !IsPrintable(rail))
            _table.Reject(_columns.Rail, rail, "a rail's name of 1 to 64 printable characters");
        if (face is not ("side" or "top"))
            _table.Reject(_columns.Face, face, "the face: side or top");
        if (direction is not ("forward" or "back"))
            _table.Reject(_columns.Direction, direction, "the direction: forward or back");
        if (pass.IsEmpty)
            _table.Reject(_columns.Pass, [], "the pass: a number or a name");
        if (!IsPrintable(pass))
            _table.Reject(_columns.Pass, pass, "the pass: printable characters");
        return !rail.IsEmpty && face is "side" or "top";
    }

    private ReadOnlySpan<char> Text(int column) => column < 0 ? [] : _table.Text(column);

    private void CheckFace(FaceRows face)
    {
        var setup = Text(_columns.Setup);
        if (!setup.SequenceEqual(face.Setup))
            _table.Reject(_columns.Setup, setup, $"one set-up for {face.Name}: an earlier row has {ProblemList.Shown(face.Setup)}");
        var track = Text(_columns.Track);
        if (!track.SequenceEqual(face.Track))
            _table.Reject(_columns.Track, track, $"one track for {face.Name}: an earlier row has {ProblemList.Shown(face.Track)}");
    }

    private void GoToPass(FaceRows face, ReadOnlySpan<char> pass, ReadOnlySpan<char> direction, ReadOnlySpan<char> lay)
    {
        if (_pass is not null && _pass.Is(pass, direction, lay))
            return;
        _pass?.Close(_room);
        _pass = face.Open(_shared).Find(pass, direction, lay, _room);
    }

    [MemberNotNull(nameof(_face))]
    private void GoToFace(ReadOnlySpan<char> rail, ReadOnlySpan<char> face)
    {
        _pass?.Close(_room);
        _pass = null;
        _face?.Close(_shared, _room);
        _byRail.GetAlternateLookup<ReadOnlySpan<char>>().TryGetValue(rail, out var first);
        _face = first;
        while (_face is not null && !face.SequenceEqual(_face.Face))
            _face = _face.OtherOfRail;
        if (_face is not null)
            return;
        var setup = _room.Name(Text(_columns.Setup));
        _face = new FaceRows(first?.Rail ?? rail.ToString(), _room.Name(face), setup, _room.Name(Text(_columns.Track)), _table.Line, FactorOf(SetupOf(setup)) ?? 1);
        if (first is null)
            _byRail.Add(_face.Rail, _face);
        else
            first.OtherOfRail = _face;
        _faces.Add(_face);
    }

    private Sweep[] Finish()
    {
        var sweeps = new Sweep[_faces.Count];
        for (var i = 0; i < sweeps.Length; i++)
            sweeps[i] = Finish(_faces[i]);
        return sweeps;
    }

    private Sweep Finish(FaceRows face)
    {
        var setup = SetupOf(face.Setup);
        if (_setups is not null && setup is null)
        {
            _table.Problems.Add(face.FirstLine, null, face.Setup.Length > 0 ? $"the set-up {ProblemList.Shown(face.Setup)}" : $"no set-up for {face.Name}",
                $"a set-up of {_setups.Source}: {string.Join(", ", _setups.Setups.Select(s => s.Id))}");
        }

        if (FactorOf(setup) is null)
            _table.Problems.Add(_table.HeaderLine, null, "readings in divisions and no set-up that says how large a division is", "a set-ups file with the dial's division_um");
        var passes = face.Finish(_room);
        if (face.IsOneStation)
            _table.Problems.Add(face.LastLine, null, $"one station for {face.Name}", "at least two stations at different positions");
        RailFace? which = face.Face switch
        {
            "side" => RailFace.Side,
            "top" => RailFace.Top,
            _ => null,
        };
        return new Sweep(which is null ? null : face.Rail, which, face.Setup.Length == 0 ? null : face.Setup, setup, passes, _source) { Track = face.Track.Length == 0 ? null : face.Track };
    }

    private Setup? SetupOf(string id) => id.Length > 0 ? _setups?.Find(id) : _setups?.Setups.Count == 1 ? _setups.Setups[0] : null;

    /// <summary>Micrometres for one unit of the readings; null when nothing says so.</summary>
    private double? FactorOf(Setup? setup) => _columns.Unit switch
    {
        "mm" => 1000,
        "in" => 25400,
        "div" => setup?.DivisionUm,
        _ => 1,
    };
}
