namespace Waywright.Notebooks;

/// <summary>The rails of a build.</summary>
internal sealed class RailStockView : View<RailStock>
{
    private const int Most = 60;

    public static TextTable Table(IEnumerable<RailStock.Rail> rails)
    {
        var table = new TextTable("rail", "#width mm", "#length mm", "#pitch mm", "#holes", "#first hole mm", "#far end mm", "#counterbore mm", "#mass g", "note");
        foreach (var r in rails)
        {
            table.Add(r.Name, Shown.Mm(r.WidthMm), Shown.Mm(r.LengthMm), Shown.Mm(r.PitchMm), Shown.Count(r.HolesMm.Count), Shown.Mm(r.EndDistanceMm), Shown.Mm(r.FarEndDistanceMm),
                r.CounterboreMm is { } d ? Shown.Mm(d) : Shown.None, r.MassG is { } g ? Shown.Mm(g) : Shown.None, r.Note);
        }

        return table;
    }

    protected override string Verdict(RailStock result)
    {
        var open = result.Rails.Where(r => r.CounterboreMm is null).Select(r => r.Name).ToArray();
        var count = $"{Shown.Count(result.Rails.Count)} {(result.Rails.Count == 1 ? "rail" : "rails")}";
        return open.Length == 0
            ? $"{count}; sweeps can be held against ends and counterbores."
            : $"Add counterbore_mm for {(open.Length == result.Rails.Count ? "each rail" : open.Length <= 3 ? string.Join(", ", open) : $"{Shown.Count(open.Length)} rails")}, so that stations on top faces can be held against the holes; {count} read.";
    }

    protected override string Text(RailStock result) => $"{Verdict(result)}\n{Table(result.Rails.Take(Most))}\n{How(result)}";

    protected override string Html(RailStock result) => Markup.View(Verdict(result), Markup.Table(Table(result.Rails.Take(Most)), "Rails of the stock"), Markup.Details("How it was read", Markup.List(How(result))));

    private static string How(RailStock stock)
        => $"Read as: {stock.ReadAs}. Holes stand at the end distance and every pitch on, counted from the end with the dot.{(stock.Rails.Count > Most ? $" {Shown.Count(stock.Rails.Count - Most)} more rails are not listed." : "")}";
}

/// <summary>One rail.</summary>
internal sealed class RailView : View<RailStock.Rail>
{
    private const int Most = 40;

    protected override string Verdict(RailStock.Rail result)
        => $"{Shown.First(result.Name)}: {Shown.Mm(result.WidthMm)} mm wide, {Shown.Mm(result.LengthMm)} mm long, {Shown.Count(result.HolesMm.Count)} {(result.HolesMm.Count == 1 ? "hole" : "holes")}, the last {Shown.Mm(result.FarEndDistanceMm)} mm from the far end.";

    protected override string Text(RailStock.Rail result) => $"{Verdict(result)}\n{RailStockView.Table([result])}\n{Holes(result)}";

    protected override string Html(RailStock.Rail result) => Markup.View(Verdict(result), Markup.Table(RailStockView.Table([result]), "The rail"), Markup.Details("Holes", Markup.List(Holes(result))));

    private static string Holes(RailStock.Rail rail)
        => $"Holes at {string.Join(", ", rail.HolesMm.Take(Most).Select(Shown.Mm))}{(rail.HolesMm.Count > Most ? $" and {Shown.Count(rail.HolesMm.Count - Most)} more" : "")} mm from the dot.";
}
