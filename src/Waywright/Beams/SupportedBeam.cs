using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;

namespace Waywright;

/// <summary>
/// A straight prismatic beam on two or more rigid point supports anywhere within its length: a rail on two blocks, or screwed down at its holes.
/// The supports stop up and down motion only; the beam may turn over them (Euler-Bernoulli, small slopes, no shear).
/// </summary>
/// <remarks>Two supports fix exactly the two ways in which a rigid bar can move in the plane, so with two the line is counted from them.</remarks>
public sealed record SupportedBeam
{
    internal const double UmPerMm = 1000;
    private const double Mm2PerM2 = 1e6;
    private const double MmPerM = 1000;

    // A station worked out as i (L / n) may miss the end by a rounding.
    private const double EndTolerance = 1e-9;
    private const double ClosestSupports = 1e-6;

    private readonly FixedList<double> _supports;
    private readonly FixedList<double> _heights;

    /// <summary>Copies the supports and puts them in order of position.</summary>
    /// <param name="lengthMm">Length, mm, 1 to 1e5.</param>
    /// <param name="bendingStiffnessNm2">EI about the axis that the beam bends about, N m2, 1e-6 to 1e12.</param>
    /// <param name="weightNPerM">Weight of a metre, N/m, 0 to 1e5: 9.80665 times the mass in kg/m, or 0 where gravity does not bend it, as for a side face.</param>
    /// <param name="supportsMm">Positions of the supports, mm, at least two, at different places, within the beam; in any order.</param>
    /// <param name="supportHeightsUm">Height of each support above the straight line that deflections count from, um, -1e6 to 1e6; all 0 when not given.</param>
    /// <exception cref="ArgumentException">
    /// A value is out of its range or not a finite number, there are fewer than two supports, a support is off the beam, two supports are closer than a
    /// millionth of the length, or there are not as many heights as supports.
    /// </exception>
    public SupportedBeam(double lengthMm, double bendingStiffnessNm2, double weightNPerM, IReadOnlyList<double> supportsMm, IReadOnlyList<double>? supportHeightsUm = null)
    {
        ArgumentNullException.ThrowIfNull(supportsMm);
        LengthMm = Within(lengthMm, 1, 1e5, "The length", "mm", nameof(lengthMm));
        BendingStiffnessNm2 = Within(bendingStiffnessNm2, 1e-6, 1e12, "The bending stiffness", "N m2", nameof(bendingStiffnessNm2));
        WeightNPerM = Within(weightNPerM, 0, 1e5, "The weight", "N/m", nameof(weightNPerM));
        if (supportsMm.Count < 2)
            throw new ArgumentException(Plain($"A beam needs at least two supports, not {supportsMm.Count}."), nameof(supportsMm));
        if (supportHeightsUm is not null && supportHeightsUm.Count != supportsMm.Count)
            throw new ArgumentException(Plain($"{supportsMm.Count} supports need as many heights, not {supportHeightsUm.Count}."), nameof(supportHeightsUm));
        var supports = supportsMm.Select(x => OnBeam(x, "A support", nameof(supportsMm))).ToArray();
        var heights = supports.Select((_, i) => Within(supportHeightsUm?[i] ?? 0, -1e6, 1e6, "The height of a support", "um", nameof(supportHeightsUm))).ToArray();
        Array.Sort(supports, heights);
        for (var i = 1; i < supports.Length; i++)
        {
            if (supports[i] - supports[i - 1] < ClosestSupports * LengthMm)
                throw new ArgumentException(Plain($"Two supports stand at one place, {supports[i]} mm."), nameof(supportsMm));
        }

        _supports = FixedList<double>.Own(supports);
        _heights = FixedList<double>.Own(heights);
    }

    /// <summary>Length, mm; positions run from 0 to it.</summary>
    public double LengthMm { get; }

    /// <summary>EI, N m2.</summary>
    public double BendingStiffnessNm2 { get; }

    /// <summary>Weight of a metre, N/m.</summary>
    public double WeightNPerM { get; }

    /// <summary>Positions of the supports, mm, rising.</summary>
    public IReadOnlyList<double> SupportsMm => _supports;

    /// <summary>Height of each support, um, upwards positive.</summary>
    public IReadOnlyList<double> SupportHeightsUm => _heights;

    /// <summary>The elastic line under the beam's own weight and the forces given; none gives the sag.</summary>
    /// <param name="forces">Within the beam; several at one place add up.</param>
    /// <exception cref="ArgumentException">A force is off the beam, beyond 1e6 N, or not a finite number.</exception>
    /// <remarks>See <see cref="BeamLine.DeflectionUm"/> for formula and checks.</remarks>
    public BeamLine Under(params IReadOnlyList<PointForce> forces)
    {
        ArgumentNullException.ThrowIfNull(forces);
        var placed = FixedList<PointForce>.Copy(forces.Select(f => new PointForce(
            OnBeam(f.PositionMm, "A force", nameof(forces)),
            Within(f.DownwardN, -1e6, 1e6, "A force", "N", nameof(forces)))));
        var drops = FixedList<double>.Copy(_heights.Select(h => -h / UmPerMm));
        return new BeamLine(this, placed, Line(WeightNPerM / MmPerM, drops, placed));
    }

    /// <summary>
    /// Influence function G(x, xi), um/N: how far the beam yields at x, the way the force pushes, for each newton at xi. Weight and heights of supports
    /// don't enter. A dial that presses with F where it reads moves the beam by F G(x, x); G(x, xi) = G(xi, x) (Maxwell).
    /// </summary>
    /// <param name="xMm">Where the beam is looked at, mm, within the beam.</param>
    /// <param name="forceAtMm">Where the force presses, mm, within the beam.</param>
    /// <returns>um/N; zero at a support, never negative where x = xi.</returns>
    /// <exception cref="ArgumentException">A position is off the beam or not a finite number.</exception>
    /// <remarks>
    /// Linear, so it takes for granted that no support lifts: <see cref="Under"/> with weight and force tells. Published case: a beam on its ends
    /// yields L^3 / (48 EI) at mid-span.
    /// </remarks>
    public double InfluenceUmPerN(double xMm, double forceAtMm)
    {
        var unit = FixedList<PointForce>.Own([new PointForce(OnBeam(forceAtMm, "A force", nameof(forceAtMm)), 1)]);
        var level = FixedList<double>.Own(new double[_supports.Count]);
        return UmPerMm * Line(0, level, unit).At(OnBeam(xMm, "A station", nameof(xMm)));
    }

    /// <summary>The position, held to the beam's ends where it misses them by a rounding.</summary>
    internal double OnBeam(double xMm, string what, string parameter)
        => xMm >= -EndTolerance * LengthMm && xMm <= (1 + EndTolerance) * LengthMm
            ? Math.Clamp(xMm, 0, LengthMm)
            : throw new ArgumentException(Plain($"{what} at {xMm} mm is off the beam, which runs from 0 to {LengthMm} mm."), parameter);

    private ElasticLine Line(double loadNPerMm, FixedList<double> drops, FixedList<PointForce> forces)
        => new(LengthMm, BendingStiffnessNm2 * Mm2PerM2, loadNPerMm, _supports, drops, forces);

    private static double Within(double value, double least, double most, string what, string unit, string parameter)
        => value >= least && value <= most
            ? value
            : throw new ArgumentException(Plain($"{what} is {value} {unit}: it must be from {least} to {most} {unit}."), parameter);

    private static string Plain(FormattableString sentence) => sentence.ToString(CultureInfo.InvariantCulture);
}
