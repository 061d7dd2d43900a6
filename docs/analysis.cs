#:project ../src/Waywright/Waywright.csproj
#:property RestorePackagesWithLockFile=false
#:property PublishAot=false
#:property IsAotCompatible=true
// The demo's analysis without a notebook: dotnet run docs/analysis.cs [-- FOLDER]
// FOLDER holds rails/ and belts/ as datasets/demo does. Prints a figure a line, as the record of the published build names it: id, value, unit.
// Nothing here needs reflection: to publish it as a native program, take the line about PublishAot away.

using System.Globalization;
using Waywright;

var folder = args.Length > 0 ? args[0] : Path.Combine(AppContext.GetData("EntryPointFileDirectoryPath") as string ?? ".", "..", "datasets", "demo");
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
    var screws = ScrewChoice.Fewest(graded.Find("R08")!.Top!.Profile, holes, limitUm: 3, bendingStiffnessNm2: 105.5, clampLimitN: 300, errors: graded.Find("R08")!.Top!.Errors);
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
    var finger = PluckTake.Read(Path.Combine(folder, "belts", "left-finger.wav"));
    Print("belts/left/take/frequency", PluckTake.Read(Path.Combine(folder, "belts", "left.wav"), new PluckSearch(LowestHz: 40, HighestHz: 200, MainsHz: 50, Control: finger)).Frequency!.Si.Value, "Hz");
    Print("belts/right/take/frequency", PluckTake.Read(Path.Combine(folder, "belts", "right.wav"), new PluckSearch(LowestHz: 40, HighestHz: 200, MainsHz: 50)).Frequency!.Si.Value, "Hz");
    var pair = BeltPair.Compare(left, right);
    Print("belts/pair/ratio", pair.Ratio.Value, "1");
    Print("belts/pair/difference", pair.Difference.Si.Value, "N");
    Console.WriteLine($"belts/pair/equal = {pair.AreEqual switch { true => "yes", false => "no", null => "undecided" }}");

    // Which belt it is, what it weighs, one tension from notes at several places.
    var pitch = BeltPitch.Identify(60, Quantity.Length("120.1 +/- 0.2 mm", "sixty pitches"), toothHeight: 0.75.mm, flanks: "round");
    Print("belts/pitch/pitch", pitch.PitchMm.Value, "mm");
    Console.WriteLine($"belts/pitch/kind = {pitch.Found?.Name ?? "undecided"}");
    var weighed = BeltDensity.Weigh([(25.g, 3.m.PlusMinus(5.mm)), (42.g, 5.m.PlusMinus(5.mm))], division: 1.g, known: 100.g, knownReads: 100.g);
    Print("belts/density/density", weighed.Density.Si.Value, "kg/m");
    (string Length, double Hz)[] places = [("140 mm", 121.3), ("180 mm", 94.5), ("230 mm", 74.3), ("290 mm", 58.9), ("360 mm", 47.6)];
    var travel = TravelFit.Of([.. places.Select(p => (Quantity.Length(p.Length + " u 0.3 mm", "place at " + p.Length), p.Hz.Hz.WithUncertainty(0.15.Hz)))], weighed.Density);
    Print("belts/travel/tension-over-density", travel.TensionOverDensity.Value, "m2/s2");
    Print("belts/travel/end-offset", travel.EndOffset.Si.Value, "m");
    Print("belts/travel/tension", travel.Tension!.Si.Value, "N");
    Console.WriteLine($"belts/travel/changes = {travel.IsChangingAlongTravel switch { true => "yes", false => "no", null => "too few places" }}");

    // Half a turn measured, the turns left, and whether 10 N is enough and not too much.
    var after = right.Tension.Span.Tension(92.1.Hz.WithUncertainty(0.2.Hz));
    var gain = ScrewGain.Measure(right.Tension, after, Uncertain.Input("half a turn by eye", 0.5, 0.03), frictionBand: 0.1.N);
    Print("belts/turns/turns", gain.Match(BeltPair.Compare(left.Tension, after, "left", "right")).Turns!.Value, "1");
    var pull = BeltDrive.Force(0.6.kg, 6, 2.N.PlusMinus(0.5.N));
    var drive = BeltDrive.Check(pull, 10.N, beltLength: 900.mm, shortestSide: 80.mm, allowableN: BeltKind.Of("2 mm").AllowableN(6.mm), shaftLimitN: 30);
    Print("belts/drive/pretension", drive.Pretension.Si.Value, "N");
    Print("belts/drive/slack-minimum", drive.SlackMinimum.Si.Value, "N");
    Print("belts/drive/tight-maximum", drive.TightMaximum.Si.Value, "N");
    Print("belts/drive/shaft-load", drive.ShaftLoad.Si.Value, "N");
    return 0;
}
catch (InputException bad)
{
    foreach (var problem in bad.Problems)
        Console.Error.WriteLine(problem);
    return 2;
}

static void Print(string id, double value, string unit) => Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{id} = {value:R} {unit}"));
