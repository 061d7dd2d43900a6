using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using GenericChart = Plotly.NET.GenericChart;

namespace Waywright.Notebooks;

/// <summary>How a chart that someone made with Plotly.NET shows: as a figure like ours, offline, the same bytes on every run.</summary>
internal static class ChartView
{
    private static readonly JsonSerializerOptions Relaxed = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    private static readonly string[] Coordinates = ["x", "y", "z"];

    public static string Html(GenericChart chart) => Html(chart, LiveScript.Kernel);

    public static string Html(GenericChart chart, LiveScript live)
    {
        var figure = JsonNode.Parse(GenericChart.toJson(chart))!;
        foreach (var trace in Traces(figure))
            BlankNumbers(trace);
        var json = FigureHtml.Escaped(figure.ToJsonString(Relaxed));
        // #000000 is the page's ink; on paper of its own a chart keeps the black that its maker chose.
        if (!HouseStyle.HasPagePaper(figure))
            json = json.Replace("\"#000000\"", "\"#000\"", StringComparison.Ordinal);
        var id = FigureHtml.IdOf(json);
        var still = ChartSketch.Of(figure) is { } sketch ? SvgPicture.Draw(sketch) : $"<p class=\"ww-still\">{SvgText.Encode(Text(figure))} It needs scripts to show.</p>";
        return FigureHtml.Figure(id, still, FigureHtml.Inert(json), "") + live.For(id);
    }

    public static string Text(GenericChart chart) => Text(JsonNode.Parse(GenericChart.toJson(chart))!);

    private static string Text(JsonNode figure)
    {
        var traces = Traces(figure).Select(Describe).ToArray();
        return string.Create(CultureInfo.InvariantCulture, $"A chart of {traces.Length} {(traces.Length == 1 ? "trace" : "traces")}: {string.Join(", ", traces)}.");
    }

    private static string Describe(JsonNode trace)
    {
        var name = trace["name"] is JsonValue value && value.TryGetValue(out string? text) && text.Length > 0 ? text : $"{trace["type"]}";
        return trace["y"] is JsonArray points ? string.Create(CultureInfo.InvariantCulture, $"{name} ({points.Count} points)") : name;
    }

    private static IEnumerable<JsonNode> Traces(JsonNode figure) => (figure["data"] as JsonArray ?? []).OfType<JsonNode>();

    // Plotly.NET writes what isn't a number as a text, which Plotly may take for a category.
    private static void BlankNumbers(JsonNode trace)
    {
        foreach (var array in Coordinates.Select(n => trace[n]).OfType<JsonArray>().Where(a => a.Any(IsNumber)))
        {
            for (var i = 0; i < array.Count; i++)
            {
                if (array[i] is JsonValue value && value.TryGetValue(out string? text) && text is "NaN" or "Infinity" or "-Infinity")
                    array[i] = null;
            }
        }
    }

    private static bool IsNumber(JsonNode? node) => node?.GetValueKind() == JsonValueKind.Number;
}
