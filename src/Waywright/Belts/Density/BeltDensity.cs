using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using UnitsNet;

namespace Waywright;

/// <summary>Mass per length of a belt, how it was found, and what would make it better.</summary>
public sealed record BeltDensity
{
    /// <summary>Standard gravity (3rd CGPM, 1901); places on Earth differ by up to 0.3 %, so +/- 0.03 m/s2 is taken.</summary>
    private const double Gravity = 9.80665;
    private const double GravityLimit = 0.03;
    private const double Coverage = 0.95;

    private BeltDensity(Measured<LinearDensity> density, string status, string next)
        => (Density, Status, Next) = (density, status, next);

    /// <summary>The density.</summary>
    public Measured<LinearDensity> Density { get; }

    /// <summary>Bending stiffness in N m2, where hanging two masses or more gave it; else null.</summary>
    public Uncertain? BendingStiffnessNm2 { get; private init; }

    /// <summary><c>weighed</c>, <c>hung</c> or <c>handbook</c>, with what it rests on.</summary>
    public string Status { get; }

    /// <summary>What to do for a better one.</summary>
    public string Next { get; }

    /// <summary>Sum of squared weighted residuals of several pieces or hangings; null where there is nothing to compare.</summary>
    public double? ChiSquared { get; private init; }

    /// <summary>Whether several pieces or hangings agree within their uncertainties (95 % quantile of chi-squared); null where there is nothing to compare.</summary>
    public bool? IsConsistent { get; private init; }

    /// <summary>The result in words.</summary>
    public string Verdict => $"{(IsConsistent == false ? "Measure again: the readings differ by more than their uncertainties, so one is a slip or the pieces are not one belt. " : "")}The belt weighs {Density.ToShortString()}, {Status}. {Next}";

    /// <summary>Weighed pieces of one belt: mu by weighted least squares of m = mu L through the origin; m is the difference of two readings, so u(m) = q sqrt(2 / 12) for a scale division q.</summary>
    /// <param name="pieces">What each piece added to the reading, and its length, both above 0; a mass without an uncertainty gets the scale's.</param>
    /// <param name="division">The scale's division, q.</param>
    /// <param name="known">A weight that lies on the pan all the while, because a scale near zero hides small loads; null for an empty pan.</param>
    /// <param name="knownReads">What the scale reads for it alone: masses are multiplied by known / reading.</param>
    /// <exception cref="ArgumentException">No piece, a mass, length or division not above 0, or a reading without the weight.</exception>
    public static BeltDensity Weigh(IReadOnlyList<(Measured<Mass> Mass, Measured<Length> Length)> pieces, Measured<Mass> division, Measured<Mass>? known = null, Measured<Mass>? knownReads = null)
    {
        ArgumentNullException.ThrowIfNull(pieces);
        ArgumentNullException.ThrowIfNull(division);
        if (pieces.Count == 0 || pieces.Any(p => p.Mass.Si.Value <= 0 || p.Length.Si.Value <= 0) || division.Si.Value <= 0)
            throw new ArgumentException("Each piece needs a mass and a length above 0, and the scale a division above 0.", nameof(pieces));
        if (knownReads is not null && (known is null || known.Si.Value <= 0 || knownReads.Si.Value <= 0))
            throw new ArgumentException("The reading of a known weight needs the weight, both above 0.", nameof(knownReads));
        var step = division.Si.Value;
        Uncertain scale = knownReads is null ? 1 : known!.AsInput("known weight").Si / Uncertain.Input(new object(), "reading of the known weight", knownReads.Si.Value, Math.Max(knownReads.Si.StandardUncertainty, step / Math.Sqrt(12)), double.PositiveInfinity);
        Uncertain[] masses = [.. pieces.Select((p, i) => scale * (p.Mass.Si.StandardUncertainty > 0 ? p.Mass.Si : Uncertain.Input(new object(), Numbered("scale reading", i), p.Mass.Si.Value, step * Math.Sqrt(2 / 12.0), double.PositiveInfinity)))];
        Uncertain[] lengths = [.. pieces.Select((p, i) => p.Length.AsInput(Numbered("length of the piece", i)).Si)];
        var first = masses[0].Value / lengths[0].Value;
        double[] variances = [.. masses.Zip(lengths, (m, l) => Square(m.StandardUncertainty) + Square(first * l.StandardUncertainty))];
        var slope = Slope([.. masses.Select(m => m.Value)], [.. lengths.Select(l => l.Value)], variances);
        var mu = Uncertain.Of(v => Slope([.. v.Take(masses.Length)], [.. v.Skip(masses.Length)], variances), [.. masses, .. lengths]);
        double? chiSquared = pieces.Count < 2 ? null : masses.Zip(lengths, (m, l) => Square(m.Value - (slope * l.Value))).Zip(variances, (r, v) => r / v).Sum();
        var pan = known is null ? "on an empty pan" : knownReads is null ? "on top of a weight" : "on top of a known weight, whose reading corrects the scale";
        var doubled = lengths.Sum(l => l.Value) * 2;
        var next = mu.StandardUncertainty / mu.Value < 0.005
            ? "Good to half a per cent: the span and the note matter more."
            : $"{(known is null ? "Lay about 100 g on the pan first, since scales hide small loads near zero. " : "")}Weigh {NumberText.Significant(doubled, 2)} m in one go for half the uncertainty{(mu.StandardUncertainty / mu.Value > 0.01 ? $", {NumberText.Significant(MetresToWeigh(0.01, mu.Value, step), 2)} m for 1 %" : "")}.";
        var count = pieces.Count == 1 ? "one piece" : string.Create(CultureInfo.InvariantCulture, $"{pieces.Count} pieces");
        var status = string.Create(CultureInfo.InvariantCulture, $"weighed: {count}, {NumberText.Significant(doubled / 2, 3)} m, {pan}, read to {NumberText.Plain(step * 1000)} g");
        return new(Quantity.FromSi<LinearDensity>(mu, status), status, next) { ChiSquared = chiSquared, IsConsistent = IsWithin(chiSquared, pieces.Count - 1) };
    }

    /// <summary>How many metres to weigh for a wanted relative standard uncertainty: q sqrt(2 / 12) / (mu u).</summary>
    /// <param name="relativeUncertainty">Such as 0.01.</param>
    /// <param name="densityKgPerM">About what the belt weighs.</param>
    /// <param name="divisionKg">The scale's division q.</param>
    /// <exception cref="ArgumentOutOfRangeException">One of them is not above 0.</exception>
    public static double MetresToWeigh(double relativeUncertainty, double densityKgPerM, double divisionKg)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(relativeUncertainty);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(densityKgPerM);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(divisionKg);
        return divisionKg * Math.Sqrt(2 / 12.0) / (densityKgPerM * relativeUncertainty);
    }

    /// <summary>
    /// Known masses hung on the belt, its clear span plucked. One: mu = m g / (4 L2 f2), an ideal string. Two or more at different lengths or masses: mu and EI of a tensioned beam, by least squares of the
    /// notes' logarithms. Count what hangs below the span, and half of the span itself, to the mass.
    /// </summary>
    /// <param name="hangings">Mass, clear length and lowest note of each.</param>
    /// <param name="clampedEnds">How many ends of the span are clamped, 0 to 2: used where EI is sought.</param>
    /// <exception cref="ArgumentException">No hanging, a number not above 0, or two or more that can't tell stiffness from mass.</exception>
    public static BeltDensity Hang(IReadOnlyList<(Measured<Mass> Mass, Measured<Length> Length, Measured<Frequency> Frequency)> hangings, int clampedEnds = 2)
    {
        ArgumentNullException.ThrowIfNull(hangings);
        if (hangings.Count == 0 || hangings.Any(h => h.Mass.Si.Value <= 0 || h.Length.Si.Value <= 0 || h.Frequency.Si.Value <= 0))
            throw new ArgumentException("Each hanging needs a mass, a length and a note above 0.", nameof(hangings));
        ArgumentOutOfRangeException.ThrowIfGreaterThan((uint)clampedEnds, 2u, nameof(clampedEnds));
        var gravity = Uncertain.Input("local gravity", Gravity, GravityLimit / Math.Sqrt(3));
        if (hangings.Count == 1)
        {
            var (m, l, f) = (hangings[0].Mass.AsInput("hung mass").Si, hangings[0].Length.AsInput("hung span").Si, hangings[0].Frequency.AsInput("hung note").Si);
            var status = "hung: one mass, ideal string, so a stiff belt reads light";
            return new(Quantity.FromSi<LinearDensity>(m * gravity / (4 * (l * f).Pow(2)), status), status, "Hang a second mass on another length: both together give the stiffness too.");
        }

        Uncertain[] inputs =
        [
            gravity, .. hangings.Select((h, i) => h.Mass.AsInput(Numbered("hung mass", i)).Si), .. hangings.Select((h, i) => h.Length.AsInput(Numbered("hung span", i)).Si),
            .. hangings.Select((h, i) => h.Frequency.AsInput(Numbered("hung note", i)).Si),
        ];
        var fit = new HungBelt(hangings.Count, clampedEnds);
        var values = inputs.Select(i => i.Value).ToArray();
        var (muNow, _) = fit.Solve(values);
        var mu = Uncertain.Of(v => fit.Solve(v).Density, inputs);
        var bending = Uncertain.Of(v => fit.Solve(v).Bending, inputs);
        double? chiSquared = hangings.Count < 3 || inputs.Skip(1).All(i => i.StandardUncertainty == 0) ? null : fit.ChiSquared(inputs, muNow, bending.Value);
        var ends = clampedEnds switch { 0 => "pinned", 1 => "pinned and clamped", _ => "clamped" };
        var told = string.Create(CultureInfo.InvariantCulture, $"hung: {hangings.Count} masses, tensioned beam, ends {ends}");
        var settled = bending.Value > 2 * bending.StandardUncertainty;
        var better = settled ? "The stiffness is from the same fit: state it with the span." : "The stiffness is not told apart from 0: use a shorter span or a lighter mass for one of them.";
        return new(Quantity.FromSi<LinearDensity>(mu, told), told, better) { BendingStiffnessNm2 = bending, ChiSquared = chiSquared, IsConsistent = IsWithin(chiSquared, hangings.Count - 2) };
    }

    /// <summary>A printed value, as an editable start: +/- half of its last printed digit, and at least +/- 10 % for a belt whose maker and type are not the printed one's (common practice, no source).</summary>
    /// <param name="printed">As it is printed, such as <c>0.007 kg/m</c>: its last digit counts.</param>
    /// <param name="source">Where it is printed, or that it is from memory.</param>
    /// <param name="isThisBelt">Whether it is printed for this very belt.</param>
    /// <exception cref="InputException">No linear density above 0, or one with an uncertainty.</exception>
    public static BeltDensity Handbook(string printed, string source, bool isThisBelt)
    {
        ArgumentNullException.ThrowIfNull(printed);
        ArgumentException.ThrowIfNullOrWhiteSpace(source);
        var read = Quantity.ReadPositive<LinearDensity>(printed, "printed density");
        if (read.Si.StandardUncertainty > 0)
            throw new InputException(new InputProblem("printed density", null, null, ProblemList.Shown(printed), "the value as it is printed, without an uncertainty: its last digit gives it"));
        var digits = printed.TakeWhile(c => char.IsAsciiDigit(c) || c is '.' or '+' or ' ').Count(char.IsAsciiDigit) is var all && printed.Contains('.', StringComparison.Ordinal)
            ? printed[(printed.IndexOf('.', StringComparison.Ordinal) + 1)..].TakeWhile(char.IsAsciiDigit).Count()
            : all * 0;
        var half = read.Unit.ToSi(0.5 * Math.Pow(10, -digits));
        var limit = isThisBelt ? half : Math.Max(half, 0.1 * read.Si.Value);
        var status = $"handbook, not measured: {source}; +/- {NumberText.Significant(100 * limit / read.Si.Value, 2)} % from {(limit == half ? "half of its last printed digit" : "belts of other makers")}";
        var mu = Uncertain.Input(new object(), "density from the handbook", read.Si.Value, limit / Math.Sqrt(3), double.PositiveInfinity);
        return new(new Measured<LinearDensity>(mu, read.Unit, status), status, $"Weigh a piece before you trust a tension: {NumberText.Significant(MetresToWeigh(0.01, read.Si.Value, 0.001), 2)} m on a scale read to 1 g gives 1 %.");
    }

    private static double Slope(double[] masses, double[] lengths, double[] variances)
    {
        var (xy, xx) = (0.0, 0.0);
        for (var i = 0; i < masses.Length; i++)
        {
            // Without any uncertainty all pieces count alike.
            var weight = variances[i] > 0 ? 1 / variances[i] : 1;
            (xy, xx) = (xy + (weight * lengths[i] * masses[i]), xx + (weight * lengths[i] * lengths[i]));
        }

        return xy / xx;
    }

    private static bool? IsWithin(double? chiSquared, int degreesOfFreedom)
        => chiSquared is { } value ? value <= MathNet.Numerics.Distributions.ChiSquared.InvCDF(degreesOfFreedom, Coverage) : null;

    private static string Numbered(string what, int index) => string.Create(CultureInfo.InvariantCulture, $"{what} {index + 1}");

    private static double Square(double x) => x * x;
}
