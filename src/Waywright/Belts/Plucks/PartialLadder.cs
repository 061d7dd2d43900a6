using System;
using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>
/// The first mode from the partials of a real string, which lie off the ladder k f_1 sqrt((1 + B k^2) / (1 + B)) by a few cents each, as the body or the ends move.
/// Least squares of (f_k / k)^2 = a + b (k^2 - 1) with the variance u_k^2 + s^2, where s, the scatter about the ladder, is what makes chi-squared equal its degrees of freedom (Mandel and Paule, Anal. Chem. 42, 1970, p. 1194, from memory).
/// b is held towards 0 by a standard deviation of 0.003: two partials alone can't tell stiffness.
/// </summary>
internal sealed record PartialLadder(double FirstHz, double Inharmonicity, double StandardUncertaintyHz, double ScatterCents, int DegreesOfFreedom, double ChiSquared, IReadOnlyList<int> Numbers)
{
    private const double StiffnessPrior = 3e-3;
    private const double LargestVariance = 1e-2;
    private const double FarCents = 15;
    private const double FarSigmas = 4;

    /// <summary>f_k for a first mode and an inharmonicity B.</summary>
    public static double Partial(int k, double firstHz, double inharmonicity) => k * firstHz * Math.Sqrt((1 + (inharmonicity * k * k)) / (1 + inharmonicity));

    /// <summary>The ladder of the partials but those that lie more than 15 cents and 4 standard uncertainties off the ladder of the others.</summary>
    public static PartialLadder Of(IReadOnlyList<FittedPartial> partials)
    {
        var kept = partials.ToList();
        while (true)
        {
            var whole = Fit(kept);
            if (kept.Count < 4)
                return whole;
            var (worst, by) = (-1, 1.0);
            for (var i = 0; i < kept.Count; i++)
            {
                var without = Fit([.. kept.Where((_, j) => j != i)]);
                var off = Math.Abs(PluckCents.Between(Partial(kept[i].Number, without.FirstHz, without.Inharmonicity), kept[i].FrequencyHz));
                var limit = Math.Max(FarCents, FarSigmas * Math.Sqrt(Math.Pow(PluckCents.Of(kept[i].UncertaintyHz, kept[i].FrequencyHz), 2) + Math.Pow(without.ScatterCents, 2)));
                if (off / limit > by)
                    (worst, by) = (i, off / limit);
            }

            if (worst < 0)
                return whole;
            kept.RemoveAt(worst);
        }
    }

    private static PartialLadder Fit(List<FittedPartial> partials)
    {
        double[] squares = [.. partials.Select(p => (double)p.Number * p.Number)];
        double[] y = [.. partials.Select(p => p.FrequencyHz * p.FrequencyHz / ((double)p.Number * p.Number))];
        var scale = PluckSpectrum.Median(y);
        double[] variances = [.. partials.Select((p, i) => Math.Pow(2 * p.UncertaintyHz / p.FrequencyHz * y[i] / scale, 2))];
        var plain = Solve(0);
        var (scatter, result) = (0.0, plain);
        if (plain.Freedom > 0 && plain.ChiSquared > plain.Freedom)
        {
            var (low, high) = (0.0, LargestVariance);
            for (var step = 0; step < 60; step++)
            {
                var middle = (low + high) / 2;
                var tried = Solve(middle);
                (low, high) = tried.ChiSquared > tried.Freedom ? (middle, high) : (low, middle);
            }

            (scatter, result) = (high, Solve(high));
        }

        var first = Math.Sqrt(result.A * scale);
        return new(first, result.B / (result.A - result.B), Math.Sqrt(result.Variance) / (2 * result.A) * first, PluckCents.Of(Math.Sqrt(scatter) / 2, 1), plain.Freedom, plain.ChiSquared, [.. partials.Select(p => p.Number)]);

        (double A, double B, double Variance, double ChiSquared, int Freedom) Solve(double added)
        {
            var (w, wx, wy, wxx, wxy) = (0.0, 0.0, 0.0, 1 / (StiffnessPrior * StiffnessPrior), 0.0);
            for (var i = 0; i < y.Length; i++)
            {
                var (weight, x) = (1 / (variances[i] + added + 1e-24), squares[i] - 1);
                w += weight;
                wx += weight * x;
                wy += weight * y[i] / scale;
                wxx += weight * x * x;
                wxy += weight * x * y[i] / scale;
            }

            var determinant = (w * wxx) - (wx * wx);
            var b = ((w * wxy) - (wx * wy)) / determinant;
            var bends = b >= 0;
            b = bends ? b : 0;
            var a = (wy - (b * wx)) / w;
            var chi = 0.0;
            for (var i = 0; i < y.Length; i++)
                chi += Math.Pow((y[i] / scale) - a - (b * (squares[i] - 1)), 2) / (variances[i] + added + 1e-24);
            return (a, b, bends ? wxx / determinant : 1 / w, chi, y.Length - (bends ? 2 : 1));
        }
    }
}

/// <summary>A partial's own frequency, from least squares of the sound.</summary>
internal readonly record struct FittedPartial(int Number, double FrequencyHz, double UncertaintyHz, double DecayPerSecond, double Amplitude);
