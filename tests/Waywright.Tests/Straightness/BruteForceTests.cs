namespace Waywright.Tests.Straightness;

/// <summary>Against every pair of stations in exact arithmetic (<see cref="ExactZone"/>): width, interval of slopes and contacts.</summary>
public sealed class BruteForceTests
{
    [Theory]
    [InlineData(9, 40, 60)]
    // Few positions and few heights: repeated stations and ties in nearly every profile.
    [InlineData(9, 6, 3)]
    [InlineData(5, 3, 2)]
    [InlineData(40, 15, 4)]
    public void Small_whole_number_profiles_have_exactly_the_zone_of_all_pairs(int longest, int positions, int heights)
    {
        var random = new Random(longest + positions);
        var intervals = 0;
        for (var turn = 0; turn < 3000; turn++)
        {
            var n = random.Next(2, longest + 1);
            var stations = Enumerable.Range(0, n).Select(_ => (X: random.NextInt64(positions), Z: random.NextInt64(heights))).Order().ToArray();
            if (stations[0].X == stations[^1].X)
                continue;
            var x = Array.ConvertAll(stations, s => s.X);
            var z = Array.ConvertAll(stations, s => s.Z);
            var exact = ExactZone.Of(x, z);
            var zone = StraightnessFigures.Of(new Profile(Array.ConvertAll(x, v => (double)v), Array.ConvertAll(z, v => (double)v))).MinimumZone;
            var about = $"x {string.Join(' ', x)}, z {string.Join(' ', z)}";
            Assert.True(Math.Abs(exact.Width - zone.Line.STRtUm) <= 1e-13 * Math.Max(1, exact.Width), about);
            Assert.True(Math.Abs((1000 * exact.LowestSlope) - zone.LowestSlopeUmPerM) <= 1e-9, about);
            Assert.True(Math.Abs((1000 * exact.HighestSlope) - zone.HighestSlopeUmPerM) <= 1e-9, about);
            Assert.True(exact.Contacts.SequenceEqual(zone.Contacts.Select(c => (c.Station, c.Side))), about);
            intervals += exact.LowestSlope < exact.HighestSlope ? 1 : 0;
        }

        // The first set has hardly a repeated station, the others must show true intervals for the check to mean something.
        Assert.True(positions > 30 || intervals > 50, $"{intervals} intervals");
    }

    [Fact]
    public void Where_one_repeated_station_spans_the_zone_all_slopes_that_keep_the_others_inside_are_given()
    {
        // By hand: 4 um between two readings at 100 mm; through 0 and 2 um at the ends, slopes from -20 to 20 um/m stay within 0 to 4.
        var zone = StraightnessFigures.Of(new Profile([0, 100, 100, 200], [2, 0, 4, 2])).MinimumZone;
        Assert.Equal((4.0, -20.0, 20.0, 0.0), (zone.Line.STRtUm, zone.LowestSlopeUmPerM, zone.HighestSlopeUmPerM, zone.Line.SlopeUmPerM));
        Assert.Equal([(1, ZoneSide.Lower), (2, ZoneSide.Upper)], zone.Contacts.Select(c => (c.Station, c.Side)));
    }
}
