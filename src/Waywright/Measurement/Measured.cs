using System;
using UnitsNet;

namespace Waywright;

/// <summary>
/// A quantity with its uncertainty: <see cref="Uncertain"/> in SI base units behind a typed edge, so that a length can't be passed for a density.
/// Made by <see cref="Quantity"/> from text, or from a literal: <c>180.mm.PlusMinus(0.5.mm)</c>.
/// </summary>
/// <remarks>
/// Equal are those with equal SI value, inputs and shown unit; the UnitsNet values stand in signatures only and are not compared, printed or parsed
/// (to UnitsNet 150 mm and 15 cm are unequal, and it reads 150,5 mm as 1505 mm).
/// </remarks>
/// <typeparam name="TQuantity">Length, Mass, LinearDensity, Force, Frequency, Duration or Angle of UnitsNet.</typeparam>
public sealed class Measured<TQuantity> : IEquatable<Measured<TQuantity>>
    where TQuantity : struct, IQuantity
{
    private readonly QuantityReading? _reading;

    internal Measured(Uncertain si, Unit unit, string takenAs, QuantityReading? reading = null)
    {
        Si = si;
        Unit = unit;
        TakenAs = takenAs;
        _reading = reading;
    }

    /// <summary>From a reading: an input of its own, named, or known only to itself.</summary>
    internal Measured(QuantityReading reading, string? name)
        : this(new object(), reading, name, double.PositiveInfinity)
    {
    }

    private Measured(object identity, QuantityReading reading, string? name, double degreesOfFreedom)
        : this(Uncertain.Input(name ?? identity, name, reading.SiValue, reading.SiStandardUncertainty, degreesOfFreedom), reading.Unit, reading.TakenAs)
        => _reading = reading;

    /// <summary>The value.</summary>
    public TQuantity Value => QuantityKind<TQuantity>.Known.FromSi(Si.Value);

    /// <summary>Standard uncertainty; zero where none was given.</summary>
    public TQuantity StandardUncertainty => QuantityKind<TQuantity>.Known.FromSi(Si.StandardUncertainty);

    /// <summary>The same in SI base units (m, kg, kg/m, N, Hz, s, rad), to calculate with.</summary>
    public Uncertain Si { get; }

    /// <summary>How the uncertainty was taken, in words.</summary>
    public string TakenAs { get; }

    internal Unit Unit { get; }

    /// <summary>Value +/- limit: anywhere between the limits is equally likely, u = limit / sqrt 3 (JCGM 100:2008, 4.3.7).</summary>
    /// <param name="limit">Half of the width between the limits, 0 or more, without an uncertainty of its own.</param>
    /// <exception cref="ArgumentOutOfRangeException">The limit is negative.</exception>
    /// <exception cref="ArgumentException">The limit carries an uncertainty.</exception>
    /// <exception cref="InvalidOperationException">This is not an exact literal.</exception>
    public Measured<TQuantity> PlusMinus(Measured<TQuantity> limit)
        => With(QuantityReading.Limits(Literal.Value, Given(limit), Literal.Unit), double.PositiveInfinity);

    /// <summary>Value with a standard uncertainty u.</summary>
    /// <param name="standardUncertainty">u, 0 or more, without an uncertainty of its own.</param>
    /// <param name="degreesOfFreedom">1 or more; infinite (the default) for a stated uncertainty, n - 1 for one from n repeats.</param>
    /// <exception cref="ArgumentOutOfRangeException">u is negative, or there is less than one degree of freedom.</exception>
    /// <exception cref="ArgumentException">u carries an uncertainty.</exception>
    /// <exception cref="InvalidOperationException">This is not an exact literal.</exception>
    public Measured<TQuantity> WithUncertainty(Measured<TQuantity> standardUncertainty, double degreesOfFreedom = double.PositiveInfinity)
    {
        var reading = QuantityReading.Standard(Literal.Value, Given(standardUncertainty), Literal.Unit);
        return double.IsPositiveInfinity(degreesOfFreedom)
            ? With(reading, degreesOfFreedom)
            : With(reading with { TakenAs = $"{reading.TakenAs} with {NumberText.Plain(degreesOfFreedom)} degrees of freedom" }, degreesOfFreedom);
    }

    /// <summary>The same as an input of this name: wherever the name is met it is the same measurement, and it stands in the budget by it.</summary>
    /// <exception cref="ArgumentException">The name is empty.</exception>
    /// <exception cref="InvalidOperationException">This was calculated from inputs, so it is none.</exception>
    public Measured<TQuantity> Named(string name)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        return Source is { } input
            ? new(Uncertain.Input(name, input.Value, input.StandardUncertainty, input.DegreesOfFreedom), Unit, TakenAs, _reading)
            : throw new InvalidOperationException("A calculated quantity can't be named as an input: name what it was calculated from.");
    }

    /// <summary>The 95 % interval in words, in the unit it was given in: <c>180.00 mm U 0.57 mm k 1.96 (95 %)</c>, two significant digits of U. Read back by <see cref="Quantity"/>.</summary>
    public override string ToString() => UncertainText.Full(Si, Unit);

    /// <summary><c>180.00 mm (179.43 to 180.57)</c>: the value and its 95 % interval.</summary>
    public string ToShortString() => UncertainText.Short(Si, Unit);

    /// <summary>Equal in SI value, inputs and shown unit.</summary>
    public bool Equals(Measured<TQuantity>? other) => other is not null && Si.Equals(other.Si) && Unit == other.Unit;

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as Measured<TQuantity>);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Si, Unit);

    /// <summary>The same input under the name that its place gives it, if it has none yet.</summary>
    internal Measured<TQuantity> AsInput(string role) => Source is { Name: null } ? Called(role) : this;

    /// <summary>The same input under another name in budgets; its identity stays, and a name that is its identity too.</summary>
    internal Measured<TQuantity> Called(string name)
        => Source is { IsNamed: false } input
            ? new(Uncertain.Input(input.Identity, name, input.Value, input.StandardUncertainty, input.DegreesOfFreedom), Unit, TakenAs, _reading)
            : this;

    /// <summary>The one input that this is; null for what was calculated.</summary>
    private UncertainInput? Source => Si.Terms is [{ Sensitivity: 1 } only] && only.Input.Value.Equals(Si.Value) ? only.Input : null;

    private QuantityReading Literal => _reading is { StandardUncertainty: 0 }
        ? _reading
        : throw new InvalidOperationException($"An uncertainty is given to an exact literal such as 180.mm; this one is taken already: {TakenAs}.");

    private Measured<TQuantity> With(QuantityReading reading, double degreesOfFreedom)
        => new(new object(), reading, Source is { IsNamed: true } input ? input.Name : null, degreesOfFreedom);

    private double Given(Measured<TQuantity> uncertainty)
    {
        ArgumentNullException.ThrowIfNull(uncertainty);
        if (uncertainty.Si.StandardUncertainty > 0)
            throw new ArgumentException("An uncertainty is given as a plain quantity, without one of its own.", nameof(uncertainty));
        ArgumentOutOfRangeException.ThrowIfNegative(uncertainty.Si.Value, nameof(uncertainty));
        return uncertainty._reading is { } same && same.Unit == Unit ? same.Value : Unit.FromSi(uncertainty.Si.Value);
    }
}
