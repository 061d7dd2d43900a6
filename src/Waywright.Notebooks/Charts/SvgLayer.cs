using static Waywright.Notebooks.SvgText;

namespace Waywright.Notebooks;

/// <summary>From the units of a panel's axes to px of the picture.</summary>
internal sealed record SvgScale(Axis XAxis, Axis YAxis, double Left, double Top, double Width, double Height)
{
    public double X(double x) => Left + ((x - XAxis.Low) / XAxis.Range * Width);

    public double Y(double y) => Top + ((YAxis.High - y) / YAxis.Range * Height);

    public bool Holds(Point point) => XAxis.Holds(point.X) && YAxis.Holds(point.Y);

    public string At(Point point) => $"{Px(X(point.X))} {Px(Y(point.Y))}";

    public string Path(IEnumerable<Point> points) => "M" + string.Join("L", points.Select(At));
}

/// <summary>Draws one layer of a panel into SVG.</summary>
internal static class SvgLayer
{
    /// <summary>Whether what leaves the panel is cut at its edge; other marks and words are drawn whole or not at all.</summary>
    public static bool IsCut(Layer layer) => layer is DotLayer or LineLayer or BandLayer;

    public static void Draw(SvgPen pen, Layer layer, SvgScale scale)
    {
        switch (layer)
        {
            case DotLayer dots:
                Dots(pen, dots, scale);
                break;
            case LineLayer line:
                pen.Stroke(scale.Path(line.Points), line.Role, line.Width, line.Dash);
                break;
            case BandLayer band:
                pen.Fill($"{scale.Path(band.Outline)}z", band.Role, Roles.FillOpacity);
                break;
            case MarkerLayer markers:
                foreach (var (place, words) in markers.Points.Zip(markers.Words ?? Enumerable.Repeat("", markers.Points.Count)).Where(m => scale.Holds(m.First)))
                {
                    Shape(pen, markers, scale.At(place));
                    Words(pen, words, scale.X(place.X), scale.Y(place.Y), markers.Beside, markers.Size * 0.8);
                }

                break;
            case TickLayer ticks:
                pen.Stroke(string.Concat(ticks.X.Where(scale.XAxis.Holds).Select(x => $"M{Px(scale.X(x))} {Px(scale.Top + scale.Height - 5)}v10")), ticks.Role, 2.5);
                break;
            case BracketLayer bracket:
                Bracket(pen, bracket, scale);
                break;
            case RuleLayer rule when scale.YAxis.Holds(rule.Y):
                pen.Stroke($"M{Px(scale.Left)} {Px(scale.Y(rule.Y))}h{Px(scale.Width)}", rule.Role, 1.5, rule.Dash);
                Words(pen, rule.Label, scale.Left + (rule.Beside.Across() < 0 ? scale.Width : 0), scale.Y(rule.Y), rule.Beside, 2);
                break;
            case TextLayer text:
                Words(pen, text.Words, scale.X(text.At.X), scale.Y(text.At.Y), text.Beside, 4);
                break;
        }
    }

    /// <summary>The layer's mark in the key, 22 px wide from x around the level y.</summary>
    public static void Sample(SvgPen pen, Layer layer, double x, double y)
    {
        var level = $"M{Px(x)} {Px(y)}h22";
        switch (layer)
        {
            case DotLayer dots:
                if (dots.Joined)
                    pen.Stroke(level, Role.Context, 1);
                if (dots.Up is not null)
                    pen.Stroke($"M{Px(x + 11)} {Px(y - 7)}v14", dots.Role, 1.5);
                if (dots.Across is not null)
                    pen.Stroke(level, dots.Role, 1.5);
                pen.Dot(x + 11, y, dots.Role, dots.Diameter);
                break;
            case LineLayer line:
                pen.Stroke(level, line.Role, line.Width, line.Dash);
                break;
            case BandLayer band:
                pen.Fill($"M{Px(x)} {Px(y - 5)}h22v10h-22z", band.Role, Roles.FillOpacity);
                break;
            case MarkerLayer marker:
                Shape(pen, marker, $"{Px(x + 11)} {Px(y)}");
                break;
            case TickLayer ticks:
                pen.Stroke($"M{Px(x + 11)} {Px(y - 5)}v10", ticks.Role, 2.5);
                break;
            case BracketLayer bracket:
                pen.Stroke(level, bracket.Role, 2, bracket.Dash);
                break;
            case RuleLayer rule:
                pen.Stroke(level, rule.Role, 1.5, rule.Dash);
                break;
        }
    }

    private static void Dots(SvgPen pen, DotLayer dots, SvgScale scale)
    {
        if (dots.Joined)
            pen.Stroke(scale.Path(dots.Points), Role.Context, 1);
        for (var i = 0; i < dots.Points.Count; i++)
        {
            var (x, y) = (scale.X(dots.Points[i].X), scale.Y(dots.Points[i].Y));
            if (dots.Up is not null)
                pen.Stroke($"M{Px(x)} {Px(scale.Y(dots.Up[i].Low))}V{Px(scale.Y(dots.Up[i].High))}", dots.Role, 1.5);
            if (dots.Across is not null)
                pen.Stroke($"M{Px(scale.X(dots.Across[i].Low))} {Px(y)}H{Px(scale.X(dots.Across[i].High))}", dots.Role, 1.5);
            pen.Dot(x, y, dots.Role, dots.Diameter);
        }
    }

    private static void Shape(SvgPen pen, MarkerLayer markers, string at)
    {
        var r = markers.Size / 2;
        var outline = markers.Symbol switch
        {
            Symbol.Diamond => $"m0 {Px(-r * 1.3)}l{Px(r * 1.3)} {Px(r * 1.3)}l{Px(-r * 1.3)} {Px(r * 1.3)}l{Px(-r * 1.3)} {Px(-r * 1.3)}z",
            Symbol.Square => $"m{Px(-r)} {Px(-r)}h{Px(2 * r)}v{Px(2 * r)}h{Px(-2 * r)}z",
            Symbol.Triangle => $"m0 {Px(-r)}l{Px(r * 1.155)} {Px(r * 1.5)}h{Px(-r * 2.31)}z",
            Symbol.TriangleDown => $"m0 {Px(r)}l{Px(-r * 1.155)} {Px(-r * 1.5)}h{Px(r * 2.31)}z",
            Symbol.Cross => $"m{Px(-r * 0.7)} {Px(-r * 0.7)}l{Px(r * 1.4)} {Px(r * 1.4)}m0 {Px(-r * 1.4)}l{Px(-r * 1.4)} {Px(r * 1.4)}",
            _ => $"m{Px(-r)} 0a{Px(r)} {Px(r)} 0 1 0 {Px(2 * r)} 0a{Px(r)} {Px(r)} 0 1 0 {Px(-2 * r)} 0z",
        };
        if (markers.Symbol is Symbol.Ring or Symbol.Cross)
            pen.Stroke($"M{at}{outline}", markers.Role, 2);
        else
            pen.Outlined($"M{at}{outline}", markers.Role);
    }

    private static void Bracket(SvgPen pen, BracketLayer bracket, SvgScale scale)
    {
        var (x, low, high) = (scale.X(bracket.X), scale.Y(bracket.Height.Low), scale.Y(bracket.Height.High));
        var end = Px(x + (bracket.OpensRight ? 5 : -5));
        pen.Stroke($"M{end} {Px(high)}H{Px(x)}V{Px(low)}H{end}", bracket.Role, 2, bracket.Dash);
        var level = bracket.Beside.Up() switch
        {
            > 0 => high,
            < 0 => low,
            _ => (low + high) / 2,
        };
        Words(pen, bracket.Label, x, level, bracket.Beside, 5);
    }

    private static void Words(SvgPen pen, string words, double x, double y, Beside beside, double distance)
    {
        if (words.Length == 0)
            return;
        var lines = words.Split('\n');
        var anchor = beside.Across() switch
        {
            < 0 => "end",
            > 0 => "",
            _ => "middle",
        };
        var below = (lines.Length - 1) * PictureLayout.LineHeight;
        var first = beside.Up() switch
        {
            > 0 => y - distance - 4 - below,
            < 0 => y + distance + 12,
            _ => y + 4 - (below / 2),
        };
        for (var i = 0; i < lines.Length; i++)
            pen.Words(x + (beside.Across() * distance), first + (i * PictureLayout.LineHeight), lines[i], anchor);
    }
}
