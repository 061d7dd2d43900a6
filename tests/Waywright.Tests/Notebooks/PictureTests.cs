using Waywright.Notebooks;

namespace Waywright.Tests.Notebooks;

public class PictureTests
{
    private static readonly Axis X = Axis.Covering("x", "mm", [0, 10]);
    private static readonly Axis Y = Axis.Covering("y", "µm", [-10, 10]);

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Numbers_that_are_not_finite_are_refused(double value)
    {
        Assert.Throws<ArgumentException>(() => new Point(0, value));
        Assert.Throws<ArgumentException>(() => new Interval(value, 1));
        Assert.Throws<ArgumentException>(() => Of(new RuleLayer("", Role.Limit, value)));
        Assert.Throws<ArgumentException>(() => Of(new BracketLayer("", Role.Limit, value, new Interval(0, 1))));
        Assert.Throws<ArgumentException>(() => Of(new TickLayer("", Role.Ink, FixedList<double>.Copy([value]))));
    }

    [Fact]
    public void Lists_of_different_lengths_are_refused()
    {
        var points = Point.Of([1, 2], [1, 2]);
        Assert.Throws<ArgumentException>(() => Point.Of([1, 2], [1]));
        Assert.Throws<ArgumentException>(() => Of(new DotLayer("", Role.Ink, points) { Up = FixedList<Interval>.Copy([new Interval(0, 1)]) }));
        Assert.Throws<ArgumentException>(() => Of(new MarkerLayer("", Role.Ink, Symbol.Ring, points, FixedList<string>.Copy(["one"]))));
        Assert.Throws<ArgumentException>(() => Of(new BandLayer("", Role.Zone, FixedList<double>.Copy([0, 1]), FixedList<Interval>.Copy([new Interval(0, 1)]))));
    }

    [Fact]
    public void What_leaves_a_panel_is_cut_with_its_true_size_written_where_it_leaves()
    {
        var picture = Of(new LineLayer("", Role.Ink, Point.Of([0, 5, 10], [-12.4, 148.2, 3])));
        var notes = picture.Panels[0].Layers.OfType<TextLayer>().ToArray();
        Assert.Equal(["▲ up to 148 µm", "▼ down to −12 µm"], notes.Select(n => n.Words));
        Assert.Equal([new Point(5, 10), new Point(0, -10)], notes.Select(n => n.At));
    }

    [Fact]
    public void What_fits_has_no_note()
        => Assert.Empty(Of(new LineLayer("", Role.Ink, Point.Of([0, 10], [-10, 10]))).Panels[0].Layers.OfType<TextLayer>());

    [Fact]
    public void The_key_names_each_kind_of_mark_once()
        => Assert.Equal(["minimum zone", "stations", "limit"], SamplePictures.Batch().Key.Select(l => l.Name));

    [Fact]
    public void Thinning_keeps_the_first_the_last_and_every_extreme()
    {
        var points = Point.Of(Enumerable.Range(0, 10_000).Select(i => (double)i).ToArray(), Enumerable.Range(0, 10_000).Select(i => i == 6_543 ? 99 : Math.Sin(i)).ToArray());
        var thin = Thinning.Of(points, 100);
        Assert.InRange(thin.Count, 100, 400);
        Assert.Equal((points[0], points[^1]), (thin[0], thin[^1]));
        Assert.Contains(new Point(6_543, 99), thin);
        Assert.Equal(points.Min(p => p.Y), thin.Min(p => p.Y));
        Assert.Equal(thin.OrderBy(p => p.X), thin);
    }

    private static Picture Of(Layer layer) => new("A test", "", X, Y, new Panel(layer));
}
