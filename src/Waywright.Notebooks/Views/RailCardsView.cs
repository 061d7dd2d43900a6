using Waywright.Placement;

namespace Waywright.Notebooks;

/// <summary>Cards to print and cut out, one for each rail.</summary>
internal sealed class RailCardsView : View<RailCards>
{
    private const int MostCards = 40;

    protected override string Verdict(RailCards result)
    {
        var placed = result.Cards.Count(c => c.Place is not null);
        return $"Print {Shown.Count(result.Cards.Count)} {(result.Cards.Count == 1 ? "card" : "cards")}, cut them out and lay each beside its rail: {Shown.Count(placed)} to be screwed down, {Shown.Count(result.Cards.Count - placed)} not placed.";
    }

    protected override string Text(RailCards result)
        => $"{Verdict(result)}\n{string.Join('\n', result.Cards.Select(c => $"{c.Rail.Rail}: {string.Join(" ", Lines(result, c))}"))}";

    protected override string Html(RailCards result)
        => Markup.View(
            Verdict(result),
            $"<div class=\"ww-cards\">{string.Concat(result.Cards.Take(MostCards).Select(c => Card(result, c)))}</div>",
            result.Cards.Count > MostCards ? Markup.Note($"{Shown.Count(result.Cards.Count - MostCards)} more cards are not shown: place fewer machines at a time.") : "");

    private static string Card(RailCards cards, RailCard card)
        => $"""
            <section class="ww-card" aria-label="Card of rail {Markup.Encode(card.Rail.Rail)}"><p class="ww-card-head"><strong>{Markup.Encode(card.Rail.Rail)}</strong> {Markup.Badge(card.Rail.Grade)}</p>{RailCardPicture.Of(card, cards.Placement.Plan)}{string.Concat(Lines(cards, card).Select(line => $"<p>{Markup.Words(line)}</p>"))}</section>
            """;

    private static IEnumerable<string> Lines(RailCards cards, RailCard card)
    {
        if (card.Place is not { } place)
        {
            yield return card.Rail.Grade is GradedBatch.Return or GradedBatch.MeasureAgain ? card.Rail.Next : "Spare: no place is left for it.";
            yield return card.Rail.Reason;
            yield break;
        }

        var machine = cards.Placement.Plan.Machines == 1 ? "" : $" of machine {Shown.Count(place.Machine)}";
        yield return $"Goes to {place.Position}{machine}, dot at the {place.DotAt}.";
        var pair = place.Partner is { } partner ? $" Pair: {partner}." : "";
        yield return place.Feature == RailFeature.Side
            ? $"The side counts here: set it straight while the screws are loose, they don't pull it.{pair}"
            : $"The top counts here: the screws press it down.{pair}";
        if (card.Screws is not { } screws)
            yield return "Its holes are not known: list it in rails.csv for the order of the screws.";
        else
            yield return $"{Shown.First(screws.Name)}: tighten in two rounds as drawn, first until the heads sit, then to the full torque.";
        foreach (var carriage in card.Rail.DragPlaces.Where(p => p.Cause is DragCause.Carriage or DragCause.Direction))
            yield return carriage.Next;
    }
}
