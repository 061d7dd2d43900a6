using System.Globalization;
using Google.OrTools.Sat;

namespace Waywright.Placement;

/// <summary>
/// Chooses columns with CP-SAT: each unit filled as often as asked, no rail twice, least cost. One worker, a fixed seed and deterministic time: the same steps on every run.
/// </summary>
internal sealed class SetChoice
{
    private readonly IReadOnlyList<Column> _columns;
    private readonly CpModel _model = new();
    private readonly BoolVar[] _chosen;

    /// <param name="columns">What may be chosen.</param>
    /// <param name="units">What has to be filled.</param>
    /// <param name="not">A set of rails that must not all be used again; null for any.</param>
    public SetChoice(IReadOnlyList<Column> columns, IReadOnlyList<PlaceUnit> units, IReadOnlySet<int>? not)
    {
        _columns = columns;
        _chosen = columns.Select((_, j) => _model.NewBoolVar(string.Create(CultureInfo.InvariantCulture, $"x{j}"))).ToArray();
        var (ofUnit, ofRail) = (units.Select(_ => new List<BoolVar>()).ToArray(), new SortedDictionary<int, List<BoolVar>>());
        for (var j = 0; j < columns.Count; j++)
        {
            ofUnit[columns[j].Unit].Add(_chosen[j]);
            foreach (var rail in RailsOf(columns[j]))
                (ofRail.TryGetValue(rail, out var list) ? list : ofRail[rail] = []).Add(_chosen[j]);
        }

        for (var u = 0; u < units.Count; u++)
            _model.Add(LinearExpr.Sum(ofUnit[u]) == units[u].Demand);
        foreach (var list in ofRail.Values)
            _model.AddAtMostOne(list);
        if (not is not null)
            _model.Add(LinearExpr.WeightedSum(_chosen, columns.Select(c => (long)RailsOf(c).Count(not.Contains)).ToArray()) <= not.Count - 1);
    }

    /// <summary>What the solver has worked, in its deterministic time.</summary>
    public double Worked { get; private set; }

    /// <summary>The least cost, or the best found within the effort; null when there is none, or none was found.</summary>
    public (Column[] Columns, bool IsProven)? Least(double effort, IEnumerable<Column>? start, CancellationToken cancel)
    {
        if (start is not null)
        {
            var begin = start.ToHashSet();
            for (var j = 0; j < _chosen.Length; j++)
                _model.AddHint(_chosen[j], begin.Contains(_columns[j]));
        }

        return Solve(c => c.Cost, effort, cancel);
    }

    /// <summary>
    /// Of all choices of a cost that is proven to be the least, one: first the rails that come first in the batch in the positions that come first in the plan, then by weights
    /// drawn for each column, under which the least is unique but for a chance of columns / 2^40 (isolation lemma: Mulmuley, Vazirani and Vazirani, Combinatorica 7 (1987)
    /// 105-113, from memory).
    /// </summary>
    public Column[]? Unique(long cost, IReadOnlyList<PlaceUnit> units, Column[] best, double effort, CancellationToken cancel)
    {
        var places = units.Max(u => Math.Max(u.First, u.Second ?? 0)) + 1;
        long Order(Column c) => (long)c.First * (places - units[c.Unit].First) + (c.Second >= 0 ? (long)c.Second * (places - units[c.Unit].Second!.Value) : 0);
        Func<Column, long>[] goals = [c => c.Cost, Order, Drawn];
        var answer = best;
        var least = cost;
        for (var goal = 1; goal < goals.Length; goal++)
        {
            Bind(goals[goal - 1], least);
            _model.Model.SolutionHint = null;
            var begin = answer.ToHashSet();
            for (var j = 0; j < _chosen.Length; j++)
                _model.AddHint(_chosen[j], begin.Contains(_columns[j]));
            if (Solve(goals[goal], effort - Worked, cancel) is not (var next, true))
                return null;
            answer = next;
            least = answer.Sum(goals[goal]);
        }

        return answer;
    }

    private void Bind(Func<Column, long> value, long most) => _model.Add(LinearExpr.WeightedSum(_chosen, _columns.Select(value).ToArray()) <= most);

    private (Column[] Columns, bool IsProven)? Solve(Func<Column, long> value, double effort, CancellationToken cancel)
    {
        if (effort <= 0)
            return null;
        _model.Minimize(LinearExpr.WeightedSum(_chosen, _columns.Select(value).ToArray()));
        var solver = new CpSolver
        {
            StringParameters = string.Create(CultureInfo.InvariantCulture, $"num_workers:1,random_seed:1,max_deterministic_time:{effort},linearization_level:2"),
        };
        using var stop = cancel.Register(solver.StopSearch);
        var status = solver.Solve(_model);
        cancel.ThrowIfCancellationRequested();
        Worked += solver.Response!.DeterministicTime;
        return status is CpSolverStatus.Optimal or CpSolverStatus.Feasible
            ? ([.. _columns.Where((_, j) => solver.BooleanValue(_chosen[j]))], status == CpSolverStatus.Optimal)
            : null;
    }

    private static IEnumerable<int> RailsOf(Column c) => c.Second < 0 ? [c.First] : [c.First, c.Second];

    // SplitMix64 (Steele, Lea and Flood 2014, from memory) over what the column is, 40 bits of it.
    private static long Drawn(Column c)
    {
        var z = unchecked(((ulong)c.Unit << 48) ^ ((ulong)c.First << 24) ^ (uint)(c.Second + 1));
        unchecked
        {
            z += 0x9E3779B97F4A7C15;
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
            return (long)((z ^ (z >> 31)) >> 24);
        }
    }
}
