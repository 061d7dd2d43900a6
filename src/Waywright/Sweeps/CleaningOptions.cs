using System;

namespace Waywright;

/// <summary>What the cleaning chain is allowed to change; by default nothing, it reports.</summary>
/// <param name="TurnUm">
/// One turn of the dial's pointer, um, above 0 (a 0.01 mm dial with 100 divisions: 1000). It can't be told from the readings, so without it roll-over is not looked for.
/// </param>
/// <param name="FlipMirrored">Whether a pass that mirrors the others gets the opposite sign; otherwise it is flagged.</param>
/// <param name="DropSpikes">Whether spikes are taken out; otherwise they are flagged.</param>
/// <param name="SpikeLimit">
/// Hampel's k, 3 to 20: a spike is further from the median than k standard deviations, these estimated by 1.4826 x the median absolute deviation. At 5, fewer than 1 in 100
/// sweeps without spikes have one flagged (simulated, 24 to 700 readings).
/// </param>
/// <exception cref="ArgumentOutOfRangeException">The turn is not a finite length above 0, or the limit is outside 3 to 20.</exception>
public sealed record CleaningOptions(double? TurnUm = null, bool FlipMirrored = false, bool DropSpikes = false, double SpikeLimit = 5)
{
    /// <summary>One turn of the dial's pointer, um; null when roll-over is not looked for.</summary>
    public double? TurnUm { get; } = TurnUm is null or (> 0 and < double.PositiveInfinity)
        ? TurnUm
        : throw new ArgumentOutOfRangeException(nameof(TurnUm), TurnUm, "One turn of the pointer is a length above 0 um.");

    /// <summary>Hampel's k.</summary>
    public double SpikeLimit { get; } = SpikeLimit is >= 3 and <= 20
        ? SpikeLimit
        : throw new ArgumentOutOfRangeException(nameof(SpikeLimit), SpikeLimit, "A limit from 3 to 20 is needed.");
}
