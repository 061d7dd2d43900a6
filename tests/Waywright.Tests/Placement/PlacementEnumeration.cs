using Waywright.Placement;

namespace Waywright.Tests;

/// <summary>Every placement of a small problem, by trying them all: no solver, no shared code with the product but the graded figures.</summary>
internal static class PlacementEnumeration
{
    public sealed record Way(double Cost, string[] Rails);

    /// <summary>Each choice of rails with its best way round, least cost first.</summary>
    public static List<Way> Of(GradedBatch batch, MachinePlan plan)
    {
        var names = batch.Rails.Select(r => r.Rail).Order(StringComparer.Ordinal).ToArray();
        var ways = new List<Way>();
        foreach (var rails in Choices(names, plan.Positions.Count))
        {
            if (rails.Where((r, i) => !Meets(batch, r, plan.Positions[i].Grade)).Any())
                continue;
            var best = Enumerable.Range(0, 1 << rails.Length).Min(bits => CostOf(batch, plan, [.. rails.Select((r, i) => (r, ((bits >> i) & 1) == 1))]));
            ways.Add(new Way(best, rails));
        }

        return [.. ways.OrderBy(w => w.Cost)];
    }

    public static double CostOf(GradedBatch batch, MachinePlan plan, (string Rail, bool IsTurned)[] placed)
    {
        var cost = 0.0;
        for (var i = 0; i < placed.Length; i++)
        {
            var position = plan.Positions[i];
            cost += position.Weight * Residual(batch.Find(placed[i].Rail)!, position.Face);
            for (var k = 0; k < i; k++)
            {
                var other = plan.Positions[k];
                if (other.Pair == position.Name || position.Pair == other.Name)
                    cost += Math.Max(position.Weight, other.Weight) * Mismatch(batch, position.Face, placed[k], placed[i]);
            }
        }

        return cost;
    }

    /// <summary>The same for several machines, from what was placed.</summary>
    public static double CostOfPlaced(GradedBatch batch, MachinePlan plan, IReadOnlyList<PlacedRail> placed)
    {
        var cost = 0.0;
        foreach (var rail in placed)
        {
            var position = plan.Positions.Single(p => p.Name == rail.Position || rail.Position.StartsWith(p.Name + " ", StringComparison.Ordinal));
            cost += position.Weight * Residual(batch.Find(rail.Rail)!, position.Face);
            if (position.Pair is not null)
            {
                var partner = placed.Single(p => p.Rail == rail.Partner);
                cost += Math.Max(position.Weight, plan.Find(position.Pair)!.Weight) * Mismatch(batch, position.Face, (rail.Rail, rail.IsTurned), (partner.Rail, partner.IsTurned));
            }
        }

        return cost;
    }

    private static IEnumerable<string[]> Choices(string[] names, int count)
        => count == 0 ? [[]] : Choices(names, count - 1).SelectMany(head => names.Except(head).Select(n => (string[])[.. head, n]));

    private static bool Meets(GradedBatch batch, string rail, string wanted)
        => batch.Find(rail)!.Grade is var grade && (grade == "gantry" || (grade == "z" && wanted == "z"));

    private static double Residual(GradedRail rail, RailFace face) => rail.ValueOf(face == RailFace.Side ? RailFeature.Side : RailFeature.TopMounted)!.Value;

    // Stations are the same on all rails and symmetric, so turning is reading the list backwards.
    private static double Mismatch(GradedBatch batch, RailFace face, (string Rail, bool IsTurned) a, (string Rail, bool IsTurned) b)
    {
        var (left, right) = (Lie(a), Lie(b));
        var difference = left.Zip(right, (p, q) => p - q).ToArray();
        var fit = LineFit.Of(PlacementScene.Stations, difference);
        var residuals = difference.Select((d, i) => d - fit.At(PlacementScene.Stations[i])).ToArray();
        return residuals.Max() - residuals.Min();

        double[] Lie((string Rail, bool IsTurned) rail)
        {
            var graded = batch.Find(rail.Rail)!;
            var heights = (face == RailFace.Side ? graded.Side : graded.Top)!.Profile.HeightsUm.ToArray();
            if (!rail.IsTurned)
                return heights;
            Array.Reverse(heights);
            return face == RailFace.Side ? [.. heights.Select(h => -h)] : heights;
        }
    }
}
