using System;
using System.Collections.Generic;
using System.Globalization;
using System.Threading;

namespace Waywright;

/// <summary>Refuses what can't be planned, everything at once, and works the rest out.</summary>
internal static class MeasuringPlanInput
{
    private const double SpacingMm = 25;
    private const int FewestByDefault = 8;
    private const int FewestStations = 4;
    private const int MostStations = 500;
    private const int FewestTrials = 1000;
    private const int MostTrials = 100_000;

    // Beyond these a length or an error of a workbench is a slip, and squares would leave the doubles.
    private const double Largest = 1e9;
    private const double Smallest = 1e-6;

    public static MeasuringPlan Checked(double divisionUm, string readTo, double? repeatabilityUm, double lengthMm, double limitUm, int? stations, int passes, int lays, double? guideUm, bool isGuideKnown, int trials, ulong seed, CancellationToken cancel)
    {
        var problems = new List<InputProblem>();
        Positive(problems, "dial", divisionUm, "um");
        if (readTo is not ("whole" or "half" or "tenth"))
            Add(problems, "read to", ProblemList.Shown(readTo), "whole, half or tenth");
        if (repeatabilityUm is { } s)
            NotNegative(problems, "repeatability", s, "um");
        Check(problems, lengthMm, limitUm, stations, passes, lays, guideUm, isGuideKnown, trials);
        return MeasuringPlanWork.Of(
            Planned(Instrument.Create(NameOf(divisionUm), "um", divisionUm, readTo, repeatability: repeatabilityUm), lengthMm, stations, passes, lays, guideUm), limitUm, isGuideKnown, trials, seed, cancel);
    }

    public static MeasuringPlan Checked(Instrument dial, double lengthMm, double limitUm, int? stations, int passes, int lays, double? guideUm, bool isGuideKnown, int trials, ulong seed, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(dial);
        var problems = new List<InputProblem>();
        if (dial.Unit == "um")
            Positive(problems, "dial", dial.Division, "um");
        else
            Add(problems, "dial", $"the unit {ProblemList.Shown(dial.Unit)}", "an instrument in um");
        Check(problems, lengthMm, limitUm, stations, passes, lays, guideUm, isGuideKnown, trials);
        return MeasuringPlanWork.Of(Planned(dial, lengthMm, stations, passes, lays, guideUm), limitUm, isGuideKnown, trials, seed, cancel);
    }

    private static MeasuringPlanSweep Planned(Instrument dial, double lengthMm, int? stations, int passes, int lays, double? guideUm)
        => new(dial, lengthMm, stations ?? (int)Math.Clamp(Math.Round(lengthMm / SpacingMm) + 1, FewestByDefault, MostStations), passes, lays, guideUm);

    private static string NameOf(double divisionUm) => $"{NumberText.Plain(divisionUm / 1000)} mm dial";

    private static void Check(List<InputProblem> problems, double lengthMm, double limitUm, int? stations, int passes, int lays, double? guideUm, bool isGuideKnown, int trials)
    {
        Positive(problems, "length", lengthMm, "mm");
        Positive(problems, "limit", limitUm, "um");
        if (stations is { } n)
            Within(problems, "stations", n, FewestStations, MostStations);
        Within(problems, "passes", passes, 1, MeasuringPlan.MostPasses);
        if (lays < 1 || (lays > passes && passes >= 1))
            Add(problems, "lays", $"'{lays.ToString(CultureInfo.InvariantCulture)}'", "1 or more, and no more than the passes");
        if (guideUm is { } guide)
            NotNegative(problems, "guide", guide, "um");
        if (guideUm is not null && !isGuideKnown)
            Add(problems, "guide", "a straightness of a guide that is not known", "one or the other");
        Within(problems, "trials", trials, FewestTrials, MostTrials);
        if (problems.Count > 0)
            throw new InputException(problems);
    }

    private static void Positive(List<InputProblem> problems, string what, double value, string unit)
    {
        if (!(value is >= Smallest and <= Largest))
            Add(problems, what, Shown(value), $"a number of {unit} above 0 (between 1e-6 and 1e9)");
    }

    private static void NotNegative(List<InputProblem> problems, string what, double value, string unit)
    {
        if (!(value is >= 0 and <= Largest))
            Add(problems, what, Shown(value), $"a number of {unit} of 0 or more (up to 1e9)");
    }

    private static void Within(List<InputProblem> problems, string what, int value, int least, int most)
    {
        if (value < least || value > most)
            Add(problems, what, $"'{value.ToString(CultureInfo.InvariantCulture)}'", string.Create(CultureInfo.InvariantCulture, $"a whole number from {least} to {most}"));
    }

    private static string Shown(double value) => $"'{(double.IsFinite(value) ? NumberText.Plain(value) : value.ToString(CultureInfo.InvariantCulture))}'";

    private static void Add(List<InputProblem> problems, string what, string found, string expected) => problems.Add(new InputProblem(what, null, null, found, expected));
}
