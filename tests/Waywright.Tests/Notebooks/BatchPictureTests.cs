using Waywright.Notebooks;

namespace Waywright.Tests;

/// <summary>A batch's picture shows of each rail the heights that its grade was decided by.</summary>
public class BatchPictureTests
{
    private static readonly Lazy<GradedBatch> Demo = new(() =>
    {
        string Of(string file) => Repository.PathOf("datasets", "demo", "rails", file);
        return SweepBatch.Read(Of("sweeps.csv"), SetupBook.Read(Of("setups.json"))).Clean().Batch.Grade(stock: RailStock.Read(Of("rails.csv")), drag: DragLog.Read(Of("drag.csv")));
    });

    [Fact]
    public void A_rail_that_its_mounted_top_decides_is_drawn_as_its_screws_will_hold_it_with_that_limit()
    {
        var picture = BatchPicture.Of(Demo.Value)!;
        var rails = Demo.Value.Rails.Where(r => r.LimitingFeature == RailFeature.TopMounted).ToArray();
        Assert.NotEmpty(rails);
        foreach (var rail in rails)
        {
            var panel = Assert.Single(picture.Panels, p => p.Title == $"{rail.Rail} top, mounted");
            var heights = panel.Layers.OfType<DotLayer>().Single(l => l.Name == "stations").Points;
            Assert.Equal(rail.ValueOf(RailFeature.TopMounted)!.Value, heights.Max(p => p.Y) - heights.Min(p => p.Y), 1e-6);
            Assert.NotEqual(rail.Top!.Straightness.MinimumZone.Line.STRtUm, heights.Max(p => p.Y) - heights.Min(p => p.Y), 1);
            var limit = rail.Features.Single(f => f.Feature == RailFeature.TopMounted).Limit!.Value;
            Assert.Equal(limit, panel.Layers.OfType<BracketLayer>().Single().Height is var height ? height.High - height.Low : 0);
        }

        Assert.Contains("a top not as it lies free but as its screws are predicted to hold it", BatchPicture.Caption(Demo.Value));
    }

    [Fact]
    public void A_limit_is_never_drawn_beyond_its_panel_and_every_rail_but_one_of_drag_alone_has_one()
    {
        var picture = BatchPicture.Of(Demo.Value)!;
        Assert.All(picture.Panels.SelectMany(p => p.Layers.OfType<BracketLayer>()), b => Assert.InRange(b.Height.High, 0, picture.Y.High));
        foreach (var rail in Demo.Value.Rails.Where(r => r.Grade is not (GradedBatch.Return or GradedBatch.MeasureAgain) && r.LimitingFeature != RailFeature.Drag))
            Assert.Single(picture.Panels.Single(p => p.Title.StartsWith(rail.Rail, StringComparison.Ordinal)).Layers.OfType<BracketLayer>());
    }
}
