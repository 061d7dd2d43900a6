using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading;

namespace Waywright;

/// <summary>A pass after alignment to the others.</summary>
/// <param name="Pass">The pass as read.</param>
/// <param name="OffsetUm">The height that was taken off it, um, at the middle of the stations.</param>
/// <param name="TiltUmPerM">The tilt that was taken off it, um/m.</param>
/// <param name="HeightsUm">Its readings less offset and tilt, um, at <see cref="SweepPass.PositionsMm"/>, corrected like the profile.</param>
public sealed record AlignedPass(SweepPass Pass, double OffsetUm, double TiltUmPerM, IReadOnlyList<double> HeightsUm);

/// <summary>
/// Passes over one face, aligned and combined by least squares:
/// <c>z_ik = s_i + a_k + b_k x_i + e_ik</c>, with sum a_k = sum b_k = 0 over the passes.
/// Each pass has its own height and tilt (the rail or the dial's stand moved), so pooling without alignment would count tilt as noise.
/// Its repeatability is what repeating shows; the guide's and the dial's own errors are not in it.
/// </summary>
/// <param name="Sweep">What was combined.</param>
/// <param name="Profile">The combined heights s_i, um, at each station, mm; corrected where the set-up states what moved them.</param>
/// <param name="Passes">Each pass after alignment.</param>
/// <param name="RepeatabilityUm">Standard deviation s of a single reading, um; null when nothing was repeated.</param>
/// <param name="DegreesOfFreedom">Readings - stations - 2 (passes - 1).</param>
public sealed record PooledSweep(Sweep Sweep, Profile Profile, IReadOnlyList<AlignedPass> Passes, double? RepeatabilityUm, int DegreesOfFreedom)
{
    private StraightnessFigures? _straightness;
    private ProfileErrors? _errors;
    private StationMeans? _means;
    private LaysTest? _lays;

    // What was worked out from the original is left behind: a copy may differ from it.
    private PooledSweep(PooledSweep original)
    {
        (Sweep, Profile, Passes, RepeatabilityUm, DegreesOfFreedom) = (original.Sweep, original.Profile, original.Passes, original.RepeatabilityUm, original.DegreesOfFreedom);
        (Uncorrected, Corrections, BatchLays) = (original.Uncorrected, original.Corrections, original.BatchLays);
    }

    /// <summary>Straightness of the combined profile about each line.</summary>
    public StraightnessFigures Straightness => _straightness ??= StraightnessFigures.Of(Profile);

    /// <summary>The combined heights as they were read; <see cref="Profile"/> itself where nothing was corrected.</summary>
    public Profile Uncorrected { get; internal init; } = Profile;

    /// <summary>
    /// What was corrected, each with its size: a lever's angle, z cos(angle); self-weight of the top on two supports, by its elastic line; the measuring force F, which bends the
    /// rail by F G(x, x) where it presses. The last two only where the set-up states the rail's section.
    /// </summary>
    /// <remarks>Published case: 1 N bends a 350 mm rail of 42.4 N m2 by L³ / (48 EI) = 21 um in the middle when it lies on its ends, by 3.7 um on Bessel points.</remarks>
    public IReadOnlyList<SweepCorrection> Corrections { get; internal init; } = FixedList<SweepCorrection>.Empty;

    /// <summary>
    /// Why this is not the free rail's shape, so that nothing is graded by it: a top pressed flat on a plate by its own weight, a rail clamped or screwed down, or lifted off a support
    /// by the dial's force. Null where it is.
    /// </summary>
    public string? Hidden => HiddenShape.Of(this);

    /// <summary>
    /// What the heights of <see cref="Profile"/> are uncertain by; null where no set-up was given. By station: scatter s / sqrt n, and where readings scatter by less than their step
    /// q, what repeating leaves of their rounding (all of q / sqrt 12 where repeats are equal), which only laying anew averages out. Shapes: the guide's own error, the dial's error over its readings, its play, the bow
    /// between lays, and the corrections' own uncertainty. What the set-up doesn't state is not in it.
    /// </summary>
    public ProfileErrors? Errors => _errors ??= SweepErrors.Of(this);

    /// <summary>Whether the rail's bow varied from lay to lay by more than scatter explains.</summary>
    public LaysTest Lays => _lays ??= LayBows.Test(this, Means);

    /// <summary>
    /// Lag-1 correlation of the residuals of neighbouring stations within passes, corrected for what alignment takes off; about 0 where scatter is independent. Null where nothing was
    /// repeated or repeats are equal.
    /// </summary>
    public double? Lag1 => ResidualCorrelation.Of(this, Means);

    internal StationMeans Means => _means ??= new StationMeans(this);

    /// <summary>The bow between lays of all faces of the set-up; null where this face was combined alone.</summary>
    internal BatchLays? BatchLays { get; init; }

    /// <summary>Each figure of straightness with estimate, interval and noise floor; null when no set-up was given or there are fewer than three positions.</summary>
    /// <param name="trials">Simulations, 1,000 or more.</param>
    /// <param name="seed">Of their random numbers.</param>
    /// <param name="cancel">Stops it.</param>
    public StraightnessUncertainty? Uncertainty(int trials = 20_000, ulong seed = 1, CancellationToken cancel = default)
        => Errors is { } errors && Profile.PositionsMm.Distinct().Take(3).Count() == 3 ? StraightnessUncertainty.Of(Profile, errors, trials, seed, cancel) : null;

    /// <summary>Equal when it was combined from equal sweeps.</summary>
    public bool Equals(PooledSweep? other) => other is not null && Sweep.Equals(other.Sweep) && Profile.Equals(other.Profile);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Sweep, Profile);
}
