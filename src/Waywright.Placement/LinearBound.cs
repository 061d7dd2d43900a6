using Google.OrTools.LinearSolver;

namespace Waywright.Placement;

/// <summary>
/// A lower bound on the cost of any placement, from the linear relaxation by column generation: minimise Σ c x with each unit filled as often as asked and each rail used at most
/// once. For any prices π of units and ρ ≤ 0 of rails, Σ d (π + min(0, least reduced cost of the unit)) + Σ ρ is a bound (weak duality), so rounding in the solver of the
/// relaxation can make it worse and never wrong.
/// </summary>
internal sealed class LinearBound
{
    private const int StartColumns = 3;
    private const int MostRounds = 100;
    private const double Settled = 1e-3;

    private readonly ColumnSet _columns;
    private readonly double[] _unitPrices;
    private readonly double[] _railPrices;

    private LinearBound(ColumnSet columns)
    {
        _columns = columns;
        _unitPrices = new double[columns.Units.Count];
        _railPrices = new double[columns.RailCount];
    }

    /// <summary>The bound, 0.001 um; no cost is below zero.</summary>
    public long Value { get; private set; }

    /// <summary>The columns that were generated.</summary>
    public List<Column> Generated { get; } = [];

    private double Exact { get; set; } = double.NegativeInfinity;

    public static LinearBound Of(ColumnSet columns, CancellationToken cancel)
    {
        var bound = new LinearBound(columns);
        bound.Generate(cancel);
        return bound;
    }

    /// <summary>All columns that can be part of a placement of at most a given cost: their reduced cost fits between the bound and it.</summary>
    public IEnumerable<Column> Within(long cost) => All().Where(c => IsWithin(c, cost));

    /// <summary>Whether a column can be part of a placement of at most a given cost.</summary>
    public bool IsWithin(Column c, long cost) => Reduced(c) <= cost - Exact + 1;

    private IEnumerable<Column> All() => Enumerable.Range(0, _columns.Units.Count).SelectMany(u => _columns.FirstsOf(u).SelectMany(first => _columns.Of(u, first)));

    private double Reduced(Column c) => c.Cost - _unitPrices[c.Unit] - _railPrices[c.First] - (c.Second >= 0 ? _railPrices[c.Second] : 0);

    private void Generate(CancellationToken cancel)
    {
        using var solver = Solver.CreateSolver("GLOP");
        var units = _columns.Units.Select(u => solver.MakeConstraint(u.Demand, u.Demand)).ToArray();
        var rails = Enumerable.Range(0, _columns.RailCount).Select(_ => solver.MakeConstraint(double.NegativeInfinity, 1)).ToArray();
        var known = new HashSet<(int, int, int)>();
        var highest = 0L;
        for (var u = 0; u < units.Length; u++)
        {
            foreach (var first in _columns.FirstsOf(u))
            {
                var ways = _columns.Of(u, first).ToArray();
                highest = Math.Max(highest, ways.Length == 0 ? 0 : ways.Max(c => c.Cost));
                foreach (var column in ways.OrderBy(c => c.Cost).Take(StartColumns))
                    Add(column);
            }
        }

        // An unfilled place costs more than any chain of changes that could fill it.
        var missing = 2.0 * (highest + 1) * (_columns.Units.Sum(u => u.Demand) + 1);
        foreach (var unit in units)
        {
            var absent = solver.MakeNumVar(0, double.PositiveInfinity, "");
            unit.SetCoefficient(absent, 1);
            solver.Objective().SetCoefficient(absent, missing);
        }

        solver.Objective().SetMinimization();
        for (var round = 0; round < MostRounds; round++)
        {
            cancel.ThrowIfCancellationRequested();
            if (solver.Solve() != Solver.ResultStatus.OPTIMAL)
                return;
            var (unitPrices, railPrices) = (Array.ConvertAll(units, c => c.DualValue()), Array.ConvertAll(rails, c => Math.Min(0, c.DualValue())));
            if (!Price(unitPrices, railPrices))
                return;
        }

        void Add(Column c)
        {
            if (!known.Add((c.Unit, c.First, c.Second)))
                return;
            Generated.Add(c);
            var x = solver.MakeNumVar(0, double.PositiveInfinity, "");
            units[c.Unit].SetCoefficient(x, 1);
            rails[c.First].SetCoefficient(x, 1);
            if (c.Second >= 0)
                rails[c.Second].SetCoefficient(x, 1);
            solver.Objective().SetCoefficient(x, c.Cost);
        }

        // Adds the best missing column of each unit and first rail; false when none is worth it.
        bool Price(double[] unitPrices, double[] railPrices)
        {
            var least = new double[units.Length];
            var found = new List<Column>();
            for (var u = 0; u < units.Length; u++)
            {
                foreach (var first in _columns.FirstsOf(u))
                {
                    var (best, value) = (default(Column), -Settled);
                    foreach (var c in _columns.Of(u, first))
                    {
                        var reduced = c.Cost - unitPrices[u] - railPrices[first] - (c.Second >= 0 ? railPrices[c.Second] : 0);
                        if (reduced < value)
                            (best, value) = (c, reduced);
                    }

                    if (value < -Settled)
                        found.Add(best);
                    least[u] = Math.Min(least[u], value < -Settled ? value : -Settled);
                }
            }

            var exact = _columns.Units.Select((u, i) => u.Demand * (unitPrices[i] + least[i])).Sum() + railPrices.Sum();
            if (exact > Exact)
            {
                Exact = exact - (1e-9 * Math.Abs(exact));
                Value = (long)Math.Ceiling(Exact);
                for (var u = 0; u < units.Length; u++)
                    _unitPrices[u] = unitPrices[u] + least[u];
                railPrices.CopyTo(_railPrices, 0);
            }

            var before = Generated.Count;
            found.ForEach(Add);
            return Generated.Count > before;
        }
    }
}
