using System.Text;
using Waywright.Notebooks;

namespace Waywright.Tests.Straightness;

/// <summary>What a reader is told of shapes and bends.</summary>
public class ShapeViewTests
{
    private static readonly double[] Rail = [4, .. Enumerable.Range(0, 12).Select(i => 22.5 + (25 * i)), 316];

    private static readonly Profile Bent = new(Rail, Array.ConvertAll(Rail, x => (-0.4 * Math.Max(0, x - 147.5)) + (x % 3 / 2)), "R04 side");

    [Fact]
    public void A_bend_is_told_by_place_angle_side_and_chance()
    {
        var test = KinkTest.Of(Bent, Scatter(0.4), seed: 1);
        var verdict = Views.Text(test).Split('\n')[0];
        Assert.Matches(@"^R04 side: bent at about 14\d mm \(14\d to 1[45]\d\) by 0\.\d+ um/mm \(0\.\d+ to 0\.\d+\), standing out towards the dial; chance that noise alone looks like this: < 0\.1 %\.$", verdict);
        Assert.Contains("10000 trials", Views.Text(test));
        var figures = Figures<KinkTest>(test);
        Assert.Equal(["x/found", "x/chance", "x/position", "x/angle"], figures.Select(f => f.Id));
        Assert.Equal("found", figures[0].Text);
        Assert.Equal((test.PositionMm, test.FromMm, test.ToMm), (figures[2].Value, figures[2].Low, figures[2].High));
        Assert.Equal(("um/m", test.AngleUmPerM.Value), (figures[3].Unit, figures[3].Value));
    }

    [Fact]
    public void Where_no_bend_is_found_none_is_placed()
    {
        var test = KinkTest.Of(new Profile(Rail, Array.ConvertAll(Rail, x => x % 3 / 2), "R01 side"), Scatter(0.4), seed: 1);
        Assert.Matches(@"^R01 side: no single bend stands out; chance that noise alone looks like the clearest one: \d+ %\.$", Views.Text(test).Split('\n')[0]);
        Assert.Equal(["x/found", "x/chance"], Figures<KinkTest>(test).Select(f => f.Id));
    }

    [Fact]
    public void Shapes_that_can_not_be_told_from_zero_are_said_to_be_so()
    {
        var bowed = new Profile(Rail, Array.ConvertAll(Rail, x => (12 * x * (320 - x) / 25_600) + 5), "R05 top");
        var text = Views.Text(ShapeModes.Of(bowed, Scatter(0.4)));
        // A parabola of 12 um over 320 mm has 11.4 over the 312 mm between the outer stations.
        Assert.StartsWith("R05 top: bow +11.41 um (", text, StringComparison.Ordinal);
        Assert.Contains("; S, W can't be told from zero.", text);
        Assert.Contains("without uncertainty", Views.Text(ShapeModes.Of(bowed)));
        Assert.StartsWith("R05 top: no shape can be told from zero.", Views.Text(ShapeModes.Of(new Profile(Rail, Array.ConvertAll(Rail, x => 0.001 * (x % 7)), "R05 top"), Scatter(0.4))), StringComparison.Ordinal);
        Assert.StartsWith("Bow +11.41 um (", Views.Text(ShapeModes.Of(bowed, Scatter(0.4)).Bow), StringComparison.Ordinal);
    }

    [Fact]
    public void The_cut_off_of_a_filter_is_in_every_figure_s_method()
    {
        var filtered = new Profile([.. Enumerable.Range(0, 30).Select(i => 10.0 * i)], [.. Enumerable.Range(0, 30).Select(i => i % 4.0)], "R07 side").Filter(80);
        Assert.All(Figures<ShapeModes>(ShapeModes.Of(filtered)), f =>
        {
            Assert.Contains("cut-off 80 mm", f.Method);
            Assert.Contains("filtered at 80 mm", f.Name);
        });
        Assert.All(Figures<ShapeModes>(ShapeModes.Of(Bent)), f => Assert.Contains("no filter", f.Method));
    }

    [Fact]
    public void Fragments_stay_below_thirty_kilobytes_and_names_are_text()
    {
        double[] x = [.. Enumerable.Range(0, 351).Select(i => (double)i)];
        var random = new Random(1);
        var dense = new Profile(x, Array.ConvertAll(x, _ => 20 * random.NextDouble()), "<b>R9</b> & top");
        foreach (var html in new[] { FragmentOf(ShapeModes.Of(dense)), FragmentOf(KinkTest.Of(dense, null, seed: 1, trials: 100)), FragmentOf(KinkTest.Of(Bent, Scatter(0.4), seed: 1)) })
        {
            Assert.InRange(Encoding.UTF8.GetByteCount(html), 2_000, 30_000);
            Assert.DoesNotContain("<b>", html);
        }
    }

    // The first chart of a process brings the script that draws charts, once; the second is as large as it stays.
    private static string FragmentOf(object result)
    {
        Views.Html(result);
        return Views.Html(result);
    }

    private static Figure[] Figures<T>(object result) => [.. Views.Find(typeof(T))!.Figures(result, "x")];

    private static ProfileErrors Scatter(double um) => new([.. Rail.Select(_ => um)], 24, []);
}

[UnderCulture("de-DE")]
public sealed class ShapeViewTestsInGerman : ShapeViewTests;

[UnderCulture("fa-IR")]
public sealed class ShapeViewTestsInPersian : ShapeViewTests;
