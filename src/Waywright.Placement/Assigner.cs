namespace Waywright.Placement;

/// <summary>From rails and positions to a placement: who fits, how many places can be filled, the search, and back to names.</summary>
internal sealed class Assigner
{
    private readonly GradedBatch _batch;
    private readonly RailStock? _stock;
    private readonly MachinePlan _plan;
    private readonly PlacementOptions _options;
    private readonly CancellationToken _cancel;
    private readonly Candidate[] _rails;
    private readonly int[]?[] _pairs;
    private readonly IReadOnlyList<int>[] _fits;

    public Assigner(GradedBatch batch, RailStock? stock, MachinePlan plan, PlacementOptions options, CancellationToken cancel)
    {
        (_batch, _stock, _plan, _options, _cancel) = (batch, stock, plan, options, cancel);
        var grades = batch.Rules.Grades.Select(g => g.Grade).ToArray();
        var problems = plan.Positions.Where(p => !grades.Contains(p.Grade))
            .Select(p => new InputProblem(plan.Source, p.GradeAt?.Line, p.GradeAt?.Column, ProblemList.Shown(p.Grade), $"a grade of the rules: {string.Join(", ", grades)}"))
            .ToArray();
        if (problems.Length > 0)
            throw new InputException(problems);
        // By name: the batch is sorted by what to do next, which hangs on limits.
        _rails = [.. batch.Rails.OrderBy(r => r.Rail, StringComparer.Ordinal).Select(r => new Candidate(r, stock?.Find(r.Rail), Array.IndexOf(grades, r.Grade) is var i and >= 0 ? i : null))];
        var positions = plan.Positions;
        _pairs = [.. positions.Select(p => positions.Where(q => p.Pair == q.Name || q.Pair == p.Name).Select(q => IndexOf(q.Name)).ToArray() is { Length: > 0 } other ? other : null)];
        _fits = [.. positions.Select((p, i) => (IReadOnlyList<int>)FixedList<int>.Copy(Enumerable.Range(0, _rails.Length).Where(r => Fits(_rails[r], p, _pairs[i] is not null, Array.IndexOf(grades, p.Grade)))))];
    }

    public RailPlacement Place()
    {
        var positions = _plan.Positions;
        var demands = positions.Select(p => p.Count * _plan.Machines).ToArray();
        var filling = Filling.Of(_fits, demands, [.. positions.Select(p => p.Weight)], _rails.Length);
        var units = Units(filling.Filled);
        var placement = new RailPlacement(_plan, _batch, _stock);
        var placed = Array.Empty<PlacedRail>();
        if (units.Length > 0)
        {
            var columns = new ColumnSet(_rails, positions, _fits, units, _cancel);
            var search = new Search(columns, [.. Any(filling, columns)], _options.Effort, _cancel);
            var best = search.Best();
            var other = search.RunnerUp(best);
            var seats = new Seats(_plan, _rails, columns);
            placed = seats.Of(best.Columns);
            placement = placement with
            {
                CostUm = best.Cost / ColumnSet.Scale,
                BoundUm = best.Bound / ColumnSet.Scale,
                IsProven = best.IsProven,
                RunnerUp = FixedList<PlacedRail>.Copy(other is null ? [] : seats.Of(other.Columns)),
                RunnerUpCostUm = other?.Cost / ColumnSet.Scale,
                IsRunnerUpProven = other is { IsProven: true },
            };
        }

        var used = placed.Select(p => p.Rail).ToHashSet();
        var spare = _rails.Where(r => !used.Contains(r.Name)).ToArray();
        var unfilled = Enumerable.Range(0, positions.Count).Where(p => filling.Filled[p] < demands[p])
            .Select(p => Shortage.Of(positions[p], demands[p] - filling.Filled[p], _fits[p].Count, filling.TakenBy[p]!.Select(q => positions[q].Name), spare.Where(c => !_fits[p].Contains(Array.IndexOf(_rails, c))), _batch.Rules, _options, _stock));
        return placement with
        {
            Placed = FixedList<PlacedRail>.Copy(placed),
            Unfilled = FixedList<UnfilledPosition>.Copy(unfilled),
            Spare = FixedList<string>.Copy(_batch.Rails.Select(r => r.Rail).Where(r => !used.Contains(r))),
        };
    }

    private bool Fits(Candidate rail, MachinePosition position, bool isPaired, int wanted)
        => rail.GradeIndex <= wanted && (_stock is null || rail.Size is not null) && rail.HasSize(position, _options) && rail.IsSwept(position, isPaired);

    // Of a pair with a shortage, whole pairs first; what is left over of one position stands alone.
    private PlaceUnit[] Units(int[] filled)
    {
        var units = new List<PlaceUnit>();
        for (var p = 0; p < filled.Length; p++)
        {
            var partner = _pairs[p]?[0];
            var pairs = partner is { } q ? Math.Min(filled[p], filled[q]) : 0;
            if (partner > p && pairs > 0)
                units.Add(new PlaceUnit(p, partner, pairs, 0));
            if (filled[p] > pairs)
                units.Add(new PlaceUnit(p, null, filled[p] - pairs, pairs));
        }

        return [.. units];
    }

    // The rails of the matching as columns: a pair takes the next of both positions.
    private static IEnumerable<Column> Any(Filling filling, ColumnSet columns)
    {
        for (var u = 0; u < columns.Units.Count; u++)
        {
            var unit = columns.Units[u];
            var first = filling.RailsAt(unit.First).Skip(unit.FromInstance).Take(unit.Demand);
            var second = unit.Second is { } other ? filling.RailsAt(other).Take(unit.Demand) : Enumerable.Repeat(-1, unit.Demand);
            foreach (var (one, two) in first.Zip(second))
                yield return columns.With(u, one, two);
        }
    }

    private int IndexOf(string name) => Enumerable.Range(0, _plan.Positions.Count).First(i => _plan.Positions[i].Name == name);
}
