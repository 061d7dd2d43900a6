namespace Waywright.Notebooks;

/// <summary>Where everything of a picture lies, in px, so that the static and the live drawing agree.</summary>
internal sealed class PictureLayout
{
    public const double FontSize = 12;
    public const double SmallFontSize = 11.5;
    public const double LineHeight = 15;
    public const double KeyRow = 20;
    public const double KeySample = 30;
    public const double Gap = 22;

    /// <summary>Room between the plots and the key for the vertical axis' title.</summary>
    public const double AboveTitle = 32;

    private const double BelowTitle = 22;
    private const double TickLabels = 20;
    private const double PanelTitle = 20;

    public PictureLayout(Picture picture)
    {
        var small = picture.Panels.Count > 1;
        Width = 760;
        Columns = Math.Clamp(picture.Columns, 1, picture.Panels.Count);
        Left = Math.Ceiling(picture.Y.TickLabels.Select(t => TextFit.Width(t, FontSize)).DefaultIfEmpty(0).Max()) + 14;
        // Half of the last number of the axis stands beyond its end.
        Right = Math.Max(16, Math.Ceiling(TextFit.Width(picture.X.TickLabels.LastOrDefault() ?? "", FontSize) / 2) + 3);
        PanelWidth = (Width - Left - Right - ((Columns - 1) * Gap)) / Columns;
        PlotHeight = picture.PlotHeight ?? (small ? 96 : 260);
        Head = picture.Panels.Any(p => p.Title.Length > 0) ? PanelTitle : 0;
        Notes = FixedList<IReadOnlyList<string>>.Copy(picture.Panels.Select(p => TextFit.Wrap(p.Note, PanelWidth, SmallFontSize, 3)));
        NoteLines = Notes.Max(n => n.Count);
        Foot = TickLabels + (NoteLines * LineHeight) + (small ? 12 : 0);
        Key = PlaceKey(picture);
        KeyRows = Key.Count == 0 ? 0 : Key.Max(k => k.Row) + 1;
        Top = (KeyRows * KeyRow) + AboveTitle;
        Rows = (picture.Panels.Count + Columns - 1) / Columns;
        Inner = Rows * RowHeight;
        Bottom = BelowTitle;
        Height = Top + Inner + Bottom;
    }

    public double Width { get; }

    public double Height { get; }

    public double Left { get; }

    public double Right { get; }

    public double Top { get; }

    public double Bottom { get; }

    /// <summary>Height of all panels with their headings and notes.</summary>
    public double Inner { get; }

    public int Columns { get; }

    public int Rows { get; }

    public double PanelWidth { get; }

    public double PlotHeight { get; }

    /// <summary>Room above a plot for its heading.</summary>
    public double Head { get; }

    /// <summary>Room below a plot for tick labels and notes.</summary>
    public double Foot { get; }

    public int NoteLines { get; }

    public FixedList<IReadOnlyList<string>> Notes { get; }

    public FixedList<(Layer Layer, double X, int Row)> Key { get; }

    public int KeyRows { get; }

    public double RowHeight => Head + PlotHeight + Foot;

    /// <summary>Upper left corner of a panel's plot.</summary>
    public (double X, double Y) PlotCorner(int panel)
        => (Left + (panel % Columns * (PanelWidth + Gap)), Top + (panel / Columns * RowHeight) + Head);

    private FixedList<(Layer Layer, double X, int Row)> PlaceKey(Picture picture)
    {
        var placed = new List<(Layer, double, int)>();
        var (x, row) = (Left, 0);
        foreach (var layer in picture.Key)
        {
            var width = KeySample + TextFit.Width(layer.Name, FontSize) + 18;
            if (x > Left && x + width > Width - Right)
                (x, row) = (Left, row + 1);
            placed.Add((layer, x, row));
            x += width;
        }

        return FixedList<(Layer, double, int)>.Copy(placed);
    }
}
