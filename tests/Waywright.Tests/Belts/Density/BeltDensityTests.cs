using Waywright.Tests.Reference;

namespace Waywright.Tests;

public sealed class BeltDensityTests
{

    // JCGM 100:2008, 4.3.7 and 5.1.2: two readings to q, each u = q / sqrt 12; 4.9 m of 8.4 g/m on a 1 g scale for 1 %.
    [Fact]
    public void A_piece_weighed_to_a_gram_must_be_long()
    {
        Assert.Equal(4.86, BeltDensity.MetresToWeigh(0.01, 0.0084, 0.001), 0.005);
        var belt = BeltDensity.Weigh([(42.g, 5.m)], 1.g);
        Assert.Equal(0.0084, belt.Density.Si.Value, 1e-15);
        Assert.Equal(0.001 * Math.Sqrt(2 / 12.0) / 5, belt.Density.Si.StandardUncertainty, 1e-12);
        Assert.Null(belt.IsConsistent);
        Assert.Contains("Lay about 100 g on the pan first", belt.Next, StringComparison.Ordinal);
    }

    // Weighted least squares of m = mu L through the origin: mu = sum(L m) / sum(L2) for equal variances; u = q sqrt(2/12) / sqrt(sum L2).
    [Fact]
    public void Several_pieces_are_one_line_through_the_origin()
    {
        var belt = BeltDensity.Weigh([(8.g, 1.m), (17.g, 2.m), (25.g, 3.m)], 1.g);
        Assert.Equal(((8 * 1) + (17 * 2) + (25 * 3)) / 14.0 / 1000, belt.Density.Si.Value, 1e-15);
        Assert.Equal(0.001 * Math.Sqrt(2 / 12.0) / Math.Sqrt(14), belt.Density.Si.StandardUncertainty, 1e-12);
        Assert.True(belt.IsConsistent);
        var mixed = BeltDensity.Weigh([(8.g, 1.m), (17.g, 2.m), (40.g, 3.m)], 1.g);
        Assert.False(mixed.IsConsistent);
        Assert.StartsWith("Measure again: the readings differ by more than their uncertainties", mixed.Verdict, StringComparison.Ordinal);
    }

    // Tare: a scale that shows 98 g for 100 g reads 2 % light all along.
    [Fact]
    public void A_known_weight_on_the_pan_corrects_the_scale()
    {
        var belt = BeltDensity.Weigh([(42.g, 5.m)], 1.g, known: 100.g, knownReads: 98.g);
        Assert.Equal(0.0084 * 100 / 98, belt.Density.Si.Value, 1e-12);
        Assert.Contains("corrects the scale", belt.Status, StringComparison.Ordinal);
        Assert.DoesNotContain("Lay about 100 g", belt.Next, StringComparison.Ordinal);
    }

    // mu = m g / (4 L2 f2) with m = 1 kg, L = 0.5 m, f = 33.788... Hz worked by hand for 8.59 g/m; local gravity +/- 0.03 m/s2.
    [Fact]
    public void One_hung_mass_gives_the_density_of_an_ideal_string()
    {
        var f = Math.Sqrt(9.80665 / 0.00859) / (2 * 0.5);
        var belt = BeltDensity.Hang([(1.kg, 500.mm, f.Hz)]);
        Assert.Equal(0.00859, belt.Density.Si.Value, 1e-15);
        Assert.Null(belt.BendingStiffnessNm2);
        Assert.Equal(0.03 / Math.Sqrt(3) / 9.80665, belt.Density.Si.StandardUncertainty / belt.Density.Si.Value, 1e-12);
    }

    // Forward by the exact roots (checked against finite elements in TensionedBeamTests), back by the fit.
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    public void Two_masses_on_two_lengths_give_density_and_stiffness(int clamps)
    {
        const double mu = 0.0084, bending = 5e-5, g = 9.80665;
        double Note(double kg, double m) => TensionedBeam.FrequencyHz(1, kg * g, bending, mu, m, clamps);
        var belt = BeltDensity.Hang([(2.kg, 600.mm, Note(2, 0.6).Hz.WithUncertainty(0.05.Hz)), (0.5.kg, 120.mm, Note(0.5, 0.12).Hz.WithUncertainty(0.2.Hz))], clamps);
        Assert.Equal(mu, belt.Density.Si.Value, mu * 1e-9);
        Assert.Equal(bending, belt.BendingStiffnessNm2!.Value, bending * 1e-7);
        Assert.InRange(belt.BendingStiffnessNm2.StandardUncertainty, bending * 1e-3, bending);
        Assert.Null(belt.IsConsistent);
        var three = BeltDensity.Hang([(2.kg, 600.mm, Note(2, 0.6).Hz.WithUncertainty(0.05.Hz)), (0.5.kg, 120.mm, (Note(0.5, 0.12) * 1.02).Hz.WithUncertainty(0.2.Hz)), (1.kg, 300.mm, (Note(1, 0.3) * 0.995).Hz.WithUncertainty(0.05.Hz))], clamps);
        Assert.False(three.IsConsistent);
    }

    // A long span that sounds too high leaves less than no stiffness for the short one.
    [Fact]
    public void Notes_that_no_stiffness_explains_are_refused()
        => Assert.Contains("no stiffness explains them", Assert.Throws<ArgumentException>(() => BeltDensity.Hang([(2.kg, 600.mm, 41.Hz), (0.5.kg, 120.mm, 98.Hz)], 0)).Message, StringComparison.Ordinal);

    [Fact]
    public void Two_hangings_alike_tell_no_stiffness()
        => Assert.Throws<ArgumentException>(() => BeltDensity.Hang([(1.kg, 500.mm, 34.Hz), (1.kg, 500.mm, 34.Hz)]));

    // Reference/belts/belt_mass_stiffness_load.csv: half of the last printed digit of 0.004 kg/m is 12.5 %; 10 % for another maker's belt is common practice, no source.
    [Theory]
    [InlineData("0.004 kg/m", true, 0.125)]
    [InlineData("0.022 kg/m", true, 0.0005 / 0.022)]
    [InlineData("0.022 kg/m", false, 0.1)]
    [InlineData("0.004 kg/m", false, 0.125)]
    [InlineData("41.0 g/m", true, 0.05 / 41)]
    [InlineData("8 g/m", true, 0.5 / 8)]
    public void A_printed_value_is_known_to_half_of_its_last_digit_at_best(string printed, bool isThis, double limit)
    {
        var belt = BeltDensity.Handbook(printed, "a catalogue", isThis);
        Assert.Equal(limit / Math.Sqrt(3), belt.Density.Si.StandardUncertainty / belt.Density.Si.Value, 1e-12);
        Assert.StartsWith("handbook, not measured: a catalogue;", belt.Status, StringComparison.Ordinal);
        Assert.StartsWith("Weigh a piece before you trust a tension", belt.Next, StringComparison.Ordinal);
    }

    // Reference/belts/belt_mass_stiffness_load.csv and misumi_unit_mass_pld.csv: what the kinds' table holds lies within each printed value's half digit and the spread of its widths.
    [Theory]
    [InlineData("T2.5, poly", "T2.5", 0.005)]
    [InlineData("T5, poly", "T5", 0.0005)]
    [InlineData("XL, poly", "XL", 0.0005)]
    [InlineData("HTD 5M", "HTD5M", 0.005)]
    [InlineData("HTD 3M", "HTD3M", 0.005)]
    public void Kinds_hold_what_the_catalogues_print(string kind, string profile, double half)
    {
        var belt = BeltKind.Of(kind);
        var rows = ReferenceFile.Rows("belts/belt_mass_stiffness_load.csv").Where(r => r[0] == profile).ToArray();
        Assert.NotEmpty(rows);
        Assert.All(rows, row => Assert.Equal(ReferenceFile.Number(row[7]), belt.DensityGPerMPerMm!.Value * ReferenceFile.Number(row[2]) / 1000, half + 0.0005));
        var stretches = rows.Select(r => ReferenceFile.Number(r[9])).ToArray();
        Assert.InRange(belt.StretchNPerMm!.Value, stretches.Min(), stretches.Max());
        var misumi = ReferenceFile.Rows("belts/misumi_unit_mass_pld.csv")[0];
        Assert.Equal(ReferenceFile.Number(misumi[6].Length > 0 ? misumi[^1] : "0"), BeltKind.Of("5 mm").DensityGPerMPerMm!.Value, 1e-9);
    }

    [Fact]
    public void Bad_numbers_are_refused()
    {
        Assert.Throws<ArgumentException>(() => BeltDensity.Weigh([], 1.g));
        Assert.Throws<ArgumentException>(() => BeltDensity.Weigh([(0.g, 1.m)], 1.g));
        Assert.Throws<ArgumentException>(() => BeltDensity.Weigh([(8.g, 1.m)], 0.g));
        Assert.Throws<ArgumentException>(() => BeltDensity.Weigh([(8.g, 1.m)], 1.g, knownReads: 98.g));
        Assert.Throws<ArgumentOutOfRangeException>(() => BeltDensity.MetresToWeigh(0, 0.0084, 0.001));
        Assert.Throws<ArgumentException>(() => BeltDensity.Hang([(1.kg, 500.mm, 0.Hz)]));
        Assert.Throws<ArgumentOutOfRangeException>(() => BeltDensity.Hang([(1.kg, 500.mm, 34.Hz)], clampedEnds: 3));
        Assert.Throws<InputException>(() => BeltDensity.Handbook("0 kg/m", "a catalogue", true));
        Assert.Throws<InputException>(() => BeltDensity.Handbook("8 g/m u 1 g/m", "a catalogue", true));
        Assert.Throws<ArgumentException>(() => BeltKind.Of("leather"));
        Assert.Throws<InvalidOperationException>(() => BeltKind.Of("MXL").Density(6.mm));
        Assert.Throws<ArgumentOutOfRangeException>(() => BeltKind.Of("2 mm").Density(0.mm));
    }
}
