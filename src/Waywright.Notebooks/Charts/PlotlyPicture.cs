using Microsoft.FSharp.Collections;
using GenericChart = Plotly.NET.GenericChart;
using Trace = Plotly.NET.Trace;

namespace Waywright.Notebooks;

/// <summary>
/// Draws a picture as a Plotly.NET chart: no defaults but a small template of its own, transparent, no mode bar, numbers rounded to a thousandth of the axis.
/// Its layout carries in <c>meta</c> what <see cref="DrawScript"/> needs to set small multiples in fewer or more columns.
/// </summary>
internal static class PlotlyPicture
{
    private const string Transparent = "rgba(0,0,0,0)";

    public static GenericChart Draw(Picture picture)
    {
        var layout = new PictureLayout(picture);
        var traces = new List<Trace>();
        var named = new HashSet<string>(StringComparer.Ordinal);
        for (var i = 0; i < picture.Panels.Count; i++)
        {
            foreach (var shown in picture.Panels[i].Layers)
                traces.AddRange(new PlotlyTrace(picture, layout, i, inKey: shown.Name.Length > 0 && named.Add(shown.Name)).Of(shown));
        }

        var chart = GenericChart.ofTraceObjects(false, ListModule.OfSeq(traces));
        chart = GenericChart.setLayout(LayoutOf(picture, layout), chart);
        var config = new Plotly.NET.Config();
        config.SetProperty("displayModeBar", false);
        return GenericChart.setConfig(config, chart);
    }

    /// <summary>The ending of a panel's axis names: none, 2, 3 and so on.</summary>
    public static string AxisEnd(int panel) => panel == 0 ? "" : SvgText.Px(panel + 1);

    private static Plotly.NET.Layout LayoutOf(Picture picture, PictureLayout layout)
    {
        var made = new Plotly.NET.Layout();
        made.SetProperty("template", Template(picture));
        made.SetProperty("height", Numbers.Short(layout.Height));
        made.SetProperty("margin", new { l = Numbers.Short(layout.Left), r = Numbers.Short(layout.Right), t = Numbers.Short(layout.Top), b = Numbers.Short(layout.Bottom), autoexpand = false });
        made.SetProperty("paper_bgcolor", Transparent);
        made.SetProperty("plot_bgcolor", Transparent);
        made.SetProperty("font", new { family = "system-ui,sans-serif", size = Numbers.Short(PictureLayout.FontSize), color = Roles.InkColour });
        made.SetProperty("hovermode", "closest");
        made.SetProperty("dragmode", false);
        made.SetProperty("showlegend", layout.KeyRows > 0);
        made.SetProperty("legend", new { orientation = "h", x = 0, y = Share(1 + (PictureLayout.AboveTitle / layout.Inner)), yanchor = "bottom", bgcolor = Transparent, itemclick = false, itemdoubleclick = false });
        // A grid of one is no grid to Plotly.
        if (picture.Panels.Count == 1)
            made.SetProperty("yaxis", new { domain = Domain(layout) });
        else
            made.SetProperty("grid", Grid(layout));
        for (var i = 0; i < picture.Panels.Count; i++)
        {
            if (i % layout.Columns > 0)
                made.SetProperty("yaxis" + AxisEnd(i), new { showticklabels = false });
        }

        made.SetProperty("annotations", Annotations(picture, layout).ToArray());
        made.SetProperty("meta", new
        {
            panels = picture.Panels.Count,
            widest = picture.Panels.Count == 1 ? (int)layout.Width : 1100,
            least = (int)layout.PanelWidth,
            gap = (int)PictureLayout.Gap,
            head = (int)layout.Head,
            plot = (int)layout.PlotHeight,
            row = (int)layout.RowHeight,
            above = (int)PictureLayout.AboveTitle,
        });
        return made;
    }

    // What all panels, marks and words have in common, said once.
    private static object Template(Picture picture)
    {
        var xaxis = new { range = Numbers.Pair(picture.X), tickvals = Numbers.Rounded(picture.X.Ticks, picture.X), ticktext = Labels(picture.X), ticklabeloverflow = "allow", hoverformat = HoverFormat(picture.X), fixedrange = true, showgrid = false, zeroline = false, showline = true, linecolor = Roles.InkColour, ticks = "outside", ticklen = 4, tickcolor = Roles.InkColour };
        var yaxis = new { range = Numbers.Pair(picture.Y), tickvals = Numbers.Rounded(picture.Y.Ticks, picture.Y), ticktext = Labels(picture.Y), ticklabeloverflow = "allow", hoverformat = HoverFormat(picture.Y), fixedrange = true, gridcolor = "rgba(128,128,128,0.25)", zeroline = false, ticks = "" };
        var annotationdefaults = new { showarrow = false, x = 0, xanchor = "left", y = 1, yanchor = "bottom", yshift = 3, align = "left", borderpad = 0, borderwidth = 0 };
        // A trace's own hovertemplate overrides the skip.
        return new { data = new { scatter = new[] { new { showlegend = false, hoverinfo = "skip" } } }, layout = new { xaxis, yaxis, annotationdefaults } };
    }

    // Names of rows come from data.
    private static string[] Labels(Axis axis) => Array.ConvertAll(axis.TickLabels, PlotlyText.Encode);

    private static string HoverFormat(Axis axis) => $".{SvgText.Px(axis.TickDecimals + 1)}f";

    private static object Grid(PictureLayout layout) => new
    {
        rows = layout.Rows,
        columns = layout.Columns,
        pattern = "independent",
        xgap = Share(PictureLayout.Gap / (layout.PanelWidth + PictureLayout.Gap)),
        ygap = Share(1 - (layout.PlotHeight / layout.RowHeight)),
        domain = new { y = Domain(layout) },
    };

    private static object[] Domain(PictureLayout layout) => [Share(layout.Foot / layout.Inner), Share(1 - (layout.Head / layout.Inner))];

    private static IEnumerable<object> Annotations(Picture picture, PictureLayout layout)
    {
        yield return new { text = PlotlyText.Encode(picture.Y.Label), xref = "paper", yref = "paper", xshift = Numbers.Short(-layout.Left), yshift = 11 };
        yield return new { text = PlotlyText.Encode(picture.X.Label), xref = "paper", yref = "paper", x = 0.5, y = 0, xanchor = "center", yanchor = "top", yshift = -4 };
        for (var i = 0; i < picture.Panels.Count; i++)
        {
            var panel = picture.Panels[i];
            var (xref, yref) = ($"x{AxisEnd(i)} domain", $"y{AxisEnd(i)} domain");
            if (panel.Title.Length > 0)
            {
                var sign = panel.Sign is { } s ? $"<span style=\"color:{s.Role.Colour()}\">{s.Symbol.Glyph()}</span> " : "";
                var title = TextFit.Shorten(panel.Title, layout.PanelWidth - 34, PictureLayout.FontSize);
                yield return new { text = $"{sign}<b>{PlotlyText.Encode(title)}</b>", xref, yref };
            }

            if (layout.Notes[i].Count > 0)
                yield return new { text = string.Join("<br>", layout.Notes[i].Select(PlotlyText.Encode)), xref, yref, y = 0, yanchor = "top", yshift = -26, font = new { size = PictureLayout.SmallFontSize } };
        }
    }

    private static object Share(double share) => Numbers.Short(Math.Round(share, 5));
}
