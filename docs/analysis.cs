#:project ../src/Waywright/Waywright.csproj
#:property RestorePackagesWithLockFile=false
#:property PublishAot=false
#:property IsAotCompatible=true
// The demo's analysis without a notebook: dotnet run docs/analysis.cs [-- FOLDER]
// FOLDER holds rails/ and belts/ as datasets/demo does. Prints a figure a line, as the record of the published build names it: id, value, unit.
// Nothing here needs reflection: to publish it as a native program, take the line about PublishAot away.

using System.Globalization;
using System.Runtime.CompilerServices;
using Waywright;

var folder = args.Length > 0 ? args[0] : Path.Combine(Here(), "..", "datasets", "demo");
try
{
    // Which rails bind, which are straight, what to do with each.
    var setups = SetupBook.Read(Path.Combine(folder, "rails", "setups.json"));
    var stock = RailStock.Read(Path.Combine(folder, "rails", "rails.csv"));
    var graded = SweepBatch.Read(Path.Combine(folder, "rails", "sweeps.csv"), setups).Clean().Batch.Grade(stock: stock, drag: DragLog.Read(Path.Combine(folder, "rails", "drag.csv")));
    foreach (var rail in graded.Rails.OrderBy(rail => rail.Rail, StringComparer.Ordinal))
    {
        var id = $"rails/{rail.Rail.ToLowerInvariant()}";
        Console.WriteLine($"{id}/grade = {rail.Grade}");
        foreach (var feature in rail.Features)
        {
            if (feature.Value is { } value)
                Print($"{id}/{feature.Feature.Replace(' ', '-')}", feature.Figure?.EstimateUm ?? value, feature.Unit);
        }
    }

    // One rail closely: how sure its straightness is about each reference line.
    var sure = graded.Find("R04")!.Side!.Uncertainty(seed: 1)!;
    Print("close-look/minimum-zone-estimate", sure.Of(ReferenceLineKind.MinimumZone).EstimateUm, "um");
    Print("close-look/least-squares-estimate", sure.Of(ReferenceLineKind.LeastSquares).EstimateUm, "um");
    Print("close-look/end-points-estimate", sure.Of(ReferenceLineKind.EndPoints).EstimateUm, "um");
    Print("close-look/noise-floor", sure.Of(ReferenceLineKind.MinimumZone).NoiseFloorUm, "um");

    // The screws that its top needs, and what warmth does to it on its base.
    var holes = ScrewPattern.Every(stock.Find("R08")!);
    var screws = ScrewChoice.Fewest(graded.Find("R08")!.Top!.Profile, holes, limitUm: 3, bendingStiffnessNm2: 105.5, clampLimitN: 300);
    Print("screws/screws", screws.Chosen!.Screws.Holes.Count, "1");
    Print("screws/largest-pull", screws.Chosen.PullsN.Max(), "N");
    var rails = BarSection.Rectangle(youngGPa: 206, widthMm: 12, heightMm: 8, expansionPerMK: 11.5);
    var aluminium = new BarSection(YoungGPa: 70, AreaMm2: 180, MomentMm4: 6800, ToJointMm: 10, ExpansionPerMK: 23.1);
    var warmth = Warmth.Of(rails, aluminium, fromC: 20, toC: 35, holes.EveryOther(), clampForceN: 700);
    Print("warmth/held", warmth.HeldUm, "um");
    Print("warmth/bonded", warmth.BondedUm, "um");

    // How tight the belts are, and whether they are equally tight.
    var log = BeltLog.Read(Path.Combine(folder, "belts", "spans.csv"));
    var (left, right) = (log["left"], log["right"]);
    Print("belts/left/tension", left.Tension.Tension.Si.Value, "N");
    Print("belts/left/frequency", left.Tension.Frequency.Si.Value, "Hz");
    Print("belts/right/tension", right.Tension.Tension.Si.Value, "N");
    Print("belts/right/frequency", right.Tension.Frequency.Si.Value, "Hz");
    var pair = BeltPair.Compare(left, right);
    Print("belts/pair/ratio", pair.Ratio.Value, "1");
    Print("belts/pair/difference", pair.Difference.Si.Value, "N");
    Console.WriteLine($"belts/pair/equal = {pair.AreEqual switch { true => "yes", false => "no", null => "undecided" }}");
    return 0;
}
catch (InputException bad)
{
    foreach (var problem in bad.Problems)
        Console.Error.WriteLine(problem);
    return 2;
}

static void Print(string id, double value, string unit) => Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{id} = {value:R} {unit}"));

static string Here([CallerFilePath] string file = "") => Path.GetDirectoryName(file)!;
