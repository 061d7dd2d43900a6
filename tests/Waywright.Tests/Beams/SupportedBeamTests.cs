using System.Globalization;

namespace Waywright.Tests.Beams;

/// <summary>What a beam takes, what it refuses and what it says then.</summary>
public sealed class SupportedBeamTests
{
    [Fact]
    public void Fewer_than_two_supports_are_refused()
        => Refused("A beam needs at least two supports, not 1.", () => new SupportedBeam(350, 42.4, 3.7, [175]));

    [Theory]
    [InlineData(400)]
    [InlineData(-0.001)]
    [InlineData(double.NaN)]
    public void A_support_off_the_beam_is_refused(double at)
        => Refused(Text($"A support at {at} mm is off the beam, which runs from 0 to 350.5 mm."), () => new SupportedBeam(350.5, 42.4, 3.7, [0, at]));

    [Fact]
    public void Two_supports_at_one_place_are_refused()
        => Refused("Two supports stand at one place, 77.5 mm.", () => new SupportedBeam(350, 42.4, 3.7, [77.5, 10, 77.5]));

    [Theory]
    [InlineData(0, 42.4, 3.7, "The length is 0 mm: it must be from 1 to 100000 mm.")]
    [InlineData(double.NaN, 42.4, 3.7, "The length is NaN mm: it must be from 1 to 100000 mm.")]
    [InlineData(350, 0, 3.7, "The bending stiffness is 0 N m2: it must be from 1E-06 to 1000000000000 N m2.")]
    [InlineData(350, double.PositiveInfinity, 3.7, "The bending stiffness is Infinity N m2: it must be from 1E-06 to 1000000000000 N m2.")]
    [InlineData(350, 42.4, -3.7, "The weight is -3.7 N/m: it must be from 0 to 100000 N/m.")]
    public void Values_out_of_range_are_refused(double length, double stiffness, double weight, string sentence)
        => Refused(sentence, () => new SupportedBeam(length, stiffness, weight, [0, 0.5]));

    [Fact]
    public void Heights_that_do_not_match_the_supports_are_refused()
    {
        Refused("2 supports need as many heights, not 3.", () => new SupportedBeam(350, 42.4, 3.7, [0, 350], [0, 0, 0]));
        Refused("The height of a support is NaN um: it must be from -1000000 to 1000000 um.", () => new SupportedBeam(350, 42.4, 3.7, [0, 350], [0, double.NaN]));
    }

    [Fact]
    public void Stations_and_forces_off_the_beam_are_refused()
    {
        var beam = new SupportedBeam(350, 42.4, 3.7, [0, 350]);
        Refused("A station at 351 mm is off the beam, which runs from 0 to 350 mm.", () => beam.Under().DeflectionUm(351));
        Refused("A station at NaN mm is off the beam, which runs from 0 to 350 mm.", () => beam.InfluenceUmPerN(double.NaN, 0));
        Refused("A force at -1 mm is off the beam, which runs from 0 to 350 mm.", () => beam.InfluenceUmPerN(0, -1));
        Refused("A force at 400 mm is off the beam, which runs from 0 to 350 mm.", () => beam.Under(new PointForce(400, 1)));
        Refused("A force is NaN N: it must be from -1000000 to 1000000 N.", () => beam.Under(new PointForce(100, double.NaN)));
    }

    [Fact]
    public void A_station_that_misses_the_end_by_a_rounding_is_the_end()
    {
        var beam = new SupportedBeam(350, 42.4, 3.7, [100, 250]);
        var beyond = Math.BitIncrement(350.0);
        Assert.Equal(beam.Under().DeflectionUm(350), beam.Under().DeflectionUm(beyond));
        Assert.Equal(beam.InfluenceUmPerN(350, 350), beam.InfluenceUmPerN(beyond, beyond));
    }

    [Fact]
    public void What_is_given_is_copied()
    {
        double[] supports = [273, 77];
        PointForce[] forces = [new(175, 1)];
        var line = new SupportedBeam(350, 42.4, 3.7, supports).Under(forces);
        var before = line.DeflectionUm(175);
        supports[0] = 100;
        forces[0] = new PointForce(0, 100);
        Assert.Equal([77.0, 273.0], line.Beam.SupportsMm);
        Assert.Equal([0.0, 0.0], line.Beam.SupportHeightsUm);
        Assert.Equal(new PointForce(175, 1), Assert.Single(line.Forces));
        Assert.Equal(before, line.DeflectionUm(175));
    }

    [Fact]
    public void Lines_of_equal_beams_under_equal_forces_are_equal()
    {
        static BeamLine Line(double newtons) => new SupportedBeam(350, 42.4, 3.7, [77, 273]).Under(new PointForce(175, newtons));
        Assert.Equal(Line(1), Line(1));
        Assert.Equal(Line(1).GetHashCode(), Line(1).GetHashCode());
        Assert.NotEqual(Line(1), Line(2));
    }

    [Fact]
    public void Without_load_the_beam_is_straight_and_rests()
    {
        var line = new SupportedBeam(350, 42.4, 0, [0, 150, 350]).Under();
        Assert.Equal([0.0, 0.0, 0.0], line.DeflectionsUm([20, 200, 350]));
        Assert.Equal([0.0, 0.0, 0.0], line.ReactionsN);
        Assert.False(line.Lifts);
    }

    [Fact]
    public void Round_off_of_a_reaction_that_is_zero_is_no_lifting()
    {
        // A see-saw in balance about the first support: P d outside it, (P d / p) p inside, nothing left for the second.
        var reactions = new List<double>();
        for (var i = 1; i < 100; i++)
        {
            var d = 0.7 * i;
            var line = new SupportedBeam(350, 42.4, 0, [100, 250]).Under(new PointForce(100 - d, 1), new PointForce(190, d / 90));
            reactions.Add(line.ReactionsN[1]);
            Assert.False(line.Lifts);
        }

        Assert.Contains(reactions, r => r < 0);
    }

    [Fact]
    public void Figures_stay_finite_at_the_ends_of_the_ranges()
    {
        foreach (var (length, stiffness) in new[] { (1.0, 1e-6), (1e5, 1e-6), (1.0, 1e12), (1e5, 1e12) })
        {
            var beam = new SupportedBeam(length, stiffness, 1e5, [0, length * 1.1e-6, length], [1e6, -1e6, 0]);
            var line = beam.Under(new PointForce(length / 3, 1e6));
            Assert.All(line.DeflectionsUm([0, length / 3, length]).Concat(line.ReactionsN), figure => Assert.True(double.IsFinite(figure)));
            Assert.True(double.IsFinite(beam.InfluenceUmPerN(length / 3, length / 2)));
        }
    }

    static void Refused(string sentence, Func<object> make)
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            // A language that writes 350,5: the sentence must not.
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
            Assert.StartsWith(sentence, Assert.Throws<ArgumentException>(make).Message, StringComparison.Ordinal);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
