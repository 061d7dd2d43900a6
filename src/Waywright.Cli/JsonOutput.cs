using System.Text.Json;
using System.Text.Json.Nodes;
using Waywright.Notebooks;

namespace Waywright.Cli;

/// <summary>How answers are written as JSON: indented, numbers in full.</summary>
internal static class JsonOutput
{
    private static readonly JsonSerializerOptions Indented = new() { WriteIndented = true, NewLine = "\n", Encoder = System.Text.Encodings.Web.JavaScriptEncoder.Create(System.Text.Unicode.UnicodeRanges.All) };

    public static void Print(JsonNode answer) => Console.Out.WriteLine(Escaped(answer.ToJsonString(Indented)));

    // What a terminal must not get raw stands in strings only, where JSON has another way to write it.
    private static string Escaped(string json)
        => json.Any(Markup.IsHidden) ? string.Concat(json.Select(c => Markup.IsHidden(c) ? FormattableString.Invariant($"\\u{(int)c:x4}") : c.ToString())) : json;

    /// <summary>Estimate, interval, floor and standard uncertainty of a figure.</summary>
    public static void AddInterval(JsonObject answer, UncertainFigure figure)
    {
        answer["estimate_um"] = figure.EstimateUm;
        answer["interval_95_um"] = new JsonArray(figure.LowUm, figure.HighUm);
        answer["noise_floor_95_um"] = figure.NoiseFloorUm;
        answer["standard_uncertainty_um"] = figure.StandardUncertaintyUm;
    }
}
