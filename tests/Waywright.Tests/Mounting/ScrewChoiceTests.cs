using System.Diagnostics;

namespace Waywright.Tests.Mounting;

/// <summary>The fewest screws: against trying all choices on a rail with few holes.</summary>
public class ScrewChoiceTests(ITestOutputHelper output)
{
    private const double Stiffness = 42.4;

    [Fact]
    public void On_a_rail_of_seven_holes_it_finds_nearly_what_trying_all_choices_finds()
    {
        var every = ScrewPattern.Every(150, 22, 5);
        Assert.Equal(7, every.HolesMm.Count);
        var random = new Random(5);
        var (asFew, all) = (0, 0);
        for (var trial = 0; trial < 20; trial++)
        {
            double[] x = [0, .. Enumerable.Range(0, 13).Select(i => 10.0 + (i * 10)), 150];
            var free = new Profile(x, Array.ConvertAll(x, v => (40 * v * (150 - v) / 5625) + (8 * random.NextDouble())));
            var limit = 2 + (8 * random.NextDouble());
            var choice = ScrewChoice.Fewest(free, every, limit, Stiffness);
            Assert.Equal([2, 3, 4, 5, 6, 7], choice.BestOfEachCount.Select(s => s.Screws.Holes.Count));
            if (choice.Chosen is { } chosen)
                Assert.InRange(chosen.ResidualUm, 0, limit);
            var fewest = Enumerable.Range(1, 127)
                .Select(bits => Enumerable.Range(1, 7).Where(h => (bits >> (h - 1)) % 2 == 1).ToArray())
                .Where(h => h.Length >= 2 && MountedShape.Of(free, every.InHoles(h), Stiffness).ResidualUm <= limit)
                .Select(h => h.Length).DefaultIfEmpty(99).Min();
            var found = choice.Chosen?.Screws.Holes.Count ?? 99;
            Assert.InRange(found, fewest, 99);
            all++;
            asFew += found == fewest ? 1 : 0;
        }

        output.WriteLine($"as few as possible in {asFew} of {all}");
        Assert.InRange(asFew, 14, all);
    }

    [Fact]
    public void A_straight_rail_needs_two_screws_and_an_impossible_limit_is_said_to_be_one()
    {
        var every = ScrewPattern.Every(350, 20, 5);
        var straight = ScrewChoice.Fewest(new Profile([5, 340], [0, 3]), every.EveryOther(), 1, Stiffness);
        Assert.Equal([1, 18], straight.Chosen!.Screws.Holes);
        var wavy = new Profile([.. Enumerable.Range(0, 36).Select(i => 10.0 * i)], [.. Enumerable.Range(0, 36).Select(i => 30.0 * (i % 2))]);
        Assert.Null(ScrewChoice.Fewest(wavy, every, 0.5, Stiffness).Chosen);
        Assert.Null(ScrewChoice.Fewest(MountedShapeTests.Parabola(100), every, 50, Stiffness, clampLimitN: 1e-6).Chosen);
        Assert.Throws<ArgumentException>(() => ScrewChoice.Fewest(wavy, every, 0, Stiffness));
        Assert.Throws<OperationCanceledException>(() => ScrewChoice.Fewest(wavy, every, 1, Stiffness, cancel: new CancellationToken(true)));
    }

    [Fact]
    public void How_long_a_shape_and_a_search_take_is_written_down()
    {
        var every = ScrewPattern.Every(350, 20, 5);
        var shapes = MountedShapeTests.Shapes(60).ToArray();
        MountedShape Shape(int i) => MountedShape.Of(shapes[i % shapes.Length], every.OfCount(2 + (i % 17)), Stiffness);
        var touching = Enumerable.Range(0, 300).Count(i => Shape(i).ContactsMm.Count > 0);
        var watch = Stopwatch.StartNew();
        for (var i = 0; i < 300; i++)
            Shape(i);
        output.WriteLine($"{touching} of 300 with contact; {watch.Elapsed.TotalMilliseconds / 300 / 2:0.000} of 2 ms each");
        ScrewChoice.Fewest(shapes[0], every, 1, Stiffness);
        watch.Restart();
        for (var i = 0; i < 10; i++)
            ScrewChoice.Fewest(shapes[i], every, 1, Stiffness);
        output.WriteLine($"search: {watch.Elapsed.TotalMilliseconds / 10 / 200:0.000} of 0.2 s each");
        Assert.InRange(touching, 100, 300);
    }
}
