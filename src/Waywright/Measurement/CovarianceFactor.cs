using System;
using System.Collections.Generic;

namespace Waywright;

/// <summary>Lower triangular L with L L' = V, for drawing correlated Gaussian quantities (JCGM 101:2008, 6.4.8 and C.2); V may be semidefinite.</summary>
internal static class CovarianceFactor
{
    // On the correlation matrix: a pivot or a rest of this size is rounding, of the sums here or of what somebody wrote with a few digits.
    private const double Rounding = 1e-10;

    /// <summary>L, row after row.</summary>
    /// <exception cref="ArgumentException">Not square, not finite, not symmetric, a negative variance, a correlation outside -1 to 1, or not positive semidefinite: all that is wrong is listed.</exception>
    public static double[] Of(IReadOnlyList<string> names, double[,] covariance)
    {
        var n = names.Count;
        if (covariance.GetLength(0) != n || covariance.GetLength(1) != n)
            throw new ArgumentException($"{n} quantities need a covariance matrix of {n} x {n}, not {covariance.GetLength(0)} x {covariance.GetLength(1)}.", nameof(covariance));
        var problems = new List<string>();
        CheckVariances(names, covariance, problems);
        if (problems.Count == 0)
            CheckPairs(names, covariance, problems);
        var factor = problems.Count == 0 ? Factor(names, covariance, problems) : [];
        return problems.Count == 0 ? factor : throw new ArgumentException(string.Join('\n', problems), nameof(covariance));
    }

    private static void CheckVariances(IReadOnlyList<string> names, double[,] covariance, List<string> problems)
    {
        for (var i = 0; i < names.Count; i++)
        {
            for (var k = 0; k < names.Count; k++)
            {
                if (!double.IsFinite(covariance[i, k]))
                    problems.Add($"The covariance of '{names[i]}' and '{names[k]}' is not a finite number.");
            }

            if (covariance[i, i] < 0)
                problems.Add($"The variance of '{names[i]}' is {NumberText.Plain(covariance[i, i])}: a variance is 0 or more.");
        }
    }

    private static void CheckPairs(IReadOnlyList<string> names, double[,] covariance, List<string> problems)
    {
        for (var i = 0; i < names.Count; i++)
        {
            for (var k = 0; k < i; k++)
            {
                var scale = Math.Sqrt(covariance[i, i]) * Math.Sqrt(covariance[k, k]);
                if (Math.Abs(covariance[i, k] - covariance[k, i]) > Rounding * scale)
                    problems.Add($"The covariance of '{names[i]}' and '{names[k]}' stands twice, as {NumberText.Plain(covariance[i, k])} and as {NumberText.Plain(covariance[k, i])}.");
                else if (scale == 0 && covariance[i, k] != 0)
                    problems.Add($"'{names[i]}' and '{names[k]}' have the covariance {NumberText.Plain(covariance[i, k])}, but one of them has no variance.");
                else if (Math.Abs(covariance[i, k]) > scale * (1 + Rounding))
                    problems.Add($"'{names[i]}' and '{names[k]}' would have the correlation {NumberText.Plain(covariance[i, k] / scale)}: correlations lie between -1 and 1.");
            }
        }
    }

    private static double[] Factor(IReadOnlyList<string> names, double[,] covariance, List<string> problems)
    {
        var n = names.Count;
        var factor = new double[n * n];
        for (var k = 0; k < n; k++)
        {
            var pivot = Rest(k, k);
            if (pivot < -Rounding)
            {
                problems.Add(Impossible(k));
                return factor;
            }

            for (var i = k; i < n; i++)
            {
                var rest = i == k ? pivot : Rest(i, k);
                if (pivot <= Rounding && Math.Abs(rest) > Math.Sqrt(Rounding))
                {
                    problems.Add(Impossible(i));
                    return factor;
                }

                factor[(i * n) + k] = pivot <= Rounding ? 0 : rest / Math.Sqrt(pivot);
            }
        }

        for (var i = 0; i < n; i++)
        {
            for (var k = 0; k <= i; k++)
                factor[(i * n) + k] *= Deviation(i);
        }

        return factor;

        double Deviation(int i) => Math.Sqrt(covariance[i, i]);

        double Rest(int i, int k)
        {
            var scale = Deviation(i) * Deviation(k);
            var rest = i == k ? (scale == 0 ? 0 : 1) : scale == 0 ? 0 : covariance[i, k] / scale;
            for (var j = 0; j < k; j++)
                rest -= factor[(i * n) + j] * factor[(k * n) + j];
            return rest;
        }

        string Impossible(int i)
            => $"The covariance matrix is not positive semidefinite: '{names[i]}' can't be correlated like this with the quantities before it, which are correlated with each other.";
    }
}
