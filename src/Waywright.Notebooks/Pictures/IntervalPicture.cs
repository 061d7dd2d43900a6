namespace Waywright.Notebooks;

/// <summary>One row of an interval picture.</summary>
/// <param name="Label">What the row is: a face, a rail, a reference line.</param>
/// <param name="Figure">Its figure.</param>
/// <param name="LimitUm">A limit on it, um; null for none.</param>
internal readonly record struct IntervalRow(string Label, UncertainFigure Figure, double? LimitUm = null);

/// <summary>Figures below each other on one axis: estimate, 95 % interval, what was read, what noise alone reads, and the limit.</summary>
internal static class IntervalPicture
{
    private const double WidestLabel = 120;
    private const double HalfBand = 0.17;
    private const double RowHeight = 44;

    // A row that reaches further than this many times the middle row would press all others to the left.
    private const double Furthest = 4;

    /// <param name="name">What the picture is.</param>
    /// <param name="what">What the rows are: <c>rail</c>, <c>reference line</c>.</param>
    /// <param name="rows">One or more, the first on top.</param>
    public static Picture Of(string name, string what, IReadOnlyList<IntervalRow> rows)
    {
        var reach = Reach(rows);
        var x = Axis.Covering($"straightness {string.Join(", ", rows.Select(r => r.Figure.Parameter).Distinct())}", "µm", [0, reach]);
        x = x.Reaching(0, Math.Max(x.High, reach * 1.04));
        var y = Axis.OfRows(what, rows.Select(r => TextFit.Shorten(r.Label, WidestLabel, PictureLayout.FontSize)));
        return new Picture(name, Told(rows), x, y, new Panel(Layers(rows, x))) { PlotHeight = (int)(RowHeight * rows.Count) + 14 };
    }

    /// <summary>What the picture shows, in a sentence or two.</summary>
    public static string Caption(IReadOnlyList<IntervalRow> rows)
    {
        var hidden = rows.Where(r => !r.Figure.IsDistinguishable).Select(r => r.Label).ToArray();
        var noise = hidden.Length == 0 ? $"{(rows.Count == 1 ? "It is" : "All are")} above it."
            : hidden.Length == rows.Count ? "What was read is not above it, so it may be noise alone."
            : $"Not above it, so perhaps noise alone: {string.Join(", ", hidden)}.";
        noise = $"Grey, the noise floor: what the same set-up reads on a perfectly straight rail in 95 of 100 sweeps at most. {noise}";
        var limited = rows.Where(r => r.LimitUm is not null).ToArray();
        return limited.Length == 0 ? noise : $"{Against(limited)} {noise}";
    }

    /// <summary>The rows as a table.</summary>
    public static TextTable Data(string what, IReadOnlyList<IntervalRow> rows, Setup? setup = null)
    {
        var limited = rows.Any(r => r.LimitUm is not null);
        string[] columns = [what, "#estimate um", "#95 % from um", "#to um", "#read as um", "#noise floor um"];
        var table = new TextTable(limited ? [.. columns, "#limit um"] : columns);
        foreach (var (label, f, limit) in rows)
        {
            string[] cells = [label, Shown.Um(f.EstimateUm, setup), Shown.Um(f.LowUm, setup), Shown.Um(f.HighUm, setup), Shown.Um(f.ObservedUm, setup), Shown.Um(f.NoiseFloorUm)];
            table.Add(limited ? [.. cells, Shown.Limit(limit)] : cells);
        }

        return table;
    }

    private static double Reach(IReadOnlyList<IntervalRow> rows)
    {
        var ends = rows.Select(r => Math.Max(r.Figure.HighUm, r.Figure.ObservedUm)).Order().ToArray();
        var kept = Furthest * ends[(ends.Length - 1) / 2];
        var floors = rows.Select(r => Math.Min(r.Figure.NoiseFloorUm, kept));
        return Math.Max(1e-3, ends.Where(e => e <= kept).Concat(floors).Concat(rows.Select(r => r.LimitUm ?? 0)).Max());
    }

    private static IEnumerable<Layer> Layers(IReadOnlyList<IntervalRow> rows, Axis x)
    {
        var placed = rows.Select((r, i) => (Row: r, Y: (double)(rows.Count - i))).ToArray();
        foreach (var (row, y) in placed.Where(p => p.Row.Figure.NoiseFloorUm > 0))
        {
            Interval across = new(y - HalfBand, y + HalfBand);
            yield return new BandLayer("noise floor", Role.Context, FixedList<double>.Copy([0, Math.Min(row.Figure.NoiseFloorUm, x.High)]), FixedList<Interval>.Copy([across, across]));
        }

        // Each row's limit ends below its words.
        foreach (var (row, y) in placed.Where(p => p.Row.LimitUm is not null))
            yield return new LineLayer("limit", Role.Limit, Point.Of([row.LimitUm!.Value, row.LimitUm.Value], [y - 0.36, y + HalfBand]), Dash.Dashed);
        var inside = placed.Where(p => x.Holds(p.Row.Figure.HighUm) && x.Holds(p.Row.Figure.ObservedUm)).ToArray();
        if (inside.Length > 0)
        {
            yield return new MarkerLayer("read as", Role.Ink, Symbol.Ring, FixedList<Point>.Copy(inside.Select(p => new Point(p.Row.Figure.ObservedUm, p.Y))), Size: 11);
            yield return new DotLayer("estimate with 95 % interval", Role.Ink, FixedList<Point>.Copy(inside.Select(p => new Point(p.Row.Figure.EstimateUm, p.Y))), 7)
            {
                Across = FixedList<Interval>.Copy(inside.Select(p => new Interval(p.Row.Figure.LowUm, p.Row.Figure.HighUm))),
            };
        }

        foreach (var (row, y) in inside)
            yield return Label(row.Figure, y, x);
        foreach (var (row, y) in placed.Except(inside))
            yield return new TextLayer(new Point(x.High, y), $"{UncertaintyText.Short(row.Figure)} ▶", Beside.Left);
    }

    private static TextLayer Label(UncertainFigure figure, double y, Axis x)
    {
        var share = figure.EstimateUm / x.Range;
        var beside = share < 0.2 ? Beside.AboveRight : share > 0.8 ? Beside.AboveLeft : Beside.Above;
        return new TextLayer(new Point(figure.EstimateUm, y), UncertaintyText.Short(figure), beside);
    }

    private static string Against(IReadOnlyList<IntervalRow> limited)
    {
        var within = Named(r => r.Figure.HighUm <= r.LimitUm);
        var beyond = Named(r => r.Figure.LowUm > r.LimitUm);
        var open = Named(r => r.Figure.HighUm > r.LimitUm && r.Figure.LowUm <= r.LimitUm);
        string[] parts = [within.Length == 0 ? "" : $"within its limit: {within}", beyond.Length == 0 ? "" : $"beyond it: {beyond}", open.Length == 0 ? "" : $"interval across the limit, so undecided: {open}"];
        return Shown.First(string.Join("; ", parts.Where(p => p.Length > 0))) + ".";

        string Named(Func<IntervalRow, bool> holds) => string.Join(", ", limited.Where(holds).Select(r => r.Label));
    }

    private static string Told(IReadOnlyList<IntervalRow> rows) => string.Join(" ", rows.Take(30).Select(r => $"{r.Label} {UncertaintyText.Short(r.Figure)} µm{(r.LimitUm is { } limit ? $", limit {Shown.Limit(limit)} µm" : "")}."));
}
