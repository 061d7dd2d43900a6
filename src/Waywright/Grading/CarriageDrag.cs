using System;
using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>The drag of one carriage on one rail, as greased when it was run.</summary>
/// <param name="Rail">The rail's name.</param>
/// <param name="Carriage">The carriage's name.</param>
/// <param name="Runs">How many runs.</param>
/// <param name="Readings">How many readings stand behind the figures, start-ups left out; 0 where only notes were written down.</param>
/// <param name="MeanN">Mean force of both directions, N; null without readings.</param>
/// <param name="ForwardMeanN">Mean force of the forward runs, N; null where there is none.</param>
/// <param name="BackMeanN">Mean force of the back runs, N; null where there is none.</param>
/// <param name="SpreadPercent">P95 - P5 of the forces in % of their mean; both directions together, so a rig that leans widens it. Null without readings.</param>
/// <param name="StartUpN">The largest force of a start-up, N; it is in none of the other figures. Null without readings.</param>
/// <param name="Notes">What the hand felt, in the builder's words with the place; never made into a number.</param>
public sealed record CarriageDrag(
    string Rail,
    string Carriage,
    int Runs,
    int Readings,
    double? MeanN,
    double? ForwardMeanN,
    double? BackMeanN,
    double? SpreadPercent,
    double? StartUpN,
    IReadOnlyList<string> Notes)
{
    /// <summary>Its runs with their readings, in the file's order.</summary>
    internal IReadOnlyList<DragRun> Path { get; private init; } = FixedList<DragRun>.Empty;

    /// <summary>Largest spread of a rail for <c>gantry</c> by the starting rules, % of the mean: common practice, no source.</summary>
    public const double GantrySpreadPercent = 50;

    /// <summary>Largest spread of a rail for <c>z</c> by the starting rules, % of the mean: common practice, no source.</summary>
    public const double ZSpreadPercent = 100;

    /// <summary>The best grade whose limit on the spread is kept, as read, by the rules that the log was read or graded with; null for none, and without readings. A grade without such a limit is kept.</summary>
    public string? SteadyFor => SpreadPercent is { } spread ? Rules.Grades.FirstOrDefault(g => !(spread > g.LimitOf(RailFeature.Drag)))?.Grade : null;

    /// <summary>Whose limits count.</summary>
    internal GradeRules Rules { get; init; } = GradeRules.Starting;

    internal static CarriageDrag Of(string rail, string carriage, IReadOnlyList<DragRun> runs, IReadOnlyList<string> notes)
    {
        var forces = runs.SelectMany(r => r.RunningN).Order().ToArray();
        double? Mean(string direction) => runs.Any(r => r.Direction == direction) ? runs.Where(r => r.Direction == direction).SelectMany(r => r.RunningN).Average() : null;
        if (forces.Length == 0)
            return new CarriageDrag(rail, carriage, 0, 0, null, null, null, null, null, notes);
        var mean = forces.Average();
        return new CarriageDrag(rail, carriage, runs.Count, forces.Length, mean, Mean("forward"), Mean("back"), 100 * (Percentile(forces, 0.95) - Percentile(forces, 0.05)) / mean, runs.Max(r => r.StartUpN), notes) { Path = FixedList<DragRun>.Copy(runs) };
    }

    // The place p n - 1/2 between ordered values, counted from 0, as for simulated results.
    private static double Percentile(double[] ordered, double p)
    {
        var place = Math.Clamp((p * ordered.Length) - 0.5, 0, ordered.Length - 1);
        var lower = (int)place;
        return ordered[lower] + ((place - lower) * (ordered[Math.Min(lower + 1, ordered.Length - 1)] - ordered[lower]));
    }
}
