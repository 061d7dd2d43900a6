using CsCheck;
using Waywright.Notebooks;

namespace Waywright.Tests;

public class TwistTracksTests
{
    private static readonly double[] X = InventedPasses.Stations;

    private static Sweep Track(int seed, double noise, Func<double, double> shape, int passes = 4, double step = 0) => InventedPasses.Sweep(passes, noise, seed, shape, step: step);

    /// <summary>Passes over one track from which nobody moved the stand: equal height and tilt.</summary>
    private static PooledSweep Still(Random random, double noise, Func<double, double> shape, int passes = 4, double step = 0)
        => InventedPasses.Of([.. Enumerable.Range(0, passes).Select(_ => X.Select(x => shape(x) + (noise * InventedPasses.Gauss(random))).Select(z => step == 0 ? z : Math.Round(z / step) * step).ToArray())]).Pool();

    // Source: the design's own figures for a 0.01 mm dial read to whole divisions, sqrt 2 x 10 um / sqrt 12 / distance (JCGM 100:2008, 4.3.7 for the rounding): 0.7 mrad at 6 mm, 0.07 at 60 mm.
    [Theory]
    [InlineData(6, 0.68)]
    [InlineData(60, 0.068)]
    public void Tracks_close_together_are_noisy(double distance, double noise)
    {
        var setup = SetupBook.Parse(SetupBookTests.OneSetup.Replace("half", "whole"), "setups.json").Setups[0];
        var flat = X.Select(_ => 10.0).ToArray();
        PooledSweep Flat() => (InventedPasses.Of([flat]) with { Setup = setup }).Pool();
        Assert.Equal(noise, TwistTracks.Of(Flat(), Flat(), distance).NoiseMrad, 0.005);
        Assert.Equal(noise, TwistTracks.Of(new Profile(X, flat), new Profile(X, flat), distance, 10 / Math.Sqrt(12)).NoiseMrad, 0.005);
    }

    [Fact]
    public void A_known_twist_comes_back()
    {
        // 0.5 mrad/m over 312 mm and 9 mm: by hand 0.156 mrad; the shape that both tracks share says nothing.
        var twist = TwistTracks.Of(new Profile(X, Array.ConvertAll(X, x => InventedPasses.Bow(x) + (0.5 * x / 1000 * 9) + 7)), new Profile(X, Array.ConvertAll(X, x => InventedPasses.Bow(x))), 9, 0.01);
        Assert.Equal(0.156, twist.TotalMrad.Value, 1e-9);
        Assert.Equal(0.156, twist.RangeMrad, 1e-9);
        Assert.Equal(7.0 / 9, twist.TwistMrad[0] - (0.5 * 4 / 1000), 1e-9);
        Assert.True(twist.IsTwisted);
    }

    [Fact]
    public void A_shape_that_both_tracks_have_changes_nothing_and_swapped_tracks_turn_the_sign()
        => Gen.Select(Gen.Double[-20, 20].Array[14], Gen.Double[-20, 20].Array[14], Gen.Double[-20, 20].Array[14], Gen.Double[1, 100]).Sample((a, b, shape, distance) =>
        {
            var plain = TwistTracks.Of(new Profile(X, a), new Profile(X, b), distance, 1);
            var shaped = TwistTracks.Of(new Profile(X, [.. a.Zip(shape, (z, s) => z + s)]), new Profile(X, [.. b.Zip(shape, (z, s) => z + s)]), distance, 1);
            var swapped = TwistTracks.Of(new Profile(X, b), new Profile(X, a), distance, 1);
            var wide = TwistTracks.Of(new Profile(X, a), new Profile(X, b), 2 * distance, 1);
            for (var i = 0; i < X.Length; i++)
            {
                Assert.Equal((a[i] - b[i]) / distance, plain.TwistMrad[i], 1e-9);
                Assert.Equal(plain.TwistMrad[i], shaped.TwistMrad[i], 1e-9);
                Assert.Equal(-plain.TwistMrad[i], swapped.TwistMrad[i], 1e-9);
            }

            Assert.Equal(plain.TotalMrad.Value, -swapped.TotalMrad.Value, 1e-9);
            Assert.Equal(plain.NoiseMrad / 2, wide.NoiseMrad, 1e-12);
            Assert.Equal(plain.FloorMrad / 2, wide.FloorMrad, 1e-8);
            Assert.Equal(plain.TotalMrad.StandardUncertainty / 2, wide.TotalMrad.StandardUncertainty, 1e-9);
        }, iter: 200);

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Noise_and_a_stand_that_moves_are_called_twist_in_one_case_of_twenty_or_less(bool isStill)
    {
        var random = new Random(5);
        var called = Enumerable.Range(0, 600).Count(_ => TwistTracks.Of(One(), One(), 6).IsTwisted);
        // 5 % of 600 with a standard deviation of 5.3.
        Assert.InRange(called, 1, 46);

        PooledSweep One() => isStill ? Still(random, 1, _ => 0) : Track(random.Next(), 1, _ => 0).Pool();
    }

    [Fact]
    public void A_rail_wrung_in_its_middle_alone_is_found()
    {
        var random = new Random(8);
        var wrung = TwistTracks.Of(Still(random, 0.3, x => 12 * Math.Sin(2 * Math.PI * x / 320)), Still(random, 0.3, _ => 0), 6);
        Assert.True(wrung.IsTwisted && wrung.UnevenMrad > wrung.FloorMrad);
        // 12 um of amplitude over 6 mm: 4 mrad from trough to peak, by hand, on stations that come near both.
        Assert.InRange(wrung.RangeMrad, 3.7, 4.3);
    }

    [Fact]
    public void The_total_s_interval_holds_the_truth()
    {
        var random = new Random(6);
        var held = Enumerable.Range(0, 1000).Count(_ =>
        {
            var total = TwistTracks.Of(Still(random, 1, x => 0.03 * x), Still(random, 1, _ => 0), 6).TotalMrad;
            var interval = total.Expanded();
            return interval.Low <= 0.03 * 312 / 6 && 0.03 * 312 / 6 <= interval.High;
        });
        // 95 % asked for; where the passes' tilts scatter more than noise by chance, more is stated.
        Assert.InRange(held, 930, 1000);
    }

    [Fact]
    public void A_stand_that_tilts_from_pass_to_pass_widens_the_total()
    {
        var still = TwistTracks.Of(Still(new Random(1), 0.5, _ => 0), Still(new Random(2), 0.5, _ => 0), 6);
        var moved = TwistTracks.Of(Track(1, 0.5, _ => 0).Pool(), Track(2, 0.5, _ => 0).Pool(), 6);
        Assert.True(moved.TotalMrad.StandardUncertainty > 5 * still.TotalMrad.StandardUncertainty);
        Assert.Equal(still.NoiseMrad, moved.NoiseMrad, 0.05);
        var vague = TwistTracks.Of(new Profile(X, Array.ConvertAll(X, x => 0.1 * x)), new Profile(X, X.Select(_ => 0.0).ToArray()), 6, 0.001, distanceUncertaintyMm: 0.6);
        // One tenth of the distance is one tenth of the twist.
        Assert.Equal(0.1, vague.TotalMrad.StandardUncertainty / vague.TotalMrad.Value, 0.001);
    }

    // Sources: upper points of the studentized range as printed in Biometrika Tables for Statisticians, table 29 (3.88, 4.23, 4.47, from memory); the others by SciPy 1.x, scipy.stats.studentized_range.ppf.
    [Theory]
    [InlineData(0.95, 2, double.PositiveInfinity, 2.7718)]
    [InlineData(0.95, 3, 10, 3.8768)]
    [InlineData(0.95, 5, 20, 4.2319)]
    [InlineData(0.95, 10, double.PositiveInfinity, 4.4741)]
    [InlineData(0.975, 14, 24, 5.6964)]
    [InlineData(0.975, 20, 60, 5.5878)]
    [InlineData(0.975, 14, 3, 13.2555)]
    [InlineData(0.99, 35, double.PositiveInfinity, 6.0083)]
    public void The_range_of_noise_has_its_printed_points(double p, int count, double freedom, double expected)
        => Assert.Equal(expected, StudentizedRange.Of(p, count, freedom), 0.0002 * expected);

    [Fact]
    public void Tracks_are_told_apart_by_the_column_of_their_files()
    {
        PooledSweep Read(string track, int lift) => SweepBatch.Parse($"rail,face,pass,direction,position_mm,reading_um,track\nR01,top,1,forward,10,1,{track}\nR01,top,1,forward,60,{lift},{track}\nR01,top,1,forward,110,{2 * lift},{track}\nR01,top,2,back,10,1,{track}\nR01,top,2,back,60,{lift},{track}\nR01,top,2,back,110,{2 * lift},{track}\n", $"{track}.csv").Sweeps[0].Pool();
        Assert.Equal("left", Read("left", 5).Sweep.Track);
        Assert.Null(Read("", 5).Sweep.Track);
        Assert.Equal(11, TwistTracks.Of(Read("left", 30), Read("right", 8), 4).TwistMrad[2]);
        Says("left.csv: found the track 'left' in both sweeps, expected two tracks along the rail", () => TwistTracks.Of(Read("left", 5), Read("left", 6), 4));
    }

    [Fact]
    public void What_does_not_match_is_refused()
    {
        var (a, b) = (new Profile(X, X), new Profile(X[1..], X[1..], "b.csv"));
        Says("b.csv: found 13 stations in the second track, expected the 14 stations of the first track", () => TwistTracks.Of(a, b, 6, 1));
        foreach (var distance in new[] { 0, -6, double.NaN })
            Assert.StartsWith("The distance between the tracks, mm, is above 0.", Assert.Throws<ArgumentOutOfRangeException>(() => TwistTracks.Of(a, a, distance, 1)).Message, StringComparison.Ordinal);
        Assert.StartsWith("A standard uncertainty is 0 um or more.", Assert.Throws<ArgumentOutOfRangeException>(() => TwistTracks.Of(a, a, 6, -1)).Message, StringComparison.Ordinal);
        Assert.StartsWith("A standard uncertainty is 0 mm or more.", Assert.Throws<ArgumentOutOfRangeException>(() => TwistTracks.Of(a, a, 6, 1, -1)).Message, StringComparison.Ordinal);
        var once = Track(1, 1, _ => 0, passes: 1);
        Says("sweeps.csv: found R01 side swept once and without a set-up, expected repeated passes, or a set-ups file with the dial's division: nothing says how well a reading repeats", () => TwistTracks.Of(once.Pool(), once.Pool(), 6));
        Says("sweeps.csv: found R02 side as the second track, expected R01 side as the first", () => TwistTracks.Of(once.Pool(), (once with { Rail = "R02" }).Pool(), 6));
        var pooled = once.Pool();
        Says("sweeps.csv: found one track given twice, expected two tracks along the rail", () => TwistTracks.Of(pooled, pooled, 6));
    }

    [Fact]
    public void The_view_says_what_to_do_about_it()
    {
        var random = new Random(1);
        var none = TwistTracks.Of(new Profile(X, Array.ConvertAll(X, _ => InventedPasses.Gauss(random)), "rail"), new Profile(X, Array.ConvertAll(X, _ => InventedPasses.Gauss(random))), 6, 1);
        Assert.Matches(@"^To see finer, read both ends of a 60 mm bar across the carriage: noise falls from 0\.24 to 0\.024 mrad a station; rail shows no twist beyond noise: -?\d\.\d+ \+/- \d\.\d+ mrad from end to end", Views.Text(none));
        Assert.StartsWith("To see finer, let nothing move from pass to pass, for their tilts differ by more than scatter explains; R01 side shows no twist beyond noise", Views.Text(TwistTracks.Of(Track(1, 0.5, _ => 0).Pool(), Track(2, 0.5, _ => 0).Pool(), 6)), StringComparison.Ordinal);
        var twisted = TwistTracks.Of(new Profile(X, Array.ConvertAll(X, x => 0.1 * x), "R01 top"), new Profile(X, X.Select(_ => 0.0).ToArray()), 6, 1);
        Assert.StartsWith("Keep R01 top for a place where twist of 5.20 +/- 0.", Views.Text(twisted), StringComparison.Ordinal);
        Assert.Contains("Drift is not in the uncertainty", Views.Html(twisted), StringComparison.Ordinal);
        Assert.Equal(["x/total", "x/range", "x/uneven", "x/floor"], Views.Find(typeof(TwistTracks))!.Figures(none, "x").Select(f => f.Id));
    }

    private static void Says(string expected, Action action) => Assert.Equal(expected, Assert.Throws<InputException>(action).Message);
}

[UnderCulture("de-DE")]
public sealed class TwistTracksTestsInGerman : TwistTracksTests;
