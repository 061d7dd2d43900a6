using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;

namespace Waywright;

/// <summary>
/// Takes out the jumps of a pointer that went through its zero. A dial read within one turn shows z less whole turns; where neighbouring readings differ by about a turn,
/// a turn is added from there on, so that most readings of the pass stay as they are.
/// </summary>
internal static class RollOver
{
    // About a turn: 3/4 and more. A jump between 1/4 and 3/4 may be either and is left.
    private const double About = 0.75;

    public static SweepFinding Clean(Sweep sweep, double? turnUm)
    {
        if (turnUm is not { } turn)
            return SweepFinding.Nothing(sweep);
        var changed = new List<CleanedReading>();
        var notes = new List<string>();
        var cleaned = sweep;
        for (var k = 0; k < sweep.Passes.Count; k++)
        {
            var pass = sweep.Passes[k];
            var turns = TurnsOf(sweep, pass, turn, notes);
            if (turns is null)
                continue;
            var readings = new double[turns.Length];
            for (var i = 0; i < readings.Length; i++)
            {
                readings[i] = pass.ReadingsUm[i] + (turns[i] * turn);
                if (turns[i] != 0)
                    changed.Add(SweepEdits.Reading(sweep, k, i, readings[i], string.Create(CultureInfo.InvariantCulture, $"the pointer passed zero: {turns[i]:+0;-0} turn")));
            }

            cleaned = SweepEdits.WithReadings(cleaned, k, readings);
        }

        return new SweepFinding(cleaned, changed, [], notes);
    }

    /// <summary>Turns to add to each reading; null for a pass without a jump of about a turn.</summary>
    private static int[]? TurnsOf(Sweep sweep, SweepPass pass, double turn, List<string> notes)
    {
        var z = pass.ReadingsUm;
        var isWithinTurn = z.Max() - z.Min() <= turn;
        var turns = new int[z.Count];
        var left = new List<int>();
        for (var i = 1; i < turns.Length; i++)
        {
            var jump = Math.Abs(z[i] - z[i - 1]);
            var isTaken = isWithinTurn && jump >= About * turn;
            turns[i] = turns[i - 1] - (isTaken ? Math.Sign(z[i] - z[i - 1]) : 0);
            if (!isTaken && jump > (1 - About) * turn)
                left.Add(i);
        }

        if (left.Count > 0)
            notes.Add(Left(sweep, pass, left, isWithinTurn ? "too small for a turn, large for a rail: look at the readings" : "and the pass spans more than a turn, so its turns were counted already and it is left"));
        if (turns.All(t => t == 0))
            return null;
        // Which turn is called 0 says nothing (each pass has its own height): the one that most readings are in.
        var most = turns.GroupBy(t => t).OrderByDescending(g => g.Count()).ThenBy(g => Math.Abs(g.Key)).First().Key;
        return Array.ConvertAll(turns, t => t - most);
    }

    private static string Left(Sweep sweep, SweepPass pass, List<int> jumps, string what)
    {
        var i = jumps.MaxBy(i => Math.Abs(pass.ReadingsUm[i] - pass.ReadingsUm[i - 1]));
        var count = jumps.Count == 1 ? "a jump" : string.Create(CultureInfo.InvariantCulture, $"{jumps.Count} jumps, the largest");
        return string.Create(CultureInfo.InvariantCulture, $"{sweep.Name} {SweepEdits.NameOf(pass)}: {count} of {pass.ReadingsUm[i] - pass.ReadingsUm[i - 1]:0.#} um between {pass.PositionsMm[i - 1]:0.###} and {pass.PositionsMm[i]:0.###} mm, {what}.");
    }
}
