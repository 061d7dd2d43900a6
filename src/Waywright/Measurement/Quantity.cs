using System;
using System.Collections.Generic;
using UnitsNet;

namespace Waywright;

/// <summary>
/// Makes quantities from text, the way people write them: <c>180mm</c>, <c>180 +/- 0.5 mm</c> (limits, rectangular: u = 0.5 mm / sqrt 3),
/// <c>180 mm u 0.2 mm</c> (standard uncertainty), <c>180 mm U 0.4 mm k 2</c> (expanded), <c>8.1 g/m +/- 10 %</c>. Decimal point; no group separators.
/// </summary>
/// <remarks>
/// Units, capitals matter: mm cm m um in; g kg mg; g/m kg/m mg/mm; N mN kN kgf lbf; Hz kHz; s ms; mrad rad deg; Nmm2 Nm2. Sizes from 1e-15 to 1e15 SI units.
/// <c>Length</c>, <c>Mass</c> and so on are <see cref="Read{TQuantity}"/> without the need to name a UnitsNet type.
/// </remarks>
public static class Quantity
{
    /// <summary>Reads a quantity of any sign.</summary>
    /// <param name="text">The text.</param>
    /// <param name="name">What it is: the place in a message, and the input's name in budgets (equal names are one input).</param>
    /// <exception cref="InputException">No number, no unit or one of another kind, not finite, a negative uncertainty, k not above 0.</exception>
    /// <exception cref="NotSupportedException">A UnitsNet type that Waywright has no units for.</exception>
    public static Measured<TQuantity> Read<TQuantity>(string text, string name)
        where TQuantity : struct, IQuantity => Parse<TQuantity>(text, name, QuantityRange.Any);

    /// <summary>Reads a quantity above 0.</summary>
    /// <param name="text">The text.</param>
    /// <param name="name">What it is: the place in a message, and the input's name in budgets (equal names are one input).</param>
    /// <exception cref="InputException">As for <see cref="Read{TQuantity}"/>, or the value is 0 or negative.</exception>
    /// <exception cref="NotSupportedException">A UnitsNet type that Waywright has no units for.</exception>
    public static Measured<TQuantity> ReadPositive<TQuantity>(string text, string name)
        where TQuantity : struct, IQuantity => Parse<TQuantity>(text, name, QuantityRange.Positive);

    /// <summary>Reads a length.</summary>
    /// <exception cref="InputException">As for <see cref="Read{TQuantity}"/>.</exception>
    public static Measured<Length> Length(string text, string name) => Read<Length>(text, name);

    /// <summary>Reads a mass.</summary>
    /// <exception cref="InputException">As for <see cref="Read{TQuantity}"/>.</exception>
    public static Measured<Mass> Mass(string text, string name) => Read<Mass>(text, name);

    /// <summary>Reads a mass per length.</summary>
    /// <exception cref="InputException">As for <see cref="Read{TQuantity}"/>.</exception>
    public static Measured<LinearDensity> LinearDensity(string text, string name) => Read<LinearDensity>(text, name);

    /// <summary>Reads a force.</summary>
    /// <exception cref="InputException">As for <see cref="Read{TQuantity}"/>.</exception>
    public static Measured<Force> Force(string text, string name) => Read<Force>(text, name);

    /// <summary>Reads a frequency.</summary>
    /// <exception cref="InputException">As for <see cref="Read{TQuantity}"/>.</exception>
    public static Measured<Frequency> Frequency(string text, string name) => Read<Frequency>(text, name);

    /// <summary>Reads a bending stiffness above 0, such as <c>40 Nmm2 u 5 Nmm2</c> or <c>4e-5 N m2</c> (1 N m2 is 1,000,000 N mm2), as a number in N m2: UnitsNet has no type for it.</summary>
    /// <exception cref="InputException">As for <see cref="ReadPositive{TQuantity}(string, string)"/>.</exception>
    public static Uncertain BendingStiffnessNm2(string text, string name)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        var mark = DecimalMark.Point;
        return QuantityText.TryRead(OneWord(text), Dimension.BendingStiffness, QuantityRange.Positive, ref mark, out var reading, out var fault)
            ? Uncertain.Input(name, reading!.SiValue, reading.SiStandardUncertainty)
            : throw new InputException(new InputProblem(name, null, null, fault.Found, fault.Expected));
    }

    /// <summary>Makes a quantity of a result calculated in SI base units (m, kg, kg/m, N, Hz, s, rad); it is shown in mm, g, g/m, N, Hz, s or mrad.</summary>
    /// <param name="si">The result.</param>
    /// <param name="takenAs">In words where its uncertainty comes from.</param>
    /// <exception cref="NotSupportedException">A UnitsNet type that Waywright has no units for.</exception>
    public static Measured<TQuantity> FromSi<TQuantity>(Uncertain si, string takenAs)
        where TQuantity : struct, IQuantity
    {
        ArgumentNullException.ThrowIfNull(si);
        ArgumentNullException.ThrowIfNull(takenAs);
        return new(si, UnitTable.Shown(QuantityKind<TQuantity>.Known.Dimension), takenAs);
    }

    // A product of units is written in many ways; the unit table knows it as one word.
    private static string OneWord(string text)
    {
        var plain = text.Replace("\u00B2", "2", StringComparison.Ordinal).Replace("^", "", StringComparison.Ordinal);
        foreach (var sign in (ReadOnlySpan<char>)[' ', '.', '*', '\u00B7', '\u22C5'])
            plain = plain.Replace($"N{sign}m", "Nm", StringComparison.Ordinal);
        return plain;
    }

    /// <summary>A literal: exact until an uncertainty is given to it.</summary>
    internal static Measured<TQuantity> Literal<TQuantity>(double value, Unit unit)
        where TQuantity : struct, IQuantity
        => double.IsFinite(value)
            ? new(QuantityReading.Exact(value, unit), null)
            : throw new ArgumentOutOfRangeException(nameof(value), value, $"A finite number of {unit} is needed.");

    /// <summary>As <see cref="ReadPositive{TQuantity}(string, string)"/>, but notes a problem and gives null, so that several texts can be checked in one go.</summary>
    internal static Measured<TQuantity>? ReadPositive<TQuantity>(string text, string name, List<InputProblem> problems)
        where TQuantity : struct, IQuantity
    {
        try
        {
            return ReadPositive<TQuantity>(text, name);
        }
        catch (InputException e)
        {
            problems.AddRange(e.Problems);
            return null;
        }
    }

    private static Measured<TQuantity> Parse<TQuantity>(string text, string name, QuantityRange range)
        where TQuantity : struct, IQuantity
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        var mark = DecimalMark.Point;
        return QuantityText.TryRead(text, QuantityKind<TQuantity>.Known.Dimension, range, ref mark, out var reading, out var fault)
            ? new(reading!, name)
            : throw new InputException(new InputProblem(name, null, null, fault.Found, fault.Expected));
    }
}
