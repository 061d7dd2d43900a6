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
            var pooled = batch.Sweeps.Select(s => s.Pool()).ToArray();
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
        return new JsonObject
        {
            ["rail"] = pooled.Sweep.Rail,
            ["face"] = pooled.Sweep.Face?.ToString().ToLowerInvariant(),
            ["stations"] = pooled.Profile.Count,
            ["setup"] = pooled.Sweep.SetupId,
            ["end_points"] = Line(figures.EndPoints),
            ["least_squares"] = Line(figures.LeastSquares),
            ["minimum_zone"] = Zone(figures.MinimumZone),
        };
    }

    private static JsonObject Line(ReferenceLine line) => new()
    {
        ["slope_um_per_m"] = line.SlopeUmPerM,
        ["STRt_um"] = line.STRtUm,
        ["STRp_um"] = line.STRpUm,
        ["STRv_um"] = line.STRvUm,
        ["STRq_um"] = line.STRqUm,
    };

    private static JsonObject Zone(MinimumZone zone)
    {
        var answer = Line(zone.Line);
        answer["lowest_slope_um_per_m"] = zone.LowestSlopeUmPerM;
        answer["highest_slope_um_per_m"] = zone.HighestSlopeUmPerM;
        answer["contacts"] = new JsonArray(zone.Contacts.Select(c => (JsonNode)new JsonObject
        {
            ["position_mm"] = c.PositionMm,
            ["side"] = c.Side.ToString().ToLowerInvariant(),
        }).ToArray());
        return answer;
    }

    private static void Print(SweepBatch batch, PooledSweep[] pooled)
    {
        Console.Out.WriteLine($"{batch.Source}: {batch.ReadAs}.");
        foreach (var sweep in pooled)
        {
            Console.Out.WriteLine();
            Console.Out.WriteLine(Views.Text(sweep));
        }
    }
}
