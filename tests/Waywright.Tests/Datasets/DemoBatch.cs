using System.Text.Json.Nodes;

namespace Waywright.Tests.Datasets;

/// <summary>The demo's rails as its truth file and its sweeps give them.</summary>
static class DemoBatch
{
    public static DataFolder Folder { get; } = DataFolder.Named("demo");

    public static JsonNode Truth { get; } = JsonNode.Parse(File.ReadAllText(Folder.PathOf("truth.json")))!;

    public static double[] StationsMm { get; } = Numbers(Truth["stations_mm"]!);

    public static IReadOnlyList<TrueRail> Rails { get; } = [.. Truth["rails"]!.AsArray().Select(TrueRail.From)];

    public static IReadOnlyList<Reading> Readings { get; } = ReadSweeps();

    /// <summary>
    /// Mean of the passes at each station. Every pass holds every station, so its own offset and tilt put only a line into the mean:
    /// for straightness this is the aligned and pooled profile.
    /// </summary>
    public static double[] Pooled(string rail, string face)
        => [.. StationsMm.Select(x => Readings.Where(r => r.Rail == rail && r.Face == face && r.PositionMm == x).Average(r => r.Um))];

    public static double[] Numbers(JsonNode list) => [.. list.AsArray().Select(value => value!.GetValue<double>())];

    static Reading[] ReadSweeps()
    {
        var (header, rows) = Folder.Table("rails/sweeps.csv");
        int At(string column) => Array.IndexOf(header, column);
        return [.. rows.Select(row => new Reading(row[At("rail")], row[At("face")], row[At("pass")], row[At("direction")], DataFolder.Number(row[At("position_mm")]), DataFolder.Number(row[At("reading_um")]), row[At("setup")], row[At("lay")]))];
    }
}

sealed record Reading(string Rail, string Face, string Pass, string Direction, double PositionMm, double Um, string Setup, string Lay);

/// <param name="ProfileUm">At the stations.</param>
/// <param name="MinimumZoneUm">Of the stations.</param>
/// <param name="LocalUm">Of the stations within 100 mm.</param>
/// <param name="Parts">Bow, S, kink and wave that the shape is made of, um.</param>
sealed record TrueFace(double[] ProfileUm, double MinimumZoneUm, double LocalUm, double[] Parts);

sealed record TrueRail(string Rail, string Grade, TrueFace Side, TrueFace Top, double TopMountedUm)
{
    public static TrueRail From(JsonNode? rail)
    {
        TrueFace Face(string name)
        {
            var face = rail!["faces"]!.AsArray().Single(f => f!["face"]!.GetValue<string>() == name)!;
            return new(DemoBatch.Numbers(face["profile_um"]!), face["minimum_zone_um"]!.GetValue<double>(), face["local_100_mm_um"]!.GetValue<double>(), [.. face["components_um"]!.AsObject().Select(part => part.Value!.GetValue<double>())]);
        }

        return new(rail!["rail"]!.GetValue<string>(), rail["grade"]!.GetValue<string>(), Face("side"), Face("top"), rail["top_mounted_um"]!.GetValue<double>());
    }
}
