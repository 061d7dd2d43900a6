using CsCheck;
using Waywright.Notebooks;

namespace Waywright.Tests;

public class CleaningTests
{
    private static readonly CleaningOptions All = new(TurnUm: 1000, FlipMirrored: true, DropSpikes: true);

    [Fact]
    public void A_clean_batch_is_left_as_it_was_and_each_step_says_so()
    {
        var batch = InventedPasses.Batch(InventedPasses.Sweep(4, 0.5, seed: 1));
        var cleaned = batch.Clean(All);
        Assert.Equal(["roll-over", "sign", "spikes", "retrace", "drift"], cleaned.Steps.Select(s => s.Name));
        Assert.All(cleaned.Steps, s => Assert.StartsWith("Nothing changed", s.Found, StringComparison.Ordinal));
        Assert.All(cleaned.Steps, s => Assert.Empty(s.Changed.Concat(s.Flagged)));
        Assert.Same(batch, cleaned.Batch);
        Assert.Same(batch, cleaned.AsRead);
        Assert.False(cleaned.IsChanged);
    }

    [Fact]
    public void Without_options_nothing_is_changed_whatever_is_wrong()
        => Batches.Sample(batch => Assert.Same(batch, batch.Clean().Batch), iter: 200);

    [Fact]
    public void Cleaning_what_was_cleaned_changes_nothing()
        => Gen.Select(Batches, Gen.Bool, Gen.Bool, Gen.Bool).Sample((batch, turn, flip, drop) =>
        {
            var options = new CleaningOptions(turn ? 1000 : null, flip, drop, 3);
            var once = batch.Clean(options);
            var twice = once.Batch.Clean(options);
            Assert.Same(once.Batch, twice.Batch);
            Assert.False(twice.IsChanged);
            Assert.Equal(once.Steps.SelectMany(s => s.Flagged), twice.Steps.SelectMany(s => s.Flagged));
        }, iter: 2000);

    [Fact]
    public void What_changed_is_listed_reading_by_reading()
        => Batches.Sample(batch =>
        {
            var cleaned = batch.Clean(new CleaningOptions(1000, true, true, 4));
            var (before, after) = (batch.Sweeps.Sum(s => s.ReadingCount), cleaned.Batch.Sweeps.Sum(s => s.ReadingCount));
            Assert.Equal(before - after, cleaned["spikes"].Changed.Count(r => r.AfterUm is null));
            Assert.All(cleaned["roll-over"].Changed, r => Assert.Equal(0, Math.IEEERemainder(r.AfterUm!.Value - r.BeforeUm, 1000), 1e-9));
            Assert.All(cleaned["sign"].Changed, r => Assert.Equal(-r.BeforeUm, r.AfterUm!.Value));
            Assert.Equal(cleaned.IsChanged, !cleaned.Batch.Sweeps.SequenceEqual(batch.Sweeps));
        }, iter: 500);

    [Fact]
    public void The_demo_batch_needs_no_cleaning()
    {
        var rails = Repository.PathOf("datasets", "demo", "rails");
        var cleaned = SweepBatch.Read(Path.Combine(rails, "sweeps.csv"), SetupBook.Read(Path.Combine(rails, "setups.json"))).Clean(All);
        Assert.False(cleaned.IsChanged, Views.Text(cleaned));
        Assert.Empty(cleaned["sign"].Flagged);
    }

    [Fact]
    public void Wrong_options_and_steps_are_refused()
    {
        foreach (var turn in new[] { 0, -1, double.NaN, double.PositiveInfinity })
            Assert.StartsWith("One turn of the pointer is a length above 0 um.", Assert.Throws<ArgumentOutOfRangeException>(() => new CleaningOptions(turn)).Message, StringComparison.Ordinal);
        Assert.StartsWith("A limit from 3 to 20 is needed.", Assert.Throws<ArgumentOutOfRangeException>(() => new CleaningOptions(SpikeLimit: 2.9)).Message, StringComparison.Ordinal);
        Assert.StartsWith("No step 'polish': the chain has roll-over, sign, spikes, retrace, drift.", Assert.Throws<ArgumentException>(() => InventedPasses.Batch(InventedPasses.Sweep(1, 0, 1)).Clean()["polish"]).Message, StringComparison.Ordinal);
        Assert.Throws<OperationCanceledException>(() => InventedPasses.Batch(InventedPasses.Sweep(1, 0, 1)).Clean(cancel: new CancellationToken(true)));
    }

    [Fact]
    public void The_view_says_what_to_do_first()
    {
        var clean = InventedPasses.Sweep(4, 0.5, seed: 1);
        Assert.StartsWith("Go on to combine the passes: nothing was changed and nothing stands out.", Views.Text(InventedPasses.Batch(clean).Clean()), StringComparison.Ordinal);
        var spiked = InventedPasses.Batch(clean.With(1, (x, z) => x == 97.5 ? z + 12 : z));
        Assert.StartsWith("Look at the 1 flagged reading below before you combine the passes; nothing was changed.", Views.Text(spiked.Clean()), StringComparison.Ordinal);
        var steep = InventedPasses.Batch(clean.With(0, (x, z) => z + (x > 150 ? 500 : 0))).Clean(new CleaningOptions(1000));
        Assert.Matches(@"^Look at the (\d+ flagged readings? and the )?1 note below before you combine the passes; nothing was changed\.", Views.Text(steep));
        Assert.Contains("too small for a turn", Views.Html(steep), StringComparison.Ordinal);
        var dropped = spiked.Clean(All);
        Assert.StartsWith("Check the 1 reading that cleaning changed, then combine the passes.", Views.Text(dropped), StringComparison.Ordinal);
        Assert.Matches(@"R01 side  pass 2 back +97\.5 +\d+\.\d +dropped  more than 5 standard deviations from the other passes", Views.Text(dropped));
        Assert.Equal(1, Views.Find(typeof(CleanedBatch))!.Figures(dropped, "x").Single(f => f.Id == "x/spikes/changed").Value);
        Assert.Contains("dropped", Views.Html(dropped["spikes"]), StringComparison.Ordinal);
        Assert.StartsWith("Spikes: 1 reading of R01 side dropped as a spike.", Views.Text(dropped["spikes"]), StringComparison.Ordinal);
    }

    /// <summary>Invented batches with all that can be wrong: rolled-over, mirrored, spiked passes, coarse dials, missing stations, single passes.</summary>
    internal static Gen<SweepBatch> Batches { get; } =
        from seed in Gen.Int[0, 1_000_000]
        select Invented(seed);

    private static SweepBatch Invented(int seed)
    {
        var random = new Random(seed);
        var passes = random.Next(1, 6);
        var stations = Enumerable.Range(0, random.Next(3, 20)).Select(i => i * 16.0).ToArray();
        var step = random.Next(3) switch { 0 => 0, 1 => 1.0, _ => 10.0 };
        var sweep = InventedPasses.Sweep(passes, random.Next(3), seed, x => InventedPasses.Bow(x, 120 * (random.NextDouble() < 0.02 ? 4 : 1)), stations, step);
        for (var k = 0; k < passes; k++)
        {
            if (random.Next(4) == 0)
                sweep = sweep.With(k, (_, z) => -z);
            if (random.Next(3) == 0)
                sweep = sweep.With(k, (_, z) => random.Next(8) == 0 ? z + (random.Next(-6, 7) * 100) : z);
            if (random.Next(3) == 0)
                sweep = sweep.With(k, (_, z) => (z + 2000 + random.Next(2)) % 1000);
            if (random.Next(4) == 0 && stations.Length > 5)
                sweep = SweepEdits.Without(sweep, k, random.Next(stations.Length));
        }

        return InventedPasses.Batch(sweep);
    }
}

[UnderCulture("de-DE")]
public sealed class CleaningTestsInGerman : CleaningTests;
