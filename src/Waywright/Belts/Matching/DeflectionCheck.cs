using System;
using UnitsNet;

namespace Waywright;

/// <summary>
/// A tension without a note: push the middle of a span with a known force and measure how far it goes, T = F L / (4 d) for small d. With the span's bending stiffness (pinned ends)
/// d = F L / (4 T) (1 - tanh(xi / 2) / (xi / 2)), xi = L sqrt(T / EI); with its stretch stiffness the tension before the push is less by EA 2 d2 / (L L_loop).
/// </summary>
/// <remarks>Statics of a string and of a tensioned beam under a midspan force (S. Timoshenko, Strength of Materials II, beams with an axial force; from memory). The deflection forces of SDP/SI's technical section, p. T-3, without their bending term, are the same law at d = L / 64; checked by these.</remarks>
public sealed record DeflectionCheck
{
    private const double SmallShare = 0.05;

    private DeflectionCheck(BeltSpan span, Measured<Force> push, Measured<Length> deflection, Measured<Force> tension, BeltTension? plucked)
    {
        (Span, Push, Deflection, Tension, Plucked) = (span, push, deflection, tension, plucked);
        Difference = plucked is null ? null : Quantity.FromSi<Force>(tension.Si - plucked.Tension.Si, "tension by deflection minus tension by note; shared inputs counted once");
    }

    /// <summary>The span.</summary>
    public BeltSpan Span { get; }

    /// <summary>F.</summary>
    public Measured<Force> Push { get; }

    /// <summary>d.</summary>
    public Measured<Length> Deflection { get; }

    /// <summary>T.</summary>
    public Measured<Force> Tension { get; }

    /// <summary>The same belt by its note, if given.</summary>
    public BeltTension? Plucked { get; }

    /// <summary>By deflection minus by note; null without a note.</summary>
    public Measured<Force>? Difference { get; }

    /// <summary>Whether both agree: 0 lies in the difference's 95 % interval. Null without a note or without uncertainties.</summary>
    public bool? Agrees => Difference is { Si: { StandardUncertainty: > 0 } d } ? Math.Abs(d.Value) <= d.Expanded().U : null;

    /// <summary>The result in words.</summary>
    public string Verdict
    {
        get
        {
            var steep = Deflection.Si.Value > SmallShare * Span.Length.Si.Value ? " Push less: beyond a twentieth of the span the law of small deflections reads wrong." : "";
            var found = $"By deflection the belt is at {Shown(Tension)}";
            return Agrees switch
            {
                true => $"{found}, and its note agrees ({Plucked!.Tension.ToShortString()}).{steep}",
                false => $"Look for the reason: {found.ToLowerInvariant()}, by its note at {Plucked!.Tension.ToShortString()}. A wrong partial is a factor 4, a wrong density or span a few per cent.{steep}",
                _ => $"{found}.{steep}",
            };
        }
    }

    /// <summary>From a push in the middle of a span.</summary>
    /// <param name="span">Its density is not used.</param>
    /// <param name="push">F, above 0: a spring scale, or a weight hung on the span.</param>
    /// <param name="deflection">d, above 0, of the middle against the line of the unpushed belt.</param>
    /// <param name="plucked">The same belt by its note, to compare.</param>
    /// <exception cref="ArgumentOutOfRangeException">Force or deflection is 0 or negative, or the deflection a quarter of the span or more.</exception>
    /// <exception cref="ArgumentException">The stiffness alone explains the deflection: no tension is left.</exception>
    public static DeflectionCheck Of(BeltSpan span, Measured<Force> push, Measured<Length> deflection, BeltTension? plucked = null)
    {
        ArgumentNullException.ThrowIfNull(span);
        ArgumentNullException.ThrowIfNull(push);
        ArgumentNullException.ThrowIfNull(deflection);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(push.Si.Value, nameof(push));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(deflection.Si.Value, nameof(deflection));
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(deflection.Si.Value, span.Length.Si.Value / 4, nameof(deflection));
        var (f, d) = (push.AsInput("push").Si, deflection.AsInput("deflection").Si);
        var tension = f * span.Length.Si / (4 * d);
        if (span.BendingStiffnessNm2 is { } bending)
            tension = Uncertain.Of(v => Stiff(v[0], v[1], v[2], Math.Max(0, v[3])), [f, span.Length.Si, d, bending]);
        if (span.StretchStiffness is { } stretch)
            tension -= stretch.Si * 2 * d.Pow(2) / (span.Length.Si * (span.Loop?.Si ?? span.Length.Si));
        if (tension.Value <= 0)
            throw new ArgumentException("Stiffness and stretch alone explain this deflection: no tension is left.", nameof(deflection));
        return new(span, push, deflection, Quantity.FromSi<Force>(tension, "T = F L / (4 d), less what stiffness and stretch carry"), plucked);
    }

    // T x = F L / (4 d) (1 - tanh(xi / 2) / (xi / 2)), bisected over T from 0 to the string's.
    private static double Stiff(double push, double length, double deflection, double bending)
    {
        var ideal = push * length / (4 * deflection);
        if (push <= 48 * bending * deflection / (length * length * length))
            throw new ArgumentException("The bending stiffness alone explains this deflection: no tension is left.");
        var (low, high) = (0.0, ideal);
        for (var step = 0; step < 200 && high - low > 1e-15 * ideal; step++)
        {
            var tension = (low + high) / 2;
            var half = length * Math.Sqrt(tension / Math.Max(bending, double.Epsilon)) / 2;
            if (tension < ideal * (1 - (Math.Tanh(half) / half)))
                low = tension;
            else
                high = tension;
        }

        return (low + high) / 2;
    }

    private static string Shown(Measured<Force> tension) => tension.Si.StandardUncertainty > 0 ? tension.ToShortString() : $"{NumberText.Significant(tension.Si.Value, 3)} N";
}
