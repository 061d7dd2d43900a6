using System.Text.Json.Nodes;
using Waywright.Tests.Datasets;

namespace Waywright.Tests;

/// <summary>The demo's invented sweeps against what their generator started from: it bends rails by closed forms of its own.</summary>
public class DemoTruthTests
{
    // 9 mm rails, as the generator makes them: EI 42.4 N m2, 121 g on 320 mm. R07 was swept with a plunger indicator of 1 N, the others with 0.2 N.
    private static readonly string[] Rails = ["R01", "R02", "R03", "R04", "R06", "R07", "R09", "R10"];

    private static readonly DataFolder Demo = DataFolder.Named("demo");

    private static readonly JsonNode Truth = JsonNode.Parse(File.ReadAllText(Demo.PathOf("truth.json")))!;

    [Fact]
    public void Corrected_tops_are_those_that_the_generator_bent()
    {
        var corrected = Off(false);
        var plain = Off(true);
        // What is left in the mean of the light rails: noise 0.6 um / sqrt(3 passes x 7 rails) = 0.13 and rounding; without correction the bending of 0.2 N and the weight.
        Assert.InRange(MeanShape(corrected, rail => rail != "R07"), 0.05, 0.2);
        Assert.InRange(MeanShape(plain, rail => rail != "R07"), 0.3, 1);
        // One rail: noise and steps of 5 um over three passes, about 1 um; 1 N bends it by 8 um at its ends.
        Assert.InRange(MeanShape(corrected, rail => rail == "R07"), 0.3, 1.3);
        Assert.InRange(MeanShape(plain, rail => rail == "R07"), 1.8, 4);
    }

    // Root mean square about a line of the mean over rails.
    private static double MeanShape(Dictionary<string, double[]> off, Func<string, bool> which)
    {
        var rails = off.Where(r => which(r.Key)).Select(r => r.Value).ToArray();
        var positions = Truth["stations_mm"]!.AsArray().Select(x => x!.GetValue<double>()).ToArray();
        return StraightnessFigures.Of(new Profile(positions, [.. positions.Select((_, i) => rails.Average(r => r[i]))])).LeastSquares.STRqUm;
    }

    [Fact]
    public void Intervals_of_the_demo_hold_the_faces_that_the_generator_started_from()
    {
        var batch = SweepBatch.Read(Demo.PathOf("rails/sweeps.csv"), SetupBook.Read(Demo.PathOf("rails/setups.json")));
        var held = batch.Pool().Count(face =>
        {
            var truth = Truth["rails"]!.AsArray().Single(r => r!["rail"]!.GetValue<string>() == face.Sweep.Rail)!["faces"]!.AsArray().Single(f => f!["face"]!.GetValue<string>() == (face.Sweep.Face == RailFace.Side ? "side" : "top"))!;
            var um = truth["minimum_zone_um"]!.GetValue<double>();
            var figure = face.Uncertainty(4000, 1, TestContext.Current.CancellationToken)!.Of(ReferenceLineKind.MinimumZone);
            return figure.LowUm <= um && um <= figure.HighUm;
        });
        // 24 faces: of 95 % intervals fewer than 21 hold the truth in 3 of 100 batches.
        Assert.InRange(held, 21, 24);
    }

    // What each combined top differs by from the truth less guide and plus the mean bow of its lays.
    private static Dictionary<string, double[]> Off(bool uncorrected)
    {
        var setups = SetupBook.Read(Demo.PathOf("rails/setups.json"));
        var batch = SweepBatch.Read(Demo.PathOf("rails/sweeps.csv"), setups);
        var guide = Numbers(Truth["guide_um"]!);
        return Rails.ToDictionary(rail => rail, rail =>
        {
            var face = Truth["rails"]!.AsArray().Single(r => r!["rail"]!.GetValue<string>() == rail)!["faces"]!.AsArray().Single(f => f!["face"]!.GetValue<string>() == "top")!;
            var (profile, bows) = (Numbers(face["profile_um"]!), Numbers(face["lay_bow_um"]!));
            var pooled = batch.Find(rail, RailFace.Top)!.Pool();
            var bow = ((2 * bows[0]) + bows[1]) / 3;
            return (uncorrected ? pooled.Uncorrected : pooled.Profile).HeightsUm.Select((z, i) => z - (profile[i] - guide[i] + (bow * (1 - Math.Pow((pooled.Profile.PositionsMm[i] - 160) / 160, 2))))).ToArray();
        });
    }

    private static double[] Numbers(JsonNode list) => [.. list.AsArray().Select(n => n!.GetValue<double>())];
}
