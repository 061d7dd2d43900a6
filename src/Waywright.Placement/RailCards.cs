namespace Waywright.Placement;

/// <summary>A card for each rail of a batch, to print, cut out and lay beside it: grade, place, where the dot goes, and the screws in the order they are tightened.</summary>
public sealed record RailCards
{
    private RailCards(RailPlacement placement, IReadOnlyList<RailCard> cards) => (Placement, Cards) = (placement, cards);

    /// <summary>Where the rails go.</summary>
    public RailPlacement Placement { get; }

    /// <summary>Placed rails first, machine by machine; then the others by what to do next.</summary>
    public IReadOnlyList<RailCard> Cards { get; }

    /// <summary>Writes the cards of a placement.</summary>
    /// <param name="placement">Where the rails go.</param>
    /// <param name="screws">Which holes of a rail get a screw; every one when not given.</param>
    /// <exception cref="ArgumentException">A rail of the list has fewer than two holes, or the pattern names a hole that it doesn't have.</exception>
    public static RailCards Of(RailPlacement placement, Func<RailStock.Rail, ScrewPattern>? screws = null)
    {
        ArgumentNullException.ThrowIfNull(placement);
        screws ??= ScrewPattern.Every;
        var placed = placement.Placed.Select(p => Card(placement.Batch.Find(p.Rail)!, p));
        var others = placement.Batch.Rails.Where(r => placement.Placed.All(p => p.Rail != r.Rail)).Select(r => Card(r, null));
        return new RailCards(placement, FixedList<RailCard>.Copy(placed.Concat(others)));

        RailCard Card(GradedRail rail, PlacedRail? place) => new(rail, place, place is not null && placement.Stock?.Find(rail.Rail) is { } stock ? screws(stock) : null);
    }
}

/// <summary>What a rail's card says.</summary>
/// <param name="Rail">The rail with its grade and what to do next.</param>
/// <param name="Place">Where it goes and which way round; null where it is not placed.</param>
/// <param name="Screws">Its screws, numbered from the end with the dot; null where it is not placed or its holes are not known.</param>
public sealed record RailCard(GradedRail Rail, PlacedRail? Place, ScrewPattern? Screws);
