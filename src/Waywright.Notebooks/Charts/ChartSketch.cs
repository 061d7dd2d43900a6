using System.Text.Json;
using System.Text.Json.Nodes;

namespace Waywright.Notebooks;

/// <summary>A static picture of a chart that someone made with Plotly.NET, for readers without scripts: lines and dots over numbers, nothing else.</summary>
internal static class ChartSketch
{
    private static readonly Role[] Inks = [Role.Ink, Role.Fitted, Role.Limit, Role.Contact, Role.Undecided, Role.Context];

    /// <summary>The picture, or null when a trace is of another kind or there is nothing to draw.</summary>
    public static Picture? Of(JsonNode figure)
    {
        var layers = new List<Layer>();
        var traces = figure["data"] as JsonArray ?? [];
        for (var i = 0; i < traces.Count; i++)
        {
            if (!Add(layers, traces[i]!, i))
                return null;
        }

        var places = layers.SelectMany(l => l.Places).ToArray();
        if (places.Length == 0 || traces.Any(IsOnAnotherAxis))
            return null;
        var layout = figure["layout"];
        var x = Axis.Covering(TitleOf(layout?["xaxis"]), "", places.Select(p => p.X));
        var y = Axis.Covering(TitleOf(layout?["yaxis"]), "", places.Select(p => p.Y));
        var name = TitleOf(layout);
        return new Picture(name.Length == 0 ? "Chart" : name, "", x, y, new Panel(layers));
    }

    private static bool Add(List<Layer> layers, JsonNode trace, int index)
    {
        if (Text(trace["type"]) is not ("scatter" or "scattergl") || Numbers(trace["x"]) is not { } x || Numbers(trace["y"]) is not { } y || x.Length != y.Length)
            return false;
        var name = Text(trace["name"]) ?? "";
        var role = Inks[index % Inks.Length];
        var mode = Text(trace["mode"]) ?? (x.Length < 20 ? "lines+markers" : "lines");
        var pieces = Pieces(x, y);
        if (mode.Contains("lines", StringComparison.Ordinal))
            layers.AddRange(pieces.Where(p => p.Count > 1).Select(p => new LineLayer(name, role, Thinning.Of(p), (Dash)(index % 4), 1.5)));
        if (mode.Contains("markers", StringComparison.Ordinal))
            layers.AddRange(pieces.Select(p => new DotLayer(mode == "markers" ? name : "", role, Thinning.Of(p), 5)));
        return true;
    }

    // A gap where a number is missing.
    private static List<FixedList<Point>> Pieces(double?[] x, double?[] y)
    {
        var pieces = new List<FixedList<Point>>();
        var piece = new List<Point>();
        for (var i = 0; i <= x.Length; i++)
        {
            if (i < x.Length && x[i] is { } across && y[i] is { } up)
            {
                piece.Add(new Point(across, up));
                continue;
            }

            if (piece.Count > 0)
                pieces.Add(FixedList<Point>.Copy(piece));
            piece = [];
        }

        return pieces;
    }

    private static bool IsOnAnotherAxis(JsonNode? trace) => (Text(trace?["xaxis"]) ?? "x") != "x" || (Text(trace?["yaxis"]) ?? "y") != "y";

    private static double?[]? Numbers(JsonNode? node)
    {
        if (node is not JsonArray array)
            return null;
        var numbers = new double?[array.Count];
        for (var i = 0; i < numbers.Length; i++)
        {
            if (array[i] is null)
                continue;
            if (array[i]!.GetValueKind() != JsonValueKind.Number || !array[i]!.AsValue().TryGetValue(out double number) || !double.IsFinite(number))
                return null;
            numbers[i] = number;
        }

        return numbers;
    }

    private static string TitleOf(JsonNode? holder)
    {
        var title = (holder as JsonObject)?["title"];
        return Text(title is JsonObject parts ? parts["text"] : title) ?? "";
    }

    private static string? Text(JsonNode? node) => node is JsonValue value && value.TryGetValue(out string? text) ? text : null;
}
