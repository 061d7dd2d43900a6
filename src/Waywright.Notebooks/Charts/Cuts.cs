namespace Waywright.Notebooks;

/// <summary>What leaves a panel is cut; its true size is written where it leaves.</summary>
internal static class Cuts
{
    public static IEnumerable<Layer> Of(Panel panel, Axis x, Axis y)
    {
        var places = panel.Layers.SelectMany(l => l.Places).Where(p => x.Holds(p.X) && !y.Holds(p.Y)).ToArray();
        if (places.Where(p => p.Y > y.High).ToArray() is { Length: > 0 } above)
            yield return Mark(above.MaxBy(p => p.Y), y.High, "▲ up to", above: true);
        if (places.Where(p => p.Y < y.Low).ToArray() is { Length: > 0 } below)
            yield return Mark(below.MinBy(p => p.Y), y.Low, "▼ down to", above: false);

        TextLayer Mark(Point far, double edge, string words, bool above)
        {
            var share = (far.X - x.Low) / x.Range;
            var beside = share < 0.25 ? (above ? Beside.BelowRight : Beside.AboveRight)
                : share > 0.75 ? (above ? Beside.BelowLeft : Beside.AboveLeft)
                : above ? Beside.Below : Beside.Above;
            return new TextLayer(new Point(far.X, edge), $"{words} {Axis.Written(far.Y, y.TickDecimals)} {y.Unit}".TrimEnd(), beside);
        }
    }
}
