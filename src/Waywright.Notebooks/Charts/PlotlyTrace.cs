using Trace = Plotly.NET.Trace;

namespace Waywright.Notebooks;

/// <summary>Turns one layer of a panel into Plotly traces.</summary>
internal sealed class PlotlyTrace(Picture picture, PictureLayout layout, int panel, bool inKey)
{
    private Axis X => picture.X;

    private Axis Y => picture.Y;

    public IEnumerable<Trace> Of(Layer layer) => layer switch
    {
        DotLayer dots => [Dots(dots)],
        LineLayer line => [Line(line)],
        BandLayer band => [Band(band)],
        MarkerLayer markers => Markers(markers),
        TickLayer ticks => Ticks(ticks),
        BracketLayer bracket => [Bracket(bracket)],
        RuleLayer rule when Y.Holds(rule.Y) => [Rule(rule)],
        TextLayer text => [Text(text)],
        _ => [],
    };

    private Trace Dots(DotLayer dots)
    {
        var trace = Begin(dots, dots.Joined ? "lines+markers" : "markers", dots.Points);
        if (dots.Joined)
            trace.SetProperty("line", Stroke(Role.Context, 1, Dash.Solid));
        var marker = new Dictionary<string, object> { ["color"] = dots.Role.Colour(), ["size"] = Numbers.Short(dots.Diameter) };
        if (dots.Role.Opacity() < 1)
            marker["opacity"] = dots.Role.Opacity();
        trace.SetProperty("marker", marker);
        if (dots.Up is not null)
            trace.SetProperty("error_y", Bars(dots.Points.Select(p => p.Y), dots.Up, Y, dots.Role));
        if (dots.Across is not null)
            trace.SetProperty("error_x", Bars(dots.Points.Select(p => p.X), dots.Across, X, dots.Role));
        Hover(trace, dots, dots.Points);
        return trace;
    }

    private Trace Line(LineLayer line)
    {
        var trace = Begin(line, "lines", line.Points);
        trace.SetProperty("line", Stroke(line.Role, line.Width, line.Dash));
        if (line.Points.Count > 2)
            Hover(trace, line, line.Points);
        return trace;
    }

    private Trace Band(BandLayer band)
    {
        var trace = Begin(band, "lines", FixedList<Point>.Copy(band.Outline));
        trace.SetProperty("fill", "toself");
        trace.SetProperty("fillcolor", band.Role.Colour() + Roles.FillHex);
        trace.SetProperty("line", new { width = 0 });
        return trace;
    }

    private IEnumerable<Trace> Markers(MarkerLayer markers)
    {
        var shown = markers.Points.Select((p, i) => (Place: p, Words: markers.Words?[i] ?? "")).Where(m => X.Holds(m.Place.X) && Y.Holds(m.Place.Y)).ToArray();
        if (shown.Length == 0)
            yield break;
        var worded = shown.Any(m => m.Words.Length > 0);
        var trace = Begin(markers, worded ? "markers+text" : "markers", FixedList<Point>.Copy(shown.Select(m => m.Place)));
        var symbol = markers.Symbol switch
        {
            Symbol.Ring => "circle-open",
            Symbol.Cross => "x-thin-open",
            Symbol.Triangle => "triangle-up",
            Symbol.TriangleDown => "triangle-down",
            _ => markers.Symbol.ToString().ToLowerInvariant(),
        };
        var open = markers.Symbol is Symbol.Ring or Symbol.Cross;
        trace.SetProperty("marker", new { symbol, size = Numbers.Short(markers.Size), color = markers.Role.Colour(), line = new { color = open ? markers.Role.Colour() : Roles.InkColour, width = open ? 2 : 1 } });
        trace.SetProperty("cliponaxis", false);
        if (worded)
        {
            trace.SetProperty("text", shown.Select(m => PlotlyText.Encode(m.Words)).ToArray());
            trace.SetProperty("textposition", Position(markers.Beside));
        }

        Hover(trace, markers, shown.Select(m => m.Place));
        yield return trace;
    }

    private IEnumerable<Trace> Ticks(TickLayer ticks)
    {
        var places = ticks.X.Where(X.Holds).Select(x => new Point(x, Y.Low)).ToArray();
        if (places.Length == 0)
            yield break;
        var trace = Begin(ticks, "markers", FixedList<Point>.Copy(places));
        trace.SetProperty("marker", new { symbol = "line-ns-open", size = 10, color = ticks.Role.Colour(), line = new { width = 2.5, color = ticks.Role.Colour() } });
        trace.SetProperty("cliponaxis", false);
        trace.SetProperty("hovertemplate", $"{PlotlyText.Encode(ticks.Name)}<br>%{{x}} {PlotlyText.Encode(X.Unit)}<extra></extra>");
        yield return trace;
    }

    private Trace Bracket(BracketLayer bracket)
    {
        var turn = 5 / layout.PanelWidth * X.Range * (bracket.OpensRight ? 1 : -1);
        var (low, middle, high) = (bracket.Height.Low, bracket.Height.Middle, bracket.Height.High);
        double[] x = [bracket.X + turn, bracket.X, bracket.X, bracket.X, bracket.X + turn];
        double[] y = [high, high, middle, low, low];
        if (bracket.Label.Length == 0)
            (x, y) = ([x[0], x[1], x[3], x[4]], [high, high, low, low]);
        var trace = Begin(bracket, "lines", Point.Of(x, y));
        trace.SetProperty("line", Stroke(bracket.Role, 2, bracket.Dash));
        var at = bracket.Beside.Up() switch
        {
            > 0 => 1,
            < 0 => 3,
            _ => 2,
        };
        Label(trace, bracket.Label, bracket.Beside, 5, at);
        return trace;
    }

    private Trace Rule(RuleLayer rule)
    {
        var trace = Begin(rule, "lines", Point.Of([X.Low, X.High], [rule.Y, rule.Y]));
        trace.SetProperty("line", Stroke(rule.Role, 1.5, rule.Dash));
        Label(trace, rule.Label, rule.Beside, 2, rule.Beside.Across() < 0 ? 1 : 0);
        return trace;
    }

    private Trace Text(TextLayer text)
    {
        var trace = Begin(text, "text", FixedList<Point>.Copy([text.At]));
        Label(trace, text.Words, text.Beside, 1, 0);
        return trace;
    }

    private Trace Begin(Layer layer, string mode, FixedList<Point> points)
    {
        var trace = new Trace("scatter");
        trace.SetProperty("mode", mode);
        if (inKey)
        {
            trace.SetProperty("name", PlotlyText.Encode(layer.Name));
            trace.SetProperty("showlegend", true);
        }

        if (Numbers.Even(points.Select(p => p.X).ToArray(), X) is { } even)
        {
            trace.SetProperty("x0", even.First);
            trace.SetProperty("dx", even.Step);
        }
        else
        {
            trace.SetProperty("x", Numbers.Rounded(points.Select(p => p.X), X));
        }

        trace.SetProperty("y", Numbers.Rounded(points.Select(p => p.Y), Y));
        if (panel > 0)
        {
            trace.SetProperty("xaxis", "x" + PlotlyPicture.AxisEnd(panel));
            trace.SetProperty("yaxis", "y" + PlotlyPicture.AxisEnd(panel));
        }

        return trace;
    }

    // What a mark says of itself: whose it is, then both numbers with units; Plotly adds the bars' lengths.
    private void Hover(Trace trace, Layer layer, IEnumerable<Point> points)
    {
        if (Y.Names is { } rows)
        {
            trace.SetProperty("hovertext", points.Select(p => PlotlyText.Encode(rows[rows.Count - (int)Math.Round(p.Y)])).ToArray());
            trace.SetProperty("hovertemplate", $"%{{hovertext}}: {PlotlyText.Encode(layer.Name)}<br>%{{x}} {PlotlyText.Encode(X.Unit)}<extra></extra>");
            return;
        }

        var title = picture.Panels[panel].Title;
        var named = title.Length > 0 && layer.Name.Length > 0 ? $"{title}: {layer.Name}" : title + layer.Name;
        trace.SetProperty("hovertemplate", $"{PlotlyText.Encode(named)}<br>%{{x}} {PlotlyText.Encode(X.Unit)}: %{{y}} {PlotlyText.Encode(Y.Unit)}<extra></extra>");
    }

    private static void Label(Trace trace, string words, Beside beside, int points, int at)
    {
        if (words.Length == 0)
            return;
        trace.SetProperty("mode", points == 1 ? "markers+text" : "lines+markers+text");
        // Words keep their distance from a marker, so each of these has one that doesn't show.
        trace.SetProperty("marker", new { size = 8, opacity = 0 });
        trace.SetProperty("text", Enumerable.Range(0, points).Select(i => i == at ? PlotlyText.Encode(words) : "").ToArray());
        trace.SetProperty("textposition", Position(beside));
        trace.SetProperty("cliponaxis", false);
    }

    private static object Bars(IEnumerable<double> middles, FixedList<Interval> intervals, Axis axis, Role role)
    {
        var (plus, minus) = (Numbers.Rounded(middles.Zip(intervals, (m, i) => i.High - m), axis), Numbers.Rounded(middles.Zip(intervals, (m, i) => m - i.Low), axis));
        return plus.SequenceEqual(minus)
            ? new { array = plus, width = 0, thickness = 1.5, color = role.Colour() }
            : new { array = plus, arrayminus = minus, symmetric = false, width = 0, thickness = 1.5, color = role.Colour() };
    }

    private static object Stroke(Role role, double width, Dash dash)
        => dash == Dash.Solid ? new { color = role.Colour(), width = Numbers.Short(width) } : new { color = role.Colour(), width = Numbers.Short(width), dash = dash.Lengths().Replace(",", "px,", StringComparison.Ordinal) + "px" };

    private static string Position(Beside beside)
    {
        var up = beside.Up() switch
        {
            > 0 => "top",
            < 0 => "bottom",
            _ => "middle",
        };
        var across = beside.Across() switch
        {
            > 0 => "right",
            < 0 => "left",
            _ => "center",
        };
        return $"{up} {across}";
    }
}
