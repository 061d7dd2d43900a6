using System.Globalization;
using Waywright.Tests.Reference;

namespace Waywright.Tests.Straightness;

/// <summary>Uncertainty of the modes: against NumPy, and what follows from JCGM 100:2008, 5.2, for inputs that figures share.</summary>
public sealed class ShapeModesUncertaintyTests
{
    [Fact]
    public void Amplitudes_and_their_covariances_are_those_of_NumPy()
    {
        DebianPython.RequireSciPy();
        var profiles = RandomSweeps.Some(120, seed: 31).Where(p => p.PositionsMm.Distinct().Count() > 12).ToArray();
        var random = new Random(32);
        var errors = profiles.Select(p => new ProfileErrors([.. p.PositionsMm.Select(_ => 0.2 + random.NextDouble())], double.PositiveInfinity, [Guide(p.PositionsMm)])).ToArray();
        var file = Path.GetTempFileName();
        try
        {
            File.WriteAllLines(file, profiles.SelectMany((p, i) => new[] { Row(p.PositionsMm), Row(p.HeightsUm), Row(errors[i].StationUm), Row(errors[i].Shapes[0].HeightsUm) }));
            var lines = DebianPython.Run("straightness/modes_by_numpy.py", file);
            Assert.Equal(profiles.Length, lines.Length);
            for (var i = 0; i < profiles.Length; i++)
                Compare(ShapeModes.Of(profiles[i], errors[i], highestOrder: 6), [.. lines[i].Split(' ').Select(ReferenceFile.Number)]);
        }
        finally
        {
            File.Delete(file);
        }
    }

    [Fact]
    public void Scatter_alike_at_all_stations_leaves_amplitudes_uncorrelated_with_its_degrees_of_freedom()
    {
        double[] x = [0, 20, 45, 80, 130, 160, 240, 320];
        var modes = ShapeModes.Of(new Profile(x, x), new ProfileErrors([.. x.Select(_ => 0.4)], 24, []), highestOrder: 4);
        foreach (var mode in modes.Modes)
        {
            Assert.Equal(24, mode.AmplitudeUm.DegreesOfFreedom, 1e-9);
            Assert.All(modes.Modes.Where(m => m != mode), m => Assert.Equal(0, m.AmplitudeUm.CorrelationWith(mode.AmplitudeUm), 1e-9));
        }

        // Three readings alike: the bow is the middle's height over the mean of the ends, so u² = σ² (1 + 1/4 + 1/4).
        var three = ShapeModes.Of(new Profile([0, 50, 100], [1, 5, 2]), new ProfileErrors([0.4, 0.4, 0.4], 24, []), highestOrder: 2);
        Assert.Equal(3.5, three.Bow.AmplitudeUm.Value, 1e-12);
        Assert.Equal(0.4 * Math.Sqrt(1.5), three.Bow.AmplitudeUm.StandardUncertainty, 1e-12);
    }

    [Fact]
    public void The_guide_cancels_between_rails_swept_on_it_alike_and_scatter_does_not()
    {
        double[] x = [0, 20, 45, 80, 130, 160, 240, 320];
        ShapeModes Swept(double bow) => ShapeModes.Of(new Profile(x, [.. x.Select(at => bow * at * (320 - at) / 25_600)]), new ProfileErrors([.. x.Select(_ => 0.4)], 24, [Guide(x)]), highestOrder: 3);
        var (one, other) = (Swept(12).Bow.AmplitudeUm, Swept(9).Bow.AmplitudeUm);
        var difference = one - other;
        Assert.Equal(3, difference.Value, 1e-12);
        var scatter = Math.Sqrt((one.StandardUncertainty * one.StandardUncertainty) - Math.Pow(one.Contributions.Single(c => c.Input == "guide").Signed, 2));
        Assert.Equal(scatter * Math.Sqrt(2), difference.StandardUncertainty, 1e-12);
        Assert.Equal(0, difference.Contributions.Single(c => c.Input == "guide").Signed);
    }

    [Fact]
    public void Without_errors_amplitudes_have_no_uncertainty_and_nothing_is_called_clear()
    {
        double[] x = [0, 20, 45, 80, 130];
        var modes = ShapeModes.Of(new Profile(x, [0, 3, 4, 3, 0]));
        Assert.Null(modes.Errors);
        Assert.All(modes.Modes, m => Assert.Equal((0.0, (bool?)null), (m.AmplitudeUm.StandardUncertainty, m.IsClear)));
        Assert.Contains("Errors of 4 stations don't fit a profile of 5", Assert.Throws<ArgumentException>(() => ShapeModes.Of(new Profile(x, x), new ProfileErrors([1, 1, 1, 1], 5, []))).Message);
    }

    [Fact]
    public void A_mode_is_clear_when_its_interval_keeps_away_from_zero()
    {
        double[] x = [0, 50, 100];
        // u = 0.4 sqrt 1.5 = 0.49; k = t95(24) = 2.06 (JCGM 100:2008, table G.2 prints 2.06 for 25), U = 1.01.
        ShapeMode Bow(double height) => ShapeModes.Of(new Profile(x, [0, height, 0]), new ProfileErrors([0.4, 0.4, 0.4], 24, []), highestOrder: 2).Bow;
        Assert.True(Bow(1.02).IsClear);
        Assert.True(Bow(-1.02).IsClear);
        Assert.False(Bow(1.0).IsClear);
    }

    private static void Compare(ShapeModes modes, double[] numbers)
    {
        var count = modes.Modes.Count;
        for (var i = 0; i < count; i++)
        {
            var u = modes.Modes[i].AmplitudeUm.StandardUncertainty;
            Assert.Equal(numbers[count + (i * count) + i], u * u, 1e-8 * u * u);
            Assert.Equal(numbers[i], modes.Modes[i].AmplitudeUm.Value, 1e-8 * u);
            for (var j = 0; j < i; j++)
            {
                var v = modes.Modes[j].AmplitudeUm.StandardUncertainty;
                Assert.Equal(numbers[count + (i * count) + j], u * v * modes.Modes[i].AmplitudeUm.CorrelationWith(modes.Modes[j].AmplitudeUm), 1e-8 * u * v);
            }
        }
    }

    private static ErrorShape Guide(IReadOnlyList<double> x)
        => new("guide", [.. x.Select(at => (0.8 * at * (350 - at) / 30_625) + (0.3 * Math.Sin(at / 40)))], double.PositiveInfinity, true, AveragesOut.Nothing, "reverse the guide");

    private static string Row(IReadOnlyList<double> values) => string.Join(' ', values.Select(v => v.ToString("R", CultureInfo.InvariantCulture)));
}
