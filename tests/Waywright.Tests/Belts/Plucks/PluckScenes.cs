namespace Waywright;

/// <summary>The conditions under which invented plucks are analysed, each drawn from a seed.</summary>
public static class PluckScenes
{
    /// <summary>Name, whether the model of the analysis holds (then its own uncertainty must), and the take of a seed.</summary>
    public static IReadOnlyList<(string Name, bool IsModelled, Func<PluckDraws, InventedTake> Take)> All { get; } =
    [
        ("noise at 40 dB", true, d => Usual(d) with { NoiseDb = 40 }),
        ("noise at 20 dB", true, d => Usual(d) with { NoiseDb = 20 }),
        ("noise at 10 dB", true, d => Usual(d) with { NoiseDb = 10 }),
        ("noise at 0 dB", true, d => Usual(d) with { NoiseDb = 0 }),
        ("pink noise at 10 dB", true, d => Usual(d) with { NoiseDb = 10, IsNoisePink = true }),
        ("mains hum at -10 dB", true, d => Usual(d) with { HumDb = -10 }),
        ("mains hum at 0 dB", true, d => Usual(d) with { HumDb = 0 }),
        ("belt: tau 60 to 150 ms, 25 dB", true, d => Usual(d, 0.06, 0.15) with { NoiseDb = 25 }),
        ("very damped: tau 30 to 60 ms", true, d => Usual(d, 0.03, 0.06)),
        ("stiff: B 0.0005 to 0.002", true, d => Of(d, p => p with { Inharmonicity = d.Ratio(5e-4, 2e-3) })),
        ("plucked at mid-span", true, d => Of(d, p => p with { Place = 0.5 })),
        ("first partial missing", true, d => Of(d, p => p with { LacksFirst = true })),
        ("nearly pure first partial", true, d => Of(d, p => p with { IsNearlyPure = true })),
        ("second partial 3 x the first", true, d => Of(d, p => p with { SecondOverFirst = 3 })),
        ("second partial 10 x the first", true, d => Of(d, p => p with { SecondOverFirst = 10 })),
        ("falls by 15 cents", true, d => Of(d, p => p with { GlideCents = 15 })),
        ("0.3 s, from the first sample", true, d => Usual(d) with { QuietSeconds = 0, Seconds = 0.3 }),
        ("phone: high-pass at 250 Hz", false, d => Usual(d) with { HighPassHz = 250 }),
        ("another span at -6 dB", false, d => Usual(d) with { Other = (-6, d.Uniform(1.25, 2.8)) }),
        ("two strings 0.5 % apart", false, d => Usual(d) with { BeatsBy = 0.005 }),
        ("clipped at 35 %", false, d => Usual(d) with { ClipsAt = 0.35 }),
        ("levelled over 50 ms", false, d => Usual(d) with { IsLevelled = true }),
    ];

    private static InventedTake Of(PluckDraws draws, Func<InventedPluck, InventedPluck> change)
    {
        var usual = Usual(draws);
        return usual with { Pluck = change(usual.Pluck) };
    }

    private static InventedTake Usual(PluckDraws draws, double leastTau = 0.25, double longestTau = 1)
        => new(new InventedPluck(draws.Ratio(20, 400), draws.Uniform(leastTau, longestTau)) { Inharmonicity = draws.Ratio(3e-6, 2e-4), Place = draws.Uniform(0.08, 0.45) });
}
