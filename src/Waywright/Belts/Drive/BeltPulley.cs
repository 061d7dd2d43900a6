using System;

namespace Waywright;

/// <summary>A pulley on a belt's way: toothed, or smooth and running on either side of the belt. Lengths in mm.</summary>
/// <remarks>Pitch diameter d = z p / pi; outside diameter d - 2 PLD, PLD the distance of the cord's line above the tooth tips of the pulley. Checked by a maker's table of 30 pulleys of 3 mm pitch.</remarks>
public sealed record BeltPulley
{
    private BeltPulley(int? teeth, double? pitchMm, double cordRadiusMm)
        => (Teeth, PitchMm, CordRadiusMm) = (teeth, pitchMm, cordRadiusMm);

    /// <summary>z; null for a smooth one.</summary>
    public int? Teeth { get; }

    /// <summary>p; null for a smooth one.</summary>
    public double? PitchMm { get; }

    /// <summary>Radius at which the cord runs around it.</summary>
    public double CordRadiusMm { get; }

    /// <summary>Pitch diameter, twice the cord's radius.</summary>
    public double PitchDiameterMm => 2 * CordRadiusMm;

    /// <summary>What a turn moves: z p, or the circumference at the cord.</summary>
    public double TravelPerTurnMm => Teeth is { } z && PitchMm is { } p ? z * p : 2 * Math.PI * CordRadiusMm;

    /// <summary>Place of its axis.</summary>
    public double XMm { get; private init; }

    /// <summary>Place of its axis.</summary>
    public double YMm { get; private init; }

    /// <summary>Whether it touches the loop from outside, turning the other way.</summary>
    public bool IsOutside { get; private init; }

    /// <summary>A toothed pulley.</summary>
    /// <param name="teeth">6 or more.</param>
    /// <param name="pitchMm">Above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">Fewer teeth, or a pitch not above 0.</exception>
    public static BeltPulley Toothed(int teeth, double pitchMm)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(teeth, 6);
        Above(pitchMm, nameof(pitchMm));
        return new(teeth, pitchMm, teeth * pitchMm / (2 * Math.PI));
    }

    /// <summary>A smooth pulley or bearing.</summary>
    /// <param name="diameterMm">Above 0.</param>
    /// <param name="cordDistanceMm">From its surface to the cord's line: belt back to cord where it runs on the back, tooth tip to cord where on the teeth; 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">One of them is out of range.</exception>
    public static BeltPulley Smooth(double diameterMm, double cordDistanceMm)
    {
        Above(diameterMm, nameof(diameterMm));
        if (!(cordDistanceMm >= 0) || !double.IsFinite(cordDistanceMm))
            throw new ArgumentOutOfRangeException(nameof(cordDistanceMm), cordDistanceMm, "A distance of 0 or more is needed.");
        return new(null, null, (diameterMm / 2) + cordDistanceMm);
    }

    /// <summary>The same at a place, within the loop or touching it from outside.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A place that is not finite.</exception>
    public BeltPulley At(double xMm, double yMm, bool isOutside = false)
    {
        if (!double.IsFinite(xMm) || !double.IsFinite(yMm))
            throw new ArgumentOutOfRangeException(nameof(xMm), "A place is finite.");
        return this with { XMm = xMm, YMm = yMm, IsOutside = isOutside };
    }

    /// <summary>Outside diameter over the tips of a toothed pulley, or of a smooth one: pitch diameter less twice the cord's distance.</summary>
    /// <param name="pitchLineDistanceMm">PLD: 0.381 for 3 mm pitch, 0.254 for 2 mm and MXL (from memory), 0.571 for 5 mm.</param>
    public double OutsideDiameterMm(double pitchLineDistanceMm) => PitchDiameterMm - (2 * pitchLineDistanceMm);

    /// <summary>Turns of this pulley for one of another on the same belt.</summary>
    public double RatioTo(BeltPulley other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return other.TravelPerTurnMm / TravelPerTurnMm;
    }

    private static void Above(double value, string name)
    {
        if (!(value > 0) || !double.IsFinite(value))
            throw new ArgumentOutOfRangeException(name, value, "A finite number above 0 is needed.");
    }
}
