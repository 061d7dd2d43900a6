using Waywright.Notebooks;
using Waywright.Placement;

namespace Waywright.Tests;

public class RailCardsTests
{
    private static readonly string Folder = Repository.PathOf("datasets", "demo", "rails");
    private static readonly Lazy<GradedBatch> Graded = new(() => SweepBatch.Read(Path.Combine(Folder, "sweeps.csv"), SetupBook.Read(Path.Combine(Folder, "setups.json"))).Grade(stock: RailStock.Read(Path.Combine(Folder, "rails.csv")), trials: 1_000));

    [Fact]
    public void Each_rail_has_one_card_and_placed_rails_come_first()
    {
        var (placement, cards) = Demo();
        Assert.Equal(placement.Batch.Rails.Select(r => r.Rail).Order(StringComparer.Ordinal), cards.Cards.Select(c => c.Rail.Rail).Order(StringComparer.Ordinal));
        Assert.Equal(placement.Placed.Select(p => p.Rail), cards.Cards.Take(placement.Placed.Count).Select(c => c.Rail.Rail));
        Assert.All(cards.Cards.Skip(placement.Placed.Count), c => Assert.True(c.Place is null && c.Screws is null));
    }

    [Fact]
    public void A_card_says_where_the_rail_goes_which_end_the_dot_is_at_and_draws_the_order_of_the_screws()
    {
        var (_, cards) = Demo();
        var html = Views.Html(cards);
        foreach (var card in cards.Cards.Where(c => c.Place is not null))
        {
            Assert.Contains($"Goes to {card.Place!.Position}, dot at the {card.Place.DotAt}.", html, StringComparison.Ordinal);
            Assert.Contains($"Rail {card.Rail.Rail} in {card.Place.Position}: the dot at the {card.Place.DotAt}; tighten holes {string.Join(", ", card.Screws!.TighteningRounds[0])}, counted from the dot.", html, StringComparison.Ordinal);
        }
    }

    // Seen in its place, hole 1 of a turned rail is the last from the left: its number stands there, beside the dot.
    [Fact]
    public void A_turned_rail_is_drawn_turned()
    {
        var (_, cards) = Demo();
        var card = cards.Cards.First(c => c.Place is not null);
        var plan = cards.Placement.Plan;
        var as_swept = Numbers(RailCardPicture.Of(card with { Place = card.Place! with { IsTurned = false } }, plan));
        var turned = Numbers(RailCardPicture.Of(card with { Place = card.Place! with { IsTurned = true } }, plan));
        Assert.Equal(2 * card.Screws!.Holes.Count, as_swept.Length);
        Assert.Equal(as_swept, turned.Reverse());
    }

    [Fact]
    public void A_card_says_which_face_counts_and_what_the_drag_asks_for()
    {
        var (_, cards) = Demo();
        var place = cards.Cards.First(c => c.Place is not null).Place!;
        Assert.Equal(RailFeature.Side, place.Feature);
        Assert.Contains("The side counts here: set it straight while the screws are loose", Views.Text(cards), StringComparison.Ordinal);
        var graded = SweepBatch.Read(Path.Combine(Folder, "sweeps.csv"), SetupBook.Read(Path.Combine(Folder, "setups.json")))
            .Grade(stock: RailStock.Read(Path.Combine(Folder, "rails.csv")), drag: DragLog.Read(Path.Combine(Folder, "drag.csv")), trials: 1_000);
        var told = Views.Text(RailCards.Of(RailPlacement.Of(graded, RailStock.Read(Path.Combine(Folder, "rails.csv")), cards.Placement.Plan)));
        // truth.json: the drag rises at 230 mm of R10 with its own carriage alone, at 150 mm of R09 with both.
        Assert.Contains("Look at carriage K10: the place at 215 to 245 mm of rail R10 moves with the carriage.", told, StringComparison.Ordinal);
        Assert.Contains("R09: Wipe rail R09 at 135 to 165 mm", told, StringComparison.Ordinal);
    }

    [Fact]
    public void A_rail_of_unknown_holes_has_a_card_without_a_drawing()
    {
        var (placement, _) = Demo();
        var cards = RailCards.Of(RailPlacement.Of(placement.Batch, null, placement.Plan));
        Assert.All(cards.Cards, c => Assert.Null(c.Screws));
        Assert.Contains("Its holes are not known", Views.Text(cards), StringComparison.Ordinal);
    }

    [Fact]
    public void A_hostile_name_stays_text()
    {
        var (_, cards) = Demo();
        var card = cards.Cards.First(c => c.Place is not null);
        var drawn = RailCardPicture.Of(card with { Rail = card.Rail with { Rail = "<script>alert(1)</script>" } }, cards.Placement.Plan);
        Assert.DoesNotContain("<script", drawn, StringComparison.Ordinal);
    }

    private static (RailPlacement Placement, RailCards Cards) Demo()
    {
        var stock = RailStock.Read(Path.Combine(Folder, "rails.csv"));
        var placement = RailPlacement.Of(Graded.Value, stock, MachinePlan.Read(Path.Combine(Folder, "positions.json")));
        return (placement, RailCards.Of(placement));
    }

    private static string[] Numbers(string svg)
        => [.. System.Text.RegularExpressions.Regex.Matches(svg, "<text x=\"([0-9.]+)\"[^>]*text-anchor=\"middle\"[^>]*>([0-9]+)<").OrderBy(m => double.Parse(m.Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture)).Select(m => m.Groups[2].Value)];
}
