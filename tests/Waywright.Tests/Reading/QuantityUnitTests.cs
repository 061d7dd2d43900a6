using UnitsNet;

namespace Waywright.Tests;

public sealed class QuantityUnitTests
{
    // Another library's factors: UnitsNet converts one of each unit to SI.
    [Fact]
    public void Every_factor_agrees_with_a_general_units_library()
    {
        var others = new Dictionary<string, double>
        {
            ["mm"] = Length.FromMillimeters(1).Meters,
            ["cm"] = Length.FromCentimeters(1).Meters,
            ["m"] = Length.FromMeters(1).Meters,
            ["um"] = Length.FromMicrometers(1).Meters,
            ["in"] = Length.FromInches(1).Meters,
            ["g"] = Mass.FromGrams(1).Kilograms,
            ["kg"] = Mass.FromKilograms(1).Kilograms,
            ["mg"] = Mass.FromMilligrams(1).Kilograms,
            ["g/m"] = LinearDensity.FromGramsPerMeter(1).KilogramsPerMeter,
            ["kg/m"] = LinearDensity.FromKilogramsPerMeter(1).KilogramsPerMeter,
            ["mg/mm"] = LinearDensity.FromMilligramsPerMillimeter(1).KilogramsPerMeter,
            ["N"] = Force.FromNewtons(1).Newtons,
            ["mN"] = Force.FromMillinewtons(1).Newtons,
            ["kN"] = Force.FromKilonewtons(1).Newtons,
            ["kgf"] = Force.FromKilogramsForce(1).Newtons,
            ["lbf"] = Force.FromPoundsForce(1).Newtons,
            ["Hz"] = Frequency.FromHertz(1).Hertz,
            ["kHz"] = Frequency.FromKilohertz(1).Hertz,
            ["s"] = Duration.FromSeconds(1).Seconds,
            ["ms"] = Duration.FromMilliseconds(1).Seconds,
            ["mrad"] = Angle.FromMilliradians(1).Radians,
            ["rad"] = Angle.FromRadians(1).Radians,
            ["deg"] = Angle.FromDegrees(1).Radians,
            ["Nmm2"] = Force.FromNewtons(1).Newtons * Area.FromSquareMillimeters(1).SquareMeters,
            ["Nm2"] = Force.FromNewtons(1).Newtons * Area.FromSquareMeters(1).SquareMeters,
        };
        Assert.Equal(others.Keys.Order(StringComparer.Ordinal), UnitTable.All.Select(u => u.Symbol).Order(StringComparer.Ordinal));
        Assert.All(UnitTable.All, unit => Assert.Equal(others[unit.Symbol], unit.ToSi(1), Math.Abs(others[unit.Symbol]) * 1e-14));
    }

    [Fact]
    public void Every_unit_goes_to_SI_and_back()
        => Assert.All(UnitTable.All, unit => Assert.Equal(12.7, unit.FromSi(unit.ToSi(12.7)), 1e-14 * 12.7));

    [Fact]
    public void Every_dimension_has_a_name_an_example_and_its_SI_unit()
        => Assert.All(Enum.GetValues<Dimension>(), dimension =>
        {
            var mark = DecimalMark.Point;
            Assert.Equal(1, UnitTable.Si(dimension).ToSi(1));
            Assert.StartsWith("a", UnitTable.Name(dimension), StringComparison.Ordinal);
            Assert.True(QuantityText.TryRead(UnitTable.Example(dimension), dimension, QuantityRange.Positive, ref mark, out _, out _));
        });
}
