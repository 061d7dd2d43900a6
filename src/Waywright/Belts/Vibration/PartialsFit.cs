using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using UnitsNet;

namespace Waywright;

/// <summary>
/// Tension and bending stiffness together, from several partials of one pluck: pinned ends (f_n / n)2 = f_0^2 (1 + B n2) with f_0 = sqrt(T / mu) / (2 L), B = pi2 EI / (T L2), by weighted linear least
/// squares; with clamped ends the exact notes of the beam, by Gauss and Newton.
/// </summary>
/// <remarks>Relation: R. W. Young, Journal of the Acoustical Society of America 24 (1952); checked by Reference/belts/inharmonic_fit_check.csv. A twist note or a wrong number n shows as a bad fit.</remarks>
public sealed record PartialsFit
{
    private const double Coverage = 0.95;

    private PartialsFit(BeltSpan span, IReadOnlyList<(int N, Measured<Frequency> Frequency)> partials, Measured<Force> tension, Uncertain bending, IEnumerable<double> residualsHz, double? chiSquared, int degreesOfFreedom, bool isScatter)
    {
        Numbers = FixedList<int>.Copy(partials.Select(p => p.N));
        NotesHz = FixedList<double>.Copy(partials.Select(p => p.Frequency.Si.Value));
        (Span, Tension, BendingStiffnessNm2, ChiSquared, DegreesOfFreedom, IsFromScatter) = (span, tension, bending, chiSquared, degreesOfFreedom, isScatter);
        ResidualsHz = FixedList<double>.Copy(residualsHz);
    }

    /// <summary>The span, with its ends.</summary>
    public BeltSpan Span { get; }

    /// <summary>T.</summary>
    public Measured<Force> Tension { get; }

    /// <summary>EI in N m2; may come out negative by chance where it is small.</summary>
    public Uncertain BendingStiffnessNm2 { get; }

    /// <summary>Correlation of T and EI.</summary>
    public double Correlation => Tension.Si.CorrelationWith(BendingStiffnessNm2);

    /// <summary>The partials' numbers, in the order given.</summary>
    public IReadOnlyList<int> Numbers { get; }

    /// <summary>Their notes, Hz.</summary>
    public IReadOnlyList<double> NotesHz { get; }

    /// <summary>Each note less the fitted one, Hz, in the order given.</summary>
    public IReadOnlyList<double> ResidualsHz { get; }

    /// <summary>Sum of squared weighted residuals; null where the notes' own scatter gave the uncertainty, or two notes leave none.</summary>
    public double? ChiSquared { get; }

    /// <summary>Notes less 2.</summary>
    public int DegreesOfFreedom { get; }

    /// <summary>Whether the uncertainty was estimated from the residuals.</summary>
    public bool IsFromScatter { get; }

    /// <summary>Whether the notes are a ladder within their uncertainties (95 % quantile of chi-squared); null where that can't be told.</summary>
    public bool? IsConsistent => ChiSquared is { } value ? value <= MathNet.Numerics.Distributions.ChiSquared.InvCDF(DegreesOfFreedom, Coverage) : null;

    /// <summary>The result in words.</summary>
    public string Verdict => IsConsistent == false
        ? "Check the partials' numbers: they are no ladder within their uncertainties, so one is a twist of the strip, a neighbour's note or counted wrongly."
        : $"The span is at {Tension.ToShortString()}, with a bending stiffness of {Stiffness()} from {NumberText.Plain(ResidualsHz.Count)} partials together.";

    /// <summary>Fits at least two partials of a span whose length, density and ends are stated.</summary>
    /// <param name="span">Its bending stiffness, if stated, is not used.</param>
    /// <param name="partials">Number n, 1 or more, each once, and note. Uncertainties stated for all of them, or for none: then at least three are needed.</param>
    /// <exception cref="ArgumentException">Too few, a number twice or below 1, a note not above 0, uncertainties for some only, or notes that no tension explains.</exception>
    public static PartialsFit Of(BeltSpan span, IReadOnlyList<(int N, Measured<Frequency> Frequency)> partials)
    {
        ArgumentNullException.ThrowIfNull(span);
        ArgumentNullException.ThrowIfNull(partials);
        var stated = partials.Count(p => p.Frequency.Si.StandardUncertainty > 0);
        if (stated != 0 && stated != partials.Count)
            throw new ArgumentException("State the uncertainty of all notes, or of none.", nameof(partials));
        if (partials.Count < (stated == 0 ? 3 : 2) || partials.Any(p => p.N < 1 || p.Frequency.Si.Value <= 0) || partials.DistinctBy(p => p.N).Count() < partials.Count)
            throw new ArgumentException("At least two partials with their uncertainty, or three without, each number from 1 and once, each note above 0.", nameof(partials));
        var solver = new PartialsSolver(span, [.. partials.Select(p => p.N)], [.. partials.Select(p => p.Frequency.Si.StandardUncertainty)]);
        var fixedInputs = solver.Inputs();
        double[] now = [.. fixedInputs.Select(i => i.Value), .. partials.Select(p => p.Frequency.Si.Value)];
        var residuals = solver.ResidualsHz(now);
        var df = partials.Count - 2;
        // Without stated ones, the scatter of the notes in Hz is one unknown, estimated from the residuals.
        var scatter = stated == 0 ? Math.Sqrt(residuals.Sum(r => r * r) / df) : 0;
        Uncertain[] notes = [.. partials.Select((p, i) => stated > 0 ? p.Frequency.AsInput(Name(p.N)).Si : Uncertain.Input(new object(), Name(p.N), p.Frequency.Si.Value, scatter, df))];
        Uncertain[] inputs = [.. fixedInputs, .. notes];
        var tension = Uncertain.Of(v => solver.Solve(v).Tension, inputs);
        var bending = Uncertain.Of(v => solver.Solve(v).Bending, inputs);
        double? chiSquared = stated == 0 || df == 0 ? null : residuals.Zip(partials, (r, p) => Math.Pow(r / p.Frequency.Si.StandardUncertainty, 2)).Sum();
        return new(span, partials, Quantity.FromSi<Force>(tension, "T and EI fitted together to the partials"), bending, residuals, chiSquared, df, stated == 0);
    }

    private static string Name(int n) => string.Create(CultureInfo.InvariantCulture, $"partial {n}");

    private string Stiffness()
    {
        var nmm2 = 1e6 * BendingStiffnessNm2;
        return BendingStiffnessNm2.Value > 2 * BendingStiffnessNm2.StandardUncertainty ? $"{nmm2.ToShortString()} N mm2" : $"{nmm2.ToShortString()} N mm2, not told apart from 0,";
    }
}

/// <summary>The fit itself.</summary>
internal sealed class PartialsSolver(BeltSpan span, int[] numbers, double[] uncertaintiesHz)
{
    private const int MostSteps = 60;

    private readonly int _clamps = (span.First.IsClamped ? 1 : 0) + (span.Second.IsClamped ? 1 : 0);

    public Uncertain[] Inputs() => [span.Length.Si + (span.First.Offset?.Si ?? 0) + (span.Second.Offset?.Si ?? 0), span.Density.Si];

    /// <param name="v">Length with offsets, density, then the notes.</param>
    public (double Tension, double Bending) Solve(IReadOnlyList<double> v)
    {
        var (length, density) = (v[0], v[1]);
        var (w, wx, wxx, wy, wxy) = (0.0, 0.0, 0.0, 0.0, 0.0);
        for (var i = 0; i < numbers.Length; i++)
        {
            var (n, f) = (numbers[i], v[2 + i]);
            var (x, y) = ((double)n * n, f / n * (f / n));
            // u(y) = 2 f u(f) / n2; without stated ones all notes are as good in Hz.
            var weight = Math.Pow(n * n / (2 * f * (uncertaintiesHz[i] > 0 ? uncertaintiesHz[i] : 1)), 2);
            (w, wx, wxx, wy, wxy) = (w + weight, wx + (weight * x), wxx + (weight * x * x), wy + (weight * y), wxy + (weight * x * y));
        }

        var determinant = (w * wxx) - (wx * wx);
        var (square, slope) = (((wxx * wy) - (wx * wxy)) / determinant, ((w * wxy) - (wx * wy)) / determinant);
        if (square <= 0)
            throw new ArgumentException("No tension explains these partials: check their numbers.");
        var tension = 4 * density * length * length * square;
        var bending = 4 * density * Math.Pow(length, 4) * slope / (Math.PI * Math.PI);
        return _clamps == 0 ? (tension, bending) : Clamped(v, tension, bending);
    }

    public double[] ResidualsHz(IReadOnlyList<double> v)
    {
        var (tension, bending) = Solve(v);
        return [.. numbers.Select((n, i) => v[2 + i] - Hertz(n, tension, bending, v))];
    }

    private (double Tension, double Bending) Clamped(IReadOnlyList<double> v, double tension, double bending)
    {
        // In logarithms, from the pinned answer: clamped ends raise all notes, so there is less tension than that.
        var (logT, logB) = (Math.Log(tension * 0.9), Math.Log(Math.Max(bending, tension * v[0] * v[0] / 1e5)));
        for (var step = 0; step < MostSteps; step++)
        {
            var (aa, ab, bb, ar, br) = (0.0, 0.0, 0.0, 0.0, 0.0);
            for (var i = 0; i < numbers.Length; i++)
            {
                const double h = 1e-5;
                var u = uncertaintiesHz[i] > 0 ? uncertaintiesHz[i] : 1;
                var a = (At(i, logT + h, logB) - At(i, logT - h, logB)) / (2 * h * u);
                var b = (At(i, logT, logB + h) - At(i, logT, logB - h)) / (2 * h * u);
                var r = (v[2 + i] - At(i, logT, logB)) / u;
                (aa, ab, bb, ar, br) = (aa + (a * a), ab + (a * b), bb + (b * b), ar + (a * r), br + (b * r));
            }

            var determinant = (aa * bb) - (ab * ab);
            if (!(determinant > 1e-14 * aa * bb))
                throw new ArgumentException("These partials can't tell stiffness from tension between clamped ends: take higher ones.");
            var (stepT, stepB) = (((bb * ar) - (ab * br)) / determinant, ((aa * br) - (ab * ar)) / determinant);
            logT += Math.Clamp(stepT, -1, 1);
            logB += Math.Clamp(stepB, -2, 2);
            if (Math.Abs(stepT) < 1e-13 && Math.Abs(stepB) < 1e-10)
                break;
        }

        return (Math.Exp(logT), Math.Exp(logB));

        double At(int i, double t, double b) => Hertz(numbers[i], Math.Exp(t), Math.Exp(b), v);
    }

    private double Hertz(int n, double tension, double bending, IReadOnlyList<double> v)
        => _clamps > 0
            ? TensionedBeam.FrequencyHz(n, tension, bending, v[1], v[0], _clamps)
            : n / (2 * v[0]) * Math.Sqrt(Math.Max(0, (tension + (n * n * Math.PI * Math.PI * bending / (v[0] * v[0]))) / v[1]));
}
