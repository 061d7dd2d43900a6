using System.Globalization;
using System.Text.RegularExpressions;

namespace Waywright.Publishing;

/// <summary>Compares what two records decided, by the ids of the kept results: letter by letter, for a verdict is what a builder acts on.</summary>
/// <param name="otherSeed">Other random numbers were used: decimals may differ in their last places; words, names and whole numbers may not.</param>
internal sealed partial class DecisionComparison(bool otherSeed)
{
    private const double OtherSeedShare = 0.02;
    private const double OtherSeedLastPlaces = 2;

    /// <summary>One sentence for each decision that is not found again.</summary>
    public IReadOnlyList<string> Differences(IReadOnlyList<Decision> recorded, IReadOnlyList<Decision> found)
    {
        var again = found.ToDictionary(decision => decision.Id, StringComparer.Ordinal);
        var known = recorded.Select(decision => decision.Id).ToHashSet(StringComparer.Ordinal);
        return
        [
            .. recorded.Select(decision => again.TryGetValue(decision.Id, out var other) ? Difference(decision, other) : $"decision {decision.Id}: recorded, and not found by the rerun").OfType<string>(),
            .. found.Where(decision => !known.Contains(decision.Id)).Select(decision => $"decision {decision.Id}: found by the rerun, and not recorded"),
        ];
    }

    private string? Difference(Decision recorded, Decision found)
        => recorded.Notebook != found.Notebook ? $"decision {recorded.Id}: recorded of {recorded.Notebook}, found of {found.Notebook}"
            : IsSame(recorded.Verdict, found.Verdict) ? null
            : $"decision {recorded.Id}: recorded '{recorded.Verdict}', found '{found.Verdict}'";

    private bool IsSame(string recorded, string found)
    {
        if (recorded == found)
            return true;
        if (!otherSeed || Decimal().Replace(recorded, "#") != Decimal().Replace(found, "#"))
            return false;
        return Decimal().Matches(recorded).Zip(Decimal().Matches(found)).All(pair => IsNear(pair.First.Value, pair.Second.Value));
    }

    private static bool IsNear(string recorded, string found)
    {
        var (a, b) = (double.Parse(recorded, CultureInfo.InvariantCulture), double.Parse(found, CultureInfo.InvariantCulture));
        var lastPlace = Math.Pow(10, -(recorded.Length - recorded.IndexOf('.', StringComparison.Ordinal) - 1));
        return Math.Abs(a - b) <= Math.Max(OtherSeedShare * Math.Abs(a), (OtherSeedLastPlaces * lastPlace) + 1e-12);
    }

    // A decimal that stands alone: not the 5 of R0.5, nor a version.
    [GeneratedRegex(@"(?<![\p{L}\d.])\d+\.\d+(?![\p{L}\d]|\.\d)", RegexOptions.CultureInvariant)]
    private static partial Regex Decimal();
}
