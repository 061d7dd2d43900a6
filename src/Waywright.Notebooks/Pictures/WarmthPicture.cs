namespace Waywright.Notebooks;

/// <summary>What warmth does to a rail as three curves: free, held by friction, full bond; screws on the base line.</summary>
internal static class WarmthPicture
{
    private const int Points = 70;

    public static Picture Of(Warmth warmth)
    {
        var x = Axis.Covering("position from the dot", "mm", [0, warmth.LengthMm], 6).Reaching(-0.02 * warmth.LengthMm, 1.02 * warmth.LengthMm, new Interval(0, warmth.LengthMm));
        var (held, bonded) = (Line(warmth.Held), Line(warmth.Bonded));
        var y = Axis.Covering("height above the chord", "µm", held.Concat(bonded).Select(p => p.Y).Append(0)) with { Sign = "+ crowned" };
        var free = FixedList<Point>.Copy([new Point(0, 0), new Point(warmth.LengthMm, 0)]);
        var at = held.MaxBy(p => Math.Abs(p.Y));
        return new Picture("Bow by warmth", $"Held by friction {WarmthView.Size(warmth.HeldUm)}, full bond {WarmthView.Size(warmth.BondedUm)}.", x, y, new Panel(
            new LineLayer("free: no friction", Role.Context, free, Dash.Dotted),
            new LineLayer("full bond: glued", Role.Fitted, bonded, Dash.Dashed),
            new LineLayer("held by friction: expect this", Role.Ink, held, Width: 3),
            new TickLayer("screws", Role.Context, FixedList<double>.Copy(warmth.ScrewsMm)),
            new TextLayer(at, Markup.Micro(WarmthView.Size(warmth.HeldUm)), warmth.HeldUm < 0 ? Beside.Below : Beside.Above)));
    }

    public static string Caption(Warmth warmth)
        => Markup.Micro($"From {WarmthView.C(warmth.FromC)} to {WarmthView.C(warmth.ToC)} the top {(warmth.EndsHeld ? "between held ends " : "")}is expected to go {WarmthView.Size(warmth.HeldUm)}; glued to its base it would go {WarmthView.Size(warmth.BondedUm)}. Heights count from the chord through the rail's ends, in the plane at right angles to the joint.");

    private static FixedList<Point> Line(Profile shape)
    {
        var step = Math.Max(1, (shape.Count - 1) / Points);
        return FixedList<Point>.Copy(Enumerable.Range(0, shape.Count).Where(i => i % step == 0).Select(i => new Point(shape.PositionsMm[i], shape.HeightsUm[i])));
    }
}
