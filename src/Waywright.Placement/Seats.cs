using System.Globalization;

namespace Waywright.Placement;

/// <summary>Turns chosen columns into rails with machine, position, way round and reason.</summary>
internal sealed class Seats(MachinePlan plan, IReadOnlyList<Candidate> rails, ColumnSet columns)
{
    /// <summary>Machine by machine, in the plan's order.</summary>
    public PlacedRail[] Of(Column[] chosen)
    {
        var placed = new List<(int Position, int Instance, PlacedRail Rail)>();
        foreach (var unit in chosen.GroupBy(c => c.Unit))
        {
            var places = columns.Units[unit.Key];
            var instance = places.FromInstance;
            foreach (var column in InOrder(unit, places.FromInstance, plan.Positions[places.First].Count))
            {
                var pair = column.Second < 0 ? default((double Um, bool IsTurned)?) : columns.Mismatch(column.Unit, column.First, column.Second);
                placed.Add((places.First, instance, Seat(places.First, instance, column.First, false, column.Second, pair?.Um)));
                if (places.Second is { } second)
                    placed.Add((second, instance, Seat(second, instance, column.Second, pair!.Value.IsTurned, column.First, pair.Value.Um)));
                instance++;
            }
        }

        return [.. placed.OrderBy(s => s.Rail.Machine).ThenBy(s => s.Position).ThenBy(s => s.Instance).Select(s => s.Rail)];
    }

    // The first machine gets the best rails. Its equal places are filled by the rails' names: which of two alike rails is better is chance, and where it lies must not be.
    private static IEnumerable<Column> InOrder(IEnumerable<Column> unit, int from, int ofMachine)
        => unit.OrderBy(c => c.Cost).ThenBy(c => c.First).ThenBy(c => c.Second).Select((c, i) => (Column: c, Machine: (from + i) / ofMachine)).GroupBy(c => c.Machine, c => c.Column).SelectMany(m => m.OrderBy(c => c.First));

    private PlacedRail Seat(int position, int instance, int rail, bool isTurned, int partner, double? mismatch)
    {
        var place = plan.Positions[position];
        var (feature, um) = rails[rail].Residual(place.Face)!.Value;
        var name = place.Count == 1 ? place.Name : string.Create(CultureInfo.InvariantCulture, $"{place.Name} {(instance % place.Count) + 1}");
        var other = partner < 0 ? null : rails[partner].Name;
        var grade = rails[rail].Graded.Grade;
        var why = string.Create(CultureInfo.InvariantCulture, $"{char.ToUpperInvariant(feature[0])}{feature[1..]} {Um(um, rail)} um, grade {grade}{(grade == place.Grade ? "" : $" ({place.Grade} would do)")}.");
        if (mismatch is { } apart)
            why += string.Create(CultureInfo.InvariantCulture, $" With {other}: shapes {Um(apart, rail, partner)} um apart{(isTurned ? ", turned for it" : "")}.");
        return new PlacedRail((instance / place.Count) + 1, name, rails[rail].Name, isTurned, isTurned ? place.FarEnd : place.NearEnd, feature, um, other, mismatch, why);

        // A dial of 0.01 mm shows no tenths of a micrometre.
        string Um(double value, params ReadOnlySpan<int> of)
        {
            var isCoarse = false;
            foreach (var r in of)
                isCoarse |= (place.Face == RailFace.Side ? rails[r].Graded.Side : rails[r].Graded.Top)?.Sweep.Setup is { DivisionUm: >= 10 };
            return value.ToString(isCoarse ? "0" : "0.0", CultureInfo.InvariantCulture);
        }
    }
}
