using System;
using System.Collections.Generic;
using UnitsNet;

namespace Waywright;

/// <summary>
/// A free stretch of belt and its mass per length: what ties a plucked note to a tension. Ideal string: T = 4 mu L2 f2 and f = sqrt(T / mu) / (2 L)
/// for the lowest note f in Hz, L in m, mu in kg/m, T in N.
/// </summary>
/// <remarks>
/// Stiffness, clamped ends and a hard pluck make a real belt sound higher than the ideal string, so the tension reads high; they are not in it yet.
/// Relation: W. T. Thomson, Vibration Theory and Applications (1965), p. 264, whose 500 lb string sounds 74.708 Hz; checked by it and by a maker's printed string chart.
/// </remarks>
public sealed record BeltSpan
{
    internal const string IdealOnly = "Ideal string: stiffness, clamped ends and a hard pluck read high and are not in it yet.";

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

    /// <summary>From texts such as <c>180 +/- 0.5 mm</c> and <c>8.1 g/m u 0.1 g/m</c>.</summary>
    /// <exception cref="InputException">A text is no such quantity or not above 0; both texts are checked.</exception>
    public static BeltSpan Read(string length, string density)
    {
        var problems = new List<InputProblem>();
        var span = Quantity.ReadPositive<Length>(length, "span", problems);
        var mass = Quantity.ReadPositive<LinearDensity>(density, "density", problems);
        return span is not null && mass is not null ? new(span, mass) : throw new InputException(problems);
    }

    /// <summary>The tension that a note proves: T = 4 mu L2 f2, uncertainty to first order.</summary>
    /// <param name="frequency">The lowest note of the plucked span, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">The frequency is 0 or negative.</exception>
    public BeltTension Tension(Measured<Frequency> frequency)
    {
        var note = Positive(frequency, nameof(frequency)).AsInput("frequency");
        var tension = 4 * Density.Si * (Length.Si * note.Si).Pow(2);
        return new(this, note, Quantity.FromSi<Force>(tension, "T = 4 mu L2 f2 from density, span and frequency, to first order"), isNoteSought: false);
    }

    /// <summary>The note to tune to for a wanted tension: f = sqrt(T / mu) / (2 L), uncertainty to first order.</summary>
    /// <param name="tension">The wanted tension, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">The tension is 0 or negative.</exception>
    public BeltTension Note(Measured<Force> tension)
    {
        var pull = Positive(tension, nameof(tension)).AsInput("tension");
        var frequency = (pull.Si / Density.Si).Sqrt() / (2 * Length.Si);
        return new(this, Quantity.FromSi<Frequency>(frequency, "f = sqrt(T / mu) / (2 L) from tension, density and span, to first order"), pull, isNoteSought: true);
    }

    private static Measured<TQuantity> Positive<TQuantity>(Measured<TQuantity> quantity, string name)
        where TQuantity : struct, IQuantity
    {
        ArgumentNullException.ThrowIfNull(quantity, name);
        return quantity.Si.Value > 0 ? quantity : throw new ArgumentOutOfRangeException(name, quantity.ToString(), $"The {name} of a belt is above 0.");
    }
}
