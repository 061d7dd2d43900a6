namespace Waywright.Notebooks;

/// <summary>One chart as data: what is drawn, independent of how. <see cref="SvgPicture"/> and <see cref="PlotlyPicture"/> draw the same from it.</summary>
internal sealed record Picture
{
    /// <param name="name">What the picture is, in a few words: its accessible name.</param>
    /// <param name="description">What a reader who can't see it should know.</param>
    /// <param name="x">The horizontal axis, shared by all panels.</param>
    /// <param name="y">The vertical axis, shared by all panels.</param>
    /// <param name="panels">One, or small multiples in reading order.</param>
    /// <exception cref="ArgumentException">No panel, or a layer with lists of different lengths or a number that isn't finite.</exception>
    public Picture(string name, string description, Axis x, Axis y, params IEnumerable<Panel> panels)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        (Name, Description, X, Y) = (name, description, x, y);
        Panels = FixedList<Panel>.Copy(panels.Select(p => p with { Layers = FixedList<Layer>.Copy(p.Layers.Concat(Cuts.Of(p, x, y))) }));
        if (Panels.Count == 0)
            throw new ArgumentException("A picture needs a panel.", nameof(panels));
        foreach (var layer in Panels.SelectMany(p => p.Layers))
            Check(layer);
    }

    public string Name { get; }

    public string Description { get; }

    public Axis X { get; }

    public Axis Y { get; }

    public FixedList<Panel> Panels { get; }

    /// <summary>Small multiples beside each other where the page is wide enough.</summary>
    public int Columns { get; init; } = 3;

    /// <summary>Height of one panel's plot in px; null takes the usual one.</summary>
    public int? PlotHeight { get; init; }

    /// <summary>What a reader may change; null for a picture that stays.</summary>
    public Slider? Slider { get; init; }

    /// <summary>One layer for each name in the key, in order of first appearance.</summary>
    public IEnumerable<Layer> Key => Panels.SelectMany(p => p.Layers).Where(l => l.Name.Length > 0).DistinctBy(l => l.Name);

    private static void Check(Layer layer)
    {
        var sound = layer switch
        {
            DotLayer d => SameLength(d.Points, d.Up) && SameLength(d.Points, d.Across),
            LineLayer l => l.Points.Count >= 2,
            BandLayer b => b.X.Count >= 2 && b.X.Count == b.Heights.Count && b.X.All(double.IsFinite),
            MarkerLayer m => SameLength(m.Points, m.Words),
            TickLayer t => t.X.All(double.IsFinite),
            BracketLayer b => double.IsFinite(b.X),
            RuleLayer r => double.IsFinite(r.Y),
            _ => true,
        };
        if (!sound)
            throw new ArgumentException($"The layer '{layer.Name}' has lists of different lengths, too few points, or a number that isn't finite.", nameof(layer));
    }

    private static bool SameLength<T>(FixedList<Point> points, FixedList<T>? others) => others is null || others.Count == points.Count;
}

/// <summary>One panel of a picture: a heading with a sign of its own if given, layers, and a line below.</summary>
internal sealed record Panel(string Title, string Note, FixedList<Layer> Layers)
{
    public Panel(params IEnumerable<Layer> layers)
        : this("", "", FixedList<Layer>.Copy(layers))
    {
    }

    /// <summary>A shape before the heading and the colour of its meaning; the note says it in words.</summary>
    public (Symbol Symbol, Role Role)? Sign { get; init; }
}
