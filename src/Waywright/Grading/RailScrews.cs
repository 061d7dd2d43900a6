using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;

namespace Waywright;

/// <summary>Where the screws of each rail will be.</summary>
/// <param name="Stock">The rails with their holes; null when not given.</param>
/// <param name="Choose">Which holes get a screw.</param>
internal sealed record RailScrews(RailStock? Stock, Func<RailStock.Rail, ScrewPattern> Choose)
{
    private readonly Dictionary<string, RailStock.Rail>? _rails = Stock?.Rails.ToDictionary(r => r.Name, StringComparer.Ordinal);

    // Stations stand midway between holes, so a pitch apart: what is wider is not looked at.
    private const double MostPitches = 1.5;

    private const string Give = "nothing has to be swept again for that.";

    /// <summary>The screws of a rail, or what is missing.</summary>
    public (ScrewPattern? Screws, NotJudged? Missing) Of(string rail, Profile? top)
    {
        if (Stock is null)
            return (null, new("where its screws will be is not known", $"Give rails.csv with length, pitch and end distance of each rail; {Give}"));
        if (!_rails!.TryGetValue(rail, out var size))
            return (null, new($"{Stock.Source} doesn't list {rail}, so where its screws will be is not known", $"Add {rail} to {Stock.Source} with length, pitch and end distance; {Give}"));
        if (size.HolesMm.Count < 2)
            return (null, new($"by {Stock.Source} it has one hole, and a rail is held by two screws or more", $"Correct pitch and end distance of {rail} in {Stock.Source}; {Give}"));
        var screws = Choose(size);
        if (top is null)
            return (screws, null);
        if (MountedTop.Problem(top, screws) is { } problem)
            return (null, new(char.ToLowerInvariant(problem[0]) + problem[1..].TrimEnd('.'), $"Check the sizes of {rail} in {Stock.Source}, or sweep the top out to its end screws."));
        return MountedTop.WidestGap(top) is var gap && gap.ToMm - gap.FromMm > MostPitches * size.PitchMm
            ? (null, new(string.Create(CultureInfo.InvariantCulture, $"no station between {gap.FromMm:0.###} and {gap.ToMm:0.###} mm, where holes are {size.PitchMm:0.###} mm apart"), TopFeatures.Again))
            : (screws, null);
    }
}
