using Waywright.Placement;

namespace Waywright.Notebooks;

/// <summary>A rail as it lies in its place, seen from above: near end left, the dot at its end, the screws numbered in the order they are tightened.</summary>
internal static class RailCardPicture
{
    private const double Width = 340;
    private const double Height = 56;
    private const double Margin = 10;
    private const double Top = 4;
    private const double Deep = 28;
    private const double DotSize = 11;

    public static string Of(RailCard card, MachinePlan plan)
    {
        if (card.Place is not { } place || card.Screws is not { } screws)
            return "";
        var shown = place.IsTurned ? screws.Reversed() : screws;
        var scale = (Width - (2 * Margin)) / shown.LengthMm;
        var middle = Top + (Deep / 2);
        var pen = new SvgPen();
        pen.Stroke($"M{SvgText.Px(Margin)} {SvgText.Px(Top)}h{SvgText.Px(Width - (2 * Margin))}v{SvgText.Px(Deep)}h-{SvgText.Px(Width - (2 * Margin))}z", Role.Ink, 1.2);
        var order = screws.TighteningRounds[0].ToList();
        var radius = Math.Clamp(Narrowest(shown.HolesMm) * scale * 0.42, 3, 9);
        for (var i = 0; i < shown.HolesMm.Count; i++)
        {
            var x = Margin + (scale * shown.HolesMm[i]);
            var hole = place.IsTurned ? screws.HolesMm.Count - i : i + 1;
            pen.Stroke(Circle(x, middle, radius), order.Contains(hole) ? Role.Ink : Role.Context, 0.8, order.Contains(hole) ? Dash.Solid : Dash.Dotted);
            if (order.IndexOf(hole) is >= 0 and var turn)
                pen.Words(x, middle + (radius * 0.4), Shown.Count(turn + 1), "middle", radius * 1.15);
        }

        // Painted on the end itself, the dot is drawn just beyond it.
        pen.Dot(place.IsTurned ? Width - (Margin / 2) : Margin / 2, middle, Role.Limit, DotSize);
        var position = plan.Positions.FirstOrDefault(p => place.Position == p.Name || place.Position.StartsWith(p.Name + " ", StringComparison.Ordinal));
        var (near, far) = (position?.NearEnd ?? "near end", position?.FarEnd ?? "far end");
        pen.Words(Margin, Height - 6, place.IsTurned ? near : $"dot, {near}", "start", 11);
        pen.Words(Width - Margin, Height - 6, place.IsTurned ? $"{far}, dot" : far, "end", 11);
        var name = $"Rail {card.Rail.Rail} in {place.Position}: the dot at the {place.DotAt}; tighten holes {string.Join(", ", order.Select(Shown.Count))}, counted from the dot.";
        return $"<svg role=\"img\" aria-label=\"{SvgText.Encode(name)}\" viewBox=\"0 0 {SvgText.Px(Width)} {SvgText.Px(Height)}\" font-family=\"system-ui,sans-serif\" fill=\"currentColor\">{pen}</svg>";
    }

    private static double Narrowest(IReadOnlyList<double> holes) => holes.Zip(holes.Skip(1), (a, b) => b - a).Min();

    private static string Circle(double x, double y, double r) => $"M{SvgText.Px(x - r)} {SvgText.Px(y)}a{SvgText.Px(r)} {SvgText.Px(r)} 0 1 0 {SvgText.Px(2 * r)} 0a{SvgText.Px(r)} {SvgText.Px(r)} 0 1 0 -{SvgText.Px(2 * r)} 0z";
}
