using UnitsNet;

namespace Waywright;

/// <summary>A span, its note and its tension: one of the two was given, the other follows from the ideal string. Made by <see cref="BeltSpan"/>.</summary>
/// <remarks>Stiffness, clamped ends and a hard pluck read high and are not in it yet.</remarks>
public sealed record BeltTension
{
    internal const string Caution = "Caution: motors off and unplugged, small steps, and never above what the belt, the motor shafts and their brackets bear.";

    internal BeltTension(BeltSpan span, Measured<Frequency> frequency, Measured<Force> tension, bool isNoteSought)
    {
        Span = span;
        Frequency = frequency;
        Tension = tension;
        IsNoteSought = isNoteSought;
    }

    /// <summary>The span.</summary>
    public BeltSpan Span { get; }

    /// <summary>The lowest note.</summary>
    public Measured<Frequency> Frequency { get; }

    /// <summary>The tension.</summary>
    public Measured<Force> Tension { get; }

    /// <summary>Whether the note was sought for a wanted tension; else the tension was, for a note that was heard.</summary>
    public bool IsNoteSought { get; }

    /// <summary>Where the uncertainty of what was sought comes from; its first line says what to do about it.</summary>
    public UncertaintyBudget Budget => IsNoteSought
        ? new(BeltRemedy.For(this), Frequency.Si, UnitTable.Hertz.Symbol)
        : new(BeltRemedy.For(this), Tension.Si, UnitTable.Newton.Symbol);

    /// <summary>The result in words, and what it leaves out.</summary>
    public string Verdict => IsNoteSought
        ? $"Tune the span to {Shown(Frequency)} for {Tension.ToShortString()}. {BeltSpan.IdealOnly} {Caution}"
        : $"The span is at {Shown(Tension)}, from its note of {Frequency.ToShortString()}. {BeltSpan.IdealOnly}";

    /// <summary>A calculated quantity: its interval, or three digits where no uncertainty was stated.</summary>
    private static string Shown<TQuantity>(Measured<TQuantity> sought)
        where TQuantity : struct, IQuantity
        => sought.Si.StandardUncertainty > 0
            ? sought.ToShortString()
            : $"{NumberText.Significant(sought.Unit.FromSi(sought.Si.Value), 3)} {sought.Unit} (no uncertainty was stated)";
}
