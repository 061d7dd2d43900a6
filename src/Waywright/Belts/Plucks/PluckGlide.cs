using System;
using System.Linq;

namespace Waywright;

/// <summary>
/// Whether the note falls as the string dies down, f(t) = f (1 + g e^(-r t)), r twice the decay of the partials, weighed by the stretch that each makes: tension rises with the square of the amplitude.
/// Taken where Bayes' criterion asks for it, the note falls, more than four standard uncertainties of it, and the sound dies far enough to show; any other change of pitch is an uncertainty.
/// </summary>
/// <param name="Fit">The fit to use.</param>
/// <param name="GlideCents">How much higher the note starts; 0 where no glide was taken.</param>
/// <param name="ShiftCents">The amplitude-free note against that of the whole stretch.</param>
/// <param name="DriftCents">Width of the uncertainty that the change of pitch leaves.</param>
internal sealed record PluckGlide(DampedPartials Fit, double GlideCents, double ShiftCents, double DriftCents)
{
    private const double LeastGain = 10;
    private const double LeastSigmas = 4;
    private const double LeastDecay = 0.5;
    private const double LargestCents = 60;

    public static PluckGlide Of(double[] sound, double rate, DampedPartials plain, PartialTracker tracked, int[] numbers)
    {
        var seconds = sound.Length / rate;
        double[] weights = [.. numbers.Select((number, k) => Math.Pow(number * plain.Amplitude(k), 2))];
        var decay = numbers.Select((_, k) => weights[k] * plain.Decay(k)).Sum() / Math.Max(weights.Sum(), 1e-300);
        if (!(decay > 0))
            return new(plain, 0, 0, 0);
        var glideRate = 2 * decay;
        double[] start = tracked.ShowsStiffness ? [plain.Parameters[0], plain.Parameters[1]] : [plain.Parameters[0]];
        var bent = DampedPartials.Of(sound, rate, new LadderFrequencies(numbers, plain.FirstParameter, tracked.ShowsStiffness), start, [.. numbers.Select((_, k) => plain.Decay(k))], glideRate);
        if (plain.Criterion - bent.Criterion < LeastGain)
            return new(plain, 0, 0, 0);
        var cents = PluckCents.Of(bent.Glide, 1);
        var shift = PluckCents.Between(plain.FirstParameter, bent.FirstParameter);
        var sure = bent.Glide > LeastSigmas * bent.Uncertainty(bent.Parameters.Length - 1, new NoiseSpectrum(bent.Rest));
        if (!(bent.Glide > 0 && sure && decay * seconds > LeastDecay && cents < LargestCents))
            return new(plain, 0, 0, 2 * Math.Abs(shift));
        return new(bent, cents, shift, shift);
    }
}
