using System;
using System.Collections.Generic;
using System.Linq;
using UnitsNet;

namespace Waywright;

/// <summary>What tables say of a belt's profile and build, per width: a start to edit, with the status of each value.</summary>
/// <param name="Name">Profile and build.</param>
/// <param name="PitchMm">Pitch, mm.</param>
/// <param name="DensityGPerMPerMm">Grams per metre and millimetre of width; null if not tabled.</param>
/// <param name="DensitySource">Where from, or <c>memory</c>.</param>
/// <param name="AllowableNPerInch">Allowable working tension per inch of width, N; null if not tabled.</param>
/// <param name="StretchNPerMm">EA per width, N/mm; null if not tabled.</param>
public sealed record BeltKind(string Name, double PitchMm, double? DensityGPerMPerMm, string DensitySource, double? AllowableNPerInch, double? StretchNPerMm)
{
    /// <summary>Exponent with which narrow belts carry less than their share: width factor (b / b0)^1.14 (ISO 5295, from memory).</summary>
    private const double WidthExponent = 1.14;
    private const double InchMm = 25.4;

    /// <summary>Allowable tensions: SDP/SI handbook D265, Table 3, printed. Densities and EA: makers' catalogues as named, computed per width from printed values.</summary>
    public static IReadOnlyList<BeltKind> Known { get; } = FixedList<BeltKind>.Copy(
    [
        new("2 mm curvilinear, rubber with glass cord", 2, 1.4, "memory", 111, null),
        new("3 mm curvilinear, rubber with glass cord", 3, 2.8, "memory", 507, null),
        new("5 mm curvilinear, rubber with glass cord", 5, 4.1, "a maker's catalogue, UP5M, 41.0 g/m for 10 mm", 712, null),
        new("MXL, neoprene", 2.032, null, "not tabled", 80, null),
        new("XL, neoprene", 5.08, null, "not tabled", 125, null),
        new("HTD 3 mm, neoprene", 3, null, "not tabled", 285, null),
        new("HTD 5 mm, neoprene", 5, null, "not tabled", 454, null),
        new("T2.5, polyurethane with steel cord", 2.5, 1.1, "a maker's catalogue of 2012, 0.022 kg/m for 20 mm", 312, 6750),
        new("T5, polyurethane with steel cord", 5, 2.1, "a maker's catalogue of 2012, 0.105 kg/m for 50 mm", 930, 9000),
        new("XL, polyurethane with steel cord", 5.08, 2.4, "a maker's catalogue of 2012, 0.061 kg/m for 25.4 mm", null, 7100),
        new("HTD 3M, polyurethane with steel cord", 3, 2.0, "a maker's data page, 0.05 kg/m for 25 mm", null, 9000),
        new("HTD 5M, polyurethane with steel cord", 5, 4.8, "a maker's catalogue of 2012, 0.12 kg/m for 25 mm", null, 25300),
    ]);

    /// <summary>A kind by the start of its name.</summary>
    /// <exception cref="ArgumentException">No such kind, or several.</exception>
    public static BeltKind Of(string name)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        BeltKind[] found = [.. Known.Where(k => k.Name.StartsWith(name, StringComparison.OrdinalIgnoreCase))];
        return found.Length == 1 ? found[0] : throw new ArgumentException($"'{name}' names {(found.Length == 0 ? "no belt" : "several belts")} of the table: {string.Join("; ", Known.Select(k => k.Name))}.", nameof(name));
    }

    /// <summary>Mass per length of a width, +/- 10 % as for any belt that is not the printed one (common practice, no source): weigh a piece soon.</summary>
    /// <param name="width">Above 0.</param>
    /// <exception cref="InvalidOperationException">The density is not tabled.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A width not above 0.</exception>
    public BeltDensity Density(Measured<Length> width)
    {
        var mm = Millimetres(width);
        var grams = DensityGPerMPerMm ?? throw new InvalidOperationException($"No density is tabled for {Name}: weigh a piece.");
        return BeltDensity.Handbook($"{NumberText.Significant(grams * mm, 3)} g/m", $"{Name}, {DensitySource}", isThisBelt: false);
    }

    /// <summary>Allowable working tension of a width: per inch x (b / 25.4)^1.14 for narrow ones, in proportion above an inch. Null if not tabled.</summary>
    /// <param name="width">Above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">A width not above 0.</exception>
    public double? AllowableN(Measured<Length> width)
    {
        var inches = Millimetres(width) / InchMm;
        return AllowableNPerInch * (inches < 1 ? Math.Pow(inches, WidthExponent) : inches);
    }

    /// <summary>EA of a width, N; null if not tabled.</summary>
    /// <param name="width">Above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">A width not above 0.</exception>
    public double? StretchStiffnessN(Measured<Length> width) => StretchNPerMm * Millimetres(width);

    private static double Millimetres(Measured<Length> width)
    {
        ArgumentNullException.ThrowIfNull(width);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(width.Si.Value, nameof(width));
        return 1000 * width.Si.Value;
    }
}
