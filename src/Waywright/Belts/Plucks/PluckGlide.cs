using System;
using System.Linq;

namespace Waywright;

/// <summary>
/// Whether the note falls as the string dies down, f(t) = f (1 + g e^(-r t)): tension rises with the square of the amplitude, so r starts at twice the decay of the partials, weighed by their energy.
/// Taken where Bayes' criterion asks for it, the note falls, more than four standard uncertainties of it, and the sound dies far enough to show; any other change of pitch is an uncertainty.
/// </summary>
/// <param name="Fit">The fit to use.</param>
/// <param name="GlideCents">How much higher the note starts; 0 where no glide was taken.</param>
/// <param name="DriftCents">Width of the uncertainty that the change of pitch leaves.</param>
internal sealed record PluckGlide(DampedPartials Fit, double GlideCents, double DriftCents)
{
    private const double LeastGain = 10;
    private const double LeastSigmas = 4;
    private const double LeastDecay = 0.5;
    private const double LargestCents = 60;

    /// <summary>The glide that was taken, held for another fit of the same sound.</summary>
    public PluckWarp Warp { get; private init; }

    public static PluckGlide Of(double[] sound, double rate, DampedPartials plain, int[] numbers)
    {
        var seconds = sound.Length / rate;
        double[] weights = [.. numbers.Select((_, k) => Math.Pow(plain.Amplitude(k), 2))];
        var speed = 2 * Math.Max(numbers.Select((_, k) => weights[k] * plain.Decay(k)).Sum() / Math.Max(weights.Sum(), 1e-300), LeastDecay / seconds);
        double[] start = numbers.Length > 1 ? [plain.Parameters[0], plain.Parameters[1]] : [plain.Parameters[0]];
        var model = new LadderFrequencies(numbers, plain.FirstParameter, numbers.Length > 1);
        var bent = DampedPartials.Of(sound, rate, model, start, [.. numbers.Select((_, k) => plain.Decay(k))], new PluckWarp(0, speed, true));
        if (!(plain.Criterion - bent.Criterion > LeastGain))
            return new(plain, 0, 0);
        var cents = PluckCents.Of(bent.Warp.Glide, 1);
        var shift = PluckCents.Between(plain.FirstParameter, bent.FirstParameter);
        var sure = bent.Warp.Glide > LeastSigmas * bent.Uncertainty(bent.GlideParameter, new NoiseSpectrum(bent.Rest));
        return sure && bent.Warp.Rate / 2 * seconds > LeastDecay && cents < LargestCents
            ? new(bent, cents, shift) { Warp = bent.Warp with { IsFitted = false } }
            : new(plain, 0, 2 * Math.Abs(shift));
    }
}
