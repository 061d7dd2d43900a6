namespace Waywright;

/// <summary>One face of one rail while a table is read.</summary>
internal sealed class FaceRows(string rail, string face, string setup, string track, int firstLine, double factor)
{
    private PassList? _open;
    private FixedList<SweepPass> _passes = FixedList<SweepPass>.Empty;

    public string Rail { get; } = rail;

    public string Face { get; } = face;

    public string Setup { get; } = setup;

    public string Track { get; } = track;

    public int FirstLine { get; } = firstLine;

    /// <summary>Last line of the pass that was met last.</summary>
    public int LastLine { get; private set; }

    /// <summary>Whether all passes together have one station, once they are finished.</summary>
    public bool IsOneStation { get; private set; }

    /// <summary>Micrometres for one unit of the readings.</summary>
    public double Factor { get; } = factor;

    public FaceRows? OtherOfRail { get; set; }

    public string Name => Rail.Length == 0 ? "the profile" : $"{Rail} {Face}";

    /// <summary>Where passes of this face are found. A face that is met for the first time uses the shared list; one that goes on after others keeps its own.</summary>
    public PassList Open(PassList shared)
    {
        if (_open is not null)
            return _open;
        if (_passes.Count > 0)
            return _open = new PassList(_passes, LastLine);
        shared.Clear();
        return _open = shared;
    }

    /// <summary>Leaves the shared list to the next face.</summary>
    public void Close(PassList shared, PassRoom room)
    {
        if (_open == shared)
            Finish(room);
    }

    /// <summary>The passes in rising position.</summary>
    public FixedList<SweepPass> Finish(PassRoom room)
    {
        if (_open is null)
            return _passes;
        LastLine = _open.Last.LastLine;
        var passes = _open.Finish(room);
        IsOneStation = HaveOneStation(passes);
        _open = null;
        return _passes = FixedList<SweepPass>.Own(passes);
    }

    private static bool HaveOneStation(SweepPass[] passes)
    {
        var first = passes[0].PositionsMm[0];
        foreach (var pass in passes)
        {
            if (pass.PositionsMm[0] != first || pass.PositionsMm[^1] != first)
                return false;
        }

        return true;
    }
}
