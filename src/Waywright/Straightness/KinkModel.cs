using System;
using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>The knee that stands out most of some heights.</summary>
/// <param name="Statistic">|angle| over its standard uncertainty.</param>
/// <param name="Scale">Scatter about the bent line over what the errors say, or in um where they say nothing.</param>
internal readonly record struct KinkPeak(double Statistic, double Scale);

/// <summary>
/// The stations of a profile, prepared once for any number of sets of heights: z = smooth polynomial + angle (x - knee)+ by weighted least squares, for each of
/// a grid of knees. Each reading has the weight 1/σ²; the scale of σ is taken from the residuals about the bent line.
/// </summary>
internal sealed class KinkModel
{
    /// <summary>Stations at different positions that a knee has at least on either side, itself counted.</summary>
    public const int StationsBeyond = 3;

    private const int KneesInGap = 4;

    // Residuals may fall below the known scatter by chance, in small samples often; by more than a half they do when readings were rounded to one value.
    private const double LeastKnownScale = 0.5;

    // Rounding of the arithmetic, per unit of the largest height.
    private const double Rounding = 1e-11;

    private readonly double[] _weights;
    private readonly double[][] _basis;
    private readonly double[] _squares;
    private readonly double[] _shapeVariances;
    private readonly double _leastScale;

    /// <param name="profile">Enough stations, see <see cref="FewestPositions"/>.</param>
    /// <param name="errors">Known errors, if any.</param>
    /// <param name="smoothOrder">Degree of the smooth polynomial.</param>
    public KinkModel(Profile profile, ProfileErrors? errors, int smoothOrder)
    {
        Axis = new UnitAxis(profile);
        T = Axis.Stations(profile);
        Smooth = ModeShapes.Of(T, smoothOrder);
        SmoothOrder = smoothOrder;
        IsScaleKnown = errors is not null && errors.StationUm.Any(u => u > 0);
        Sigma = IsScaleKnown ? [.. errors!.StationUm] : [.. T.Select(_ => 1.0)];
        RootWeights = Array.ConvertAll(Sigma, u => 1 / u);
        _weights = Array.ConvertAll(RootWeights, r => r * r);
        _leastScale = Math.Max(IsScaleKnown ? LeastKnownScale : 0, Rounding * Math.Max(profile.LargestHeight, 1e-3) / Sigma.Max());
        _basis = Basis();
        Knees = [.. Grid(T.Distinct().ToArray())];
        _squares = Array.ConvertAll(Knees, SquareOf);
        _shapeVariances = new double[Knees.Length];
        foreach (var shape in errors?.Shapes ?? [])
            AddVariances(shape.Heights);
    }

    public UnitAxis Axis { get; }

    /// <summary>Stations on the unit axis.</summary>
    public double[] T { get; }

    public ModeShapes Smooth { get; }

    public int SmoothOrder { get; }

    /// <summary>Whether σ is in um, not only relative.</summary>
    public bool IsScaleKnown { get; }

    public double[] Sigma { get; }

    public double[] RootWeights { get; }

    /// <summary>Knees that are tried, on the unit axis.</summary>
    public double[] Knees { get; }

    /// <summary>Readings less what the bent line has to choose: the polynomial's coefficients, angle and knee.</summary>
    public int DegreesOfFreedom => T.Length - SmoothOrder - 3;

    /// <summary>The knees, and two degrees of freedom beside a smooth polynomial.</summary>
    public static int FewestPositions(int smoothOrder) => smoothOrder + 5;

    /// <summary>Part of weighted heights that the smooth polynomial leaves, and its sum of squares.</summary>
    public double Residuals(ReadOnlySpan<double> heights, Span<double> residuals)
    {
        for (var i = 0; i < residuals.Length; i++)
            residuals[i] = RootWeights[i] * (heights[i] - heights[0]);
        foreach (var column in _basis)
            TakeOff(column, residuals);
        return Householder.Product(residuals, residuals);
    }

    /// <summary>The scale that some residuals show, not below what is taken for possible.</summary>
    public double ScaleOf(double squares) => Math.Max(_leastScale, Math.Sqrt(Math.Max(0, squares) / DegreesOfFreedom));

    /// <summary>The knee whose angle stands out most.</summary>
    /// <param name="heights">um.</param>
    /// <param name="work">One value for each station.</param>
    public KinkPeak Highest(ReadOnlySpan<double> heights, Span<double> work)
    {
        var all = Residuals(heights, work);
        var highest = default(KinkPeak);
        var (sum, moment, next) = (0.0, 0.0, T.Length - 1);
        for (var k = Knees.Length - 1; k >= 0; k--)
        {
            var product = Product(Knees[k], work, ref sum, ref moment, ref next);
            var scale = ScaleOf(all - (product * product / _squares[k]));
            var angle = product / _squares[k];
            var statistic = Math.Abs(angle) / Math.Sqrt((scale * scale / _squares[k]) + _shapeVariances[k]);
            if (statistic >= highest.Statistic)
                highest = new KinkPeak(statistic, scale);
        }

        return highest;
    }

    /// <summary>For each knee the sum of squares about its bent line.</summary>
    public double[] SquaresLeft(ReadOnlySpan<double> heights)
    {
        var residuals = new double[T.Length];
        var all = Residuals(heights, residuals);
        var left = new double[Knees.Length];
        var (sum, moment, next) = (0.0, 0.0, T.Length - 1);
        for (var k = Knees.Length - 1; k >= 0; k--)
        {
            var product = Product(Knees[k], residuals, ref sum, ref moment, ref next);
            left[k] = all - (product * product / _squares[k]);
        }

        return left;
    }

    // Σ w r (t - knee) over the stations beyond the knee, from sums that grow as the knees go down.
    private double Product(double knee, ReadOnlySpan<double> residuals, ref double sum, ref double moment, ref int next)
    {
        for (; next >= 0 && T[next] > knee; next--)
        {
            var weighted = RootWeights[next] * residuals[next];
            sum += weighted;
            moment += weighted * T[next];
        }

        return moment - (knee * sum);
    }

    private void AddVariances(ReadOnlySpan<double> shape)
    {
        var residuals = new double[T.Length];
        Residuals(shape, residuals);
        var (sum, moment, next) = (0.0, 0.0, T.Length - 1);
        for (var k = Knees.Length - 1; k >= 0; k--)
        {
            var angle = Product(Knees[k], residuals, ref sum, ref moment, ref next) / _squares[k];
            _shapeVariances[k] += angle * angle;
        }
    }

    private double SquareOf(double knee)
    {
        var hinge = new double[T.Length];
        for (var i = 0; i < hinge.Length; i++)
            hinge[i] = RootWeights[i] * Math.Max(0, T[i] - knee);
        foreach (var column in _basis)
            TakeOff(column, hinge);
        return Householder.Product(hinge, hinge);
    }

    // Weighted polynomials made orthonormal; twice is enough (Golub and Van Loan, Matrix Computations, 5.2.9).
    private double[][] Basis()
    {
        var basis = new double[SmoothOrder + 1][];
        for (var k = 0; k < basis.Length; k++)
        {
            basis[k] = [.. Smooth.At(k)];
            for (var i = 0; i < T.Length; i++)
                basis[k][i] *= RootWeights[i];
            for (var pass = 0; pass < 2; pass++)
            {
                for (var j = 0; j < k; j++)
                    TakeOff(basis[j], basis[k]);
                var length = Math.Sqrt(Householder.Product(basis[k], basis[k]));
                for (var i = 0; i < T.Length; i++)
                    basis[k][i] /= length;
            }
        }

        return basis;
    }

    private static void TakeOff(ReadOnlySpan<double> column, Span<double> heights)
    {
        var product = Householder.Product(column, heights);
        for (var i = 0; i < heights.Length; i++)
            heights[i] -= product * column[i];
    }

    private static IEnumerable<double> Grid(double[] positions)
    {
        var (first, last) = (StationsBeyond - 1, positions.Length - StationsBeyond);
        for (var i = first; i < last; i++)
        {
            for (var k = 0; k < KneesInGap; k++)
                yield return positions[i] + ((positions[i + 1] - positions[i]) * k / KneesInGap);
        }

        yield return positions[last];
    }
}
