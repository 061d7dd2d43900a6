namespace Waywright.Tests.Mounting;

/// <summary>Holes and patterns counted by hand, and the errors of wrong ones.</summary>
public class ScrewPatternTests
{
    private static readonly ScrewPattern Every = ScrewPattern.Every(350, 20, 5);

    [Fact]
    public void A_rail_of_350_mm_has_eighteen_holes_at_a_pitch_of_20()
    {
        // Common practice, no source: floor((350 - 10) / 20) + 1 = 18, ends (350 - 17 x 20) / 2 = 5.
        Assert.Equal(18, Every.HolesMm.Count);
        Assert.Equal((5, 345, 5, 5, 20), (Every.HolesMm[0], Every.HolesMm[^1], Every.DotEndFreeMm, Every.FarEndFreeMm, Every.WidestGapMm));
        Assert.Empty(Every.LeftOver);
    }

    [Theory]
    [InlineData(320, 25, 10, 13, 10)]
    // 0.3 / 0.1 falls short of 3 by a rounding; the hole must not get lost.
    [InlineData(100.3, 0.1, 50, 4, 50)]
    [InlineData(25.2, 20, 2.5, 2, 2.6)]
    public void As_many_holes_as_fit_stand_in_the_middle_of_the_rail(double length, double pitch, double end, int holes, double first)
    {
        var pattern = ScrewPattern.Every(length, pitch, end);
        Assert.Equal(holes, pattern.HolesMm.Count);
        Assert.Equal(first, pattern.HolesMm[0], 1e-9);
        Assert.Equal(pattern.DotEndFreeMm, pattern.FarEndFreeMm, 1e-9);
    }

    [Fact]
    public void Every_other_hole_says_which_one_is_left_over_and_how_far_that_end_stands_free()
    {
        var fromDot = Every.EveryOther();
        Assert.Equal([1, 3, 5, 7, 9, 11, 13, 15, 17], fromDot.Holes);
        Assert.Equal([18], fromDot.LeftOver);
        Assert.Equal((5, 25), (fromDot.DotEndFreeMm, fromDot.FarEndFreeMm));
        var fromFar = Every.EveryOtherFromFarEnd();
        Assert.Equal([2, 4, 6, 8, 10, 12, 14, 16, 18], fromFar.Holes);
        Assert.Equal([1], fromFar.LeftOver);
        Assert.Equal((25, 5), (fromFar.DotEndFreeMm, fromFar.FarEndFreeMm));
        var both = Every.EveryOtherFromBothEnds();
        Assert.Equal([1, 3, 5, 7, 9, 12, 14, 16, 18], both.Holes);
        Assert.Equal([10, 11], both.LeftOver);
        Assert.Equal((5, 5, 60), (both.DotEndFreeMm, both.FarEndFreeMm, both.WidestGapMm));
    }

    [Fact]
    public void With_an_odd_number_of_holes_every_other_one_has_no_spare()
    {
        var odd = ScrewPattern.Every(320, 25, 10);
        foreach (var pattern in new[] { odd.EveryOther(), odd.EveryOtherFromFarEnd(), odd.EveryOtherFromBothEnds() })
        {
            Assert.Equal([1, 3, 5, 7, 9, 11, 13], pattern.Holes);
            Assert.Empty(pattern.LeftOver);
        }
    }

    [Fact]
    public void Every_other_hole_from_both_ends_holds_for_any_number_of_holes()
    {
        for (var n = 3; n <= 40; n++)
        {
            var pattern = ScrewPattern.Every((n * 20) - 10, 20, 5).EveryOtherFromBothEnds();
            Assert.Equal((1, n), (pattern.Holes[0], pattern.Holes[^1]));
            var gaps = pattern.Holes.Zip(pattern.Holes.Skip(1), (a, b) => b - a).ToArray();
            Assert.Equal(n % 2 == 1 ? 0 : 1, gaps.Count(g => g == 3));
            Assert.All(gaps, g => Assert.True(g is 2 or 3));
        }
    }

    [Fact]
    public void A_given_count_is_spread_as_evenly_as_the_holes_allow_with_the_ends_in()
    {
        for (var count = 2; count <= 18; count++)
        {
            var holes = Every.OfCount(count).Holes;
            Assert.Equal(count, holes.Count);
            Assert.Equal((1, 18), (holes[0], holes[^1]));
            var gaps = holes.Zip(holes.Skip(1), (a, b) => b - a).ToArray();
            Assert.InRange(gaps.Max() - gaps.Min(), 0, 1);
        }

        Assert.Equal([1, 9, 18], Every.OfCount(3).Holes);
        Assert.Equal(Every, Every.OfCount(18));
    }

    [Fact]
    public void Screws_are_tightened_from_the_middle_outwards_from_side_to_side_twice()
    {
        var rounds = ScrewPattern.Every(320, 25, 10).EveryOther().TighteningRounds;
        Assert.Equal(2, rounds.Count);
        Assert.All(rounds, r => Assert.Equal([7, 9, 5, 11, 3, 13, 1], r));
        Assert.Equal([9, 10, 8, 11, 7, 12, 6, 13, 5, 14, 4, 15, 3, 16, 2, 17, 1, 18], Every.TighteningRounds[0]);
        // Far from even: each hole once, and no screw before one that lies further in on its side.
        var own = Every.InHoles(1, 2, 3, 4, 18).TighteningRounds[1];
        Assert.Equal([4, 18, 3, 2, 1], own);
    }

    [Fact]
    public void Turned_end_for_end_the_screws_come_along()
    {
        var rail = RailStock.Parse("rail,width_mm,length_mm,pitch_mm,end_distance_mm\nR1,9,120,25,8\n", "rails.csv").Rails[0];
        var turned = ScrewPattern.Every(rail).InHoles(1, 4).Reversed();
        Assert.Equal([12, 37, 62, 87, 112], turned.HolesMm);
        Assert.Equal([2, 5], turned.Holes);
        Assert.Equal((37, 8), (turned.DotEndFreeMm, turned.FarEndFreeMm));
    }

    [Theory]
    [InlineData(0.5, -20, double.NaN, "The length is 0.5 mm: it must be from 1 to 1e5 mm. The pitch is -20 mm: it must be a length above 0. The least end distance is NaN mm: it must be a length above 0.")]
    [InlineData(20, 25, 5, "Fewer than two holes fit 20 mm at a pitch of 25 mm with 5 mm left at each end.")]
    [InlineData(350, 1e-300, 5, "A pitch of 1E-300 mm makes more than 10000 holes.")]
    public void Sizes_that_do_not_fit_are_named_together(double length, double pitch, double end, string message)
        => Assert.Equal(message, Assert.Throws<ArgumentException>(() => ScrewPattern.Every(length, pitch, end)).Message);

    [Fact]
    public void Screws_at_holes_that_do_not_exist_are_named_together()
    {
        var error = Assert.Throws<ArgumentException>(() => Every.InHoles(0, 3, 3, 19));
        Assert.StartsWith("There is no hole 0: holes run from 1 to 18. There is no hole 19: holes run from 1 to 18. Hole 3 is named 2 times.", error.Message, StringComparison.Ordinal);
        Assert.Contains("at least two holes", Assert.Throws<ArgumentException>(() => Every.InHoles(5)).Message);
        Assert.Contains("from 2 to 18 fit", Assert.Throws<ArgumentException>(() => Every.OfCount(19)).Message);
        Assert.Contains("at least two holes", Assert.Throws<ArgumentException>(() => ScrewPattern.Every(60, 50, 5).EveryOther()).Message);
        var one = RailStock.Parse("rail,width_mm,length_mm,pitch_mm,end_distance_mm\nR1,9,20,25,8\n", "rails.csv").Rails[0];
        Assert.Contains("R1 has 1 hole", Assert.Throws<ArgumentException>(() => ScrewPattern.Every(one)).Message);
    }
}

[UnderCulture("de-DE")]
public sealed class ScrewPatternTestsInGerman : ScrewPatternTests;
