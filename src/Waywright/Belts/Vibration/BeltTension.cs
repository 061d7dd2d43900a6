using System.Collections.Generic;
using System.Linq;
using UnitsNet;

namespace Waywright;

/// <summary>A span, its note and its tension: one of the two was given, the other follows. Made by <see cref="BeltSpan"/>.</summary>
/// <remarks>Where only length and density are stated it is an ideal string: stiffness, clamped ends and a hard pluck read high, and <see cref="Effects"/> says what to state.</remarks>
public sealed record BeltTension
{
    internal const string Caution = "Caution: motors off and unplugged, small steps, and never above what the belt, the motor shafts and their brackets bear.";

    private FixedList<BeltEffect>? _effects;

    internal BeltTension(BeltSpan span, Measured<Frequency> frequency, Measured<Force> tension, int partial, bool isNoteSought)
    {
        Span = span;
        Partial = partial;
        Frequency = frequency;
        Tension = tension;
        IsNoteSought = isNoteSought;
    }

    /// <summary>The span.</summary>
    public BeltSpan Span { get; }

    /// <summary>The note: of the partial below.</summary>
    public Measured<Frequency> Frequency { get; }

    /// <summary>The tension.</summary>
    public Measured<Force> Tension { get; }

    /// <summary>Which note it is: 1 for the lowest.</summary>
    public int Partial { get; }

    /// <summary>What an ideal string leaves out, with sign and size: corrected, possible, or not stated.</summary>
    public IReadOnlyList<BeltEffect> Effects => _effects ??= BeltEffects.Of(Span, Frequency, Partial);

    /// <summary>The tension that the ideal string would read from the same note, T = 4 mu L2 (f / n)2, N.</summary>
    public Uncertain IdealN => 4 * Span.Density.Si * (Span.Length.Si * Frequency.Si / Partial).Pow(2);

    /// <summary>Whether the note was sought for a wanted tension; else the tension was, for a note that was heard.</summary>
    public bool IsNoteSought { get; }

    /// <summary>Where the uncertainty of what was sought comes from; its first line says what to do about it.</summary>
    public UncertaintyBudget Budget => IsNoteSought
        ? new(BeltRemedy.For(this), Frequency.Si, UnitTable.Hertz.Symbol)
        : new(BeltRemedy.For(this), Tension.Si, UnitTable.Newton.Symbol);

    /// <summary>The result in words, and what it leaves out.</summary>
    public string Verdict => IsNoteSought
        ? $"Tune the span to {Shown(Frequency)} for {Tension.ToShortString()}. {LeftOut(Span)} {Caution}"
        : $"The span is at {Shown(Tension)}, from {Heard} of {Frequency.ToShortString()}. {LeftOut(Span)}";

    private string Heard => Partial == 1 ? "its note" : $"its partial {NumberText.Plain(Partial)}";

    /// <summary>What of a real belt is not in a figure of this span.</summary>
    internal static string LeftOut(BeltSpan span)
    {
        if (span.IsIdeal)
            return BeltSpan.IdealOnly;
        var list = new List<string>();
        if (span.BendingStiffnessNm2 is null)
            list.Add("stiffness (reads high)");
        if (span.Amplitude is null)
            list.Add("a hard pluck (reads high)");
        if (span.Width is null)
            list.Add("air (reads low)");
        if (span.SupportStiffnessNPerM is null && span.First.Offset is null && span.Second.Offset is null)
            list.Add("soft ends (read low)");
        return list.Count == 0 ? "Stiffness, ends, pluck and air are in it." : $"Not stated and so not in it: {string.Join(", ", list.SkipLast(1))}{(list.Count > 1 ? " and " : "")}{list[^1]}.";
    }

    /// <summary>A calculated quantity: its interval, or three digits where no uncertainty was stated.</summary>
    private static string Shown<TQuantity>(Measured<TQuantity> sought)
        where TQuantity : struct, IQuantity
        => sought.Si.StandardUncertainty > 0
            ? sought.ToShortString()
            : $"{NumberText.Significant(sought.Unit.FromSi(sought.Si.Value), 3)} {sought.Unit} (no uncertainty was stated)";
}
