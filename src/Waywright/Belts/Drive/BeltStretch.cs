using System;
using UnitsNet;

namespace Waywright;

/// <summary>What a belt's stretch stiffness EA (its specific stiffness in makers' tables, N per unit strain) says of a drive.</summary>
public static class BeltStretch
{
    /// <summary>Expansion of E-glass cord along, 1/K: W. D. Callister, Fundamentals of Materials Science and Engineering, 3rd ed., Table B.6.</summary>
    public const double GlassPerK = 5.0e-6;

    /// <summary>Of aramid cord along, 1/K: the same table.</summary>
    public const double AramidPerK = -2.0e-6;

    /// <summary>Of aluminium, 1/K: a machine maker's property table.</summary>
    public const double AluminiumPerK = 23.6e-6;

    /// <summary>Of carbon steel, cord or frame, 1/K: weak source, a value of handbooks.</summary>
    public const double SteelPerK = 11.7e-6;

    /// <summary>Stiffness with which a carriage is held between its two sides of belt: k = EA (1 / L1 + 1 / L2), N/m.</summary>
    /// <param name="stretchStiffness">EA, above 0.</param>
    /// <param name="oneSide">L1, from carriage to motor pulley, above 0.</param>
    /// <param name="otherSide">L2, the rest of the belt, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">One of them is not above 0.</exception>
    public static Uncertain SpringNPerM(Measured<Force> stretchStiffness, Measured<Length> oneSide, Measured<Length> otherSide)
        => Above(stretchStiffness, nameof(stretchStiffness)) * ((1 / Above(oneSide, nameof(oneSide))) + (1 / Above(otherSide, nameof(otherSide))));

    /// <summary>The note at which a carriage swings on its belt: f = sqrt(k / m) / (2 pi), motor held.</summary>
    /// <param name="stretchStiffness">EA, above 0.</param>
    /// <param name="oneSide">L1, above 0.</param>
    /// <param name="otherSide">L2, above 0.</param>
    /// <param name="mass">Moved mass, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">One of them is not above 0.</exception>
    public static Measured<Frequency> CarriageFrequency(Measured<Force> stretchStiffness, Measured<Length> oneSide, Measured<Length> otherSide, Measured<Mass> mass)
        => Quantity.FromSi<Frequency>((SpringNPerM(stretchStiffness, oneSide, otherSide) / Above(mass, nameof(mass))).Sqrt() / (2 * Math.PI), "f = sqrt(EA (1 / L1 + 1 / L2) / m) / (2 pi)");

    /// <summary>What warmth adds to the tension of a belt in its frame: dT = EA (alpha_frame - alpha_cord) dTheta. Glass in aluminium gains 8 N in 10 K at EA 45 kN: note the temperature with each reading.</summary>
    /// <param name="stretchStiffness">EA, above 0.</param>
    /// <param name="framePerK">Expansion of the frame, 1/K.</param>
    /// <param name="cordPerK">Expansion of the cord along the belt, 1/K.</param>
    /// <param name="warmerByK">How much warmer than at the reading, K.</param>
    /// <exception cref="ArgumentOutOfRangeException">EA is not above 0.</exception>
    public static Measured<Force> TensionChange(Measured<Force> stretchStiffness, Uncertain framePerK, Uncertain cordPerK, Uncertain warmerByK)
    {
        ArgumentNullException.ThrowIfNull(framePerK);
        return Quantity.FromSi<Force>(Above(stretchStiffness, nameof(stretchStiffness)) * (framePerK - cordPerK) * warmerByK, "dT = EA (alpha_frame - alpha_cord) dTheta");
    }

    /// <summary>First guess of what a tensioner does: EA / L for each metre that it takes up, here N per mm. Frame and brackets give way too: measure the gain (<see cref="ScrewGain"/>).</summary>
    /// <param name="stretchStiffness">EA, above 0.</param>
    /// <param name="beltLength">Length of belt that shares the stretch, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">One of them is not above 0.</exception>
    public static Uncertain GuessedGainNPerMm(Measured<Force> stretchStiffness, Measured<Length> beltLength)
        => Above(stretchStiffness, nameof(stretchStiffness)) / Above(beltLength, nameof(beltLength)) / 1000;

    private static Uncertain Above<TQuantity>(Measured<TQuantity> quantity, string name)
        where TQuantity : struct, IQuantity
    {
        ArgumentNullException.ThrowIfNull(quantity, name);
        return quantity.Si.Value > 0 ? quantity.Si : throw new ArgumentOutOfRangeException(name, quantity.ToString(), "A value above 0 is needed.");
    }
}
