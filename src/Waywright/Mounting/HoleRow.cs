using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;

namespace Waywright;

/// <summary>Where a rail's holes are, and regular choices among them.</summary>
internal static class HoleRow
{
    // 340 / 20 must be 17 however it was rounded.
    private const double Slack = 1e-9;
    private const int MostHoles = 10_000;

    /// <summary>As many holes as fit, the row in the middle of the rail.</summary>
    public static FixedList<double> Fill(double lengthMm, double pitchMm, double leastEndDistanceMm)
    {
        var problems = new List<string>();
        if (!(lengthMm is >= 1 and <= 1e5))
            problems.Add(Plain($"The length is {lengthMm} mm: it must be from 1 to 1e5 mm."));
        if (!(pitchMm > 0 && double.IsFinite(pitchMm)))
            problems.Add(Plain($"The pitch is {pitchMm} mm: it must be a length above 0."));
        if (!(leastEndDistanceMm > 0 && double.IsFinite(leastEndDistanceMm)))
            problems.Add(Plain($"The least end distance is {leastEndDistanceMm} mm: it must be a length above 0."));
        if (problems.Count == 0)
        {
            var pitches = Math.Floor(((lengthMm - (2 * leastEndDistanceMm)) / pitchMm) + Slack);
            if (pitches is >= 1 and < MostHoles)
            {
                var first = (lengthMm - (pitches * pitchMm)) / 2;
                return FixedList<double>.Copy(Enumerable.Range(0, (int)pitches + 1).Select(i => first + (i * pitchMm)));
            }

            problems.Add(pitches < 1
                ? Plain($"Fewer than two holes fit {lengthMm} mm at a pitch of {pitchMm} mm with {leastEndDistanceMm} mm left at each end.")
                : Plain($"A pitch of {pitchMm} mm makes more than {MostHoles} holes."));
        }

        throw new ArgumentException(string.Join(' ', problems));
    }

    public static FixedList<double> Of(RailStock.Rail rail)
    {
        var holes = FixedList<double>.Copy(rail.HolesMm);
        return holes.Count >= 2 && holes[^1] < rail.LengthMm
            ? holes
            : throw new ArgumentException(Plain($"Rail {rail.Name} has {holes.Count} hole within its {rail.LengthMm} mm: a screw pattern needs two or more."), nameof(rail));
    }

    public static IEnumerable<int> EveryOther(int count) => Enumerable.Range(1, count).Where(h => h % 2 == 1);

    /// <summary>Odd numbers up to the middle, and the same from the far end.</summary>
    public static IEnumerable<int> FromBothEnds(int count)
    {
        var near = EveryOther((count + 1) / 2).ToArray();
        return near.Concat(near.Select(h => count + 1 - h).Where(h => h > near[^1] + 1 || count % 2 == 1)).Distinct();
    }

    public static IEnumerable<int> Even(int count, int screws) => Enumerable.Range(0, screws).Select(i => 1 + (((2 * i * (count - 1)) + screws - 2) / (2 * (screws - 1))));

    /// <summary>Rising, each hole there and named once.</summary>
    public static FixedList<int> Checked(IEnumerable<int> holes, int count)
    {
        var named = holes.Order().ToArray();
        var problems = new List<string>();
        foreach (var hole in named.Where(h => h < 1 || h > count).Distinct())
            problems.Add(Plain($"There is no hole {hole}: holes run from 1 to {count}."));
        foreach (var twice in named.GroupBy(h => h).Where(g => g.Count() > 1))
            problems.Add(Plain($"Hole {twice.Key} is named {twice.Count()} times."));
        if (named.Distinct().Count() < 2)
            problems.Add("A rail needs screws in at least two holes.");
        return problems.Count == 0 ? FixedList<int>.Own(named) : throw new ArgumentException(string.Join(' ', problems), nameof(holes));
    }

    private static string Plain(FormattableString sentence) => sentence.ToString(CultureInfo.InvariantCulture);
}
