using System;

namespace Waywright;

/// <summary>
/// STRt about the minimum zone, of the whole length or the largest over windows. The proof of optimality of a zone is a comparison of one station with a
/// point between two others: its dual (linear programming), so that T is the largest of such comparisons.
/// </summary>
internal sealed class ZoneFigure : HeightFigure
{
    private const int OnStack = 512;

    private readonly (int From, PreparedStations Stations)[] _windows;

    public ZoneFigure(PreparedStations stations)
        : base(stations) => _windows = [(0, stations)];

    public ZoneFigure(PreparedStations stations, Profile profile, (int From, int To)[] windows)
        : base(stations) => _windows = Array.ConvertAll(windows, w => (w.From, new PreparedStations(profile.Positions[w.From..w.To])));

    public override bool IsSymmetric => true;

    public override (double Value, double Along) At(ReadOnlySpan<double> r, ReadOnlySpan<double> z)
    {
        if (_windows.Length == 1 && ReferenceEquals(_windows[0].Stations, Stations))
            return Along(ZoneKernel.Solve(Stations.Axis, r), z);
        var best = (Value: double.NegativeInfinity, Along: 0.0);
        Span<double> room = Stations.Padded <= OnStack ? stackalloc double[OnStack] : new double[Stations.Padded];
        foreach (var (from, stations) in _windows)
        {
            var own = room[..stations.Padded];
            var line = LeastSquaresKernel.Solve(stations.Axis, r.Slice(from, stations.Count), own);
            // No zone is wider than the heights about least squares.
            if (line.Highest - line.Lowest <= best.Value)
                continue;
            var found = Along(ZoneKernel.Solve(stations.Axis, own, line), z[from..]);
            if (found.Value > best.Value)
                best = found;
        }

        return best;
    }

    // z_j - a z_i - (1 - a) z_k with i < j < k: 1 + a² + (1 - a)², largest with one neighbour and the far end.
    public override double WidestOfStations()
    {
        var widest = 0.0;
        foreach (var (_, stations) in _windows)
        {
            var x = stations.FromMean;
            for (var j = 1; j < x.Length - 1; j++)
                widest = Math.Max(widest, Math.Max(Square(x[j - 1], x[j], x[^1]), Square(x[0], x[j], x[j + 1])));
        }

        return Math.Sqrt(1 + widest);

        static double Square(double i, double j, double k)
        {
            var a = k > i ? (k - j) / (k - i) : 1;
            return (a * a) + ((1 - a) * (1 - a));
        }
    }

    public override void Compare(ReadOnlySpan<double> r, double[][] shapes, ComparisonFront front)
    {
        foreach (var (from, stations) in _windows)
        {
            var x = stations.FromMean;
            for (var i = 0; i < x.Length; i++)
            {
                for (var k = i + 2; k < x.Length; k++)
                {
                    for (var j = i + 1; j < k; j++)
                    {
                        var a = x[k] > x[i] ? (x[k] - x[j]) / (x[k] - x[i]) : 0.5;
                        var value = Math.Abs(r[from + j] - (a * r[from + i]) - ((1 - a) * r[from + k]));
                        if (front.Wants(value))
                            front.Add(value, 1 + (a * a) + ((1 - a) * (1 - a)), Squares(shapes, from + i, from + j, from + k, a));
                    }
                }
            }
        }
    }

    private static double Squares(double[][] shapes, int i, int j, int k, double a)
    {
        var sum = 0.0;
        foreach (var shape in shapes)
        {
            var value = shape[j] - (a * shape[i]) - ((1 - a) * shape[k]);
            sum += value * value;
        }

        return sum;
    }

    // A comparison mixes two differences, a (z_j - z_i) + (1 - a) (z_j - z_k): by the triangle inequality no wider than the wider of them.
    public override double WidestOfShapes(double[][] shapes)
    {
        var widest = 0.0;
        foreach (var (from, stations) in _windows)
            widest = Math.Max(widest, WidestPair(Array.ConvertAll(shapes, s => stations.Residuals(s.AsSpan(from, stations.Count))), 0, stations.Count));
        return widest;
    }

    private static (double Value, double Along) Along(in NarrowestZone zone, ReadOnlySpan<double> z)
    {
        var (falling, rising) = (zone.Falling, zone.Rising);
        // Both pairs are mixed so that their runs cancel.
        var mix = falling.Run == rising.Run ? 1 : rising.Run / (rising.Run - falling.Run);
        return (zone.Width, (mix * (z[falling.Upper] - z[falling.Lower])) + ((1 - mix) * (z[rising.Upper] - z[rising.Lower])));
    }
}

/// <summary>STRq about the middle of the minimum zone: no largest of comparisons, as the zone may jump.</summary>
internal sealed class ZoneRootFigure(PreparedStations stations) : HeightFigure(stations)
{
    public override bool IsSymmetric => true;

    public override bool IsSublinear => false;

    public override (double Value, double Along) At(ReadOnlySpan<double> r, ReadOnlySpan<double> z)
    {
        var square = 0.0;
        var x = Stations.FromMean;
        for (var i = 0; i < x.Length; i++)
            square += r[i] * r[i];
        var zone = ZoneKernel.Solve(Stations.Axis, r);
        var middle = (zone.Falling.Rise - (zone.Slope * zone.Falling.Run)) / 2;
        middle = r[zone.Falling.Lower] - (zone.Slope * x[zone.Falling.Lower]) + middle;
        // Residuals of least squares are orthogonal to every line, so squares add.
        var meanSquare = (square / x.Length) + (middle * middle) + (zone.Slope * zone.Slope * Stations.SumOfSquares / x.Length);
        return (Math.Sqrt(meanSquare), double.NaN);
    }

    public override double WidestOfStations() => throw new NotSupportedException("This figure is no largest of comparisons.");

    public override double WidestOfShapes(double[][] shapes) => throw new NotSupportedException("This figure is no largest of comparisons.");
}
