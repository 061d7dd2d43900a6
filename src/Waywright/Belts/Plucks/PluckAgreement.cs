using System;
using System.Collections.Generic;
using System.Linq;
using UnitsNet;

namespace Waywright;

/// <summary>
/// What several plucks of one span agree on: their median. Its u: 1.2533 s / sqrt n (of a median, normal scatter; s / sqrt n for two), n - 1 degrees of freedom, beside the median of their own u,
/// which more plucks don't improve: it stands for what the analysis and the string can't resolve.
/// </summary>
internal static class PluckAgreement
{
    private const double AnotherNoteCents = 50;
    private const double OfMedian = 1.2533;

    /// <summary>The same plucks; those that give another note than most of the usable ones are not usable.</summary>
    public static IReadOnlyList<Pluck> Checked(IReadOnlyList<Pluck> plucks)
    {
        double[] usable = [.. plucks.Where(p => p.IsUsable).Select(p => p.Frequency!.Si.Value)];
        if (usable.Length < 2)
            return plucks;
        var median = PluckSpectrum.Median(usable);
        var apart = usable.Count(hertz => IsFar(hertz, median));
        if (apart == 0)
            return plucks;
        return 2 * apart >= usable.Length
            ? Marked(plucks, _ => true, "the plucks disagree: they give different notes; pluck the same place of the same span, the other spans damped")
            : Marked(plucks, hertz => IsFar(hertz, median), FormattableString.Invariant($"another note than most plucks' {median:0.0} Hz"));
    }

    /// <summary>Null for no pluck.</summary>
    public static Measured<Frequency>? Note(IEnumerable<Pluck> plucks)
    {
        double[] notes = [.. plucks.Select(p => p.Frequency!.Si.Value)];
        double[] own = [.. plucks.Select(p => p.Frequency!.Si.StandardUncertainty)];
        if (notes.Length == 0)
            return null;
        if (notes.Length == 1)
            return plucks.First().Frequency;
        var (n, mean) = (notes.Length, notes.Average());
        var scatter = Math.Sqrt(notes.Sum(f => (f - mean) * (f - mean)) / (n - 1)) / Math.Sqrt(n) * (n > 2 ? OfMedian : 1);
        var note = Uncertain.Input(new object(), "note of the plucks", PluckSpectrum.Median(notes), PluckSpectrum.Median(own), double.PositiveInfinity)
            + Uncertain.Input(new object(), "scatter of the plucks", 0, scatter, n - 1);
        return new(note, UnitTable.Hertz, FormattableString.Invariant($"median of {n} plucks, their scatter {scatter:0.000} Hz with {n - 1} degrees of freedom"));
    }

    private static FixedList<Pluck> Marked(IReadOnlyList<Pluck> plucks, Func<double, bool> isMeant, string reason)
        => FixedList<Pluck>.Copy(plucks.Select(p => p.IsUsable && isMeant(p.Frequency!.Si.Value) ? p with { Reasons = FixedList<string>.Copy([reason]) } : p));

    private static bool IsFar(double hertz, double median) => Math.Abs(PluckCents.Between(median, hertz)) > AnotherNoteCents;
}
