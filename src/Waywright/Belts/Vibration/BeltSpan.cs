using System;
using System.Collections.Generic;
using UnitsNet;

namespace Waywright;

/// <summary>
/// A free stretch of belt and its mass per length: what ties a plucked note to a tension. With nothing else stated it is an ideal string,
/// T = 4 mu L2 f2 and f = sqrt(T / mu) / (2 L) for the lowest note f in Hz, L in m, mu in kg/m, T in N.
/// </summary>
/// <remarks>
/// With a bending stiffness it is a tensioned beam (<see cref="TensionedBeam"/>) between its two ends; with a width it carries air along; with a pluck's amplitude and a stretch stiffness the
/// note is brought to amplitude zero; with a stiffness of what holds its ends it is longer by T / k at each. What is not stated is not corrected, and <see cref="BeltTension.Effects"/> names it.
/// Pulley ends add a model uncertainty, one-sided: teeth may hold the belt up to what a clamp would, sqrt(EI / T) / L of the note at each; its root mean square, 1/sqrt(3) of that, is in the budget
/// as one input for all pulleys of the machine, and the value stays where no tooth holds.
/// Ideal relation: W. T. Thomson, Vibration Theory and Applications (1965), p. 264, whose 500 lb string sounds 74.708 Hz; checked by it and by a maker's printed string chart.
/// </remarks>
public sealed record BeltSpan
{
    internal const string IdealOnly = "Ideal string: stiffness, clamped ends and a hard pluck read high; state the bending stiffness and the ends to take them in.";

    private readonly Uncertain? _bendingStiffnessNm2;
    private readonly Measured<Length>? _width;
    private readonly Measured<Length>? _amplitude;
    private readonly Measured<Force>? _stretchStiffness;
    private readonly Measured<Length>? _loop;
    private readonly Uncertain? _supportStiffnessNPerM;

    /// <summary>For a free length and a mass per length, both above 0.</summary>
    /// <param name="length">Free length between the places where the belt leaves its pulleys or clamps.</param>
    /// <param name="density">Mass per length of the belt as it is mounted, its full width.</param>
    /// <exception cref="ArgumentOutOfRangeException">One of them is 0 or negative.</exception>
    public BeltSpan(Measured<Length> length, Measured<LinearDensity> density)
    {
        Length = Positive(length, nameof(length)).AsInput("span");
        Density = Positive(density, nameof(density)).AsInput("density");
    }

    /// <summary>Free length.</summary>
    public Measured<Length> Length { get; }

    /// <summary>Mass per length.</summary>
    public Measured<LinearDensity> Density { get; }

    /// <summary>Bending stiffness EI in N m2, above 0; null (the default) for an ideal string. From two hanging masses, from partials, or a guess with its limits.</summary>
    /// <exception cref="ArgumentOutOfRangeException">0 or negative.</exception>
    public Uncertain? BendingStiffnessNm2
    {
        get => _bendingStiffnessNm2;
        init => _bendingStiffnessNm2 = value is null or { Value: > 0 } ? value : throw new ArgumentOutOfRangeException(nameof(BendingStiffnessNm2), value.Value, "A bending stiffness is above 0 N m2; leave it out for an ideal string.");
    }

    /// <summary>One end; a pulley where nothing else is said.</summary>
    public BeltEnd First { get; init; } = BeltEnd.Pulley;

    /// <summary>The other end; a pulley where nothing else is said.</summary>
    public BeltEnd Second { get; init; } = BeltEnd.Pulley;

    /// <summary>Width of the belt, for the air that moves with it, rho pi w2 / 4 per length at 1.204 kg/m3; null leaves the air out.</summary>
    /// <exception cref="ArgumentOutOfRangeException">0 or negative.</exception>
    public Measured<Length>? Width
    {
        get => _width;
        init => _width = value is null ? null : Positive(value, nameof(Width)).AsInput("width");
    }

    /// <summary>Amplitude of the pluck in the middle of the span, for the note above amplitude zero; null leaves it out.</summary>
    /// <exception cref="ArgumentOutOfRangeException">0 or negative.</exception>
    public Measured<Length>? Amplitude
    {
        get => _amplitude;
        init => _amplitude = value is null ? null : Positive(value, nameof(Amplitude)).AsInput("amplitude of the pluck");
    }

    /// <summary>Force per unit strain, EA in N; needed with an amplitude.</summary>
    /// <exception cref="ArgumentOutOfRangeException">0 or negative.</exception>
    public Measured<Force>? StretchStiffness
    {
        get => _stretchStiffness;
        init => _stretchStiffness = value is null ? null : Positive(value, nameof(StretchStiffness)).AsInput("stretch stiffness");
    }

    /// <summary>Length of belt that stretches with the span, if its pulleys turn freely; null for a span fixed at both ends.</summary>
    /// <exception cref="ArgumentOutOfRangeException">0 or negative.</exception>
    public Measured<Length>? Loop
    {
        get => _loop;
        init => _loop = value is null ? null : Positive(value, nameof(Loop)).AsInput("loop");
    }

    /// <summary>Stiffness across the belt of what holds each end, k in N/m: it lengthens the span by T / k at each; null leaves it out.</summary>
    /// <exception cref="ArgumentOutOfRangeException">0 or negative.</exception>
    public Uncertain? SupportStiffnessNPerM
    {
        get => _supportStiffnessNPerM;
        init => _supportStiffnessNPerM = value is null or { Value: > 0 } ? value : throw new ArgumentOutOfRangeException(nameof(SupportStiffnessNPerM), value.Value, "A stiffness of the ends is above 0 N/m; leave it out for rigid ones.");
    }

    /// <summary>Whether nothing beyond length and density is stated.</summary>
    internal bool IsIdeal => BendingStiffnessNm2 is null && Width is null && Amplitude is null && SupportStiffnessNPerM is null && First.Offset is null && Second.Offset is null;

    /// <summary>From texts such as <c>180 +/- 0.5 mm</c> and <c>8.1 g/m u 0.1 g/m</c>.</summary>
    /// <exception cref="InputException">A text is no such quantity or not above 0; both texts are checked.</exception>
    public static BeltSpan Read(string length, string density)
    {
        var problems = new List<InputProblem>();
        var span = Quantity.ReadPositive<Length>(length, "span", problems);
        var mass = Quantity.ReadPositive<LinearDensity>(density, "density", problems);
        return span is not null && mass is not null ? new(span, mass) : throw new InputException(problems);
    }

    /// <summary>The tension that a note proves, uncertainty to first order.</summary>
    /// <param name="frequency">A note of the plucked span, above 0.</param>
    /// <param name="partial">Which: 1 for the lowest.</param>
    /// <exception cref="ArgumentOutOfRangeException">The frequency is 0 or negative, or the partial below 1.</exception>
    /// <exception cref="ArgumentException">An amplitude without a stretch stiffness.</exception>
    /// <exception cref="InputException">The note is lower than what stiffness or pluck alone would give, so no tension explains it; or the ends' offsets leave no length.</exception>
    public BeltTension Tension(Measured<Frequency> frequency, int partial = 1)
    {
        var note = Positive(frequency, nameof(frequency)).AsInput("frequency");
        ArgumentOutOfRangeException.ThrowIfLessThan(partial, 1);
        if (IsIdeal)
        {
            var ideal = 4 * Density.Si * (Length.Si * note.Si / partial).Pow(2);
            return new(this, note, Quantity.FromSi<Force>(ideal, "T = 4 mu L2 f2 from density, span and frequency, to first order"), partial, isNoteSought: false);
        }

        var model = new BeltModel(this, partial);
        return new(this, note, Quantity.FromSi<Force>(model.Tension(note.Si), $"{model.Words} from span, density and frequency, to first order"), partial, isNoteSought: false);
    }

    /// <summary>The note to tune to for a wanted tension, uncertainty to first order.</summary>
    /// <param name="tension">The wanted tension, above 0.</param>
    /// <param name="partial">Which note: 1 for the lowest.</param>
    /// <exception cref="ArgumentOutOfRangeException">The tension is 0 or negative, or the partial below 1.</exception>
    /// <exception cref="ArgumentException">An amplitude without a stretch stiffness.</exception>
    /// <exception cref="InputException">The ends' offsets leave no length.</exception>
    public BeltTension Note(Measured<Force> tension, int partial = 1)
    {
        var pull = Positive(tension, nameof(tension)).AsInput("tension");
        ArgumentOutOfRangeException.ThrowIfLessThan(partial, 1);
        if (IsIdeal)
        {
            var ideal = partial * (pull.Si / Density.Si).Sqrt() / (2 * Length.Si);
            return new(this, Quantity.FromSi<Frequency>(ideal, "f = sqrt(T / mu) / (2 L) from tension, density and span, to first order"), pull, partial, isNoteSought: true);
        }

        var model = new BeltModel(this, partial);
        return new(this, Quantity.FromSi<Frequency>(model.Frequency(pull.Si), $"{model.Words} from tension, span and density, to first order"), pull, partial, isNoteSought: true);
    }

    /// <summary>The same with another length and density.</summary>
    internal BeltSpan With(Measured<Length> length, Measured<LinearDensity> density)
        => new(length, density) { BendingStiffnessNm2 = BendingStiffnessNm2, First = First, Second = Second, Width = Width, Amplitude = Amplitude, StretchStiffness = StretchStiffness, Loop = Loop, SupportStiffnessNPerM = SupportStiffnessNPerM };

    private static Measured<TQuantity> Positive<TQuantity>(Measured<TQuantity> quantity, string name)
        where TQuantity : struct, IQuantity
    {
        ArgumentNullException.ThrowIfNull(quantity, name);
        return quantity.Si.Value > 0 ? quantity : throw new ArgumentOutOfRangeException(name, quantity.ToString(), $"The {name.ToLowerInvariant()} of a belt is above 0.");
    }
}
