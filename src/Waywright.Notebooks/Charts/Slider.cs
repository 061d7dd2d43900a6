using System.Text.Json.Nodes;

namespace Waywright.Notebooks;

/// <summary>
/// One thing that a reader may change in a picture: a picture for each of its values, all with the same axes and layers. The static picture is that of the starting value;
/// live figures carry, for each other value, only what differs.
/// </summary>
/// <param name="Label">What it changes, with its unit.</param>
/// <param name="Values">Its values in words, in order.</param>
/// <param name="Start">Which of them it starts at.</param>
/// <param name="Pictures">A picture for each.</param>
internal sealed record Slider(string Label, FixedList<string> Values, int Start, FixedList<Picture> Pictures)
{
    /// <summary>The starting value's picture, with the slider.</summary>
    public static Picture Picture(string label, IEnumerable<string> values, int start, IEnumerable<Picture> pictures)
    {
        var slider = new Slider(label, FixedList<string>.Copy(values), start, FixedList<Picture>.Copy(pictures));
        if (slider.Values.Count != slider.Pictures.Count || start < 0 || start >= slider.Values.Count)
            throw new ArgumentException("A slider needs a picture for each of its values, and starts at one of them.", nameof(pictures));
        return slider.Pictures[start] with { Slider = slider };
    }

    /// <summary>Adds to a live figure what each step changes of each trace.</summary>
    /// <param name="figure">Data, layout and config of the starting picture.</param>
    /// <param name="json">Draws one picture as such a figure.</param>
    /// <exception cref="ArgumentException">A step has other traces than the start.</exception>
    public string Add(string figure, Func<Picture, string> json)
    {
        var start = JsonNode.Parse(figure)!.AsObject();
        var traces = start["data"]!.AsArray();
        var steps = new JsonArray();
        foreach (var picture in Pictures)
        {
            var step = JsonNode.Parse(json(picture with { Slider = null }))!["data"]!.AsArray();
            if (step.Count != traces.Count)
                throw new ArgumentException($"A step of the slider has {step.Count} traces, its start {traces.Count}.", nameof(figure));
            steps.Add(new JsonArray([.. traces.Zip(step, (a, b) => Changed(a!.AsObject(), b!.AsObject()))]));
        }

        start["slider"] = new JsonObject { ["label"] = Label, ["start"] = Start, ["values"] = new JsonArray([.. Values.Select(v => JsonValue.Create(v))]), ["steps"] = steps };
        return start.ToJsonString();
    }

    // Evenly spaced points are written as a start and a step: what a step of the slider no longer has is null.
    private static JsonObject Changed(JsonObject from, JsonObject to)
    {
        var changed = new JsonObject();
        foreach (var name in from.Select(p => p.Key).Union(to.Select(p => p.Key)))
        {
            if (!JsonNode.DeepEquals(from[name], to[name]))
                changed[name] = to[name]?.DeepClone();
        }

        return changed;
    }
}
