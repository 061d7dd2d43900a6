using System;
using System.Linq;

namespace Waywright;

/// <summary>What would narrow a tension or a note most: the largest of its inputs, brought to half its uncertainty.</summary>
internal static class BeltRemedy
{
    /// <summary>A kitchen scale's division; the piece and the empty pan are both read, each to q / sqrt 12.</summary>
    private const double ScaleDivisionKg = 0.001;

    public static string For(BeltTension belt)
    {
        // T = 4 mu L2 f2 and f = sqrt(T / mu) / (2 L): relative sensitivities.
        var (ofSpan, ofDensity, ofGiven) = belt.IsNoteSought ? (1.0, 0.5, 0.5) : (2.0, 1.0, 2.0);
        var given = belt.IsNoteSought ? belt.Tension.Si : belt.Frequency.Si;
        var span = Part(belt.Span.Length.Si, ofSpan);
        var density = Part(belt.Span.Density.Si, ofDensity);
        var rest = Part(given, ofGiven);
        var all = span + density + rest;
        if (Other(belt, out var other) > Math.Max(span, Math.Max(density, rest)))
            return other;
        if (all == 0)
            return $"State how well span, density and {(belt.IsNoteSought ? "tension" : "frequency")} are known, such as 180 +/- 0.5 mm: nothing was, so there is no interval.";
        if (density >= span && density >= rest)
            return $"{LongerPiece(belt.Span.Density.Si)}: {Why("density", density / all, belt)}";
        if (span >= rest)
            return $"Measure the span to {Half(belt.Span.Length.Si, belt.Span.Length.Unit)}: {Why("span", span / all, belt)}";
        return belt.IsNoteSought
            ? $"Decide the tension to {Half(given, belt.Tension.Unit)}: {Why("tension", rest / all, belt)}"
            : $"{BetterNote(given, belt.Frequency.Unit)}: {Why("frequency", rest / all, belt)}";
    }

    /// <summary>The relative variance of the largest input besides these, and what to do about it.</summary>
    private static double Other(BeltTension belt, out string remedy)
    {
        var sought = belt.IsNoteSought ? belt.Frequency.Si : belt.Tension.Si;
        UncertainInput[] usual = [.. belt.Span.Length.Si.Terms.Concat(belt.Span.Density.Si.Terms).Concat((belt.IsNoteSought ? belt.Tension.Si : belt.Frequency.Si).Terms).Select(t => t.Input)];
        var largest = sought.Terms.Where(t => !usual.Any(t.Input.IsSameAs)).OrderByDescending(t => Math.Abs(t.Signed)).FirstOrDefault();
        remedy = largest.Input is null ? "" : largest.Input.Called switch
        {
            "hold of the teeth" => $"Pluck at four to six places of the carriage and fit the end offset, or use a longer span: how much the pulleys' teeth hold the belt {Carries()}",
            "hold of free-form ends" => $"Pluck at four to six places of the carriage and fit the end offset: how the ends hold {Carries()}",
            "amplitude of the pluck" => $"Pluck more gently: the amplitude {Carries()}",
            var name => $"Know the {name} better: it {Carries()}",
        };
        return largest.Input is null ? 0 : Math.Pow(largest.Signed / sought.Value, 2);

        string Carries() => $"carries {NumberText.Rounded(100 * Math.Pow(largest.Signed / sought.StandardUncertainty, 2), 0)} % of the uncertainty.";
    }

    private static double Part(Uncertain x, double sensitivity)
    {
        var relative = sensitivity * x.StandardUncertainty / x.Value;
        return relative * relative;
    }

    /// <summary>u of a weighed piece falls with its length.</summary>
    private static string LongerPiece(Uncertain density)
    {
        var length = Math.Sqrt(2) * ScaleDivisionKg / Math.Sqrt(12) / (density.StandardUncertainty / 2);
        return $"Weigh twice the length of belt in one go (about {NumberText.Significant(length, 2)} m on a scale read to 1 g)";
    }

    private static string BetterNote(Uncertain frequency, Unit unit)
    {
        if (double.IsInfinity(frequency.DegreesOfFreedom))
            return $"Read the note to {Half(frequency, unit)}";
        var more = 3 * (frequency.DegreesOfFreedom + 1);
        return $"Pluck {NumberText.Rounded(more, 0)} more times";
    }

    /// <summary>Half of the uncertainty, as limits: that is how an instrument's reading is stated.</summary>
    private static string Half(Uncertain x, Unit unit) => $"+/- {NumberText.Significant(unit.FromSi(x.StandardUncertainty / 2 * Math.Sqrt(3)), 2)} {unit}";

    private static string Why(string input, double share, BeltTension belt)
    {
        var (sought, unit) = belt.IsNoteSought ? (belt.Frequency.Si, belt.Frequency.Unit) : (belt.Tension.Si, belt.Tension.Unit);
        var now = unit.FromSi(sought.Expanded().U);
        var then = now * Math.Sqrt(1 - (0.75 * share));
        return $"the {input} carries {NumberText.Rounded(100 * share, 0)} % of the uncertainty, and half of its own would bring U from {NumberText.Significant(now, 2)} to about {NumberText.Significant(then, 2)} {unit}.";
    }
}
