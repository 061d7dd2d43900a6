using System;
using System.Globalization;

namespace Waywright;

/// <summary>A straight bar as warmth sees it.</summary>
/// <param name="YoungGPa">Young's modulus E, GPa, 1 to 1000; about 206 for steel, 70 for aluminium.</param>
/// <param name="AreaMm2">Area of its section A, mm2, above 0.</param>
/// <param name="MomentMm4">Second moment of area I about the axis that it bends about, mm4, above 0.</param>
/// <param name="ToJointMm">From its centroid to the face where both bars meet, mm, above 0.</param>
/// <param name="ExpansionPerMK">Thermal expansion, um per metre and kelvin, 0 to 100; about 11.5 for steel, 23 for aluminium.</param>
/// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
public sealed record BarSection(double YoungGPa, double AreaMm2, double MomentMm4, double ToJointMm, double ExpansionPerMK)
{
    /// <summary>Young's modulus, GPa.</summary>
    public double YoungGPa { get; } = Within(YoungGPa, 1, 1000, nameof(YoungGPa));

    /// <summary>Area of the section, mm2.</summary>
    public double AreaMm2 { get; } = Within(AreaMm2, 1e-3, 1e7, nameof(AreaMm2));

    /// <summary>Second moment of area, mm4.</summary>
    public double MomentMm4 { get; } = Within(MomentMm4, 1e-6, 1e12, nameof(MomentMm4));

    /// <summary>From centroid to joint, mm.</summary>
    public double ToJointMm { get; } = Within(ToJointMm, 1e-3, 1e4, nameof(ToJointMm));

    /// <summary>Thermal expansion, um/(m K).</summary>
    public double ExpansionPerMK { get; } = Within(ExpansionPerMK, 0, 100, nameof(ExpansionPerMK));

    /// <summary>EI, N m2.</summary>
    public double BendingStiffnessNm2 => YoungGPa * MomentMm4 * 1e-3;

    /// <summary>EA, N.</summary>
    public double AxialStiffnessN => YoungGPa * AreaMm2 * 1e3;

    /// <summary>A full rectangle: A = b h, I = b h³ / 12, the joint at half its height.</summary>
    /// <param name="youngGPa">GPa.</param>
    /// <param name="widthMm">b, mm.</param>
    /// <param name="heightMm">h across the joint, mm.</param>
    /// <param name="expansionPerMK">um/(m K).</param>
    public static BarSection Rectangle(double youngGPa, double widthMm, double heightMm, double expansionPerMK)
        => new(youngGPa, widthMm * heightMm, widthMm * heightMm * heightMm * heightMm / 12, heightMm / 2, expansionPerMK);

    private static double Within(double value, double low, double high, string name)
        => value >= low && value <= high ? value : throw new ArgumentOutOfRangeException(name, value, string.Create(CultureInfo.InvariantCulture, $"{low} to {high} is possible."));
}
