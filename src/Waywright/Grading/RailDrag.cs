using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;

namespace Waywright;

/// <summary>What a drag log says of one rail.</summary>
/// <param name="Carriages">Those that ran along it, or of which something was noted.</param>
/// <param name="Places">Its places of higher drag.</param>
/// <param name="Spread">How unevenly they run; null where only notes were written down.</param>
internal sealed record RailDrag(IReadOnlyList<CarriageDrag> Carriages, IReadOnlyList<DragPlace> Places, MeasuredFeature? Spread)
{
    private const int MostNamed = 12;

    /// <summary>Whether a place stays with the rail in both directions and with a second carriage.</summary>
    public bool IsBound => Places.Any(p => p.Cause == DragCause.Rail);

    /// <summary>Places that may be the rail's: seen, not proven.</summary>
    public IReadOnlyList<DragPlace> Open => FixedList<DragPlace>.Copy(Places.Where(p => p.Cause == DragCause.Undecided));

    /// <summary>Refuses a log whose rails are called otherwise than those that were swept.</summary>
    public static void Check(DragLog log, IReadOnlyList<string> swept)
    {
        var problems = new ProblemList(log.Source);
        var pulled = log.Carriages.Select(c => c.Rail).Distinct().ToArray();
        var byName = swept.DistinctBy(s => s, StringComparer.OrdinalIgnoreCase).ToDictionary(s => s, StringComparer.OrdinalIgnoreCase);
        foreach (var rail in pulled.Except(swept))
        {
            if (byName.TryGetValue(rail, out var same))
                problems.Add(null, null, $"rail {ProblemList.Shown(rail)}", $"{ProblemList.Shown(same)}, as the sweeps write it");
        }

        if (!problems.Any && !pulled.Intersect(swept).Any())
            problems.Add(null, null, $"{string.Join(", ", pulled.Take(MostNamed))}, and no rail that was swept", $"one of {string.Join(", ", swept.Take(MostNamed))}");
        problems.ThrowIfAny();
    }

    /// <summary>Each rail's part of a log, by its name, in one pass; empty without a log.</summary>
    public static IReadOnlyDictionary<string, RailDrag> ByRail(DragLog? log, GradeRules rules)
    {
        if (log is null)
            return new Dictionary<string, RailDrag>();
        var places = log.Places.ToLookup(p => p.Rail, StringComparer.Ordinal);
        return log.Carriages.GroupBy(c => c.Rail, StringComparer.Ordinal).ToDictionary(c => c.Key, c => Of([.. c.Select(carriage => carriage with { Rules = rules })], places[c.Key]), StringComparer.Ordinal);
    }

    private static RailDrag Of(CarriageDrag[] carriages, IEnumerable<DragPlace> found)
    {
        var places = FixedList<DragPlace>.Copy(found);
        return new RailDrag(FixedList<CarriageDrag>.Copy(carriages), places, SpreadOf([.. carriages.Where(c => c.SpreadPercent is not null)], places));
    }

    /// <summary>The worst carriage's spread; beyond a limit is proven where two carriages are beyond it, as one can't tell the rail from itself.</summary>
    private static MeasuredFeature? SpreadOf(CarriageDrag[] run, IReadOnlyList<DragPlace> places)
    {
        if (run.Length == 0)
            return null;
        // A place that moves with a carriage is no fault of the rail: others stand for the rail where there are any.
        var sound = run.Where(c => places.All(p => p.Carriage != c.Carriage)).ToArray();
        var judged = (sound.Length > 0 ? sound : run).OrderBy(c => c.SpreadPercent).ToArray();
        var (best, worst) = (judged[0], judged[^1]);
        var pull = places.FirstOrDefault(p => p.Cause == DragCause.Direction);
        var isProven = sound.Length >= 2 && pull is null;
        return new MeasuredFeature(RailFeature.Drag, worst.SpreadPercent, null)
        {
            Proven = isProven ? best.SpreadPercent : 0,
            With = $"carriage {worst.Carriage}",
            Remedy = pull is not null ? char.ToLowerInvariant(pull.Next[0]) + pull.Next[1..]
                : sound.Length < 2 ? "run a second carriage along it in both directions: one carriage can't tell the rail from itself."
                : string.Create(CultureInfo.InvariantCulture, $"clean and grease carriage {worst.Carriage} and run it again; with carriage {best.Carriage} it is {best.SpreadPercent:0} %."),
        };
    }
}
