using System;
using System.Collections.Generic;
using System.Linq;
using UnitsNet;

namespace Waywright;

/// <summary>From the sound of one pluck to its note: which octave, which partials, least squares, uncertainty.</summary>
internal static class PluckAnalyser
{
    private const double ModelCents = 1.5;
    private const double ClockCents = 0.17;
    private const int LadderPartials = 6;
    private const int AllPartials = 12;
    private const double UnresolvedPeriods = 20;
    private const double LeastEnergyRatio = 30;
    private const double LeastPeak = 10;
    private const double ResolvedPeriods = 8;
    private const double ScatterLevel = 0.99;

    public static Pluck Of(PluckSignal signal, PluckStretch stretch, PluckSearch search)
    {
        var blank = new Pluck(stretch.Start / signal.Rate, stretch.From / signal.Rate, stretch.To / signal.Rate);
        var sound = signal.Samples[stretch.From..stretch.To];
        var (seconds, rate) = (sound.Length / signal.Rate, signal.Rate);
        if (seconds < PluckStretch.LeastSeconds)
            return blank with { Reasons = PluckReasons.TooShort(seconds) };
        var mean = sound.Average();
        for (var i = 0; i < sound.Length; i++)
            sound[i] -= mean;
        var candidates = FundamentalSearch.Of(PluckSpectrum.Hann(sound, rate), search.LowestHz, search.HighestHz);
        if (candidates.Count == 0)
            return blank with { Reasons = PluckReasons.NoNote };

        var tracked = PartialTracker.Of(PluckSpectrum.BlackmanHarris(sound, rate), candidates[0].FrequencyHz, seconds, rate);
        var ladder = Ladder(sound, rate, tracked, out var numbers);
        var glide = PluckGlide.Of(sound, rate, ladder, numbers);
        var partials = Free(sound, rate, glide, tracked, numbers);
        var own = partials.Count > 0 ? PartialLadder.Of(partials) : null;

        // One ladder for all partials is the best estimate unless they are seen to lie off it.
        var isScattered = own is { DegreesOfFreedom: > 0 } && own.ChiSquared > ChiSquaredLimit(own.DegreesOfFreedom);
        var noise = new NoiseSpectrum(glide.Fit.Rest);
        var first = isScattered ? own!.FirstHz : glide.Fit.FirstParameter;
        var fitted = isScattered ? own!.StandardUncertaintyHz : glide.Fit.Uncertainty(0, noise);
        var cents = Math.Sqrt(Math.Pow(PluckCents.Of(fitted, first), 2) + (ModelCents * ModelCents) + (ClockCents * ClockCents) + (glide.DriftCents * glide.DriftCents / 12));
        var strongest = partials.Count > 0 ? partials.Max(p => p.Amplitude) : 1;
        var pluck = blank with
        {
            Frequency = Note(first, PluckCents.Hertz(cents, first)),
            FitUncertaintyHz = fitted,
            Inharmonicity = isScattered ? own!.Inharmonicity : numbers.Length > 1 ? glide.Fit.Parameters[1] : 0,
            ScatterCents = isScattered ? own!.ScatterCents : 0,
            GlideCents = glide.GlideCents,
            Partials = FixedList<PluckPartial>.Copy(partials.Select(p => new PluckPartial(p.Number, p.FrequencyHz, p.UncertaintyHz, 20 * Math.Log10(p.Amplitude / strongest)))),
            RunnersUp = FixedList<PluckCandidate>.Copy(candidates.Skip(1)),
        };
        var remains = PluckRemains.Of(sound, glide.Fit.Rest, rate, first, pluck.Inharmonicity);
        return pluck with { Reasons = PluckReasons.Of(signal, stretch, pluck, glide.Fit.Decay(0), remains, search) };
    }

    private static Measured<Frequency> Note(double hertz, double uncertainty)
        => new(Uncertain.Input(new object(), "note of the pluck", hertz, uncertainty, double.PositiveInfinity), UnitTable.Hertz, "fit of damped partials of a stiff string");

    private static DampedPartials Ladder(double[] sound, double rate, PartialTracker tracked, out int[] numbers)
    {
        // In few periods peaks run into each other: partials that can't be seen apart still move the note.
        var least = tracked.FirstHz * sound.Length / rate < UnresolvedPeriods ? AllPartials : LadderPartials;
        var found = Enumerable.Range(1, least).Union(tracked.Peaks.Select(p => p.Number)).Order();
        numbers = [.. found.Where(k => k == 1 || PartialLadder.Partial(k, tracked.FirstHz, tracked.Inharmonicity) < 0.45 * rate)];
        // Stiffness always has its parameter: taken for none, it would be read as a higher note.
        double[] parameters = numbers.Length > 1 ? [tracked.FirstHz, tracked.Inharmonicity] : [tracked.FirstHz];
        var decays = Enumerable.Repeat(3 * rate / sound.Length, numbers.Length).ToArray();
        return DampedPartials.Of(sound, rate, new LadderFrequencies(numbers, tracked.FirstHz, numbers.Length > 1), parameters, decays);
    }

    // Each partial that stands out of the noise by itself, near where the ladder or its own peak says.
    private static List<FittedPartial> Free(double[] sound, double rate, PluckGlide glide, PartialTracker tracked, int[] numbers)
    {
        var ladder = glide.Fit;
        var (seconds, variance) = (sound.Length / rate, ladder.Cost / sound.Length);
        var starts = new SortedDictionary<int, (double Hertz, double Decay)>();
        double[] ratios = [.. numbers.Select((_, k) => Math.Pow(ladder.Amplitude(k), 2) * (1 - Math.Exp(-2 * ladder.Decay(k) * seconds)) / (2 * ladder.Decay(k)) * rate / 2 / variance)];
        for (var k = 0; k < numbers.Length; k++)
        {
            if (ratios[k] > LeastEnergyRatio || (ratios.Max() <= LeastEnergyRatio && ratios[k] == ratios.Max()))
                starts[numbers[k]] = (ladder.Frequency(k), Math.Min(100, ladder.Decay(k)));
        }

        foreach (var peak in tracked.Peaks)
        {
            if (starts.TryGetValue(peak.Number, out var start))
                starts[peak.Number] = (tracked.FirstHz * seconds > ResolvedPeriods && glide.GlideCents == 0 ? peak.FrequencyHz : start.Hertz, start.Decay);
            else if (peak.AboveMedian > LeastPeak)
                starts[peak.Number] = (peak.FrequencyHz, 6 / seconds);
        }

        double[] hertz = [.. starts.Values.Select(s => s.Hertz)];
        var model = new FreeFrequencies(hertz, seconds);
        var fit = DampedPartials.Of(sound, rate, model, hertz, [.. starts.Values.Select(s => s.Decay)], glide.Warp, steps: 12);
        var noise = new NoiseSpectrum(fit.Rest);
        return [.. starts.Keys.Select((number, k) => (number, k)).Where(p => !model.IsAtEdge(fit.Parameters, p.k))
            .Select(p => new FittedPartial(p.number, fit.Frequency(p.k), fit.Uncertainty(p.k, noise), fit.Decay(p.k), fit.Amplitude(p.k)))];
    }

    private static double ChiSquaredLimit(int degreesOfFreedom) => MathNet.Numerics.Distributions.ChiSquared.InvCDF(degreesOfFreedom, ScatterLevel);
}
