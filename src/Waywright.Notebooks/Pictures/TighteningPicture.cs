namespace Waywright.Notebooks;

/// <summary>
/// A rail seen from above with its screws where they are, once for each round of tightening: the numbers are the order, thin rings for snug, heavy ones for final, dotted ones stay empty; the
/// painted dot beyond its end. As large on a phone as on a desk, and told without colour.
/// </summary>
internal static class TighteningPicture
{
    private const double Width = 340;
    private const double Margin = 12;
    private const double Title = 15;
    private const double Deep = 28;
    private const double Gap = 8;
    private const double DotSize = 11;
    private const double Words = 11;

    // Narrower than this numbers stand above the rail, at several heights.
    private const double RoomPx = 17;
    private const double Step = 13;
    private const double LargestRing = 9.5;

    private static readonly string[] Rounds = ["1st round, snug: until the heads sit", "2nd round, final: to the full torque"];

    /// <param name="screws">From left to right as the rail lies.</param>
    /// <param name="numbers">For each screw, left to right, its turn.</param>
    /// <param name="isDotRight">Whether the painted end lies at the right.</param>
    /// <param name="near">What the left end is called.</param>
    /// <param name="far">What the right end is called.</param>
    /// <param name="name">What a reader who can't see it should know.</param>
    public static string Of(ScrewPattern screws, IReadOnlyList<int> numbers, bool isDotRight, string near, string far, string name)
    {
        var scale = (Width - (2 * Margin)) / screws.LengthMm;
        double[] at = [.. screws.ScrewsMm.Select(x => Margin + (scale * x))];
        var narrow = at.Zip(at.Skip(1), (a, b) => b - a).Min();
        var levels = narrow >= RoomPx ? 0 : (int)Math.Ceiling(RoomPx / narrow);
        var radius = Math.Clamp(Narrowest(screws.HolesMm) * scale * 0.42, 2, LargestRing);
        var pen = new SvgPen();
        var top = 0.0;
        for (var round = 0; round < Rounds.Length; round++)
        {
            pen.Words(Margin, top + 11, Rounds[round], "start", PictureLayout.FontSize);
            var rail = top + Title + (levels * Step);
            var middle = rail + (Deep / 2);
            pen.Stroke($"M{SvgText.Px(Margin)} {SvgText.Px(rail)}h{SvgText.Px(Width - (2 * Margin))}v{SvgText.Px(Deep)}h-{SvgText.Px(Width - (2 * Margin))}z", Role.Ink, 1.2);
            foreach (var x in screws.HolesMm.Except(screws.ScrewsMm))
                pen.Stroke(Circle(Margin + (scale * x), middle, radius * 0.7), Role.Context, 0.8, Dash.Dotted);
            for (var i = 0; i < at.Length; i++)
            {
                pen.Stroke(Circle(at[i], middle, radius), Role.Ink, round == 0 ? 0.8 : Math.Min(2.2, 0.4 * radius));
                var above = levels == 0 ? 0 : (i % levels) + 1;
                if (above > 0)
                    pen.Guide($"M{SvgText.Px(at[i])} {SvgText.Px(middle - radius)}V{SvgText.Px(rail - ((above - 1) * Step) - 2)}");
                pen.Words(at[i], above == 0 ? middle + 4 : rail - ((above - 1) * Step) - 4, Shown.Count(numbers[i]), "middle", Words);
            }

            // Painted on the end itself, the dot is drawn just beyond it.
            pen.Dot(isDotRight ? Width - (Margin / 2) : Margin / 2, middle, Role.Limit, DotSize);
            top = rail + Deep + Gap;
        }

        pen.Words(Margin, top + 6, isDotRight ? near : Ended("dot", near), "start", Words);
        pen.Words(Width - Margin, top + 6, isDotRight ? Ended(far, "dot") : far, "end", Words);
        return $"<svg role=\"img\" aria-label=\"{SvgText.Encode(name)}\" width=\"100%\" viewBox=\"0 0 {SvgText.Px(Width)} {SvgText.Px(top + 11)}\" style=\"max-width:44em\" font-family=\"system-ui,sans-serif\" font-size=\"{SvgText.Px(PictureLayout.FontSize)}\" fill=\"currentColor\">{pen}</svg>";
    }

    /// <summary>A pattern by itself, the dot at the left.</summary>
    public static string Of(ScrewPattern screws)
    {
        var order = screws.TighteningRounds[0].ToList();
        return Of(screws, [.. screws.Holes.Select(h => order.IndexOf(h) + 1)], isDotRight: false, "", "far end", $"Tighten holes {string.Join(", ", order.Select(Shown.Count))}, counted from the dot, in two rounds: snug, then final.");
    }

    public static string Caption(ScrewPattern screws)
        => $"The rail from above, its painted dot at the left. Go 1, 2, 3... until all heads sit, then 1, 2, 3... again to the full torque.{(screws.Holes.Count < screws.HolesMm.Count ? " Dotted holes stay empty." : "")}";

    private static string Ended(string first, string last) => first.Length == 0 ? last : last.Length == 0 ? first : $"{first}, {last}";

    private static double Narrowest(IReadOnlyList<double> holes) => holes.Zip(holes.Skip(1), (a, b) => b - a).Min();

    private static string Circle(double x, double y, double r) => $"M{SvgText.Px(x - r)} {SvgText.Px(y)}a{SvgText.Px(r)} {SvgText.Px(r)} 0 1 0 {SvgText.Px(2 * r)} 0a{SvgText.Px(r)} {SvgText.Px(r)} 0 1 0 -{SvgText.Px(2 * r)} 0z";
}
