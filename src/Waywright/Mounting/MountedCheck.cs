using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;

namespace Waywright;

/// <summary>What a sweep that departs from the prediction looks most like.</summary>
public enum MountedDeparture
{
    /// <summary>Nothing: the prediction holds.</summary>
    None,

    /// <summary>A screw that doesn't pull, by as much as the rail would rise without it.</summary>
    LooseScrew,

    /// <summary>Something under the rail at one place.</summary>
    Chip,

    /// <summary>A base that lies lower at one place than was taken for it.</summary>
    LowBase,

    /// <summary>A base that is bent along its whole length otherwise than was taken for it, or another temperature.</summary>
    BentBase,

    /// <summary>None of these alone.</summary>
    Unexplained,
}

/// <summary>
/// Whether a mounted top is what was predicted: d = swept - predicted less the straight line that a new set-up is free to have, by generalised least squares with the covariance V of both.
/// It holds while neither d' V^-1 d (chi-squared, n - 2 degrees of freedom) nor the largest |d_i| / u(d_i) (Student's t over all n stations) is rarer than 5 in 100, both looked at together.
/// </summary>
/// <remarks>
/// V: scatter and shapes of the sweep; those of the free rail and of the base carried through the spline of the screws and contacts found. Shapes of one name are one input, so a guide
/// that was used before and after cancels as far as it does. Degrees of freedom: the fewest of the sweeps', on the safe side. A departure is fitted by each screw
/// taken out in turn, by one raised or lowered place (at a screw or half-way between two, spline through the others), and by a bow. What fits best is named, not proven.
/// Checked by simulation, by chi-squared and normal tables on a case worked by hand, and by shapes with a known fault.
/// </remarks>
public sealed record MountedCheck
{
    /// <summary>Share of sound mountings that are called at odds with their prediction: 0.05, common practice.</summary>
    public const double DoubtBelow = 0.05;

    private readonly FixedList<double> _uncertainties;
    private readonly FixedList<double> _departing;

    private MountedCheck(MountedShape predicted, Profile swept, MountedCheckErrors errors)
    {
        (Predicted, Swept) = (predicted, swept);
        var fit = new MountedCheckFit(swept.PositionsMm, [.. swept.PositionsMm.Zip(swept.HeightsUm, (x, z) => z - predicted.HeightUm(x))], errors.Covariance());
        Difference = new Profile(swept.PositionsMm, fit.Left, $"{swept.Name} less prediction");
        AsPredicted = new Profile(swept.PositionsMm, [.. swept.HeightsUm.Zip(fit.Left, (z, d) => z - d)], predicted.Title);
        _uncertainties = FixedList<double>.Copy(fit.Uncertainties);
        var df = errors.DegreesOfFreedom;
        StationLimit = -StudentQuantile.Of(DoubtBelow / 4 / swept.Count, df);
        ChiSquared = fit.ChiSquared;
        var ratios = fit.Left.Zip(fit.Uncertainties, (d, u) => Math.Abs(d) / u).ToArray();
        var worst = Array.IndexOf(ratios, ratios.Max());
        (LargestAtMm, LargestUm) = (swept.PositionsMm[worst], fit.Left[worst]);
        Chance = Math.Min(1, 2 * Math.Min(fit.Chance(df), Math.Min(1, 2 * swept.Count * StudentQuantile.Probability(-ratios[worst], df))));
        _departing = FixedList<double>.Copy(swept.PositionsMm.Where((_, i) => ratios[i] > StationLimit));
        SweptUm = StraightnessFigures.Of(swept).MinimumZone.Line.STRtUm;
        var cause = Holds ? new MountedCause(MountedDeparture.None, 0, null, Uncertain.Exact(0), true) : MountedCheckCauses.Best(predicted, swept, fit, df);
        (Departure, DepartureAtMm, DepartureHole, DepartureUm, IsExplained) = (cause.Kind, cause.AtMm, cause.Hole, cause.SizeUm, cause.IsExplained);
    }

    /// <summary>The prediction.</summary>
    public MountedShape Predicted { get; }

    /// <summary>The top as it was swept mounted, mm from the dot, um.</summary>
    public Profile Swept { get; }

    /// <summary>The prediction at the stations of the sweep, laid on it, um.</summary>
    public Profile AsPredicted { get; }

    /// <summary>Swept less predicted at the stations of the sweep, tilt and height taken off, um.</summary>
    public Profile Difference { get; }

    /// <summary>Standard uncertainty of <see cref="Difference"/> at each station, um.</summary>
    public IReadOnlyList<double> UncertaintyUm => _uncertainties;

    /// <summary>So many standard uncertainties no station of a sound mounting differs by, all stations together, in 97.5 of 100.</summary>
    public double StationLimit { get; }

    /// <summary>d' V^-1 d.</summary>
    public double ChiSquared { get; }

    /// <summary>Chance that a mounting as predicted differs by as much, by either figure.</summary>
    public double Chance { get; }

    /// <summary>Whether the prediction holds: <see cref="Chance"/> is <see cref="DoubtBelow"/> or more.</summary>
    public bool Holds => Chance >= DoubtBelow;

    /// <summary>Stations that differ by more than <see cref="StationLimit"/>, mm.</summary>
    public IReadOnlyList<double> DepartingMm => _departing;

    /// <summary>Where it differs most for its uncertainty, mm.</summary>
    public double LargestAtMm { get; }

    /// <summary>By how much there, um; above 0 the rail stands higher than predicted.</summary>
    public double LargestUm { get; }

    /// <summary>STRt of the mounted top as swept, minimum zone, um.</summary>
    public double SweptUm { get; }

    /// <summary>What the departure looks most like.</summary>
    public MountedDeparture Departure { get; }

    /// <summary>Where, mm from the dot; the middle of the rail for a bow.</summary>
    public double DepartureAtMm { get; }

    /// <summary>The hole there; null where it isn't at a screw.</summary>
    public int? DepartureHole { get; }

    /// <summary>By how much the rail is raised there, um: over the neighbouring screws and contacts, or in the middle of a bow.</summary>
    public Uncertain DepartureUm { get; }

    /// <summary>Whether that one cause leaves no more than chance explains.</summary>
    public bool IsExplained { get; }

    /// <summary>Compares a sweep after mounting with its prediction.</summary>
    /// <param name="predicted">The prediction.</param>
    /// <param name="swept">The mounted top, mm from the dot, at five places of the rail or more; same sign as the free sweep.</param>
    /// <param name="sweptErrors">What it is uncertain by, above 0 at each station.</param>
    /// <param name="freeErrors">What the free sweep behind the prediction is uncertain by; none takes the prediction as exact.</param>
    /// <param name="baseErrors">What the base's sweep is uncertain by; only where the prediction has a base.</param>
    /// <exception cref="ArgumentException">Stations are off the rail, too few or filtered, errors don't fit their profile or say nothing at a station; all that is wrong is listed.</exception>
    public static MountedCheck Of(MountedShape predicted, Profile swept, ProfileErrors sweptErrors, ProfileErrors? freeErrors = null, ProfileErrors? baseErrors = null)
    {
        ArgumentNullException.ThrowIfNull(predicted);
        ArgumentNullException.ThrowIfNull(swept);
        ArgumentNullException.ThrowIfNull(sweptErrors);
        var length = predicted.Screws.LengthMm;
        string?[] problems =
        [
            swept.PositionsMm[0] < -1e-9 || swept.PositionsMm[^1] > length + 1e-9 ? Plain($"The sweep has stations from {swept.PositionsMm[0]} to {swept.PositionsMm[^1]} mm: they must lie on the rail, from 0 to {length} mm.") : null,
            swept.PositionsMm.Distinct().Count() < 5 ? Plain($"The sweep has {swept.PositionsMm.Distinct().Count()} places: at least 5 are needed.") : null,
            swept.IsFiltered ? "The sweep was filtered: a filter hides what a chip or a loose screw does." : null,
            Unfit(swept, sweptErrors, "sweep"),
            sweptErrors.StationUm.Any(u => u == 0) ? "The sweep's errors say 0 um at a station: no reading is exact." : null,
            freeErrors is null ? null : Unfit(predicted.Free, freeErrors, "free sweep"),
            baseErrors is null ? null : predicted.Base is { } under ? Unfit(under, baseErrors, "base's sweep") : "Errors of a base are given, but the prediction was made without one.",
        ];
        return problems.Any(p => p is not null)
            ? throw new ArgumentException(string.Join(' ', problems.OfType<string>()))
            : new MountedCheck(predicted, swept, new MountedCheckErrors(predicted, swept, sweptErrors, freeErrors, baseErrors));
    }

    private static string? Unfit(Profile profile, ProfileErrors errors, string what)
        => errors.StationUm.Count == profile.Count ? null : Plain($"Errors of {errors.StationUm.Count} stations don't fit the {what} of {profile.Count}.");

    private static string Plain(FormattableString sentence) => sentence.ToString(CultureInfo.InvariantCulture);
}
