namespace Waywright;

/// <summary>What a quantity is, in the words that messages use.</summary>
internal enum Dimension
{
    Length,
    Mass,
    LinearDensity,
    Force,
    Frequency,
    Time,
    Angle,
    BendingStiffness,
}

/// <summary>A unit and its exact factor to the SI unit, kept as multiplier and divisor so that 180 mm is 0.18 m to the last bit.</summary>
/// <param name="Symbol">As it is printed, in ASCII; capitals matter.</param>
/// <param name="Dimension">What it measures.</param>
/// <param name="Multiplier">SI value = number x multiplier / divisor.</param>
/// <param name="Divisor">See <paramref name="Multiplier"/>.</param>
internal sealed record Unit(string Symbol, Dimension Dimension, double Multiplier, double Divisor = 1)
{
    public double ToSi(double number) => number * Multiplier / Divisor;

    public double FromSi(double si) => si * Divisor / Multiplier;

    public override string ToString() => Symbol;
}
