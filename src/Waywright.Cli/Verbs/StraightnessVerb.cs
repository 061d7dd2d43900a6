using System.CommandLine;
using System.Text.Json.Nodes;
using Waywright.Notebooks;

namespace Waywright.Cli;

/// <summary><c>waywright straightness FILE</c>: figures of each face about each reference line.</summary>
internal static class StraightnessVerb
{
    public static Command Create()
    {
        var file = new Argument<string>("FILE") { Description = "Sweeps (rail,face,pass,direction,position_mm,reading_um) or a bare profile (position_mm,reading_um)." };
        var setups = CommonOptions.Setups();
        var json = CommonOptions.Json();
        var command = new Command("straightness", "Straightness of each face about the end-point, least-squares and minimum-zone lines.") { file, setups, json };
        command.SetAction(parsed =>
        {
            var batch = CommonOptions.ReadBatch(parsed.GetRequiredValue(file), parsed.GetValue(setups));
            var pooled = batch.Pool();
            if (parsed.GetValue(json))
                JsonOutput.Print(new JsonArray(pooled.Select(p => (JsonNode)Answer(p)).ToArray()));
            else
                Print(batch, pooled);
            return CommandLine.Done;
        });
        return command;
    }

    private static JsonObject Answer(PooledSweep pooled)
    {
        var figures = pooled.Straightness;
        var sure = pooled.Uncertainty();
        var answer = new JsonObject
        {
            ["rail"] = pooled.Sweep.Rail,
            ["face"] = pooled.Sweep.Face?.ToString().ToLowerInvariant(),
            ["stations"] = pooled.Profile.Count,
            ["setup"] = pooled.Sweep.SetupId,
            ["end_points"] = Line(figures.EndPoints, sure),
            ["least_squares"] = Line(figures.LeastSquares, sure),
            ["minimum_zone"] = Zone(figures.MinimumZone, sure),
        };
        if (sure is null)
            answer["uncertainty"] = Missing(pooled);
        else
            Tell(answer, pooled, sure);
        return answer;
    }

    private static string Missing(PooledSweep pooled)
        => pooled.Sweep.Setup is null ? "no set-up given" : "two positions always lie on a line";

    private static void Tell(JsonObject answer, PooledSweep pooled, StraightnessUncertainty sure)
    {
        answer["uncertainty"] = pooled.Sweep.Setup!.IsGuideKnown ? "from the set-up" : "from the set-up, without the guide's own error: rail against guide";
        answer["repeatability_um"] = pooled.RepeatabilityUm;
        answer["lag_1"] = pooled.Lag1;
        answer["lays"] = pooled.Lays.Verdict;
        if (pooled.Hidden is { } hidden)
            answer["hidden"] = hidden;
        answer["corrections"] = new JsonArray([.. pooled.Corrections.Select(c => new JsonObject { ["name"] = c.Name, ["size_um"] = c.SizeUm })]);
        answer["budget"] = new JsonArray([.. sure.Budget.Select(b => new JsonObject { ["input"] = b.Name, ["um"] = b.StandardUncertainty, ["remedy"] = b.Remedy })]);
        answer["trials"] = sure.Trials;
        answer["seed"] = sure.Seed;
    }

    private static JsonObject Line(ReferenceLine line, StraightnessUncertainty? sure)
    {
        var answer = new JsonObject
        {
            ["slope_um_per_m"] = line.SlopeUmPerM,
            ["STRt_um"] = line.STRtUm,
            ["STRp_um"] = line.STRpUm,
            ["STRv_um"] = line.STRvUm,
            ["STRq_um"] = line.STRqUm,
        };
        if (sure is null)
            return answer;
        // The line's own fields are those of STRt.
        JsonOutput.AddInterval(answer, sure.Of(line.Kind));
        foreach (var parameter in new[] { StraightnessParameter.STRp, StraightnessParameter.STRv, StraightnessParameter.STRq })
        {
            var own = new JsonObject();
            JsonOutput.AddInterval(own, sure.Of(line.Kind, parameter));
            answer[$"{parameter}_uncertainty"] = own;
        }

        return answer;
    }

    private static JsonObject Zone(MinimumZone zone, StraightnessUncertainty? sure)
    {
        var answer = Line(zone.Line, sure);
        answer["lowest_slope_um_per_m"] = zone.LowestSlopeUmPerM;
        answer["highest_slope_um_per_m"] = zone.HighestSlopeUmPerM;
        answer["contacts"] = new JsonArray(zone.Contacts.Select(c => (JsonNode)new JsonObject
        {
            ["position_mm"] = c.PositionMm,
            ["side"] = c.Side.ToString().ToLowerInvariant(),
        }).ToArray());
        return answer;
    }

    private static void Print(SweepBatch batch, IReadOnlyList<PooledSweep> pooled)
    {
        Console.Out.WriteLine($"{batch.Source}: {batch.ReadAs}.");
        foreach (var sweep in pooled)
        {
            Console.Out.WriteLine();
            Console.Out.WriteLine(Views.Text(sweep));
        }
    }
}
