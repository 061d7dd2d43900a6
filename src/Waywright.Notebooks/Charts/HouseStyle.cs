using System.Text.Json.Nodes;
using Plotly.NET;

namespace Waywright.Notebooks;

/// <summary>Makes the charts that someone makes with Plotly.NET look like ours: same colours, ink and paper of the page, small figures.</summary>
internal static class HouseStyle
{
    private const string Transparent = "rgba(0,0,0,0)";
    private const string GridLine = "rgba(128,128,128,0.25)";

    private static readonly string[] Unneeded = ["select2d", "lasso2d", "zoomIn2d", "zoomOut2d", "autoScale2d"];

    /// <summary>Sets Plotly.NET's defaults for this process.</summary>
    public static void Apply()
    {
        var template = new Template();
        template.SetProperty("layout", new
        {
            colorway = new[] { Role.Ink, Role.Fitted, Role.Limit, Role.Contact, Role.Undecided, Role.Zone }.Select(r => r.Colour()).ToArray(),
            font = new { family = "system-ui,sans-serif", size = 12, color = Roles.InkColour },
            paper_bgcolor = Transparent,
            plot_bgcolor = Transparent,
            xaxis = Scale(),
            yaxis = Scale(),
            legend = new { orientation = "h", x = 0, y = 1.02, yanchor = "bottom", bgcolor = Transparent },
            margin = new { l = 64, r = 24, t = 64, b = 56 },
        });
        Defaults.DefaultTemplate = template;
        (Defaults.DefaultWidth, Defaults.DefaultHeight) = (760, 400);
        var config = new Config();
        config.SetProperty("displaylogo", false);
        config.SetProperty("modeBarButtonsToRemove", Unneeded);
        Defaults.DefaultConfig = config;

        static object Scale() => new { automargin = true, gridcolor = GridLine, zerolinecolor = GridLine, linecolor = Roles.InkColour, ticks = "outside", ticklen = 4, tickcolor = Roles.InkColour, showline = true };
    }

    /// <summary>Whether a figure stands on the page's own paper, so that its ink may follow the page's.</summary>
    public static bool HasPagePaper(JsonNode figure)
    {
        var layout = figure["layout"];
        return layout?["paper_bgcolor"] is null && layout?["template"]?["layout"]?["paper_bgcolor"] is JsonValue paper && paper.TryGetValue(out string? colour) && colour == Transparent;
    }
}
