using System;

namespace Waywright;

/// <summary>
/// Exact notes of a tensioned beam with ends that are pinned or clamped: EI w'''' - T w'' + mu d2w/dt2 = 0. All in SI units: N, N m2, kg/m, m, Hz.
/// </summary>
/// <remarks>
/// With xi = L sqrt(T / EI), a2 - b2 = xi2 and f_n = a b sqrt(EI / mu) / (2 pi L2): pinned b = n pi; clamped 2 a b (1 - cosh a cos b) + (a2 - b2) sinh a sin b = 0;
/// clamped and pinned a tan b = b tanh a. The two transcendental ones are solved in the form b = n pi + 2 atan((b / a) tanh(a / 2)^(+1 for even n, -1 for odd n)) and
/// b = n pi + atan((b / a) tanh a), which neither overflow nor skip a note: the right side's slope is below 1 for every n.
/// Source: L. Meirovitch, Analytical Methods in Vibrations (1967), for the equation of motion (from memory); the roots from the boundary conditions. Checked by Reference/belts/stiff_string_ratios.csv and by SciPy.
/// </remarks>
public static class TensionedBeam
{
    private const int MostSteps = 60;
    private const double Settled = 4e-16;

    // tanh differs from 1 by less than a rounding beyond this.
    private const double Steep = 19;

    /// <summary>Note n in Hz; the ideal string n sqrt(T / mu) / (2 L) where the bending stiffness is 0.</summary>
    /// <param name="n">1 for the lowest note.</param>
    /// <param name="tensionN">T, 0 or more; above 0 for a string.</param>
    /// <param name="bendingStiffnessNm2">EI, 0 or more, not both 0.</param>
    /// <param name="densityKgPerM">mu, above 0.</param>
    /// <param name="lengthM">L, above 0.</param>
    /// <param name="clampedEnds">How many of the two ends are clamped: 0, 1 or 2.</param>
    /// <exception cref="ArgumentOutOfRangeException">One of them is out of its range.</exception>
    public static double FrequencyHz(int n, double tensionN, double bendingStiffnessNm2, double densityKgPerM, double lengthM, int clampedEnds)
    {
        Check(n, clampedEnds);
        CheckAbove(densityKgPerM, nameof(densityKgPerM));
        CheckAbove(lengthM, nameof(lengthM));
        if (!(tensionN >= 0) || !double.IsFinite(tensionN) || (tensionN == 0 && bendingStiffnessNm2 == 0))
            throw new ArgumentOutOfRangeException(nameof(tensionN), tensionN, "A tension of 0 or more is needed, above 0 for a string.");
        if (!(bendingStiffnessNm2 >= 0) || !double.IsFinite(bendingStiffnessNm2))
            throw new ArgumentOutOfRangeException(nameof(bendingStiffnessNm2), bendingStiffnessNm2, "A bending stiffness of 0 or more is needed.");
        var ideal = n * Math.Sqrt(tensionN / densityKgPerM) / (2 * lengthM);
        if (bendingStiffnessNm2 == 0)
            return ideal;
        var xi = lengthM * Math.Sqrt(tensionN / bendingStiffnessNm2);
        var b = Root(n, xi, clampedEnds);
        var a = double.Hypot(xi, b);
        // a / xi and b / (n pi) keep their digits where the stiffness is next to nothing.
        return xi > 1
            ? ideal * (a / xi) * (b / (n * Math.PI))
            : a * b * Math.Sqrt(bendingStiffnessNm2 / densityKgPerM) / (2 * Math.PI * lengthM * lengthM);
    }

    /// <summary>f_n / (n f_0) with f_0 = sqrt(T / mu) / (2 L) the ideal string's lowest note: what stiffness and ends add.</summary>
    /// <param name="n">1 for the lowest note.</param>
    /// <param name="xi">L sqrt(T / EI), above 0: 50 is a well-behaved belt, below 20 a stiff one.</param>
    /// <param name="clampedEnds">0, 1 or 2.</param>
    /// <exception cref="ArgumentOutOfRangeException">One of them is out of its range.</exception>
    public static double Ratio(int n, double xi, int clampedEnds)
    {
        Check(n, clampedEnds);
        CheckAbove(xi, nameof(xi));
        var b = Root(n, xi, clampedEnds);
        return double.Hypot(xi, b) / xi * (b / (n * Math.PI));
    }

    /// <summary>The root b of note n, at least n pi and below (n + 1) pi; relative error below 1e-14.</summary>
    internal static double Root(int n, double xi, int clampedEnds)
    {
        var start = n * Math.PI;
        if (clampedEnds == 0)
            return start;
        var b = start;
        for (var step = 0; step < MostSteps; step++)
        {
            var a = Math.Sqrt((xi * xi) + (b * b));
            var half = clampedEnds == 2 ? a / 2 : a;
            var tanh = half > Steep ? 1 : Math.Tanh(half);
            var power = clampedEnds == 2 && int.IsOddInteger(n) ? 1 / tanh : tanh;
            var argument = b / a * power;
            var value = b - start - (clampedEnds * Math.Atan(argument));
            // tanh hardly moves along, so its slope is left out: the steps still close in, by a factor of a thousand and more each.
            var slope = 1 - (clampedEnds * power * xi * xi / (a * a * a) / (1 + (argument * argument)));
            var next = value / slope;
            b -= next;
            if (Math.Abs(next) <= Settled * b)
                break;
        }

        return b;
    }

    private static void Check(int n, int clampedEnds)
    {
        if (n < 1)
            throw new ArgumentOutOfRangeException(nameof(n), n, "Notes are counted from 1.");
        if (clampedEnds is not (0 or 1 or 2))
            throw new ArgumentOutOfRangeException(nameof(clampedEnds), clampedEnds, "A span has two ends.");
    }

    private static void CheckAbove(double value, string name)
    {
        if (!(value > 0) || !double.IsFinite(value))
            throw new ArgumentOutOfRangeException(name, value, "A finite number above 0 is needed.");
    }
}
