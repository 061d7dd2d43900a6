using System;
using System.Collections.Generic;

namespace Waywright;

/// <summary>A pass after alignment to the others.</summary>
/// <param name="Pass">The pass as read.</param>
/// <param name="OffsetUm">The height that was taken off it, um, at the middle of the stations.</param>
/// <param name="TiltUmPerM">The tilt that was taken off it, um/m.</param>
/// <param name="HeightsUm">Its readings less offset and tilt, um, at <see cref="SweepPass.PositionsMm"/>.</param>
public sealed record AlignedPass(SweepPass Pass, double OffsetUm, double TiltUmPerM, IReadOnlyList<double> HeightsUm);

/// <summary>
/// Passes over one face, aligned and combined by least squares:
/// <c>z_ik = s_i + a_k + b_k x_i + e_ik</c>, with sum a_k = sum b_k = 0 over the passes.
/// Each pass has its own height and tilt (the rail or the dial's stand moved), so pooling without alignment would count tilt as noise.
/// Its repeatability is what repeating shows; the guide's and the dial's own errors are not in it.
/// </summary>
/// <param name="Sweep">What was combined.</param>
/// <param name="Profile">The combined heights s_i, um, at each station, mm.</param>
/// <param name="Passes">Each pass after alignment.</param>
/// <param name="RepeatabilityUm">Standard deviation s of a single reading, um; null when nothing was repeated.</param>
/// <param name="DegreesOfFreedom">Readings - stations - 2 (passes - 1).</param>
public sealed record PooledSweep(Sweep Sweep, Profile Profile, IReadOnlyList<AlignedPass> Passes, double? RepeatabilityUm, int DegreesOfFreedom)
{
    private StraightnessFigures? _straightness;
    private ProfileErrors? _errors;

    // What was worked out from the original is left behind: a copy may differ from it.
    private PooledSweep(PooledSweep original)
        => (Sweep, Profile, Passes, RepeatabilityUm, DegreesOfFreedom) = (original.Sweep, original.Profile, original.Passes, original.RepeatabilityUm, original.DegreesOfFreedom);

    /// <summary>Straightness of the combined profile about each line.</summary>
    public StraightnessFigures Straightness => _straightness ??= StraightnessFigures.Of(Profile);

    /// <summary>
    /// What the heights of <see cref="Profile"/> are uncertain by; null where no set-up was given. By station: scatter s / sqrt n, and where readings scatter less than their step q,
    /// what rounding leaves, q / sqrt 12 in all, which only laying anew averages out. Shapes: the guide's own error, the dial's error over its readings, its play. What the set-up doesn't state is not in it.
    /// </summary>
    public ProfileErrors? Errors => _errors ??= SweepErrors.Of(this);

    /// <summary>Equal when it was combined from equal sweeps.</summary>
    public bool Equals(PooledSweep? other) => other is not null && Sweep.Equals(other.Sweep) && Profile.Equals(other.Profile);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Sweep, Profile);
}
