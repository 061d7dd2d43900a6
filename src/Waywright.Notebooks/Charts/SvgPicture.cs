using static Waywright.Notebooks.SvgText;

namespace Waywright.Notebooks;

/// <summary>
/// Draws a picture as a static <c>svg</c> element: no script, no outside reference, no id.
/// Ink is the text colour of the page around it.
/// </summary>
internal sealed class SvgPicture
{
    private readonly SvgPen _pen = new();
    private readonly Picture _picture;
    private readonly PictureLayout _layout;

    private SvgPicture(Picture picture) => (_picture, _layout) = (picture, new PictureLayout(picture));

    public static string Draw(Picture picture) => new SvgPicture(picture).Draw();

    private string Draw()
    {
        foreach (var (layer, x, row) in _layout.Key)
        {
            var y = (row * PictureLayout.KeyRow) + 10;
            SvgLayer.Sample(_pen, layer, x, y);
            _pen.Words(x + PictureLayout.KeySample, y + 4, layer.Name);
        }

        _pen.Words(0, _layout.Top - 15, _picture.Y.Label);
        _pen.Words(_layout.Left + ((_layout.Width - _layout.Left - _layout.Right) / 2), _layout.Height - 8, _picture.X.Label, "middle");
        var clipped = string.Concat(Enumerable.Range(0, _picture.Panels.Count).Select(DrawPanel));
        return $"<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" width=\"100%\" viewBox=\"0 0 {Px(_layout.Width)} {Px(_layout.Height)}\" style=\"max-width:{Px(_layout.Width)}px\""
            + $" font-family=\"system-ui,sans-serif\" font-size=\"{Px(PictureLayout.FontSize)}\" fill=\"currentColor\"><title>{Encode(_picture.Name)}</title><desc>{Encode(_picture.Description)}</desc>{clipped}{_pen}</svg>";
    }

    // Draws a panel with the picture's pen, and gives back what has to be cut at the panel's edges.
    private string DrawPanel(int index)
    {
        var panel = _picture.Panels[index];
        var (left, top) = _layout.PlotCorner(index);
        var scale = new SvgScale(_picture.X, _picture.Y, left, top, _layout.PanelWidth, _layout.PlotHeight);
        Grid(scale, index % _layout.Columns == 0);
        if (panel.Title.Length > 0)
        {
            var sign = panel.Sign is { } s ? $"<tspan fill=\"{SvgPen.Paint(s.Role)}\">{s.Symbol.Glyph()}</tspan> " : "";
            var title = TextFit.Shorten(panel.Title, _layout.PanelWidth - 34, PictureLayout.FontSize);
            _pen.Markup($"<text x=\"{Px(left)}\" y=\"{Px(top - 7)}\">{sign}<tspan font-weight=\"bold\">{Encode(title)}</tspan></text>");
        }

        var notes = _layout.Notes[index];
        for (var line = 0; line < notes.Count; line++)
            _pen.Words(left, top + scale.Height + 34 + (line * PictureLayout.LineHeight), notes[line], size: PictureLayout.SmallFontSize);
        var leaves = panel.Layers.Any(l => SvgLayer.IsCut(l) && l.Outline.Any(p => !scale.Holds(p)));
        var cut = panel.Layers.Where(l => leaves && SvgLayer.IsCut(l)).ToArray();
        foreach (var layer in panel.Layers.Except(cut))
            SvgLayer.Draw(_pen, layer, scale);
        if (cut.Length == 0)
            return "";
        var inside = new SvgPen();
        foreach (var layer in cut)
            SvgLayer.Draw(inside, layer, scale with { Left = 0, Top = 0 });
        return $"<svg x=\"{Px(left)}\" y=\"{Px(top)}\" width=\"{Px(scale.Width)}\" height=\"{Px(scale.Height)}\">{inside}</svg>";
    }

    private void Grid(SvgScale scale, bool labelHeights)
    {
        var (x, y) = (_picture.X, _picture.Y);
        var (left, floor) = (Px(scale.Left), Px(scale.Top + scale.Height));
        foreach (var (tick, label) in y.Ticks.Zip(y.TickLabels))
        {
            _pen.Guide($"M{left} {Px(scale.Y(tick))}h{Px(scale.Width)}");
            if (labelHeights)
                _pen.Words(scale.Left - 6, scale.Y(tick) + 4, label, "end");
        }

        _pen.Stroke($"M{left} {floor}h{Px(scale.Width)}", Role.Ink, 1);
        foreach (var tick in x.Ticks)
            _pen.Stroke($"M{Px(scale.X(tick))} {floor}v4", Role.Ink, 1);
        var labels = string.Concat(x.Ticks.Zip(x.TickLabels, (tick, label) => $"<tspan x=\"{Px(scale.X(tick))}\">{label}</tspan>"));
        _pen.Markup($"<text y=\"{Px(scale.Top + scale.Height + 16)}\" text-anchor=\"middle\">{labels}</text>");
    }
}
