namespace Waywright.Placement;

/// <summary>
/// The shape of a face as it lies in a place of length L: as laid f(x); turned end for end a top is f(L - x), and a side -f(L - x), for the face that was swept then looks the other way.
/// </summary>
internal sealed class Shape
{
    private readonly double[] _positions;
    private readonly double[] _heights;

    private Shape(double[] positions, double[] heights) => (_positions, _heights) = (positions, heights);

    public static Shape Of(Profile profile)
    {
        // A station that is there twice is one station at its mean.
        var stations = profile.PositionsMm.Zip(profile.HeightsUm).GroupBy(s => s.First, s => s.Second).ToArray();
        return new Shape(stations.Select(s => s.Key).ToArray(), stations.Select(s => s.Average()).ToArray());
    }

    public Shape Turned(RailFace face, double lengthMm)
    {
        var sign = face == RailFace.Side ? -1 : 1;
        return new Shape([.. _positions.Reverse().Select(x => lengthMm - x)], [.. _heights.Reverse().Select(z => sign * z)]);
    }

    /// <summary>Whether it is known over the middle half of a place, so that any two such shapes have a stretch in common.</summary>
    public bool CoversMiddle(double lengthMm) => _positions[0] <= lengthMm / 4 && _positions[^1] >= 3 * lengthMm / 4;

    /// <summary>
    /// How much two shapes differ: the range of a(x) - b(x) about its least-squares line (STRt), um, over the stations of both in the stretch they share; straight lines between
    /// stations. Offset and tilt are free when a rail is set.
    /// </summary>
    public static double MismatchUm(Shape a, Shape b)
    {
        Span<double> x = stackalloc double[0];
        Span<double> z = stackalloc double[0];
        var most = a._positions.Length + b._positions.Length;
        if (most <= 512)
        {
            x = stackalloc double[512];
            z = stackalloc double[512];
        }
        else
        {
            x = new double[most];
            z = new double[most];
        }

        var count = Difference(a, b, x, z);
        return Range(x[..count], z[..count]);
    }

    private static int Difference(Shape a, Shape b, Span<double> x, Span<double> z)
    {
        var (low, high) = (Math.Max(a._positions[0], b._positions[0]), Math.Min(a._positions[^1], b._positions[^1]));
        var (i, j, count) = (0, 0, 0);
        while (i < a._positions.Length || j < b._positions.Length)
        {
            var next = Math.Min(i < a._positions.Length ? a._positions[i] : double.PositiveInfinity, j < b._positions.Length ? b._positions[j] : double.PositiveInfinity);
            while (i < a._positions.Length && a._positions[i] <= next)
                i++;
            while (j < b._positions.Length && b._positions[j] <= next)
                j++;
            if (next < low || next > high)
                continue;
            (x[count], z[count]) = (next, a.At(next, i) - b.At(next, j));
            count++;
        }

        return count;
    }

    // After: the first station beyond x.
    private double At(double x, int after)
    {
        var before = after - 1;
        return x == _positions[before] ? _heights[before] : _heights[before] + ((_heights[after] - _heights[before]) * (x - _positions[before]) / (_positions[after] - _positions[before]));
    }

    private static double Range(ReadOnlySpan<double> x, ReadOnlySpan<double> z)
    {
        var (meanX, meanZ) = (0.0, 0.0);
        for (var i = 0; i < x.Length; i++)
            (meanX, meanZ) = (meanX + x[i], meanZ + z[i]);
        (meanX, meanZ) = (meanX / x.Length, meanZ / x.Length);
        var (products, squares) = (0.0, 0.0);
        for (var i = 0; i < x.Length; i++)
        {
            products += (x[i] - meanX) * (z[i] - meanZ);
            squares += (x[i] - meanX) * (x[i] - meanX);
        }

        var slope = squares > 0 ? products / squares : 0;
        var (lowest, highest) = (double.PositiveInfinity, double.NegativeInfinity);
        for (var i = 0; i < x.Length; i++)
        {
            var residual = z[i] - meanZ - (slope * (x[i] - meanX));
            (lowest, highest) = (Math.Min(lowest, residual), Math.Max(highest, residual));
        }

        return highest - lowest;
    }
}
