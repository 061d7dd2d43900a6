using System;
using UnitsNet;

namespace Waywright;

/// <summary>What ties a UnitsNet type to a dimension: a delegate for each, so that nothing is looked up by reflection.</summary>
internal sealed class QuantityKind<TQuantity>(Dimension dimension, Func<double, TQuantity> fromSi)
    where TQuantity : struct, IQuantity
{
    /// <summary>The kind of this type.</summary>
    /// <exception cref="NotSupportedException">A UnitsNet type that Waywright has no units for.</exception>
    public static QuantityKind<TQuantity> Known => QuantityKinds.Find(typeof(TQuantity)) as QuantityKind<TQuantity>
        ?? throw new NotSupportedException($"{typeof(TQuantity).Name} is not among the quantities read here: Length, Mass, LinearDensity, Force, Frequency, Duration, Angle.");

    public Dimension Dimension { get; } = dimension;

    public TQuantity FromSi(double value) => fromSi(value);
}

internal static class QuantityKinds
{
    private static readonly QuantityKind<Length> Length = new(Dimension.Length, value => UnitsNet.Length.FromMeters(value));
    private static readonly QuantityKind<Mass> Mass = new(Dimension.Mass, value => UnitsNet.Mass.FromKilograms(value));
    private static readonly QuantityKind<LinearDensity> LinearDensity = new(Dimension.LinearDensity, value => UnitsNet.LinearDensity.FromKilogramsPerMeter(value));
    private static readonly QuantityKind<Force> Force = new(Dimension.Force, value => UnitsNet.Force.FromNewtons(value));
    private static readonly QuantityKind<Frequency> Frequency = new(Dimension.Frequency, value => UnitsNet.Frequency.FromHertz(value));
    private static readonly QuantityKind<Duration> Time = new(Dimension.Time, value => UnitsNet.Duration.FromSeconds(value));
    private static readonly QuantityKind<Angle> Angle = new(Dimension.Angle, value => UnitsNet.Angle.FromRadians(value));

    public static object? Find(Type quantity)
    {
        if (quantity == typeof(Length))
            return Length;
        if (quantity == typeof(Mass))
            return Mass;
        if (quantity == typeof(LinearDensity))
            return LinearDensity;
        if (quantity == typeof(Force))
            return Force;
        if (quantity == typeof(Frequency))
            return Frequency;
        if (quantity == typeof(Duration))
            return Time;
        return quantity == typeof(Angle) ? Angle : null;
    }
}
