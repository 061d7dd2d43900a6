using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;

namespace Waywright;

/// <summary>What keeps grades from being ranked: a rail that meets a better grade has to meet every lower one. Rules of a file are refused for the same, where they stand.</summary>
internal static class GradeContradictions
{
    private static readonly string[] Features = [RailFeature.Side, RailFeature.SideLocal, RailFeature.TopMounted, RailFeature.TopLocal, RailFeature.TopFree, RailFeature.Drag];

    /// <summary>The grades, copied.</summary>
    public static FixedList<GradeRule> Checked(IReadOnlyList<GradeRule> grades, double returnSideUm)
    {
        ArgumentNullException.ThrowIfNull(grades);
        var problems = Of(grades, returnSideUm).ToArray();
        return problems.Length == 0 ? FixedList<GradeRule>.Copy(grades) : throw new ArgumentException(string.Join(" ", problems), nameof(grades));
    }

    private static IEnumerable<string> Of(IReadOnlyList<GradeRule> grades, double returnSideUm)
    {
        if (grades.Count == 0)
            yield return "There is no grade: give at least one.";
        if (!(returnSideUm > 0 && double.IsFinite(returnSideUm)))
            yield return Plain($"The limit for a return is {returnSideUm} um: it must be above 0.");
        foreach (var twice in grades.GroupBy(g => g.Grade, StringComparer.OrdinalIgnoreCase).Where(g => g.Count() > 1))
            yield return $"The grade {twice.Key} is there twice.";
        for (var i = 0; i < grades.Count; i++)
        {
            var (grade, better) = (grades[i], i == 0 ? null : grades[i - 1]);
            if (string.Equals(grade.Grade, GradedBatch.Return, StringComparison.OrdinalIgnoreCase) || string.Equals(grade.Grade, GradedBatch.MeasureAgain, StringComparison.OrdinalIgnoreCase))
                yield return $"A grade is called {grade.Grade}, which is an answer of its own.";
            if (grade.Limits.Count == 0)
                yield return $"{grade.Grade} limits nothing: every rail would meet it.";
            foreach (var twice in grade.Limits.GroupBy(l => l.Feature).Where(l => l.Count() > 1))
                yield return $"{grade.Grade} limits {twice.Key} twice.";
            foreach (var (feature, limit) in grade.Limits)
            {
                if (!Features.Contains(feature))
                    yield return $"{grade.Grade} limits {feature}, which is none of {string.Join(", ", Features)}.";
                if (!(limit > 0 && double.IsFinite(limit)))
                    yield return Plain($"The limit of {grade.Grade} on {feature} is {limit}: it must be above 0.");
                if (better is not null && better.LimitOf(feature) is null)
                    yield return $"{grade.Grade} limits {feature} and the better grade {better.Grade} doesn't: a rail could miss the lower one and meet the better.";
                else if (better?.LimitOf(feature) is { } tight && limit < tight)
                    yield return Plain($"{grade.Grade} limits {feature} to {limit} and the better grade {better.Grade} to {tight}: grades are listed best first.");
            }
        }

        if (grades.Count > 0 && grades[^1].LimitOf(RailFeature.Side) is { } lowest && lowest > returnSideUm)
            yield return Plain($"A rail is returned above {returnSideUm} um at the side, and {grades[^1].Grade} allows {lowest}.");
    }

    private static string Plain(FormattableString sentence) => sentence.ToString(CultureInfo.InvariantCulture);
}
