using System;
using System.Globalization;

namespace Waywright;

/// <summary>
/// Orthogonal polynomials on the stations of a profile, by recurrence: q_k+1 = (t - a_k) q_k - b_k q_k-1 with t from -1 to 1 over the stations.
/// Forsythe, Generation and use of orthogonal polynomials for data-fitting with a digital computer, J. SIAM 5 (1957) 74-88.
/// </summary>
internal sealed class ModeShapes
{
    public const int LowestOrder = 2;
    public const int HighestOrder = 6;

    // A polynomial whose square is this small beside that of its power of t says nothing that the ones before it have not said.
    private const double Dependent = 1e-16;

    // Greatest height of the Legendre polynomial P_k over the straight line through its ends, k = 2 to 6: where its slope is that of the line, t² = 0, 1/3, 3/7, (210 + sqrt 35280)/630, (630 + sqrt 105840)/1386.
    private static readonly double[] Heights = [1.5, 0.96225044864937627, 10.0 / 7, 1.2000594157815099, 1.4147504603781256];

    private readonly double[] _a;
    private readonly double[] _b;
    private readonly double[][] _shapes;

    private ModeShapes(double[] a, double[] b, double[][] shapes) => (_a, _b, _shapes) = (a, b, shapes);

    /// <param name="t">Stations, -1 to 1.</param>
    /// <param name="highestOrder">2 to 6.</param>
    /// <exception cref="ArgumentException">Fewer stations at different positions than the order needs.</exception>
    public static ModeShapes Of(double[] t, int highestOrder)
    {
        var (a, b) = (new double[highestOrder + 1], new double[highestOrder + 1]);
        var shapes = new double[highestOrder + 1][];
        shapes[0] = new double[t.Length];
        Array.Fill(shapes[0], 1);
        for (var k = 0; k < highestOrder; k++)
        {
            var square = Householder.Product(shapes[k], shapes[k]);
            var raised = new double[t.Length];
            for (var i = 0; i < t.Length; i++)
                raised[i] = t[i] * shapes[k][i];
            a[k] = Householder.Product(raised, shapes[k]) / square;
            b[k] = k == 0 ? 0 : square / Householder.Product(shapes[k - 1], shapes[k - 1]);
            for (var i = 0; i < t.Length; i++)
                raised[i] -= (a[k] * shapes[k][i]) + (k == 0 ? 0 : b[k] * shapes[k - 1][i]);
            if (Householder.Product(raised, raised) <= Dependent * t.Length)
                throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"A shape of order {k + 1} needs stations at {k + 2} different positions: {k + 1} are there, or the rest are too close together."));
            shapes[k + 1] = raised;
        }

        return new ModeShapes(a, b, shapes);
    }

    /// <summary>The polynomial at the stations, its highest power with the coefficient 1.</summary>
    public ReadOnlySpan<double> At(int order) => _shapes[order];

    /// <summary>What each height adds to the mode's amplitude: amplitude = Σ weight z.</summary>
    public double[] Weights(int order)
    {
        var factor = AmplitudeOf(order) / Householder.Product(_shapes[order], _shapes[order]);
        return Array.ConvertAll(_shapes[order], q => factor * q);
    }

    /// <summary>What the coefficient of that polynomial is multiplied by to be the mode's amplitude: the sign that makes it rise from the first end, and the height of its curve.</summary>
    public static double AmplitudeOf(int order) => (order % 2 == 0 ? -1 : 1) * Heights[order - LowestOrder] / Leading(order);

    /// <summary>Values of all orders at any t.</summary>
    public void Values(double t, Span<double> values)
    {
        values[0] = 1;
        for (var k = 0; k + 1 < values.Length; k++)
            values[k + 1] = ((t - _a[k]) * values[k]) - (k == 0 ? 0 : _b[k] * values[k - 1]);
    }

    // Coefficient of t^k in P_k: (2k)! / (2^k k!²), by P_k+1 = ((2k + 1) t P_k - k P_k-1) / (k + 1).
    private static double Leading(int order)
    {
        var leading = 1.0;
        for (var k = 0; k < order; k++)
            leading *= ((2.0 * k) + 1) / (k + 1);
        return leading;
    }
}
