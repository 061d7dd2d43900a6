namespace Waywright.Placement;

/// <summary>What was chosen, what it costs and how far that is proven; costs in 0.001 um.</summary>
internal sealed record Found(Column[] Columns, long Cost, long Bound, bool IsProven)
{
    /// <summary>All columns that an equal one could be made of; null when not all were looked at.</summary>
    public List<Column>? Within { get; init; }
}

/// <summary>
/// The least cost of all: columns that the relaxation generated give a first answer; then every column whose reduced cost fits between the bound and that answer joins in. No
/// column that is left out can be part of anything better, so an optimum over these is an optimum over all.
/// </summary>
/// <param name="columns">Every way to fill every unit.</param>
/// <param name="any">Some placement, from the matching that told how many places can be filled.</param>
/// <param name="effort">Most work, in the solver's deterministic time.</param>
/// <param name="cancel">Stops it.</param>
internal sealed class Search(ColumnSet columns, Column[] any, double effort, CancellationToken cancel)
{
    // More columns than this keep one worker busy for longer than people wait.
    private const int MostColumns = 60_000;

    private readonly LinearBound _bound = LinearBound.Of(columns, cancel);
    private double _left = effort;

    /// <summary>The least cost, or the best found.</summary>
    public Found Best() => Settled(Least(null, 0.6)!, null);

    /// <summary>The least cost with another set of rails; null when there is none, or none was found.</summary>
    public Found? RunnerUp(Found best)
    {
        var not = best.Columns.SelectMany(RailsOf).ToHashSet();
        return columns.RailCount > not.Count && Least(not, 0.8) is { } found ? Settled(found, not) : null;
    }

    // Of equal ones always the same.
    private Found Settled(Found found, HashSet<int>? not)
    {
        if (!found.IsProven || found.Within is not { } within)
            return found;
        var ties = new SetChoice(within, columns.Units, not);
        var unique = ties.Unique(found.Cost, columns.Units, found.Columns, _left / 2, cancel);
        _left -= ties.Worked;
        return unique is null ? found : found with { Columns = unique };
    }

    private Found? Least(HashSet<int>? not, double share)
    {
        var budget = _left * share;
        var tried = _bound.Generated.Union(not is null ? any : []).ToList();
        var first = Solve(tried, not, budget / 2, not is null ? any : null)?.Columns ?? (not is null ? any : null);
        // What was generated for the best set may hold no other.
        first ??= Solve([.. AllUpTo(MostColumns)], not, budget / 2, null)?.Columns;
        if (first is null)
            return null;
        var cost = Cost(first);
        var within = _bound.Within(cost).Take(MostColumns + 1).ToList();
        if (within.Count > MostColumns || Solve(within, not, budget / 2, first) is not var (better, isProven))
            return new Found(first, cost, _bound.Value, _bound.Value >= cost);
        cost = Cost(better);
        return isProven ? new Found(better, cost, cost, true) { Within = within.FindAll(c => _bound.IsWithin(c, cost)) } : new Found(better, cost, _bound.Value, _bound.Value >= cost);
    }

    private (Column[] Columns, bool IsProven)? Solve(List<Column> among, HashSet<int>? not, double most, Column[]? start)
    {
        var choice = new SetChoice(among, columns.Units, not);
        var found = choice.Least(Math.Min(most, _left), start, cancel);
        _left -= choice.Worked;
        return found;
    }

    private IEnumerable<Column> AllUpTo(int most) => Enumerable.Range(0, columns.Units.Count).SelectMany(u => columns.FirstsOf(u).SelectMany(f => columns.Of(u, f))).Take(most);

    private static IEnumerable<int> RailsOf(Column c) => c.Second < 0 ? [c.First] : [c.First, c.Second];

    private static long Cost(Column[] chosen) => chosen.Sum(c => c.Cost);
}
