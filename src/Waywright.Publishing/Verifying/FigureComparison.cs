using System.Globalization;

namespace Waywright.Publishing;

/// <summary>Compares the figures of two records by their ids.</summary>
/// <param name="otherSeed">Other random numbers were used: numbers are held to a share of their stated uncertainty, not to the rerun tolerance.</param>
internal sealed class FigureComparison(bool otherSeed)
{
    // A bound at 95 % of 10,000 trials has a standard error of about 0.03 u (binomial; 0.04 u between two runs), the estimate less: beyond a fifth of u no chance explains it.
    private const double OtherSeedShareOfU = 0.2;

    // A figure without u, such as a noise floor, is a quantile or a sum of estimates: its own error is about half a percent.
    private const double OtherSeedShare = 0.02;

    private const double DefaultRelative = 1e-9;
    private const double DefaultShareOfU = 1e-6;
    private const double NormalFactor = 1.96;

    /// <summary>One sentence for each figure that is not found again.</summary>
    public IReadOnlyList<string> Differences(IReadOnlyList<Figure> recorded, IReadOnlyList<Figure> found)
    {
        var again = found.ToDictionary(figure => figure.Id, StringComparer.Ordinal);
        var known = recorded.Select(figure => figure.Id).ToHashSet(StringComparer.Ordinal);
        return
        [
            .. recorded.SelectMany(figure => again.TryGetValue(figure.Id, out var other) ? Difference(figure, other) : [$"{figure.Id}: recorded, and not found by the rerun"]),
            .. found.Where(figure => !known.Contains(figure.Id)).Select(figure => $"{figure.Id}: found by the rerun, and not recorded"),
        ];
    }

    private IEnumerable<string> Difference(Figure recorded, Figure found)
    {
        if (recorded.Unit != found.Unit)
            yield return $"{recorded.Id}: recorded in '{recorded.Unit}', found in '{found.Unit}'";
        else if (recorded.Text is not null || found.Text is not null)
        {
            if (recorded.Text != found.Text)
                yield return $"{recorded.Id}: recorded {Shown(recorded)}, found {Shown(found)}";
        }
        else
        {
            var tolerance = Tolerance(recorded, recorded.Value!.Value);
            if (!(Math.Abs(recorded.Value!.Value - found.Value!.Value) <= tolerance))
                yield return string.Create(CultureInfo.InvariantCulture, $"{recorded.Id}: recorded {Shown(recorded)}, found {Shown(found)}, off by {Math.Abs(recorded.Value.Value - found.Value.Value):G3}, tolerance {tolerance:G3}");
        }

        foreach (var (what, a, b) in new[] { ("low end", recorded.Low, found.Low), ("high end", recorded.High, found.High), ("standard uncertainty", recorded.StandardUncertainty, found.StandardUncertainty) })
        {
            if (a is null != b is null)
                yield return $"{recorded.Id}: {what} {(a is null ? "not recorded, and found by the rerun" : "recorded, and not found by the rerun")}";
            else if (a is { } x && b is { } y && !(Math.Abs(x - y) <= Tolerance(recorded, x)))
                yield return string.Create(CultureInfo.InvariantCulture, $"{recorded.Id}: {what} recorded {x:R}, found {y:R}, tolerance {Tolerance(recorded, x):G3}");
        }
    }

    private double Tolerance(Figure figure, double at)
    {
        var relative = figure.RelativeTolerance > 0 ? figure.RelativeTolerance : DefaultRelative;
        var rerun = Math.Max(Math.Max(figure.AbsoluteTolerance, DefaultShareOfU * (figure.StandardUncertainty ?? 0)), relative * Math.Abs(at));
        if (!otherSeed)
            return rerun;
        var u = figure.StandardUncertainty ?? ((figure.High - figure.Low) / (2 * NormalFactor));
        return Math.Max(rerun, u is { } own ? OtherSeedShareOfU * own : OtherSeedShare * Math.Abs(at));
    }

    private static string Shown(Figure figure) => figure.Text is { } text ? $"'{text}'" : figure.Value!.Value.ToString("R", CultureInfo.InvariantCulture);
}
