using System;
using System.Collections.Generic;
using UnitsNet;

namespace Waywright;

/// <summary>
/// What a linear drive asks of its belt: effective force F = m a + friction + m g sin(incline); the carriage's tight side gains F L2 / (L1 + L2) and its slack side loses F L1 / (L1 + L2),
/// L1 the tight and L2 the slack side, so a pretension T0 of at least F covers every place of the travel.
/// </summary>
/// <remarks>Pretension at least the peak effective force: Forbo Siegling, Calculation methods 202. Sides as two springs on one carriage: statics. Shaft load of a pulley with half a turn of wrap: both sides, 2 T0 at rest.</remarks>
public sealed record BeltDrive
{
    private const double Gravity = 9.80665;

    private BeltDrive(Measured<Force> effective, Measured<Force> pretension, Measured<Length> beltLength, Measured<Length> shortestSide, double? allowableN, double? shaftLimitN)
    {
        var longestShare = 1 - (shortestSide.Si / beltLength.Si);
        (BeltLength, ShortestSide) = (beltLength, shortestSide);
        (EffectiveForce, Pretension, AllowableN, ShaftLimitN) = (effective, pretension, allowableN, shaftLimitN);
        var most = effective.Si * longestShare;
        SlackMinimum = Quantity.FromSi<Force>(pretension.Si - most, "T0 - F x the longest side's share");
        TightMaximum = Quantity.FromSi<Force>(pretension.Si + most, "T0 + F x the longest side's share");
        ShaftLoad = Quantity.FromSi<Force>(2 * pretension.Si, "2 T0, half a turn of wrap, at rest");
        PeakShaftLoad = Quantity.FromSi<Force>((2 * pretension.Si) + (effective.Si * ((2 * longestShare) - 1)), "both sides with the carriage pulling at the end of its travel");
    }

    /// <summary>F, the peak force on the carriage.</summary>
    public Measured<Force> EffectiveForce { get; }

    /// <summary>T0, what the belt is set to at rest.</summary>
    public Measured<Force> Pretension { get; }

    /// <summary>L1 + L2.</summary>
    public Measured<Length> BeltLength { get; }

    /// <summary>The shorter side where it is shortest.</summary>
    public Measured<Length> ShortestSide { get; }

    /// <summary>Lowest tension over the travel; below 0 the slack side hangs and teeth may jump.</summary>
    public Measured<Force> SlackMinimum { get; }

    /// <summary>Highest tension over the travel.</summary>
    public Measured<Force> TightMaximum { get; }

    /// <summary>Load on a shaft with half a turn of wrap, at rest.</summary>
    public Measured<Force> ShaftLoad { get; }

    /// <summary>The same at the peak.</summary>
    public Measured<Force> PeakShaftLoad { get; }

    /// <summary>Allowable tension of the belt; null if not known.</summary>
    public double? AllowableN { get; }

    /// <summary>What motor shaft and brackets bear; null if not known.</summary>
    public double? ShaftLimitN { get; }

    /// <summary>What speaks against this pretension; empty if nothing does.</summary>
    public IReadOnlyList<string> Objections
    {
        get
        {
            var list = new List<string>();
            if (SlackMinimum.Si.Expanded().Low <= 0)
                list.Add($"the slack side may hang: lowest {SlackMinimum.ToShortString()}");
            if (AllowableN is { } allowed && TightMaximum.Si.Expanded().High > allowed)
                list.Add($"the tight side reaches {TightMaximum.ToShortString()}, more than the belt is allowed ({NumberText.Significant(allowed, 2)} N)");
            if (ShaftLimitN is { } limit && PeakShaftLoad.Si.Expanded().High > limit)
                list.Add($"the shafts carry {PeakShaftLoad.ToShortString()}, more than the {NumberText.Significant(limit, 2)} N they bear");
            return FixedList<string>.Copy(list);
        }
    }

    /// <summary>The result in words.</summary>
    public string Verdict
    {
        get
        {
            var asked = (AllowableN, ShaftLimitN) switch
            {
                (null, null) => " Ask what the belt is allowed and what motor shaft and brackets bear: neither was given.",
                (null, _) => " Ask what the belt is allowed: it was not given.",
                (_, null) => " Ask what motor shaft and brackets bear: it was not given.",
                _ => "",
            };
            var sides = $"the carriage pulls with {EffectiveForce.ToShortString()} at most, the belt goes from {SlackMinimum.ToShortString()} to {TightMaximum.ToShortString()} over the travel";
            return Objections.Count == 0
                ? $"Set the belt to {Pretension.ToShortString()}: {sides}.{asked} {BeltTension.Caution}"
                : $"Don't set the belt to {Pretension.ToShortString()}: {string.Join("; ", Objections)}. In all, {sides}.{asked}";
        }
    }

    /// <summary>Effective force on a carriage, F = m a + friction + m g sin(incline).</summary>
    /// <param name="mass">Moved mass, above 0.</param>
    /// <param name="accelerationMPerS2">Highest acceleration, 0 or more, m/s2.</param>
    /// <param name="friction">Measured pull of the sliding carriage, 0 or more.</param>
    /// <param name="incline">Against the horizontal; null for level.</param>
    /// <exception cref="ArgumentOutOfRangeException">One of them is out of range.</exception>
    public static Measured<Force> Force(Measured<Mass> mass, Uncertain accelerationMPerS2, Measured<Force> friction, Measured<Angle>? incline = null)
    {
        ArgumentNullException.ThrowIfNull(mass);
        ArgumentNullException.ThrowIfNull(accelerationMPerS2);
        ArgumentNullException.ThrowIfNull(friction);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(mass.Si.Value, nameof(mass));
        ArgumentOutOfRangeException.ThrowIfNegative(accelerationMPerS2.Value, nameof(accelerationMPerS2));
        ArgumentOutOfRangeException.ThrowIfNegative(friction.Si.Value, nameof(friction));
        var weight = incline is null ? 0 : mass.Si * Gravity * Uncertain.Of(v => Math.Abs(Math.Sin(v[0])), [incline.Si]);
        return Quantity.FromSi<Force>((mass.Si * accelerationMPerS2) + friction.Si + weight, "F = m a + friction + m g sin(incline)");
    }

    /// <summary>Checks a pretension over the travel.</summary>
    /// <param name="effectiveForce">F, above 0.</param>
    /// <param name="pretension">T0, above 0; null takes F itself, the smallest that covers every place.</param>
    /// <param name="beltLength">L1 + L2: the belt from carriage clamp round to carriage clamp.</param>
    /// <param name="shortestSide">The shorter side where the carriage is nearest to its motor pulley, above 0 and below half of the belt.</param>
    /// <param name="allowableN">Allowable tension of the belt, from <see cref="BeltKind.AllowableN"/> or its maker.</param>
    /// <param name="shaftLimitN">What motor shaft, bearings and brackets bear: asked, never guessed.</param>
    /// <exception cref="ArgumentOutOfRangeException">A force, length or limit not above 0, or a side longer than half of the belt.</exception>
    public static BeltDrive Check(Measured<Force> effectiveForce, Measured<Force>? pretension, Measured<Length> beltLength, Measured<Length> shortestSide, double? allowableN = null, double? shaftLimitN = null)
    {
        ArgumentNullException.ThrowIfNull(effectiveForce);
        ArgumentNullException.ThrowIfNull(beltLength);
        ArgumentNullException.ThrowIfNull(shortestSide);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(effectiveForce.Si.Value, nameof(effectiveForce));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(shortestSide.Si.Value, nameof(shortestSide));
        ArgumentOutOfRangeException.ThrowIfGreaterThan(shortestSide.Si.Value, beltLength.Si.Value / 2, nameof(shortestSide));
        if (pretension is { Si.Value: <= 0 })
            throw new ArgumentOutOfRangeException(nameof(pretension), pretension.ToString(), "A pretension is above 0.");
        if (allowableN is <= 0 or double.NaN)
            throw new ArgumentOutOfRangeException(nameof(allowableN), allowableN, "An allowable tension is above 0.");
        if (shaftLimitN is <= 0 or double.NaN)
            throw new ArgumentOutOfRangeException(nameof(shaftLimitN), shaftLimitN, "A limit of the shafts is above 0.");
        return new(effectiveForce, pretension ?? effectiveForce, beltLength, shortestSide, allowableN, shaftLimitN);
    }
}
