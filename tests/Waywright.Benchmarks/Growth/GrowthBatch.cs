using System.Globalization;

namespace Waywright.Benchmarks;

/// <summary>Invented batches of rails: sweeps, set-up, holes. Rails of a smaller batch are the first ones of a larger.</summary>
internal static class GrowthBatch
{
    public const string Setups = """
        {"setups":[{"id":"bench","guide":"plate","guide_straightness_um":1.5,"guide_known_from":"certificate","probe":"surface","held":"two supports at 90 mm, 340 mm",
        "instrument":{"name":"lever indicator","division_um":1,"read_to":"whole"}}]}
        """;

    private const double LengthMm = 430;
    private const double PitchMm = 25;
    private const double EndMm = 15;

    /// <summary>18 stations: midway between the 17 holes, and near both ends.</summary>
    private static readonly double[] Stations = [5, .. Enumerable.Range(0, 16).Select(i => EndMm + (PitchMm * (i + 0.5))), 425];

    public static void Write(string sweeps, string rails, int count)
    {
        using var readings = new StreamWriter(sweeps);
        using var stock = new StreamWriter(rails);
        (readings.NewLine, stock.NewLine) = ("\n", "\n");
        readings.WriteLine("rail,face,pass,direction,position_mm,reading_um,setup,lay");
        stock.WriteLine("rail,width_mm,length_mm,pitch_mm,end_distance_mm");
        var random = new Random(320_025);
        for (var rail = 1; rail <= count; rail++)
        {
            var name = string.Create(CultureInfo.InvariantCulture, $"R{rail:000000}");
            stock.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{name},9,{LengthMm},{PitchMm},{EndMm}"));
            // Half of the sides bow by less than 18 um, a quarter by more than 30, one in fifty by more than 90; tops bow more and have waves.
            Face(readings, name, "side", 18 * Math.Exp(0.8 * Normal(random)), 1.5 * Normal(random), random);
            Face(readings, name, "top", 30 * Normal(random), 2 * Normal(random), random);
        }
    }

    private static void Face(StreamWriter to, string rail, string face, double bow, double wave, Random random)
    {
        var (length, phase) = (70 + (130 * random.NextDouble()), 6 * random.NextDouble());
        for (var pass = 1; pass <= 3; pass++)
        {
            var (height, tilt, lay) = (10 * Normal(random), 5 * Normal(random), pass == 3 ? Normal(random) * 0.5 : 0);
            foreach (var x in Stations)
            {
                var u = x / LengthMm;
                var reading = Math.Round(height + (tilt * u) + ((bow + lay) * 4 * u * (1 - u)) + (wave * Math.Sin((6.283 * x / length) + phase)) + (0.6 * Normal(random)));
                to.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{rail},{face},{pass},{(pass % 2 == 1 ? "forward" : "back")},{x},{reading},bench,{(pass == 3 ? "B" : "A")}"));
            }
        }
    }

    private static double Normal(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
