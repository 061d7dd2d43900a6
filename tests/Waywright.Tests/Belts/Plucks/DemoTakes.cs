namespace Waywright;

/// <summary>
/// The recordings of datasets/demo/belts, invented: five plucks of each belt's 180 mm span as a phone would hear them, with mains hum and noise, and the left one with a finger on the span.
/// Written by <c>dotnet run --project tests/Waywright.Simulations -- takes OUTDIR</c>; the notes are those of spans.csv.
/// </summary>
public static class DemoTakes
{
    private const int Rate = 16000;
    private const double FirstSeconds = 0.6;
    private const double EachSeconds = 0.65;
    private const int Plucks = 5;
    private const string Invented = "Invented by Waywright's DemoTakes: nothing here was measured.";

    public static IReadOnlyList<(string File, byte[] Wav)> All { get; } =
    [
        ("left.wav", InventedTake.Wav(Belt(1, 95.6), Rate, 0.4, Invented)),
        ("right.wav", InventedTake.Wav(Belt(2, 89.4), Rate, 0.4, Invented)),
        ("left-finger.wav", InventedTake.Wav(Finger(3), Rate, 0.1, Invented)),
    ];

    private static double[] Belt(ulong seed, double hertz)
    {
        var draws = new PluckDraws(320025 + seed);
        var samples = Quiet(draws, 0.012);
        for (var i = 0; i < Plucks; i++)
        {
            var pluck = new InventedPluck(hertz + (0.12 * draws.Normal()), draws.Uniform(0.10, 0.14)) { Inharmonicity = 1.5e-3, Place = draws.Uniform(0.38, 0.48), Partials = 8, GlideCents = 2 };
            Add(samples, pluck, i, draws.Uniform(0.6, 1), draws);
        }

        return samples;
    }

    // A frame that knocks, deep and damped.
    private static double[] Finger(ulong seed)
    {
        var draws = new PluckDraws(320025 + seed);
        var samples = Quiet(draws, 0.012);
        for (var i = 0; i < Plucks; i++)
            Add(samples, new InventedPluck(41, 0.05) { Partials = 2 }, i, 0.15, draws);
        return samples;
    }

    private static void Add(double[] samples, InventedPluck pluck, int number, double level, PluckDraws draws)
    {
        var sound = pluck.Samples(Rate, EachSeconds, draws);
        InventedPluck.Touch(sound, Rate, draws);
        var from = (int)((FirstSeconds + (number * EachSeconds)) * Rate);
        for (var i = 0; i < sound.Length && from + i < samples.Length; i++)
            samples[from + i] += level * sound[i];
    }

    private static double[] Quiet(PluckDraws draws, double noise)
    {
        var samples = InventedTake.White((int)((FirstSeconds + (Plucks * EachSeconds)) * Rate), draws);
        for (var i = 0; i < samples.Length; i++)
            samples[i] = (noise * samples[i]) + (0.03 * Math.Cos(2 * Math.PI * 49.98 * i / Rate)) + (0.015 * Math.Cos(2 * Math.PI * 149.94 * i / Rate));
        return samples;
    }
}
