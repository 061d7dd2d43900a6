using System.Globalization;

namespace Waywright.Simulations.Plucks;

/// <summary>What the analysis and three simple ones make of many invented takes of one scene.</summary>
internal sealed class PluckPoint
{
    private const double WrongPartialCents = 50;

    private PluckPoint(string name, bool isModelled, IReadOnlyList<PluckOutcome> outcomes)
        => (Name, IsModelled, Outcomes) = (name, isModelled, outcomes);

    public string Name { get; }

    public bool IsModelled { get; }

    public IReadOnlyList<PluckOutcome> Outcomes { get; }

    public IEnumerable<PluckOutcome> Usable => Outcomes.Where(o => o.IsUsable);

    public int Used => Usable.Count();

    public int WrongUsed => Usable.Count(o => Math.Abs(o.KitCents) > WrongPartialCents);

    public int FitJudged => Usable.Count(o => Math.Abs(o.KitCents) <= WrongPartialCents);

    public int FitHeld => Usable.Count(o => Math.Abs(o.KitCents) <= 1.96 * o.FitCents);

    public double FitCoverage => Share(Usable.Where(o => Math.Abs(o.KitCents) <= WrongPartialCents), o => Math.Abs(o.KitCents) <= 1.96 * o.FitCents);

    public double Coverage => Share(Usable, o => Math.Abs(o.KitCents) <= 1.96 * o.AllCents);

    public double MeanU => Usable.Any() ? Usable.Average(o => o.AllCents) : double.NaN;

    public static PluckPoint Of(string name, bool isModelled, Func<PluckDraws, InventedTake> take, int takes)
    {
        var outcomes = new PluckOutcome[takes];
        var salt = name.Aggregate(17UL, (sum, letter) => unchecked((sum * 31) + letter));
        Parallel.For(0, takes, new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount }, i =>
        {
            var seed = unchecked((salt << 20) + (ulong)i);
            outcomes[i] = PluckOutcome.Of(take(new PluckDraws(seed)), unchecked(seed + (1UL << 50)));
        });
        return new(name, isModelled, outcomes);
    }

    /// <summary>Median and 95th percentile of |error| of those within 50 cents, and the share beyond, as text.</summary>
    public static string Errors(IEnumerable<double> cents)
    {
        double[] all = [.. cents.Select(Math.Abs)];
        double[] near = [.. all.Where(c => c <= WrongPartialCents).Order()];
        var wrong = 100.0 * (all.Length - near.Length) / Math.Max(1, all.Length);
        var body = near.Length * 2 < all.Length ? "" : string.Create(CultureInfo.InvariantCulture, $"{near[near.Length / 2]:0.00} / {near[(int)(0.95 * (near.Length - 1))]:0.00}");
        return wrong > 0 ? string.Create(CultureInfo.InvariantCulture, $"{body} ({wrong:0.#} %)").TrimStart() : body;
    }

    private static double Share(IEnumerable<PluckOutcome> outcomes, Func<PluckOutcome, bool> holds)
    {
        var (all, held) = (0, 0);
        foreach (var outcome in outcomes)
            (all, held) = (all + 1, held + (holds(outcome) ? 1 : 0));
        return all == 0 ? double.NaN : 100.0 * held / all;
    }
}
