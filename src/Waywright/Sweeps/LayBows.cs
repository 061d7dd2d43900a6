using System;
using System.Globalization;
using System.Linq;
using MathNet.Numerics;
using MathNet.Numerics.LinearAlgebra;

namespace Waywright;

/// <summary>
/// Fits a parabola of its own to each lay, beside heights of stations and a line for each pass. What those explain is first taken off the parabolas too, by pooling them like
/// readings, so that what is left is a small regression of residuals (Frisch and Waugh).
/// </summary>
internal static class LayBows
{
    // Below this a parabola is no more than rounding of doubles, um2 of a parabola of 1 um.
    private const double Undetermined = 1e-9;

    // Rounding along a slope makes saw teeth, which hold more bow than scatter of their variance; twice it brought false alarms from 10 to 4 % where passes within a lay were equal.
    private const double SawTeeth = 2;

    // (1e-6 um)2: no reading is finer, so that readings that repeat exactly still give a finite F.
    private const double LeastVariance = 1e-12;

    public static LaysTest Test(PooledSweep pooled, StationMeans means)
    {
        var sweep = pooled.Sweep;
        var lays = FixedList<string>.Copy(sweep.Passes.Select(p => p.Lay).Distinct());
        if (sweep.Passes.Count < 2)
            return Untested(lays, "Nothing was repeated: sweep it again, also after lifting the rail and laying it anew.");
        if (lays.Count < 2)
            return Untested(lays, "Repeatability only: the rail was not lifted and laid again, so what laying does to its bow is not known.");
        var between = lays.Count - 1;
        var within = pooled.DegreesOfFreedom - between;
        if (within < 1)
            return Untested(lays, "Too few readings to tell the lays apart: sweep each lay once more.");
        var residuals = Vector<double>.Build.DenseOfEnumerable(means.Residuals(pooled));
        var parabolas = lays.Select(lay => Parabola(pooled, lay)).ToArray();
        var squares = parabolas.Sum(z => z * z);
        if (squares < Undetermined * sweep.ReadingCount)
            return Untested(lays, "Too few stations in common to tell the lays' bows apart.");
        // All parabolas together are a shape of the stations, so one of them follows from the others.
        var design = Matrix<double>.Build.DenseOfColumnVectors(parabolas[..between]);
        var products = design.TransposeThisAndMultiply(residuals);
        var fitted = design.TransposeThisAndMultiply(design).Svd().Solve(products);
        var explained = Math.Max(0, fitted * products);
        var variance = Math.Max(0, (residuals * residuals) - explained) / within;
        var scatter = Math.Max(LeastVariance, variance + Rounding(pooled, means, variance));
        var f = explained / between / scatter;
        var p = SpecialFunctions.BetaRegularized(within / 2.0, between / 2.0, within / (within + (between * f)));
        var extra = p < LaysTest.Level ? Math.Sqrt(Math.Max(0, (explained - (between * scatter)) / squares)) : 0;
        return new LaysTest(lays, Bows(pooled, lays, [.. fitted, 0]), f, between, within, p, Math.Sqrt(variance), extra, Verdict(lays.Count, f, between, within, p, extra))
        {
            Squares = squares > 0 ? (explained / squares / between, scatter / squares) : null,
        };
    }

    /// <summary>The bow between lays as it is left in the mean of the lays: as the whole batch shows it, or, of a single face, none where it was not shown.</summary>
    public static ErrorShape? Shape(PooledSweep pooled)
    {
        var (extra, degrees) = pooled.BatchLays is { } batch ? (batch.Um, batch.DegreesOfFreedom)
            : pooled.Lays is { IsSignificant: true } test ? (test.ExtraUm, test.DegreesBetween)
            : (0, 1);
        if (extra == 0)
            return null;
        var shares = pooled.Lays.Lays.Select(lay => ShareOf(pooled.Sweep, lay)).ToArray();
        var size = extra * Math.Sqrt(shares.Sum(s => s * s));
        var axis = new UnitAxis(pooled.Profile);
        return new ErrorShape(
            $"{pooled.Sweep.Name}: bow between lays",
            Array.ConvertAll(axis.Stations(pooled.Profile), t => size * (1 - (t * t))),
            degrees,
            IsRectangular: false,
            AveragesOut.Relaying,
            "lift the rail and lay it again, more often");
    }

    private static LaysTest Untested(FixedList<string> lays, string verdict) => new(lays, FixedList<double>.Empty, null, Math.Max(0, lays.Count - 1), 0, null, null, 0, verdict);

    // What stations and lines leave of t² in the passes of one lay and 0 in the others.
    private static Vector<double> Parabola(PooledSweep pooled, string lay)
    {
        var axis = new UnitAxis(pooled.Profile);
        var passes = pooled.Sweep.Passes.Select(p => p with { ReadingsUm = [.. p.PositionsMm.Select(x => p.Lay == lay ? axis.At(x) * axis.At(x) : 0)] });
        var alike = PassAlignment.Align(pooled.Sweep with { Passes = [.. passes], Setup = null });
        return Vector<double>.Build.DenseOfEnumerable(new StationMeans(alike).Residuals(alike));
    }

    // Readings that scatter less than their step come out alike within a lay and otherwise in the next: that is no bow.
    private static double Rounding(PooledSweep pooled, StationMeans means, double variance)
    {
        if (pooled.Sweep.Setup is not { } setup)
            return 0;
        var step = SweepCorrections.LeverFactor(setup) * setup.Indicator.ReadingStep;
        var alike = (double)means.Counts.Sum() / means.Lays.Sum();
        return SawTeeth * RoundingLeft.Variance(step, Math.Sqrt(variance)) * alike;
    }

    // A parabola t² with the factor b is a hollow of b; the lays' mean is the combined profile's.
    private static FixedList<double> Bows(PooledSweep pooled, FixedList<string> lays, double[] factors)
    {
        var mean = lays.Zip(factors, (lay, b) => b * ShareOf(pooled.Sweep, lay)).Sum();
        var bow = ShapeModes.Of(pooled.Profile, highestOrder: 2).Bow.AmplitudeUm.Value;
        return FixedList<double>.Copy(factors.Select(b => bow - (b - mean)));
    }

    private static double ShareOf(Sweep sweep, string lay) => (double)sweep.Passes.Where(p => p.Lay == lay).Sum(p => p.PositionsMm.Count) / sweep.ReadingCount;

    private static string Verdict(int lays, double f, int between, int within, double p, double extra)
    {
        var chance = p < 0.001 ? "below 0.001" : p.ToString("0.000", CultureInfo.InvariantCulture);
        var test = string.Create(CultureInfo.InvariantCulture, $"F = {f:0.00} with {between} and {within} degrees of freedom, chance {chance}");
        return p < LaysTest.Level
            ? string.Create(CultureInfo.InvariantCulture, $"The {lays} lays differ in bow by more than scatter explains, by {extra:0.0} um (standard deviation; {test}): more passes don't help, more lays do.")
            : $"The {lays.ToString(CultureInfo.InvariantCulture)} lays agree in bow within scatter ({test}).";
    }
}
