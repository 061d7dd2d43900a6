using Waywright.Tests.Reference;

namespace Waywright.Tests.Straightness;

/// <summary>Source of the transmission: ISO 16610-21, see Reference/straightness/README.md. The rest follows from what the filter promises.</summary>
public class ProfileFilterTests
{
    [Fact]
    public void Waves_come_through_as_the_standard_says_half_of_them_at_the_cut_off()
    {
        const double cutoff = 80;
        var x = Enumerable.Range(0, 801).Select(i => (double)i).ToArray();
        foreach (var row in ReferenceFile.Rows("straightness/gaussian_filter_check.csv"))
        {
            var length = ReferenceFile.Number(row[0]) * cutoff;
            var wave = new Profile(x, Array.ConvertAll(x, at => Math.Cos(2 * Math.PI * (at - 400) / length)));
            var filtered = wave.Filter(cutoff);
            // Nine digits are given.
            Assert.Equal(ReferenceFile.Number(row[1]), filtered.HeightsUm[400], 5.1e-10);
            Assert.Equal(ReferenceFile.Number(row[2]), wave.HeightsUm[400] - filtered.HeightsUm[400], 5.1e-10);
        }
    }

    [Fact]
    public void A_wave_as_long_as_the_cut_off_is_about_halved_on_unequal_stations_too()
    {
        var random = new Random(4);
        var x = Enumerable.Range(0, 161).Select(i => (5.0 * i) + (3 * (random.NextDouble() - 0.5))).ToArray();
        var filtered = new Profile(x, Array.ConvertAll(x, at => Math.Cos(2 * Math.PI * at / 80))).Filter(80);
        for (var i = 40; i < 120; i++)
            Assert.Equal(0.5 * Math.Cos(2 * Math.PI * filtered.PositionsMm[i] / 80), filtered.HeightsUm[i], 0.06);
    }

    [Fact]
    public void A_straight_line_comes_out_as_it_went_in_to_its_very_ends()
    {
        foreach (var profile in Dense(300, seed: 11))
        {
            var line = new Profile(profile.PositionsMm, [.. profile.PositionsMm.Select(x => 1234.5 - (3.21 * x))]);
            var filtered = line.Filter(175);
            for (var i = 0; i < line.Count; i++)
                Assert.Equal(line.HeightsUm[i], filtered.HeightsUm[i], 1e-11);
        }

        var level = new Profile([0, 10, 21, 30, 39, 50, 61, 70, 80, 90, 101, 110], [.. Enumerable.Repeat(0.1, 12)]).Filter(55);
        Assert.All(level.HeightsUm, z => Assert.Equal(0.1, z));
    }

    [Fact]
    public void The_filter_of_a_sum_is_the_sum_of_the_filtered()
    {
        var profiles = Dense(40, seed: 12).ToArray();
        foreach (var one in profiles)
        {
            var x = one.PositionsMm;
            var other = x.Select((at, i) => (20 * Math.Sin(at / 15)) + (i % 3)).ToArray();
            var sum = new Profile(x, [.. one.HeightsUm.Select((z, i) => (2 * z) - (3 * other[i]))]).Filter(160);
            var (first, second) = (one.Filter(160), new Profile(x, other).Filter(160));
            for (var i = 0; i < x.Count; i++)
                Assert.Equal((2 * first.HeightsUm[i]) - (3 * second.HeightsUm[i]), sum.HeightsUm[i], 1e-10);
        }
    }

    [Fact]
    public void Turned_end_for_end_before_or_after_the_filter_is_the_same()
    {
        foreach (var profile in Dense(40, seed: 13))
        {
            var (before, after) = (profile.Reversed().Filter(170), profile.Filter(170).Reversed());
            Assert.Equal((before.Name, before.CutoffMm), (after.Name, after.CutoffMm));
            for (var i = 0; i < profile.Count; i++)
                Assert.Equal(before.HeightsUm[i], after.HeightsUm[i], 1e-11);
        }
    }

    [Fact]
    public void A_filtered_profile_says_so_wherever_it_goes()
    {
        var measured = new Profile(Equal(27), [.. Equal(27).Select(x => x % 7)], "R07 side");
        Assert.False(measured.IsFiltered);
        Assert.Null(measured.CutoffMm);
        var filtered = measured.Filter(80);
        Assert.True(filtered.IsFiltered);
        Assert.True(filtered.Reversed().IsFiltered);
        Assert.Equal((80.0, "R07 side, filtered at 80 mm"), (filtered.CutoffMm, filtered.Name));
        Assert.Equal("filtered at 62.5 mm", new Profile(measured.PositionsMm, measured.HeightsUm).Filter(62.5).Name);
        Assert.Equal(filtered, measured.Filter(80));
        Assert.NotEqual(filtered, new Profile(filtered.PositionsMm, filtered.HeightsUm, filtered.Name));
        Assert.Contains("filtered already", Assert.Throws<ArgumentException>(() => filtered.Filter(90)).Message);
    }

    [Theory]
    [InlineData(49.99)]
    [InlineData(130.01)]
    [InlineData(0)]
    [InlineData(-80)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void A_cut_off_below_five_gaps_or_above_half_the_length_is_refused_with_both_limits(double cutoff)
    {
        // Limits: common practice, no source.
        var profile = new Profile(Equal(27), Equal(27));
        var refused = Assert.Throws<ArgumentOutOfRangeException>(() => profile.Filter(cutoff));
        Assert.Contains("at least 50 mm", refused.Message);
        Assert.Contains("at most 130 mm", refused.Message);
        Assert.Equal(profile.Count, profile.Filter(50).Count);
        Assert.Equal(profile.Count, profile.Filter(130).Count);
    }

    [Fact]
    public void Where_no_cut_off_is_possible_more_stations_are_asked_for()
        => Assert.Contains("measure more stations", Assert.Throws<ArgumentOutOfRangeException>(() => new Profile(Equal(8), Equal(8)).Filter(35)).Message);

    [Fact]
    public void The_errors_of_the_filtered_heights_have_the_covariance_that_single_stations_bring()
    {
        var x = new double[] { 0, 8, 20, 31, 39, 50, 62, 70, 80, 91, 100, 109, 120, 131, 131, 140 };
        var scatter = x.Select((_, i) => 0.3 + (0.02 * i)).ToArray();
        var guide = x.Select(at => at * (140 - at) / 4900).ToArray();
        var profile = new Profile(x, x, "R02 side");
        var errors = new ProfileErrors(scatter, 24, [new ErrorShape("bow of the guide", guide, double.PositiveInfinity, true, AveragesOut.Nothing, "reverse the guide")]);
        var filtered = errors.Filter(profile, 65);
        Assert.All(filtered.StationUm, u => Assert.Equal(0, u));
        var bow = Assert.Single(filtered.Shapes, s => s.IsRectangular);
        Assert.Equal(("bow of the guide", AveragesOut.Nothing, "reverse the guide"), (bow.Input, bow.AveragesOut, bow.Remedy));
        Assert.Equal(filtered.Shapes.Count, filtered.Shapes.Select(s => s.Input).Distinct().Count());
        Assert.All(filtered.Shapes.Except([bow]), s => Assert.Equal((24.0, AveragesOut.Repeating), (s.DegreesOfFreedom, s.AveragesOut)));

        // Another route: each station lifted alone, and the guide's bow measured, through the filter of profiles.
        var responses = x.Select((_, k) => new Profile(x, [.. x.Select((_, i) => i == k ? scatter[k] : 0)]).Filter(65).HeightsUm).ToArray();
        var bowed = new Profile(x, guide).Filter(65).HeightsUm;
        for (var i = 0; i < x.Length; i++)
        {
            Assert.Equal(bowed[i], bow.HeightsUm[i], 1e-13);
            for (var j = 0; j < x.Length; j++)
                Assert.Equal(responses.Sum(r => r[i] * r[j]) + (bowed[i] * bowed[j]), filtered.Shapes.Sum(s => s.HeightsUm[i] * s.HeightsUm[j]), 1e-13);
        }
    }

    [Fact]
    public void The_last_figure_is_two_and_a_half_times_as_uncertain_as_one_in_the_middle_and_lets_whole_waves_through()
    {
        var profile = new Profile(Equal(401), Equal(401));
        var errors = new ProfileErrors([.. Enumerable.Repeat(1.0, 401)], 100, []).Filter(profile, 1000);
        double Deviation(int station) => Math.Sqrt(errors.Shapes.Sum(s => s.HeightsUm[station] * s.HeightsUm[station]));
        Assert.Equal(2.5, Deviation(0) / Deviation(200), 0.05);
        Assert.Equal(Deviation(0), Deviation(400), 1e-12);
        Assert.InRange(Deviation(50) / Deviation(200), 0.9, 1.1);

        double Through(int station) => Math.Sqrt(Math.Pow(Wave(Math.Cos).HeightsUm[station], 2) + Math.Pow(Wave(Math.Sin).HeightsUm[station], 2));
        Profile Wave(Func<double, double> wave) => new Profile(profile.PositionsMm, [.. profile.PositionsMm.Select(x => wave(2 * Math.PI * x / 1000))]).Filter(1000);
        Assert.Equal(0.5, Through(200), 1e-6);
        Assert.Equal(1.23, Through(0), 0.005);
        Assert.Equal(0.5, Through(50), 0.1);
    }

    private static double[] Equal(int stations) => [.. Enumerable.Range(0, stations).Select(i => 10.0 * i)];

    // Gaps below 35 mm, so that cut-offs from 175 mm to half of 350 mm are allowed.
    private static IEnumerable<Profile> Dense(int count, int seed)
        => RandomSweeps.Some(5 * count, seed).Where(p => p.Count > 100 && Enumerable.Range(1, p.Count - 1).All(i => p.PositionsMm[i] - p.PositionsMm[i - 1] <= 30)).Take(count);
}

[UnderCulture("de-DE")]
public sealed class ProfileFilterTestsInGerman : ProfileFilterTests;
