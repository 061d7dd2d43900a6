using Waywright.Placement;

namespace Waywright.Notebooks;

/// <summary>A rail as it lies in its place, seen from above: near end left, the dot at its end, the screws numbered in the order of both rounds.</summary>
internal static class RailCardPicture
{
    public static string Of(RailCard card, MachinePlan plan)
    {
        if (card.Place is not { } place || card.Screws is not { } screws)
            return "";
        var order = screws.TighteningRounds[0].ToList();
        var numbers = screws.Holes.Select(h => order.IndexOf(h) + 1);
        var position = plan.Positions.FirstOrDefault(p => place.Position == p.Name || place.Position.StartsWith(p.Name + " ", StringComparison.Ordinal));
        var name = $"Rail {card.Rail.Rail} in {place.Position}: the dot at the {place.DotAt}; tighten holes {string.Join(", ", order.Select(Shown.Count))}, counted from the dot.";
        return TighteningPicture.Of(place.IsTurned ? screws.Reversed() : screws, [.. place.IsTurned ? numbers.Reverse() : numbers], place.IsTurned, position?.NearEnd ?? "near end", position?.FarEnd ?? "far end", name);
    }
}
