using System.CommandLine;
using System.Text.Json.Nodes;
using Waywright.Notebooks;
using Waywright.Placement;

namespace Waywright.Cli;

/// <summary><c>waywright grade SWEEPS</c>: what to do with each rail of a batch.</summary>
internal static class GradeVerb
{
    public static Command Create()
    {
        var sweeps = new Argument<string>("SWEEPS") { Description = "Sweeps of the batch: rail,face,pass,direction,position_mm,reading_um." };
        var setups = CommonOptions.Setups();
        var rules = new Option<string?>("--rules") { Description = "rules.json: grades, best first, and their limits; the starting limits when not given." };
        var positions = new Option<string?>("--positions") { Description = "positions.json: the places of the machine; says which rail goes where." };
        var rails = new Option<string?>("--rails") { Description = "rails.csv: width, length and holes of each rail; the top is graded as its screws will hold it, and only what fits is placed." };
        var screws = ScrewsOption.Create();
        var drag = new Option<string?>("--drag") { Description = "drag.csv: how hard carriages are to push; a rail that binds goes back, one that seems to is measured again." };
        var json = CommonOptions.Json();
        var command = new Command("grade", "Grade a batch of rails: gantry, z, measure again, or return.") { sweeps, setups, rules, positions, rails, screws, drag, json };
        command.SetAction(parsed =>
        {
            var batch = CommonOptions.ReadBatch(parsed.GetRequiredValue(sweeps), parsed.GetValue(setups));
            var stock = parsed.GetValue(rails) is { } file ? RailStock.Read(file) : null;
            if (stock is not null)
                batch.Check(stock);
            GradedBatch graded;
            using (var progress = ProgressLine.Start("grading rails"))
                graded = batch.Grade(parsed.GetValue(rules) is { } limits ? GradeRules.Read(limits) : null, stock, ScrewsOption.Choice(parsed, screws), parsed.GetValue(drag) is { } log ? DragLog.Read(log) : null, progress: progress);
            var placement = parsed.GetValue(positions) is { } plan ? RailPlacement.Of(graded, stock, MachinePlan.Read(plan)) : null;
            if (parsed.GetValue(json))
                JsonOutput.Print(Answer(graded, placement));
            else
                Console.Out.WriteLine(placement is null ? Views.Text(graded) : $"{Views.Text(graded)}\n\n{Views.Text(placement)}");
            return placement is { IsFilled: false } ? CommandLine.Refused : CommandLine.Done;
        });
        return command;
    }

    private static JsonObject Answer(GradedBatch graded, RailPlacement? placement)
    {
        var answer = new JsonObject { ["rails"] = new JsonArray(graded.Rails.Select(r => (JsonNode)Answer(r)).ToArray()), ["limits"] = new JsonArray([.. graded.Margins.Select(Answer)]), ["basis"] = graded.Basis };
        if (placement is not null)
            answer["placement"] = Answer(placement);
        return answer;
    }

    private static JsonObject Answer(RailPlacement placement) => new()
    {
        ["placed"] = Placed(placement.Placed),
        ["unfilled"] = new JsonArray([.. placement.Unfilled.Select(u => new JsonObject { ["position"] = u.Position, ["missing"] = u.Missing, ["needs"] = u.Needs })]),
        ["spare"] = new JsonArray([.. placement.Spare.Select(s => JsonValue.Create(s))]),
        ["cost_um"] = placement.CostUm,
        ["proven"] = placement.IsProven,
        ["gap"] = placement.Gap,
        ["runner_up"] = Placed(placement.RunnerUp),
    };

    private static JsonArray Placed(IEnumerable<PlacedRail> rails)
        => [.. rails.Select(p => new JsonObject { ["machine"] = p.Machine, ["position"] = p.Position, ["rail"] = p.Rail, ["turned"] = p.IsTurned, ["dot_at"] = p.DotAt, ["why"] = p.Why })];

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
            ["state"] = new JsonObject(rail.States.Select(s => KeyValuePair.Create(s.Grade, (JsonNode?)new JsonObject { ["state"] = s.State, ["confidence"] = s.Confidence }))),
            ["limiting_feature"] = rail.LimitingFeature,
            ["features"] = new JsonArray(rail.Features.Select(f => (JsonNode)Feature(f)).ToArray()),
            ["faces"] = faces,
            ["drag"] = rail.Drag.Count == 0 ? null : Drag(rail),
        };
    }

    private static JsonObject Drag(GradedRail rail) => new()
    {
        ["carriages"] = new JsonArray([.. rail.Drag.Select(c => new JsonObject { ["carriage"] = c.Carriage, ["mean_n"] = c.MeanN, ["spread_percent"] = c.SpreadPercent, ["notes"] = new JsonArray([.. c.Notes.Select(n => JsonValue.Create(n))]) })]),
        ["places"] = new JsonArray([.. rail.DragPlaces.Select(p => new JsonObject { ["from_mm"] = p.FromMm, ["to_mm"] = p.ToMm, ["peak_ratio"] = p.PeakRatio, ["goes_with"] = GoesWith(p.Cause), ["seen"] = p.Seen, ["next"] = p.Next })]),
    };

    private static string GoesWith(DragCause cause) => cause switch
    {
        DragCause.Rail => "rail",
        DragCause.Carriage => "carriage",
        DragCause.Direction => "direction",
        DragCause.NotRepeated => "not repeated",
        _ => "undecided",
    };

    private static JsonObject Answer(LimitMargin margin) => new()
    {
        ["setup"] = margin.Setup,
        ["feature"] = margin.Feature,
        ["grade"] = margin.Grade,
        ["limit_um"] = margin.LimitUm,
        ["expanded_uncertainty_um"] = margin.ExpandedUm,
        ["under_three_u"] = margin.IsNarrow,
    };

    private static JsonObject Feature(FeatureValue feature)
    {
        var unit = feature.Unit == "%" ? "percent" : feature.Unit;
        var answer = new JsonObject { ["feature"] = feature.Feature, [$"value_{unit}"] = feature.Value, [$"limit_{unit}"] = feature.Limit };
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
