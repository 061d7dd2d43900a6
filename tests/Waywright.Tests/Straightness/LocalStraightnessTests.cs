namespace Waywright.Tests.Straightness;

/// <summary>Local straightness is the minimum zone of a stretch (ISO 230-1:2012, 3.4, 'over any length of'); stretches by hand and by brute force.</summary>
public sealed class LocalStraightnessTests
{
    [Fact]
    public void A_step_shows_in_the_windows_that_hold_it()
    {
        // Straight but for a step of 6 um between 75 and 100 mm; by hand, 0 0 0 6 at 25 to 100 mm: the chord is 4 um above 75 mm.
        var x = Enumerable.Range(0, 9).Select(i => 25.0 * i).ToArray();
        var local = new Profile(x, Array.ConvertAll(x, at => at < 90 ? 0.0 : 6.0)).Local(75)!;
        Assert.Equal(4.0, local.STRtUm, 1e-12);
        Assert.Equal((75.0, 25.0, 100.0), (local.WindowMm, local.FromMm, local.ToMm));
    }

    [Fact]
    public void A_window_of_the_whole_length_gives_the_whole_zone()
    {
        foreach (var profile in RandomSweeps.Some(100, seed: 3).Where(p => p.PositionsMm.Distinct().Count() >= 4))
            Assert.Equal(StraightnessFigures.Of(profile).MinimumZone.Line.STRtUm, profile.Local(350)!.STRtUm, 1e-11);
    }

    [Fact]
    public void The_widest_window_is_that_of_all_windows()
    {
        foreach (var profile in RandomSweeps.Some(60, seed: 4).Where(p => p.Count < 120))
        {
            var widest = profile.PositionsMm.Distinct()
                .Select(start => profile.PositionsMm.Zip(profile.HeightsUm).Where(s => s.First >= start && s.First <= start + 100).ToArray())
                .Where(stations => stations.Select(s => s.First).Distinct().Count() >= 4)
                .Select(stations => StraightnessFigures.Of(new Profile([.. stations.Select(s => s.First)], [.. stations.Select(s => s.Second)])).MinimumZone.Line.STRtUm)
                .Cast<double?>()
                .Max();
            var local = profile.Local(100);
            Assert.Equal(widest is null, local is null);
            if (local is not null)
                Assert.Equal(widest!.Value, local.STRtUm, 1e-11);
        }
    }

    [Fact]
    public void A_window_takes_in_its_end_stations_however_the_length_was_rounded()
    {
        // 0.1 + 0.2 is not 0.3: stations 0.1 apart, a window of 0.3.
        var profile = new Profile([0, 0.1, 0.2, 0.1 + 0.2, 0.4], [0, 1, 0, 1, 0]);
        Assert.NotNull(profile.Local(0.3));
    }

    [Fact]
    public void Fewer_than_four_different_positions_are_no_stretch()
    {
        Assert.Null(new Profile([0, 10, 20, 200, 210, 220], [0, 1, 2, 3, 4, 5]).Local(100));
        Assert.Null(new Profile([0, 0, 10, 10, 20], [0, 1, 0, 1, 0]).Local(100));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-5)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void A_window_that_is_no_length_is_refused(double window)
        => Assert.Throws<ArgumentOutOfRangeException>(() => new Profile([0, 1], [0, 1]).Local(window));
}
