using System.Diagnostics.CodeAnalysis;
using System.Numerics;
using UnitsNet;

namespace Waywright;

/// <summary>
/// Quantities as a cell writes them: <c>180.mm</c>, <c>8.1.g_per_m</c>, <c>96.Hz</c>, <c>9.N</c>, then <c>.PlusMinus(0.5.mm)</c> (limits) or
/// <c>.WithUncertainty(0.2.mm)</c> (standard). Each is exact as it stands. A negative one needs brackets: <c>(-5).mm</c>.
/// </summary>
/// <remarks>
/// Names are the units' symbols with <c>_per_</c> for the slash that C# can't have in a name; <c>inch</c>, because <c>in</c> is a word of the language.
/// All throw <see cref="System.ArgumentOutOfRangeException"/> for a number that is not finite.
/// </remarks>
[SuppressMessage("Naming", "CA1707", Justification = "A unit's symbol with _per_ for its slash reads better than a run-together word.")]
[SuppressMessage("Naming", "CA1708", Justification = "mN and MN, g and G are different units: the symbols' capitals matter.")]
public static class QuantityLiterals
{
    extension<TNumber>(TNumber number)
        where TNumber : INumber<TNumber>
    {
        /// <summary>Millimetres.</summary>
        public Measured<Length> mm => Quantity.Literal<Length>(double.CreateChecked(number), UnitTable.Millimetre);

        /// <summary>Centimetres.</summary>
        public Measured<Length> cm => Quantity.Literal<Length>(double.CreateChecked(number), UnitTable.Centimetre);

        /// <summary>Metres.</summary>
        public Measured<Length> m => Quantity.Literal<Length>(double.CreateChecked(number), UnitTable.Metre);

        /// <summary>Micrometres.</summary>
        public Measured<Length> um => Quantity.Literal<Length>(double.CreateChecked(number), UnitTable.Micrometre);

        /// <summary>Inches of 25.4 mm.</summary>
        public Measured<Length> inch => Quantity.Literal<Length>(double.CreateChecked(number), UnitTable.Inch);

        /// <summary>Grams.</summary>
        public Measured<Mass> g => Quantity.Literal<Mass>(double.CreateChecked(number), UnitTable.Gram);

        /// <summary>Kilograms.</summary>
        public Measured<Mass> kg => Quantity.Literal<Mass>(double.CreateChecked(number), UnitTable.Kilogram);

        /// <summary>Milligrams.</summary>
        public Measured<Mass> mg => Quantity.Literal<Mass>(double.CreateChecked(number), UnitTable.Milligram);

        /// <summary>Grams per metre.</summary>
        public Measured<LinearDensity> g_per_m => Quantity.Literal<LinearDensity>(double.CreateChecked(number), UnitTable.GramPerMetre);

        /// <summary>Kilograms per metre.</summary>
        public Measured<LinearDensity> kg_per_m => Quantity.Literal<LinearDensity>(double.CreateChecked(number), UnitTable.KilogramPerMetre);

        /// <summary>Milligrams per millimetre, the same as grams per metre.</summary>
        public Measured<LinearDensity> mg_per_mm => Quantity.Literal<LinearDensity>(double.CreateChecked(number), UnitTable.MilligramPerMillimetre);

        /// <summary>Newtons.</summary>
        public Measured<Force> N => Quantity.Literal<Force>(double.CreateChecked(number), UnitTable.Newton);

        /// <summary>Millinewtons.</summary>
        public Measured<Force> mN => Quantity.Literal<Force>(double.CreateChecked(number), UnitTable.Millinewton);

        /// <summary>Kilonewtons.</summary>
        public Measured<Force> kN => Quantity.Literal<Force>(double.CreateChecked(number), UnitTable.Kilonewton);

        /// <summary>Kilogram-force, 9.80665 N.</summary>
        public Measured<Force> kgf => Quantity.Literal<Force>(double.CreateChecked(number), UnitTable.KilogramForce);

        /// <summary>Pound-force, 4.4482216152605 N.</summary>
        public Measured<Force> lbf => Quantity.Literal<Force>(double.CreateChecked(number), UnitTable.PoundForce);

        /// <summary>Hertz.</summary>
        public Measured<Frequency> Hz => Quantity.Literal<Frequency>(double.CreateChecked(number), UnitTable.Hertz);

        /// <summary>Kilohertz.</summary>
        public Measured<Frequency> kHz => Quantity.Literal<Frequency>(double.CreateChecked(number), UnitTable.Kilohertz);

        /// <summary>Seconds.</summary>
        public Measured<Duration> s => Quantity.Literal<Duration>(double.CreateChecked(number), UnitTable.Second);

        /// <summary>Milliseconds.</summary>
        public Measured<Duration> ms => Quantity.Literal<Duration>(double.CreateChecked(number), UnitTable.Millisecond);

        /// <summary>Radians.</summary>
        public Measured<Angle> rad => Quantity.Literal<Angle>(double.CreateChecked(number), UnitTable.Radian);

        /// <summary>Milliradians.</summary>
        public Measured<Angle> mrad => Quantity.Literal<Angle>(double.CreateChecked(number), UnitTable.Milliradian);

        /// <summary>Degrees of arc.</summary>
        public Measured<Angle> deg => Quantity.Literal<Angle>(double.CreateChecked(number), UnitTable.Degree);
    }
}
