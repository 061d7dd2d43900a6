using System;
using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>Two runs of a reversal over the same stations.</summary>
internal sealed class ReversalRuns
{
    private readonly ReversalRun _first;
    private readonly ReversalRun _second;

    private ReversalRuns(ReversalRun first, ReversalRun second, string guide)
    {
        (_first, _second, GuideName) = (first, second, guide);
        foreach (var run in new[] { first, second })
            StationMatch.Check(run.Profile, run.Source);
        StationMatch.Check(first.Profile, "first run", second.Profile, "second run", second.Source);
    }

    private string GuideName { get; }

    private IReadOnlyList<double> X => _first.Profile.PositionsMm;

    public static ReversalRuns Of(PooledSweep first, PooledSweep second)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        var (a, b) = (first.Sweep, second.Sweep);
        if (ReferenceEquals(first, second))
            throw Problem(b.Source, "one run given twice", "a run before and a run after turning");
        if (a.Rail != b.Rail || a.Face != b.Face)
            throw Problem(b.Source, $"{b.Name} as the second run", $"{a.Name} as in the first run");
        if (a.Setup?.Guide is { } guide && b.Setup?.Guide is { } other && guide != other)
            throw Problem(b.Source, $"the guide '{other}' in the second run", $"'{guide}' as in the first run");
        return new ReversalRuns(ReversalRun.Of(first, "first run"), ReversalRun.Of(second, "second run"), a.Setup?.Guide ?? b.Setup?.Guide ?? "guide");
    }

    public static ReversalRuns Of(Profile first, Profile second)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        return new ReversalRuns(ReversalRun.Of(first, "first run"), ReversalRun.Of(second, "second run"), "guide");
    }

    public static void CheckSide(Sweep sweep)
    {
        if (sweep.Face == RailFace.Top)
            throw Problem(sweep.Source, $"{sweep.Name} turned end for end", "a side face: a top turned end for end keeps the sign of its bow, which stays with the guide's (roll the rail instead)");
    }

    public void CheckWidths(Profile widths)
    {
        var source = widths.Name.Length == 0 ? "width variation" : widths.Name;
        StationMatch.Check(widths, source);
        StationMatch.Check(_first.Profile, "first run", widths, "widths", source);
    }

    public void CheckSymmetry()
    {
        var ends = X[0] + X[^1];
        for (var i = 0; i < X.Count; i++)
        {
            if (Math.Abs(X[i] + X[^(i + 1)] - ends) > StationMatch.SameMm)
                throw Problem(_first.Source, $"a station at {NumberText.Plain(X[i])} mm and none at {NumberText.Plain(ends - X[i])} mm", "stations that mirror each other about their middle, for end for end");
        }
    }

    /// <summary>Half the sum of the runs with these signs (and of the widths), less its least-squares line.</summary>
    public double[] Half(int first, int second, Profile? widths = null, int width = 0)
    {
        var heights = new double[X.Count];
        for (var i = 0; i < heights.Length; i++)
            heights[i] = ((first * _first.Profile.HeightsUm[i]) + (second * _second.Profile.HeightsUm[i]) + (width * (widths?.HeightsUm[i] ?? 0))) / 2;
        return SweepEdits.Level(X, heights);
    }

    /// <summary>The even part (sign 1) or the odd part (sign -1) about the middle of the stations.</summary>
    public static double[] Part(double[] heights, int sign) => [.. heights.Select((z, i) => (z + (sign * heights[^(i + 1)])) / 2)];

    public Profile RailProfile(double[] heights) => new(X, heights, _first.Name);

    public Profile GuideProfile(double[] heights) => new(X, heights, GuideName);

    public Profile SharedProfile(double[] heights) => new(X, heights, $"{_first.Name} and {GuideName}, odd part");

    /// <summary>What half the sum of the runs with these signs is uncertain by; its even part, if so asked.</summary>
    public ProfileErrors? Errors(int first, int second, double widthUncertaintyUm = 0, bool isEven = false)
        => _first.Errors is null || _second.Errors is null ? null : ReversalErrors.Of(X, _first.Errors, first, _second.Errors, second, widthUncertaintyUm, isEven);

    private static InputException Problem(string source, string found, string expected) => new(new InputProblem(source, null, null, found, expected));
}
