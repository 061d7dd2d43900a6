using System;
using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>Joins what several runs over a rail found, and says what each place goes with.</summary>
internal static class DragPlaces
{
    // A carriage is some centimetres long and its position is read at an end: nearer stretches are one place. Common practice, no source.
    private const double SamePlaceMm = 10;

    private enum Way
    {
        Seen,
        Free,
        Missing,
    }

    private sealed record Passage(string Carriage, Way Forward, Way Back)
    {
        public bool IsSeenBoth => (Forward, Back) is (Way.Seen, Way.Seen);

        public bool IsFreeBoth => (Forward, Back) is (Way.Free, Way.Free);

        public bool IsSeen => Forward == Way.Seen || Back == Way.Seen;

        public bool IsOneWay => (Forward, Back) is (Way.Seen, Way.Free) or (Way.Free, Way.Seen);

        public bool IsHalf => (Forward, Back) is (Way.Seen, Way.Missing) or (Way.Missing, Way.Seen);

        public string OneWay => Forward == Way.Seen ? "forward" : "back";

        public string Told => IsSeenBoth ? $"{Carriage} forward and back" : $"{Carriage} {OneWay}";
    }

    public static IEnumerable<DragPlace> Of(IReadOnlyList<DragRun> runs)
        => runs.GroupBy(r => r.Rail).SelectMany(rail => Join(rail.SelectMany(r => r.Stretches)).Select(place => Judge(rail.Key, place, [.. rail])))
            .OrderBy(p => p.Cause);

    private static IEnumerable<DragStretch> Join(IEnumerable<DragStretch> stretches)
    {
        DragStretch? open = null;
        foreach (var next in stretches.OrderBy(s => s.FromMm))
        {
            if (open is not null && next.FromMm - open.ToMm <= SamePlaceMm)
            {
                open = new DragStretch(open.FromMm, Math.Max(open.ToMm, next.ToMm), Math.Max(open.PeakRatio, next.PeakRatio));
                continue;
            }

            if (open is not null)
                yield return open;
            open = next;
        }

        if (open is not null)
            yield return open;
    }

    private static DragPlace Judge(string rail, DragStretch place, DragRun[] runs)
    {
        var passages = runs.GroupBy(r => r.Carriage).Select(c => new Passage(c.Key, WayOf(c, "forward", place), WayOf(c, "back", place))).ToArray();
        var seen = passages.Where(p => p.IsSeen).ToArray();
        var told = seen.Length == 0 ? "no run again" : string.Join(", ", seen.Select(p => p.Told));
        var where = $"{Mm(place.FromMm)} to {Mm(place.ToMm)} mm";
        var (cause, next) = Answer(rail, where, passages, seen);
        return new DragPlace(rail, place.FromMm, place.ToMm, place.PeakRatio, cause, told, next) { Carriage = cause == DragCause.Carriage ? seen[0].Carriage : null };
    }

    private static (DragCause Cause, string Next) Answer(string rail, string where, Passage[] passages, Passage[] seen)
    {
        var both = passages.Where(p => p.IsSeenBoth).ToArray();
        if (both.Length >= 2)
            return (DragCause.Rail, $"Wipe rail {rail} at {where} and run it again; if it still binds there, send it back.");
        if (both.Length == 1 && seen.Length == 1 && passages.Any(p => p.IsFreeBoth))
            return (DragCause.Carriage, $"Look at carriage {both[0].Carriage}: the place at {where} of rail {rail} moves with the carriage.");
        if (seen.Length == 0)
            return (DragCause.NotRepeated, $"Wipe rail {rail} at {where} and go on: most runs over it are free.");
        if (seen.All(p => p.IsOneWay) && seen.Select(p => p.OneWay).Distinct().Count() == 1)
            return (DragCause.Direction, $"Look at the pull and at what hangs on the carriage: the place at {where} of rail {rail} comes {seen[0].OneWay} only.");
        return (DragCause.Undecided, Missing(rail, where, passages, seen));
    }

    private static string Missing(string rail, string where, Passage[] passages, Passage[] seen)
    {
        if (seen.FirstOrDefault(p => p.IsHalf) is { } half)
            return $"Run carriage {half.Carriage} over {where} of rail {rail} {(half.OneWay == "forward" ? "back" : "forward")} as well, starting well away from it.";
        if (passages.FirstOrDefault(p => !p.IsSeen && !p.IsFreeBoth) is { } lacking)
            return $"Run carriage {lacking.Carriage} over {where} of rail {rail} in both directions, starting well away from it.";
        return passages.Length == 1
            ? $"Run a second carriage over {where} of rail {rail} in both directions: one carriage can't tell the rail from itself."
            : $"Run all carriages over {where} of rail {rail} again in both directions: these runs contradict each other.";
    }

    // More than half of the runs that went over it.
    private static Way WayOf(IEnumerable<DragRun> runs, string direction, DragStretch place)
    {
        var over = runs.Where(r => r.Direction == direction && r.Covers(place.FromMm, place.ToMm)).ToArray();
        var with = over.Count(r => r.Stretches.Any(s => s.FromMm <= place.ToMm && s.ToMm >= place.FromMm));
        return over.Length == 0 ? Way.Missing : 2 * with > over.Length ? Way.Seen : Way.Free;
    }

    private static string Mm(double mm) => NumberText.Plain(Math.Round(mm, 1));
}
