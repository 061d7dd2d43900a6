using System;

namespace Waywright;

/// <summary>A figure about a line that follows the heights linearly: r = z - line(z), then the largest of differences, of single heights, or their norm.</summary>
internal abstract class LineFigure(PreparedStations stations, StraightnessParameter parameter) : HeightFigure(stations)
{
    protected StraightnessParameter Parameter { get; } = parameter;

    public override bool IsSymmetric => Parameter is StraightnessParameter.STRt or StraightnessParameter.STRq;

    public override bool IsNorm => Parameter == StraightnessParameter.STRq;

    /// <summary>Residuals of the shapes from this figure's own line.</summary>
    protected abstract double[][] FromLine(double[][] shapes);

    public override double WidestOfShapes(double[][] shapes)
    {
        var own = FromLine(shapes);
        return Parameter switch
        {
            StraightnessParameter.STRt => WidestPair(own, 0, Stations.Count),
            StraightnessParameter.STRq => RootMeanSquares(own, Stations.Count),
            _ => WidestSingle(own, Stations.Count),
        };
    }

    /// <summary>Sum of squared weights of the difference of residuals at two stations; of one residual where both are the same.</summary>
    protected abstract double WeightSquares(int i, int j);

    public override void Compare(ReadOnlySpan<double> r, double[][] shapes, ComparisonFront front)
    {
        double[][] own = [.. FromLine([r.ToArray()]), .. FromLine(shapes)];
        var (heights, count) = (own[0], Stations.Count);
        for (var i = 0; i < count; i++)
        {
            if (Parameter == StraightnessParameter.STRt)
            {
                for (var j = 0; j < count; j++)
                {
                    if (j != i && front.Wants(heights[i] - heights[j]))
                        front.Add(heights[i] - heights[j], WeightSquares(i, j), Squares(own, i, j));
                }
            }
            else if (Parameter != StraightnessParameter.STRq)
            {
                front.Add(Parameter == StraightnessParameter.STRp ? heights[i] : -heights[i], WeightSquares(i, i), Squares(own, i, i));
            }
        }
    }

    private static double Squares(double[][] own, int i, int j)
    {
        var sum = 0.0;
        for (var k = 1; k < own.Length; k++)
        {
            var value = i == j ? own[k][i] : own[k][i] - own[k][j];
            sum += value * value;
        }

        return sum;
    }

    /// <summary>The figure of r - (a + b x), and on z - (c + d x) the comparison that attains it.</summary>
    protected (double Value, double Along) From(ReadOnlySpan<double> r, ReadOnlySpan<double> z, (double At, double Slope) lineR, (double At, double Slope) lineZ)
    {
        var x = Stations.FromMean;
        if (Parameter == StraightnessParameter.STRq)
            return RootMeanSquare(x, r, z, lineR, lineZ);
        var pair = ZoneKernel.OpenAt(Stations.Axis, r, lineR.Slope, out var highest, out var lowest);
        var (top, bottom) = (pair.Upper, pair.Lower);
        var (peak, valley) = (z[top] - (lineZ.At + (lineZ.Slope * x[top])), (lineZ.At + (lineZ.Slope * x[bottom])) - z[bottom]);
        return Parameter switch
        {
            StraightnessParameter.STRp => (highest - lineR.At, peak),
            StraightnessParameter.STRv => (lineR.At - lowest, valley),
            _ => (highest - lowest, peak + valley),
        };
    }

    private static (double Value, double Along) RootMeanSquare(ReadOnlySpan<double> x, ReadOnlySpan<double> r, ReadOnlySpan<double> z, (double At, double Slope) lineR, (double At, double Slope) lineZ)
    {
        var (square, product) = (0.0, 0.0);
        for (var i = 0; i < x.Length; i++)
        {
            var height = r[i] - (lineR.At + (lineR.Slope * x[i]));
            square += height * height;
            product += height * (z[i] - (lineZ.At + (lineZ.Slope * x[i])));
        }

        var root = Math.Sqrt(square / x.Length);
        return (root, root > 0 ? product / x.Length / root : 0);
    }
}

/// <summary>A figure about the line of least squares.</summary>
internal sealed class LeastSquaresFigure(PreparedStations stations, StraightnessParameter parameter) : LineFigure(stations, parameter)
{
    public override (double Value, double Along) At(ReadOnlySpan<double> r, ReadOnlySpan<double> z) => From(r, z, default, default);

    // Var(r_i - r_j) = 2 - (x_i - x_j)² / Sxx and Var r_i = 1 - 1/n - x_i² / Sxx; the root mean square is a norm divided by sqrt n.
    public override double WidestOfStations()
    {
        var x = Stations.FromMean;
        var (nearest, middle) = (double.PositiveInfinity, double.PositiveInfinity);
        for (var i = 0; i < x.Length; i++)
        {
            middle = Math.Min(middle, x[i] * x[i]);
            if (i > 0)
                nearest = Math.Min(nearest, x[i] - x[i - 1]);
        }

        return Parameter switch
        {
            StraightnessParameter.STRt => Math.Sqrt(2 - (nearest * nearest / Stations.SumOfSquares)),
            StraightnessParameter.STRq => 1 / Math.Sqrt(x.Length),
            _ => Math.Sqrt(1 - (1.0 / x.Length) - (middle / Stations.SumOfSquares)),
        };
    }

    protected override double[][] FromLine(double[][] shapes) => shapes;

    protected override double WeightSquares(int i, int j)
    {
        var x = Stations.FromMean;
        return i == j
            ? 1 - (1.0 / x.Length) - (x[i] * x[i] / Stations.SumOfSquares)
            : 2 - ((x[i] - x[j]) * (x[i] - x[j]) / Stations.SumOfSquares);
    }
}

/// <summary>A figure about the line through the mean heights of the first and of the last position.</summary>
internal sealed class EndPointFigure : LineFigure
{
    private const int Turns = 200;

    private readonly int _firsts = 1;
    private readonly int _lasts = 1;

    public EndPointFigure(PreparedStations stations, StraightnessParameter parameter)
        : base(stations, parameter)
    {
        var x = stations.FromMean;
        while (x[_firsts] == x[0])
            _firsts++;
        while (x[^(_lasts + 1)] == x[^1])
            _lasts++;
    }

    public override (double Value, double Along) At(ReadOnlySpan<double> r, ReadOnlySpan<double> z) => From(r, z, Line(r), Line(z));

    // With u the share of the length from the first end, r_i = z_i - (1 - u_i) z_first - u_i z_last; an end that is repeated is a mean, so no more uncertain.
    public override double WidestOfStations()
    {
        if (Parameter == StraightnessParameter.STRq)
            return Math.Sqrt(LargestStretch() / Stations.Count);
        var x = Stations.FromMean;
        var (single, pair) = (0.0, 0.0);
        var (nearestFirst, nearestLast) = (1.0, 0.0);
        for (var i = _firsts; i < x.Length - _lasts; i++)
        {
            var u = (x[i] - x[0]) / (x[^1] - x[0]);
            (nearestFirst, nearestLast) = (Math.Min(nearestFirst, u), Math.Max(nearestLast, u));
            single = Math.Max(single, 1 + (u * u) + ((1 - u) * (1 - u)));
        }

        if (nearestLast > nearestFirst)
            pair = 2 + (2 * (nearestLast - nearestFirst) * (nearestLast - nearestFirst));
        return Math.Sqrt(Parameter == StraightnessParameter.STRt ? Math.Max(single, pair) : single);
    }

    protected override double[][] FromLine(double[][] shapes) => Array.ConvertAll(shapes, shape =>
    {
        var (at, slope) = Line(shape);
        var x = Stations.FromMean;
        var own = new double[x.Length];
        for (var i = 0; i < own.Length; i++)
            own[i] = shape[i] - (at + (slope * x[i]));
        return own;
    });

    protected override double WeightSquares(int i, int j)
    {
        var (ownI, firstI, lastI) = Parts(i);
        if (i == j)
            return ownI + (firstI * firstI / _firsts) + (lastI * lastI / _lasts);
        var (ownJ, firstJ, lastJ) = Parts(j);
        return ownI + ownJ + ((firstI - firstJ) * (firstI - firstJ) / _firsts) + ((lastI - lastJ) * (lastI - lastJ) / _lasts);
    }

    // Weights on the station itself and on the mean of each end; a single end has no residual of its own.
    private (double Own, double First, double Last) Parts(int i)
    {
        var x = Stations.FromMean;
        if ((i == 0 && _firsts == 1) || (i == x.Length - 1 && _lasts == 1))
            return default;
        var u = (x[i] - x[0]) / (x[^1] - x[0]);
        // Of a repeated end a reading's own weight and its share in the mean are added up as if they were apart: no less than they are.
        return (1, 1 - u, u);
    }

    private (double At, double Slope) Line(ReadOnlySpan<double> heights)
    {
        var x = Stations.FromMean;
        var (first, last) = (0.0, 0.0);
        for (var i = 0; i < _firsts; i++)
            first += heights[i] / _firsts;
        for (var i = x.Length - _lasts; i < x.Length; i++)
            last += heights[i] / _lasts;
        var slope = (last - first) / (x[^1] - x[0]);
        return (first - (slope * x[0]), slope);
    }

    /// <summary>Largest eigenvalue of P'P, P taking heights to residuals, by turns of the power method.</summary>
    private double LargestStretch()
    {
        var x = Stations.FromMean;
        var heights = new double[x.Length];
        for (var i = 0; i < x.Length; i++)
            heights[i] = 1 + (0.1 * (i % 3)) + (i / (double)x.Length);
        var value = 0.0;
        for (var turn = 0; turn < Turns; turn++)
        {
            var norm = 0.0;
            foreach (var h in heights)
                norm += h * h;
            norm = Math.Sqrt(norm);
            for (var i = 0; i < x.Length; i++)
                heights[i] /= norm;
            var (at, slope) = Line(heights);
            var (square, first, last) = (0.0, 0.0, 0.0);
            for (var i = 0; i < x.Length; i++)
            {
                heights[i] -= at + (slope * x[i]);
                var u = (x[i] - x[0]) / (x[^1] - x[0]);
                square += heights[i] * heights[i];
                first += (1 - u) * heights[i];
                last += u * heights[i];
            }

            // P' takes from the ends what the line put onto them.
            for (var i = 0; i < _firsts; i++)
                heights[i] -= first / _firsts;
            for (var i = x.Length - _lasts; i < x.Length; i++)
                heights[i] -= last / _lasts;
            value = square;
            if (value == 0)
                return 0;
        }

        return value;
    }
}
