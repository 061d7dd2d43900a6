using System;
using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>
/// The elastic line of a <see cref="SupportedBeam"/> under its own weight and the forces given: where it lies, and what each support bears.
/// Two lines of equal beams under equal forces are equal.
/// </summary>
/// <remarks>
/// Supports are taken to hold the beam both ways, as a screw does. Where <see cref="Lifts"/> says so, a beam that only lies there would rise off that
/// support, and neither deflections nor reactions are those of the beam as laid.
/// </remarks>
public sealed record BeamLine
{
    // Round-off of a reaction that is zero: far below any force that a bench knows.
    private const double LiftsBelow = -1e-9;

    private readonly ElasticLine _line;

    internal BeamLine(SupportedBeam beam, FixedList<PointForce> forces, ElasticLine line)
    {
        Beam = beam;
        Forces = forces;
        _line = line;
        var reactions = line.Reactions();
        var floor = LiftsBelow * reactions.Max(Math.Abs);
        ReactionsN = FixedList<double>.Own(reactions);
        LiftsAtMm = FixedList<double>.Copy(beam.SupportsMm.Where((_, i) => reactions[i] < floor));
    }

    /// <summary>The beam, its supports and its weight.</summary>
    public SupportedBeam Beam { get; }

    /// <summary>The forces that press on it besides its weight.</summary>
    public IReadOnlyList<PointForce> Forces { get; }

    /// <summary>What each support pushes up with, N, in the order of <see cref="SupportedBeam.SupportsMm"/>; a negative one would have to pull.</summary>
    public IReadOnlyList<double> ReactionsN { get; }

    /// <summary>The supports that would have to pull the beam down, mm; empty where it rests on all of them.</summary>
    public IReadOnlyList<double> LiftsAtMm { get; }

    /// <summary>Whether the beam lifts off a support unless it is held down there.</summary>
    public bool Lifts => LiftsAtMm.Count > 0;

    /// <summary>
    /// Deflection at a station, um: EI v'''' = -w between forces, upwards positive, so sag is negative. At a support it is that support's height: 0 unless
    /// heights were given. Exact for small slopes; shear is left out.
    /// </summary>
    /// <param name="xMm">Station, mm, within the beam.</param>
    /// <returns>um.</returns>
    /// <exception cref="ArgumentException">The station is off the beam or not a finite number.</exception>
    /// <remarks>
    /// Clapeyron's theorem of three moments (Timoshenko, Strength of Materials, part I; from memory). Checked against the sag of a bar on two
    /// points at Airy, Bessel and six other spacings, handbook tables of continuous beams, and a finite-element model.
    /// </remarks>
    public double DeflectionUm(double xMm) => 0.0 - (SupportedBeam.UmPerMm * _line.At(Beam.OnBeam(xMm, "A station", nameof(xMm))));

    /// <summary>Deflections at stations, um: see <see cref="DeflectionUm"/>.</summary>
    /// <param name="stationsMm">mm, in any order, within the beam.</param>
    /// <returns>um, one for each station, in the same order.</returns>
    /// <exception cref="ArgumentException">A station is off the beam or not a finite number.</exception>
    public IReadOnlyList<double> DeflectionsUm(IReadOnlyList<double> stationsMm)
    {
        ArgumentNullException.ThrowIfNull(stationsMm);
        return FixedList<double>.Copy(stationsMm.Select(DeflectionUm));
    }
}
