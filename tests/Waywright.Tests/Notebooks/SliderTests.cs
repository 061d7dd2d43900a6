using System.Text.Json.Nodes;
using Waywright.Notebooks;

namespace Waywright.Tests;

public sealed class SliderTests
{
    private static Picture At(double slope, bool more = false)
    {
        var x = Axis.Covering("x", "mm", [0.0, 10]);
        var y = Axis.Covering("y", "N", [0.0, 40]);
        var line = new LineLayer("line", Role.Fitted, Point.Of([0, 10], [0, 10 * slope]));
        return new Picture("A line", "", x, y, more ? new Panel(line, line) : new Panel(line));
    }

    // Data of each step put over that of the start is that step's own figure.
    [Fact]
    public void A_live_figure_carries_for_each_value_only_what_it_changes()
    {
        var picture = Slider.Picture("slope", ["1", "2", "4"], 1, [At(1), At(2), At(4)]);
        var figure = JsonNode.Parse(FigureHtml.Json(picture))!;
        var slider = figure["slider"]!;
        Assert.Equal((1, "slope"), ((int)slider["start"]!, (string)slider["label"]!));
        Assert.Equal(["1", "2", "4"], slider["values"]!.AsArray().Select(v => (string)v!));
        Assert.Empty(slider["steps"]![1]![0]!.AsObject());
        var changed = slider["steps"]![2]![0]!.AsObject();
        Assert.Equal(["y"], changed.Select(p => p.Key));
        Assert.True(JsonNode.DeepEquals(JsonNode.Parse(FigureHtml.Json(At(4)))!["data"]![0]!["y"], changed["y"]));
        Assert.Null(JsonNode.Parse(FigureHtml.Json(At(2)))!["slider"]);
    }

    [Fact]
    public void The_still_picture_is_that_of_the_starting_value()
        => Assert.Equal(SvgPicture.Draw(At(2)), SvgPicture.Draw(Slider.Picture("slope", ["1", "2", "4"], 1, [At(1), At(2), At(4)])));

    [Fact]
    public void Pictures_that_do_not_match_are_refused()
    {
        Assert.Throws<ArgumentException>(() => Slider.Picture("slope", ["1"], 0, [At(1), At(2)]));
        Assert.Throws<ArgumentException>(() => Slider.Picture("slope", ["1", "2"], 2, [At(1), At(2)]));
        Assert.Throws<ArgumentException>(() => FigureHtml.Json(Slider.Picture("slope", ["1", "2"], 0, [At(1), At(2, more: true)])));
    }
}
