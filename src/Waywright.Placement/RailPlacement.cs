namespace Waywright.Placement;

/// <summary>
/// Which rail goes where and which way round: the placement with the least Σ weight × residual of the face that matters + Σ weight × mismatch of each pair, um, every position
/// filled once, no rail used twice.
/// </summary>
/// <remarks>
/// A rail fits where width and length match (with a stock) and its grade is the one asked for or better. Of equal answers one is chosen by rule, so the same files give the same
/// answer on every run. Where not all positions can be filled, the least importance is left unfilled and <see cref="Unfilled"/> says what would fill the rest.
/// </remarks>
public sealed record RailPlacement
{
    internal RailPlacement(MachinePlan plan, GradedBatch batch, RailStock? stock) => (Plan, Batch, Stock) = (plan, batch, stock);

    /// <summary>What was to be filled.</summary>
    public MachinePlan Plan { get; }

    /// <summary>The rails with their grades.</summary>
    public GradedBatch Batch { get; }

    /// <summary>Their sizes; null when they were not given, and then sizes were not compared.</summary>
    public RailStock? Stock { get; }

    /// <summary>Machine by machine, in the plan's order. Machine 1 gets the best of each position.</summary>
    public IReadOnlyList<PlacedRail> Placed { get; internal init; } = FixedList<PlacedRail>.Empty;

    /// <summary>Positions that can't be filled; empty when all are.</summary>
    public IReadOnlyList<UnfilledPosition> Unfilled { get; internal init; } = FixedList<UnfilledPosition>.Empty;

    /// <summary>Rails that are not placed, in the batch's order.</summary>
    public IReadOnlyList<string> Spare { get; internal init; } = FixedList<string>.Empty;

    /// <summary>Whether every position is filled.</summary>
    public bool IsFilled => Unfilled.Count == 0;

    /// <summary>Σ weight × residual + Σ weight × mismatch, um.</summary>
    public double CostUm { get; internal init; }

    /// <summary>No placement of as many rails costs less than this, um.</summary>
    public double BoundUm { get; internal init; }

    /// <summary>Whether nothing better exists.</summary>
    public bool IsProven { get; internal init; }

    /// <summary>The gap that is left between cost and bound, as a share of the cost; 0 when proven.</summary>
    public double Gap => IsProven || CostUm <= 0 ? 0 : (CostUm - BoundUm) / CostUm;

    /// <summary>The best placement with another set of rails; empty when there is no other set, or none was found.</summary>
    public IReadOnlyList<PlacedRail> RunnerUp { get; internal init; } = FixedList<PlacedRail>.Empty;

    /// <summary>What the runner-up costs, um; null without one.</summary>
    public double? RunnerUpCostUm { get; internal init; }

    /// <summary>Whether no other set costs less than the runner-up.</summary>
    public bool IsRunnerUpProven { get; internal init; }

    /// <summary>Places rails.</summary>
    /// <param name="batch">The rails with their grades.</param>
    /// <param name="stock">Their sizes; without it sizes are not compared.</param>
    /// <param name="plan">The positions.</param>
    /// <param name="options">How sizes are compared and how long is searched.</param>
    /// <param name="cancel">Stops it.</param>
    /// <exception cref="InputException">A position asks for a grade that the rules don't have.</exception>
    public static RailPlacement Of(GradedBatch batch, RailStock? stock, MachinePlan plan, PlacementOptions? options = null, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(batch);
        ArgumentNullException.ThrowIfNull(plan);
        return new Assigner(batch, stock, plan, options ?? new PlacementOptions(), cancel).Place();
    }
}
