namespace Waywright.Notebooks;

/// <summary>One kind of mark in a panel. Layers are drawn in order; those with a name stand in the key, equal names once.</summary>
internal abstract record Layer(string Name, Role Role)
{
    /// <summary>The data: where it leaves the panel its true size is written at the edge.</summary>
    public virtual IEnumerable<Point> Places => [];

    /// <summary>All that is drawn.</summary>
    public virtual IEnumerable<Point> Outline => Places;
}

/// <summary>Dots, with bars from low to high if given.</summary>
internal sealed record DotLayer(string Name, Role Role, FixedList<Point> Points, double Diameter = 6) : Layer(Name, Role)
{
    public FixedList<Interval>? Up { get; init; }

    public FixedList<Interval>? Across { get; init; }

    /// <summary>A thin grey line from dot to dot, to lead the eye.</summary>
    public bool Joined { get; init; }

    public override IEnumerable<Point> Places => Points.Concat(Up is null ? [] : Points.Zip(Up).SelectMany(p => new[] { new Point(p.First.X, p.Second.Low), new Point(p.First.X, p.Second.High) }));
}

/// <summary>A line through points.</summary>
internal sealed record LineLayer(string Name, Role Role, FixedList<Point> Points, Dash Dash = Dash.Solid, double Width = 2) : Layer(Name, Role)
{
    public override IEnumerable<Point> Places => Points;
}

/// <summary>A filled band from low to high over x.</summary>
internal sealed record BandLayer(string Name, Role Role, FixedList<double> X, FixedList<Interval> Heights) : Layer(Name, Role)
{
    /// <summary>There along the high ends, back along the low ones.</summary>
    public override IEnumerable<Point> Outline => X.Zip(Heights, (x, h) => new Point(x, h.High)).Concat(X.Zip(Heights, (x, h) => new Point(x, h.Low)).Reverse());
}

/// <summary>Single marks that matter, each with a word if given.</summary>
internal sealed record MarkerLayer(string Name, Role Role, Symbol Symbol, FixedList<Point> Points, FixedList<string>? Words = null, Beside Beside = Beside.Above, double Size = 10) : Layer(Name, Role)
{
    public override IEnumerable<Point> Places => Points;
}

/// <summary>Strokes across the base line: screws, holes.</summary>
internal sealed record TickLayer(string Name, Role Role, FixedList<double> X) : Layer(Name, Role);

/// <summary>A height as a bracket at x, its ends turned left or right, with a label.</summary>
internal sealed record BracketLayer(string Name, Role Role, double X, Interval Height, string Label = "", Dash Dash = Dash.Solid, bool OpensRight = false, Beside Beside = Beside.Right) : Layer(Name, Role);

/// <summary>A level over the whole width, with a label at its right end (to the left of it) or at its left end (to the right of it).</summary>
internal sealed record RuleLayer(string Name, Role Role, double Y, string Label = "", Dash Dash = Dash.Dashed, Beside Beside = Beside.AboveLeft) : Layer(Name, Role);

/// <summary>Words at a place; a line feed starts a new line.</summary>
internal sealed record TextLayer(Point At, string Words, Beside Beside = Beside.Right) : Layer("", Role.Ink);

/// <summary>How a line is broken.</summary>
internal enum Dash
{
    Solid,
    Dashed,
    Dotted,
    DashDot,
}

/// <summary>Shapes of markers.</summary>
internal enum Symbol
{
    Circle,
    Ring,
    Diamond,
    Square,
    Triangle,
    TriangleDown,
    Cross,
}

/// <summary>How dashes and symbols are written.</summary>
internal static class Strokes
{
    /// <summary>Lengths of stroke and gap in px, or an empty text.</summary>
    public static string Lengths(this Dash dash) => dash switch
    {
        Dash.Dashed => "7,4",
        Dash.Dotted => "2,3",
        Dash.DashDot => "9,3,2,3",
        _ => "",
    };

    public static string Glyph(this Symbol symbol) => symbol switch
    {
        Symbol.Ring => "○",
        Symbol.Diamond => "◆",
        Symbol.Square => "■",
        Symbol.Triangle => "▲",
        Symbol.TriangleDown => "▼",
        Symbol.Cross => "✕",
        _ => "●",
    };
}
