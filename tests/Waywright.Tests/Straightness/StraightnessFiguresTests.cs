namespace Waywright.Tests.Straightness;

/// <summary>Cases that follow from the definitions in ISO 12780-1 and ISO 230-1:2012, 3.4, worked by hand.</summary>
public sealed class StraightnessFiguresTests
{
    [Fact]
    public void Two_stations_have_figures_of_exactly_zero_about_every_line()
    {
        var figures = StraightnessFigures.Of(new Profile([0.1, 0.4], [0.3, 12.7]));
        foreach (var line in new[] { figures.EndPoints, figures.LeastSquares, figures.MinimumZone.Line })
        {
            Assert.Equal((0.0, 0.0, 0.0, 0.0), (line.STRtUm, line.STRpUm, line.STRvUm, line.STRqUm));
            Assert.Equal(0.3, line.HeightUm(0.1), 1e-12);
            Assert.Equal(12.7, line.HeightUm(0.4), 1e-12);
        }

        Assert.Equal(4, figures.MinimumZone.Contacts.Count);
    }

    [Theory]
    [InlineData(0.1)]
    [InlineData(-1234.567)]
    [InlineData(0)]
    public void Equal_readings_have_figures_of_exactly_zero_and_touch_both_boundaries(double reading)
    {
        var profile = new Profile([0, 13.7, 25, 50, 75.3, 75.3], [.. Enumerable.Repeat(reading, 6)]);
        var figures = StraightnessFigures.Of(profile);
        foreach (var line in new[] { figures.EndPoints, figures.LeastSquares, figures.MinimumZone.Line })
            Assert.Equal((0.0, 0.0, 0.0, 0.0, 0.0, reading), (line.STRtUm, line.STRpUm, line.STRvUm, line.STRqUm, line.SlopeUmPerM, line.HeightAtZeroUm));
        Assert.Equal(12, figures.MinimumZone.Contacts.Count);
    }

    [Fact]
    public void A_tilted_straight_profile_touches_both_boundaries_everywhere_although_its_readings_are_rounded()
    {
        // 0.1 um for each 25 mm from 1000.3 um: no reading is an exact double.
        var x = Enumerable.Range(0, 15).Select(i => 25.0 * i).ToArray();
        var zone = StraightnessFigures.Of(new Profile(x, Array.ConvertAll(x, at => Math.Round(1000.3 + (0.004 * at), 1)))).MinimumZone;
        Assert.Equal(0, zone.Line.STRtUm, 1e-12);
        Assert.Equal(4, zone.Line.SlopeUmPerM, 1e-9);
        Assert.Equal(30, zone.Contacts.Count);
    }

    [Fact]
    public void The_end_point_line_goes_through_the_mean_of_a_repeated_end_station()
    {
        // Means 1 at 0 mm and 5 at 100 mm; the reading of 3 at 50 mm lies on the line, the end readings 1 above and below it.
        var line = StraightnessFigures.Of(new Profile([0, 0, 50, 100, 100], [0, 2, 3, 4, 6])).EndPoints;
        Assert.Equal((1.0, 40.0), (line.HeightAtZeroUm, line.SlopeUmPerM));
        Assert.Equal((2.0, 1.0, 1.0), (line.STRtUm, line.STRpUm, line.STRvUm));
        Assert.Equal(Math.Sqrt(4 / 5.0), line.STRqUm, 1e-15);
    }

    [Fact]
    public void Root_mean_squares_are_those_of_the_heights_from_each_line()
    {
        foreach (var profile in RandomSweeps.Some(200, seed: 7))
        {
            var figures = StraightnessFigures.Of(profile);
            var scale = profile.HeightsUm.Max(Math.Abs);
            foreach (var line in new[] { figures.EndPoints, figures.LeastSquares, figures.MinimumZone.Line })
            {
                var from = profile.PositionsMm.Zip(profile.HeightsUm, (x, z) => z - line.HeightUm(x)).ToArray();
                Assert.Equal(Math.Sqrt(from.Sum(d => d * d) / from.Length), line.STRqUm, 1e-12 * scale);
                Assert.Equal(Math.Max(0, from.Max()), line.STRpUm, 1e-12 * scale);
                Assert.Equal(Math.Max(0, -from.Min()), line.STRvUm, 1e-12 * scale);
                Assert.Equal(line.STRpUm + line.STRvUm, line.STRtUm);
            }
        }
    }

    [Fact]
    public void The_least_squares_line_is_that_of_the_calibration_fit()
    {
        // LineFit works in pairs of doubles and is held to NIST's certified digits.
        foreach (var profile in RandomSweeps.Some(200, seed: 8).Where(p => p.Count > 2))
        {
            var line = StraightnessFigures.Of(profile).LeastSquares;
            var fit = LineFit.Of(profile.PositionsMm, profile.HeightsUm);
            var scale = profile.HeightsUm.Max(Math.Abs);
            Assert.Equal(fit.Slope * 1000, line.SlopeUmPerM, 1e-13 * scale * 1000 / 350);
            Assert.Equal(fit.Intercept, line.HeightAtZeroUm, 1e-13 * scale);
        }
    }

    [Fact]
    public void Positions_far_from_zero_and_a_steep_tilt_cost_no_more_than_the_rounding_of_the_readings()
    {
        // Whole numbers are exact, so the zone of the same profile near zero is the truth.
        double[] heights = [0, 3, 1, 4, 1, 5, 9, 2, 6, 5, 3, 5, 8, 9, 7, 9, 3];
        var near = StraightnessFigures.Of(new Profile([.. heights.Select((_, i) => (double)i)], heights));
        var far = StraightnessFigures.Of(new Profile([.. heights.Select((_, i) => 1e9 + i)], [.. heights.Select((z, i) => 1e9 + z + (1000.0 * i))]));
        Assert.Equal(near.MinimumZone.Line.STRtUm, far.MinimumZone.Line.STRtUm, 1e-6);
        Assert.Equal(near.LeastSquares.STRtUm, far.LeastSquares.STRtUm, 1e-6);
        Assert.Equal(near.MinimumZone.Contacts.Select(c => (c.Station, c.Side)), far.MinimumZone.Contacts.Select(c => (c.Station, c.Side)));
    }

    [Fact]
    public void Positions_that_differ_by_rounding_only_give_the_zone_of_the_repeated_station()
    {
        // 0.1 + 0.2 is not 0.3: the next double, or the one after, must not change the width by more than rounding.
        foreach (var profile in RandomSweeps.Some(400, seed: 9).Where(p => p.HasRepeatedStation))
        {
            var nudged = profile.PositionsMm.Select((x, i) => x + ((i % 3) * 6e-14)).ToArray();
            var width = StraightnessFigures.Of(profile).MinimumZone.Line.STRtUm;
            var figures = StraightnessFigures.Of(new Profile(nudged, profile.HeightsUm));
            Assert.Equal(width, figures.MinimumZone.Line.STRtUm, 1e-10);
            Assert.True(figures.MinimumZone.Line.STRtUm <= figures.LeastSquares.STRtUm + 1e-12);
        }
    }

    [Fact]
    public void Figures_of_equal_profiles_are_equal()
    {
        var once = StraightnessFigures.Of(new Profile([0, 1, 2, 3], [0, 2, 1, 5]));
        var again = StraightnessFigures.Of(new Profile([3, 2, 1, 0], [5, 1, 2, 0]));
        Assert.Equal(once, again);
        Assert.Equal(once.GetHashCode(), again.GetHashCode());
    }
}
