namespace Waywright.Placement;

/// <summary>Every way to fill every unit, with its cost; the many pairs are priced when asked for, not listed.</summary>
internal sealed class ColumnSet
{
    // Costs are whole thousandths of a micrometre, so that equal means equal.
    public const double Scale = 1000;

    private readonly IReadOnlyList<Candidate> _rails;
    private readonly IReadOnlyList<MachinePosition> _positions;
    private readonly IReadOnlyList<int>[] _fits;
    private readonly Dictionary<(RailFace, double), (double Um, bool IsTurned)[]> _mismatches = [];

    public ColumnSet(IReadOnlyList<Candidate> rails, IReadOnlyList<MachinePosition> positions, IReadOnlyList<int>[] fits, IReadOnlyList<PlaceUnit> units, CancellationToken cancel)
    {
        (_rails, _positions, _fits, Units) = (rails, positions, fits, units);
        foreach (var pair in units.Where(u => u.Second is not null).Select(u => positions[u.First]))
        {
            if (!_mismatches.ContainsKey((pair.Face, pair.LengthMm)))
                _mismatches[(pair.Face, pair.LengthMm)] = Mismatches(pair.Face, pair.LengthMm, cancel);
        }
    }

    public IReadOnlyList<PlaceUnit> Units { get; }

    public int RailCount => _rails.Count;

    /// <summary>All ways to fill a unit with a given first rail.</summary>
    public IEnumerable<Column> Of(int unit, int first)
    {
        var (place, second) = (_positions[Units[unit].First], Units[unit].Second);
        var own = Own(place, first);
        if (second is not { } other)
        {
            yield return new Column(unit, first, -1, own);
            yield break;
        }

        var partner = _positions[other];
        // Two places that ask the same: the rails may change places, so one order is enough.
        var isSame = place.Weight == partner.Weight && _fits[Units[unit].First].SequenceEqual(_fits[other]);
        var (weight, mismatches) = (Math.Max(place.Weight, partner.Weight), _mismatches[(place.Face, place.LengthMm)]);
        foreach (var rail in _fits[other])
        {
            if (rail != first && (!isSame || rail > first))
                yield return new Column(unit, first, rail, own + Own(partner, rail) + Whole(weight * mismatches[(first * RailCount) + rail].Um));
        }
    }

    /// <summary>The rails that may stand first in a unit.</summary>
    public IReadOnlyList<int> FirstsOf(int unit) => _fits[Units[unit].First];

    /// <summary>The column of a unit with given rails; the second is -1 for a position alone.</summary>
    public Column With(int unit, int first, int second)
        => Of(unit, first).FirstOrDefault(c => c.Second == second, new Column(-1, -1, -1, 0)) is { Unit: >= 0 } column ? column : Of(unit, second).First(c => c.Second == first);

    /// <summary>Mismatch of a pair, the better way round, and whether the second lies turned for it.</summary>
    public (double Um, bool IsTurned) Mismatch(int unit, int first, int second)
        => _mismatches[(_positions[Units[unit].First].Face, _positions[Units[unit].First].LengthMm)][(first * RailCount) + second];

    private long Own(MachinePosition place, int rail) => Whole(place.Weight * _rails[rail].Residual(place.Face)!.Value.Um);

    private static long Whole(double um) => (long)Math.Round(Scale * um);

    // Turning both rails of a pair mirrors their difference and leaves its range: only how they lie to each other counts.
    private (double Um, bool IsTurned)[] Mismatches(RailFace face, double lengthMm, CancellationToken cancel)
    {
        var laid = _rails.Select(r => r.ShapeOf(face) is { } shape && shape.CoversMiddle(lengthMm) ? shape : null).ToArray();
        var turned = laid.Select(s => s?.Turned(face, lengthMm)).ToArray();
        var table = new (double, bool)[RailCount * RailCount];
        for (var i = 0; i < RailCount; i++)
        {
            cancel.ThrowIfCancellationRequested();
            for (var k = i + 1; k < RailCount; k++)
            {
                if (laid[i] is not { } a || laid[k] is not { } b)
                    continue;
                var (straight, reverse) = (Shape.MismatchUm(a, b), Shape.MismatchUm(a, turned[k]!));
                // As laid unless turning is better by more than rounding.
                table[(i * RailCount) + k] = table[(k * RailCount) + i] = Whole(reverse) < Whole(straight) ? (reverse, true) : (straight, false);
            }
        }

        return table;
    }
}
