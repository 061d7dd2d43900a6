namespace Waywright.Placement;

/// <summary>What was chosen, what it costs and how far that is proven; costs in 0.001 um.</summary>
internal sealed record Found(Column[] Columns, long Cost, long Bound, bool IsProven);

/// <summary>
/// The least cost of all: columns that the relaxation generated give a first answer; then every column whose reduced cost fits between the bound and that answer joins in. No
/// column that is left out can be part of anything better, so an optimum over these is an optimum over all.
/// </summary>
internal sealed class Search(ColumnSet columns, double effort, CancellationToken cancel)
{
    // More columns than this keep one worker busy for longer than people wait.
    private const int MostColumns = 60_000;

    private readonly LinearBound _bound = LinearBound.Of(columns, cancel);
    private double _left = effort;

    /// <summary>The least cost, or the best found; null when nothing was found within the effort.</summary>
    public Found? Best()
    {
        if (Least(null, 0.6) is not { } found)
            return null;
        if (!found.IsProven)
            return found;
        var ties = new SetChoice([.. _bound.Within(found.Cost)], columns.Units, null);
        var unique = ties.Unique(found.Cost, columns.Units, found.Columns, _left / 2, cancel);
        _left -= ties.Worked;
        return unique is null ? found : found with { Columns = unique };
    }

    /// <summary>The least cost with another set of rails; null when there is none, or none was found.</summary>
    public Found? RunnerUp(Found best)
    {
        var not = best.Columns.SelectMany(c => c.Second < 0 ? new[] { c.First } : [c.First, c.Second]).ToHashSet();
        return columns.RailCount == not.Count ? null : Least(not, 1);
    }

    private Found? Least(HashSet<int>? not, double share)
    {
        var budget = _left * share;
        var tried = new List<Column>(_bound.Generated);
        var first = Solve(tried, not, budget / 2, null);
        if (first is null && not is not null)
        {
            // What was generated for the best set may hold no other.
            tried = [.. AllUpTo(MostColumns)];
            first = Solve(tried, not, budget / 2, null);
        }

        if (first is not var (chosen, _))
            return null;
        var cost = Cost(chosen);
        var within = _bound.Within(cost).Take(MostColumns + 1).ToList();
        if (within.Count > MostColumns)
            return new Found(chosen, cost, _bound.Value, _bound.Value >= cost);
        if (Solve(within, not, budget / 2, chosen) is not var (better, isProven))
            return new Found(chosen, cost, _bound.Value, _bound.Value >= cost);
        cost = Cost(better);
        return new Found(better, cost, isProven ? cost : _bound.Value, isProven || _bound.Value >= cost);
    }

    private (Column[] Columns, bool IsProven)? Solve(List<Column> among, HashSet<int>? not, double most, Column[]? start)
    {
        var choice = new SetChoice(among, columns.Units, not);
        var found = choice.Least(Math.Min(most, _left), start, cancel);
        _left -= choice.Worked;
        return found;
    }

    private IEnumerable<Column> AllUpTo(int most) => Enumerable.Range(0, columns.Units.Count).SelectMany(u => columns.FirstsOf(u).SelectMany(f => columns.Of(u, f))).Take(most);

    private static long Cost(Column[] chosen) => chosen.Sum(c => c.Cost);
}
