using System;

namespace Waywright;

/// <summary>
/// A figure of straightness as a function of the heights. All but one are sublinear, the largest of many comparisons of heights with fixed weights:
/// <c>T(z) = max over v of v . z</c>. Heights are given as residuals of their least-squares line, padded, which changes no figure.
/// </summary>
internal abstract class HeightFigure(PreparedStations stations)
{
    public PreparedStations Stations { get; } = stations;

    /// <summary>Whether T(-z) = T(z).</summary>
    public abstract bool IsSymmetric { get; }

    /// <summary>Whether T is the largest of linear comparisons.</summary>
    public virtual bool IsSublinear => true;

    /// <summary>Whether T is the length of a vector that follows the heights linearly.</summary>
    public virtual bool IsNorm => false;

    /// <summary>T(r), and on the heights z the comparison that attains it.</summary>
    /// <param name="r">Residuals, padded.</param>
    /// <param name="z">Other residuals, padded.</param>
    public abstract (double Value, double Along) At(ReadOnlySpan<double> r, ReadOnlySpan<double> z);

    /// <summary>Largest standard deviation of a comparison for an independent error of unit standard deviation at each station, or a little more.</summary>
    public abstract double WidestOfStations();

    /// <summary>Largest root of the sum of squares of a comparison over all shapes, or more.</summary>
    /// <param name="shapes">Residuals of the shapes, padded.</param>
    public abstract double WidestOfShapes(double[][] shapes);

    /// <summary>Shows every comparison to a front; none where they can't be listed.</summary>
    /// <param name="r">Residuals, padded.</param>
    /// <param name="shapes">Residuals of the shapes, padded.</param>
    /// <param name="front">Takes the value of each on r, the sum of its squared weights, and the sum of its squared values on the shapes.</param>
    public virtual void Compare(ReadOnlySpan<double> r, double[][] shapes, ComparisonFront front)
    {
    }

    /// <summary>Weights of the comparison that attains T(r), one for each station.</summary>
    public double[] Weights(ReadOnlySpan<double> r)
    {
        var weights = new double[Stations.Count];
        var unit = new double[Stations.Count];
        var residuals = new double[Stations.Padded];
        for (var i = 0; i < unit.Length; i++)
        {
            unit[i] = 1;
            LeastSquaresKernel.Solve(Stations.Axis, unit, residuals);
            weights[i] = At(r, residuals).Along;
            unit[i] = 0;
        }

        return weights;
    }

    /// <summary>Largest over pairs of stations of the root of the sum of squared height differences over the shapes.</summary>
    protected static double WidestPair(double[][] shapes, int from, int to)
    {
        var widest = 0.0;
        for (var i = from; i < to; i++)
        {
            for (var j = from; j < i; j++)
            {
                var sum = 0.0;
                foreach (var shape in shapes)
                    sum += (shape[i] - shape[j]) * (shape[i] - shape[j]);
                widest = Math.Max(widest, sum);
            }
        }

        return Math.Sqrt(widest);
    }

    /// <summary>Largest over stations of the root of the sum of squared heights over the shapes.</summary>
    protected static double WidestSingle(double[][] shapes, int count)
    {
        var widest = 0.0;
        for (var i = 0; i < count; i++)
        {
            var sum = 0.0;
            foreach (var shape in shapes)
                sum += shape[i] * shape[i];
            widest = Math.Max(widest, sum);
        }

        return Math.Sqrt(widest);
    }

    /// <summary>Root of the sum of mean squares of the shapes.</summary>
    protected static double RootMeanSquares(double[][] shapes, int count)
    {
        var sum = 0.0;
        foreach (var shape in shapes)
        {
            for (var i = 0; i < count; i++)
                sum += shape[i] * shape[i];
        }

        return Math.Sqrt(sum / count);
    }
}
