using System;
using System.Linq;

namespace Waywright;

/// <summary>
/// The bent line of least squares, its knee anywhere between stations: within one gap the heights beyond it turn and rise by free amounts, and the two lines
/// cross at the knee; where they cross outside, the gap's better end is its best knee.
/// </summary>
internal sealed class KinkFit
{
    private readonly KinkModel _model;
    private readonly double[] _heights;

    private KinkFit(KinkModel model, double[] heights)
    {
        _model = model;
        _heights = heights;
        (Knee, Squares) = BestKnee();
        (Bent, _) = Solve(heights, Hinge(Knee));
        (SmoothAlone, _) = Solve(heights);
    }

    /// <summary>On the unit axis.</summary>
    public double Knee { get; }

    /// <summary>Weighted sum of squares about the bent line.</summary>
    public double Squares { get; }

    /// <summary>Coefficients of the polynomial under the bend, then the change of slope.</summary>
    public double[] Bent { get; }

    /// <summary>Coefficients of the polynomial without a bend.</summary>
    public double[] SmoothAlone { get; }

    /// <summary>Change of slope, um for each unit of the axis.</summary>
    public double Angle => Bent[^1];

    public static KinkFit Of(KinkModel model, ReadOnlySpan<double> heights) => new(model, heights.ToArray());

    /// <summary>Standard uncertainties of angle and knee for a scatter of σ, the knee free to move.</summary>
    public (double Angle, double Knee) Uncertainties()
    {
        var (columns, lengths) = Columns(Hinge(Knee), Step(Knee));
        var rows = Householder.Of(columns).InverseOfTriangle();
        var hinge = _model.SmoothOrder + 1;
        var deviations = rows.Select((row, i) => Math.Sqrt(row.Sum(r => r * r)) / lengths[i]).ToArray();
        // A knee that moves by d lowers all beyond it by angle d.
        return (deviations[hinge], Angle == 0 ? double.PositiveInfinity : deviations[hinge + 1] / Math.Abs(Angle));
    }

    /// <summary>What a profile of these heights adds to the angle, the knee free to move.</summary>
    public double AngleOf(ReadOnlySpan<double> heights) => Solve(heights, Hinge(Knee), Step(Knee)).Coefficients[_model.SmoothOrder + 1];

    private (double Knee, double Squares) BestKnee()
    {
        var positions = _model.T.Distinct().ToArray();
        var (first, last) = (KinkModel.StationsBeyond - 1, positions.Length - KinkModel.StationsBeyond);
        var best = AtStation(positions[first]);
        for (var i = first; i < last; i++)
        {
            var (coefficients, squares) = Solve(_heights, Hinge(positions[i]), Step(positions[i]));
            var knee = positions[i] - (coefficients[^1] / coefficients[^2]);
            var found = knee > positions[i] && knee < positions[i + 1] ? (knee, squares) : AtStation(positions[i + 1]);
            if (found.Item2 < best.Squares)
                best = found;
        }

        return best;
    }

    private (double Knee, double Squares) AtStation(double knee) => (knee, Solve(_heights, Hinge(knee)).Squares);

    private (double[] Coefficients, double Squares) Solve(ReadOnlySpan<double> heights, params ReadOnlySpan<double[]> extra)
    {
        var (columns, lengths) = Columns(extra);
        var copies = Array.ConvertAll(columns, c => (double[])c.Clone());
        var right = heights.ToArray();
        for (var i = 0; i < right.Length; i++)
            right[i] *= _model.RootWeights[i];
        var coefficients = Householder.Of(columns).Solve((double[])right.Clone());
        for (var k = 0; k < coefficients.Length; k++)
        {
            for (var i = 0; i < right.Length; i++)
                right[i] -= coefficients[k] * copies[k][i];
            coefficients[k] /= lengths[k];
        }

        return (coefficients, Householder.Product(right, right));
    }

    // Weighted, of length 1.
    private (double[][] Columns, double[] Lengths) Columns(params ReadOnlySpan<double[]> extra)
    {
        var columns = new double[_model.SmoothOrder + 1 + extra.Length][];
        var lengths = new double[columns.Length];
        for (var k = 0; k < columns.Length; k++)
        {
            columns[k] = k <= _model.SmoothOrder ? [.. _model.Smooth.At(k)] : (double[])extra[k - _model.SmoothOrder - 1].Clone();
            for (var i = 0; i < columns[k].Length; i++)
                columns[k][i] *= _model.RootWeights[i];
            lengths[k] = Math.Sqrt(Householder.Product(columns[k], columns[k]));
            for (var i = 0; i < columns[k].Length; i++)
                columns[k][i] /= lengths[k];
        }

        return (columns, lengths);
    }

    private double[] Hinge(double knee) => Array.ConvertAll(_model.T, t => Math.Max(0, t - knee));

    private double[] Step(double knee) => Array.ConvertAll(_model.T, t => t > knee ? 1.0 : 0);
}
