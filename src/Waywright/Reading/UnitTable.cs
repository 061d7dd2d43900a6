using System;
using System.Collections.Generic;
using System.Linq;

namespace Waywright;

/// <summary>
/// The units that are read, in the order in which messages name them; the first of a dimension is the one that results are shown in.
/// Symbols follow the SI brochure (9th edition, tables 2 to 8). Factors are exact: inch 0.0254 m and pound 0.453 592 37 kg (international
/// yard and pound agreement, 1959), standard gravity 9.806 65 m/s2 (3rd CGPM, 1901), hence lbf = 0.453 592 37 x 9.806 65 N; NIST SP 811, appendix B.
/// </summary>
internal static class UnitTable
{
    public static readonly Unit Millimetre = new("mm", Dimension.Length, 1, 1000);
    public static readonly Unit Centimetre = new("cm", Dimension.Length, 1, 100);
    public static readonly Unit Metre = new("m", Dimension.Length, 1);
    public static readonly Unit Micrometre = new("um", Dimension.Length, 1, 1e6);
    public static readonly Unit Inch = new("in", Dimension.Length, 254, 10000);
    public static readonly Unit Gram = new("g", Dimension.Mass, 1, 1000);
    public static readonly Unit Kilogram = new("kg", Dimension.Mass, 1);
    public static readonly Unit Milligram = new("mg", Dimension.Mass, 1, 1e6);
    public static readonly Unit GramPerMetre = new("g/m", Dimension.LinearDensity, 1, 1000);
    public static readonly Unit KilogramPerMetre = new("kg/m", Dimension.LinearDensity, 1);
    public static readonly Unit MilligramPerMillimetre = new("mg/mm", Dimension.LinearDensity, 1, 1000);
    public static readonly Unit Newton = new("N", Dimension.Force, 1);
    public static readonly Unit Millinewton = new("mN", Dimension.Force, 1, 1000);
    public static readonly Unit Kilonewton = new("kN", Dimension.Force, 1000);
    public static readonly Unit KilogramForce = new("kgf", Dimension.Force, 980665, 100000);
    public static readonly Unit PoundForce = new("lbf", Dimension.Force, 44482216152605, 1e13);
    public static readonly Unit Hertz = new("Hz", Dimension.Frequency, 1);
    public static readonly Unit Kilohertz = new("kHz", Dimension.Frequency, 1000);
    public static readonly Unit Second = new("s", Dimension.Time, 1);
    public static readonly Unit Millisecond = new("ms", Dimension.Time, 1, 1000);
    public static readonly Unit Milliradian = new("mrad", Dimension.Angle, 1, 1000);
    public static readonly Unit Radian = new("rad", Dimension.Angle, 1);
    public static readonly Unit Degree = new("deg", Dimension.Angle, Math.PI, 180);

    public static readonly Unit NewtonSquareMillimetre = new("Nmm2", Dimension.BendingStiffness, 1, 1e6);
    public static readonly Unit NewtonSquareMetre = new("Nm2", Dimension.BendingStiffness, 1);

    private static readonly Unit[] Units =
    [
        Millimetre, Centimetre, Metre, Micrometre, Inch,
        Gram, Kilogram, Milligram,
        GramPerMetre, KilogramPerMetre, MilligramPerMillimetre,
        Newton, Millinewton, Kilonewton, KilogramForce, PoundForce,
        Hertz, Kilohertz,
        Second, Millisecond,
        Milliradian, Radian, Degree,
        NewtonSquareMillimetre, NewtonSquareMetre,
    ];

    // Both micro signs (U+00B5 and the Greek letter U+03BC) and the degree sign are what keyboards and documents give.
    private static readonly (string Written, Unit Unit)[] Aliases = [("\u00B5m", Micrometre), ("\u03BCm", Micrometre), ("\u00B0", Degree)];

    public static IReadOnlyList<Unit> All => Units;

    public static Unit? Find(ReadOnlySpan<char> written)
    {
        foreach (var unit in Units)
        {
            if (written.SequenceEqual(unit.Symbol))
                return unit;
        }

        foreach (var alias in Aliases)
        {
            if (written.SequenceEqual(alias.Written))
                return alias.Unit;
        }

        return null;
    }

    /// <summary>The unit that results of this dimension are shown in.</summary>
    public static Unit Shown(Dimension dimension) => Units.First(u => u.Dimension == dimension);

    /// <summary>The SI unit itself.</summary>
    public static Unit Si(Dimension dimension) => Units.First(u => u.Dimension == dimension && u is { Multiplier: 1, Divisor: 1 });

    /// <summary><c>mm, cm, m, um, in</c>.</summary>
    public static string Symbols(Dimension dimension) => string.Join(", ", Units.Where(u => u.Dimension == dimension).Select(u => u.Symbol));

    /// <summary><c>a length</c>.</summary>
    public static string Name(Dimension dimension) => dimension switch
    {
        Dimension.Length => "a length",
        Dimension.Mass => "a mass",
        Dimension.LinearDensity => "a linear density",
        Dimension.Force => "a force",
        Dimension.Frequency => "a frequency",
        Dimension.Time => "a time",
        Dimension.BendingStiffness => "a bending stiffness",
        _ => "an angle",
    };

    /// <summary>How one is written.</summary>
    public static string Example(Dimension dimension) => dimension switch
    {
        Dimension.Length => "180 mm",
        Dimension.Mass => "25 g",
        Dimension.LinearDensity => "8.1 g/m",
        Dimension.Force => "9 N",
        Dimension.Frequency => "96 Hz",
        Dimension.Time => "2 s",
        Dimension.BendingStiffness => "40 Nmm2",
        _ => "1.5 deg",
    };
}
