using System.CommandLine;
using System.Text.Json.Nodes;
using Waywright.Notebooks;

namespace Waywright.Cli;

/// <summary><c>waywright grade SWEEPS</c>: what to do with each rail of a batch.</summary>
internal static class GradeVerb
{
    public static Command Create()
    {
        var sweeps = new Argument<string>("SWEEPS") { Description = "Sweeps of the batch: rail,face,pass,direction,position_mm,reading_um." };
        var setups = CommonOptions.Setups();
        var json = CommonOptions.Json();
        var command = new Command("grade", "Grade a batch of rails: gantry, z, measure again, or return.") { sweeps, setups, json };
        command.SetAction(parsed =>
        {
            var graded = CommonOptions.ReadBatch(parsed.GetRequiredValue(sweeps), parsed.GetValue(setups)).Grade();
            if (parsed.GetValue(json))
                JsonOutput.Print(new JsonObject { ["rails"] = new JsonArray(graded.Rails.Select(r => (JsonNode)Answer(r)).ToArray()), ["basis"] = graded.Basis });
            else
                Console.Out.WriteLine(Views.Text(graded));
            return CommandLine.Done;
        });
        return command;
    }

    private static JsonObject Answer(GradedRail rail)
    {
        var faces = new JsonObject();
        Add(faces, "side", rail.Side);
        Add(faces, "top", rail.Top);
        return new JsonObject
        {
            ["rail"] = rail.Rail,
            ["grade"] = rail.Grade,
            ["reason"] = rail.Reason,
            ["next"] = rail.Next,
            ["confidence"] = rail.Confidence,
            ["limiting_feature"] = rail.LimitingFeature,
            ["features"] = new JsonArray(rail.Features.Select(f => (JsonNode)Feature(f)).ToArray()),
            ["faces"] = faces,
        };
    }

    private static JsonObject Feature(FeatureValue feature)
    {
        var answer = new JsonObject { ["feature"] = feature.Feature, ["value_um"] = feature.ValueUm, ["limit_um"] = feature.Limit };
        if (feature.Figure is { } figure)
            JsonOutput.AddInterval(answer, figure);
        return answer;
    }

    private static void Add(JsonObject faces, string name, PooledSweep? face)
    {
        if (face is not null)
            faces[name] = new JsonObject { ["minimum_zone_um"] = face.Straightness.MinimumZone.Line.STRtUm };
    }
}
