namespace Waywright.Tests.Beams;

/// <summary>
/// The same beam by another road: finite elements with Hermite cubics whose nodes are ends, supports, forces and stations. Node values are exact for point
/// forces, and for uniform load with consistent nodal loads. Worked in decimals of 28 digits: in doubles the matrix would cost nine of sixteen.
/// </summary>
static class HermiteModel
{
    // Two unknowns at a node, height and slope; an element joins two nodes.
    const int Band = 3;

    /// <summary>Deflections at stations in um and reactions in N. Lengths count in parts of the beam's, heights in L^3/(EI) for each newton.</summary>
    public static (double[] DeflectionsUm, double[] ReactionsN) Solve(SupportedBeam beam, IReadOnlyList<PointForce> forces, IReadOnlyList<double> stations)
    {
        decimal[] nodes = [.. new[] { 0, beam.LengthMm }.Concat(beam.SupportsMm).Concat(forces.Select(f => f.PositionMm)).Concat(stations).Select(Exact).Distinct().Order()];
        int HeightAt(double x) => 2 * Array.IndexOf(nodes, Exact(x));
        var stiffness = new decimal[2 * nodes.Length, 2 * nodes.Length];
        var load = new decimal[2 * nodes.Length];
        var metres = Exact(beam.LengthMm) / 1000;
        for (var i = 0; i + 1 < nodes.Length; i++)
            AddElement(stiffness, load, 2 * i, (nodes[i + 1] - nodes[i]) / Exact(beam.LengthMm), -Exact(beam.WeightNPerM) * metres);
        foreach (var force in forces)
            load[HeightAt(force.PositionMm)] -= Exact(force.DownwardN);

        var umPerUnit = 1e6m * metres * metres * metres / Exact(beam.BendingStiffnessNm2);
        var held = beam.SupportsMm.Select((x, i) => (Row: HeightAt(x), Height: Exact(beam.SupportHeightsUm[i]) / umPerUnit)).ToArray();
        var heights = Heights(stiffness, load, held);
        decimal Reaction(int row) => Enumerable.Range(0, heights.Length).Sum(column => stiffness[row, column] * heights[column]) - load[row];
        return ([.. stations.Select(x => (double)(umPerUnit * heights[HeightAt(x)]))], [.. held.Select(h => (double)Reaction(h.Row))]);
    }

    static decimal[] Heights(decimal[,] stiffness, decimal[] load, (int Row, decimal Height)[] held)
    {
        var (matrix, heights) = ((decimal[,])stiffness.Clone(), (decimal[])load.Clone());
        foreach (var (row, height) in held)
        {
            for (var column = 0; column < heights.Length; column++)
                matrix[row, column] = column == row ? 1 : 0;
            heights[row] = height;
        }

        for (var i = 0; i < heights.Length; i++)
        {
            for (var r = i + 1; r <= Math.Min(i + Band, heights.Length - 1); r++)
            {
                var factor = matrix[r, i] / matrix[i, i];
                for (var c = i; c <= Math.Min(i + Band, heights.Length - 1); c++)
                    matrix[r, c] -= factor * matrix[i, c];
                heights[r] -= factor * heights[i];
            }
        }

        for (var i = heights.Length - 1; i >= 0; i--)
        {
            for (var c = i + 1; c <= Math.Min(i + Band, heights.Length - 1); c++)
                heights[i] -= matrix[i, c] * heights[c];
            heights[i] /= matrix[i, i];
        }

        return heights;
    }

    static void AddElement(decimal[,] stiffness, decimal[] load, int at, decimal h, decimal weight)
    {
        decimal[,] element = { { 12, 6 * h, -12, 6 * h }, { 6 * h, 4 * h * h, -6 * h, 2 * h * h }, { -12, -6 * h, 12, -6 * h }, { 6 * h, 2 * h * h, -6 * h, 4 * h * h } };
        decimal[] consistent = [weight * h / 2, weight * h * h / 12, weight * h / 2, -weight * h * h / 12];
        for (var r = 0; r < 4; r++)
        {
            load[at + r] += consistent[r];
            for (var c = 0; c < 4; c++)
                stiffness[at + r, at + c] += element[r, c] / (h * h * h);
        }
    }

    /// <summary>All digits of the number: a plain conversion keeps fifteen.</summary>
    static decimal Exact(double x) => (decimal)x + (decimal)(x - (double)(decimal)x);
}
