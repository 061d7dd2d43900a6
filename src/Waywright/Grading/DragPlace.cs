namespace Waywright;

/// <summary>What a place of higher drag goes with.</summary>
public enum DragCause
{
    /// <summary>It stays with the rail, in both directions and with two carriages: the rail binds there.</summary>
    Rail,

    /// <summary>One carriage has it in both directions and another one runs through freely: it moves with the carriage.</summary>
    Carriage,

    /// <summary>It comes in one direction only: the pull or what hangs on the carriage, not the rail.</summary>
    Direction,

    /// <summary>Runs that would tell are missing or contradict each other.</summary>
    Undecided,

    /// <summary>Most runs over the place do not have it.</summary>
    NotRepeated,
}

/// <summary>A stretch of a rail over which some carriage needed more force than elsewhere.</summary>
/// <param name="Rail">The rail's name.</param>
/// <param name="FromMm">Its near end, mm: halfway to the last reading before it.</param>
/// <param name="ToMm">Its far end, mm: halfway to the first reading after it.</param>
/// <param name="PeakRatio">The largest force in it over the median of its run.</param>
/// <param name="Cause">What it goes with.</param>
/// <param name="Seen">Which carriages had it in which direction, such as <c>A forward and back, B back</c>; <c>no run again</c> where none had it in most runs.</param>
/// <param name="Next">One sentence: what to do.</param>
public sealed record DragPlace(string Rail, double FromMm, double ToMm, double PeakRatio, DragCause Cause, string Seen, string Next)
{
    /// <summary>The carriage that it moves with; null for every other cause.</summary>
    internal string? Carriage { get; init; }

    /// <summary><c>147.5 to 162.5 mm</c>.</summary>
    internal string Where => $"{NumberText.Plain(System.Math.Round(FromMm, 1))} to {NumberText.Plain(System.Math.Round(ToMm, 1))} mm";
}
