using System.Text.Json.Nodes;
using Waywright.Notebooks;
using GenericChart = Plotly.NET.GenericChart;

namespace Waywright.Tests.Notebooks;

public class PlotlyPictureTests
{
    public static TheoryData<string> Hostile => [.. HostileNames.All];

    [Fact]
    public void A_figure_has_the_colours_of_its_roles()
    {
        var colours = Texts(Figure(SamplePictures.Rail())).ToHashSet();
        Assert.Superset(new HashSet<string>([.. new[] { Role.Ink, Role.Fitted, Role.Limit, Role.Contact, Role.Context }.Select(r => r.Colour()), "#56B4E94D"]), colours);
    }

    [Fact]
    public void A_figure_is_transparent_has_no_mode_bar_and_titles_with_units()
    {
        var figure = Figure(SamplePictures.Rail());
        Assert.Equal(("rgba(0,0,0,0)", "rgba(0,0,0,0)"), ((string)figure["layout"]!["paper_bgcolor"]!, (string)figure["layout"]!["plot_bgcolor"]!));
        Assert.False((bool)figure["config"]!["displayModeBar"]!);
        Assert.Superset(new HashSet<string>(["height, µm (+ towards the dial)", "position from the dot, mm"]), Texts(figure["layout"]!["annotations"]!).ToHashSet());
        Assert.Contains("stations, ± U<br>%{x} mm: %{y} µm<extra></extra>", Texts(figure));
    }

    [Theory]
    [MemberData(nameof(Hostile))]
    public void Names_from_data_become_no_markup_no_template_and_no_formula(string name)
    {
        // Our own markup in texts is <b>, <br>, <span style>, and <extra>; our own template fields are x and y.
        var texts = Texts(Figure(SamplePictures.Batch(name))["data"]!).Concat(Texts(Figure(SamplePictures.Batch(name))["layout"]!["annotations"]!));
        foreach (var text in texts)
        {
            var rest = System.Text.RegularExpressions.Regex.Replace(text, "</?b>|<br>|<span style=\"color:#[0-9A-F]{6}\">|</span>|<extra></extra>|%{[xy]}", "");
            Assert.DoesNotContain(rest, c => c is '<' or '>' or '%' or '$' or < ' ');
        }
    }

    [Fact]
    public void Entities_give_the_name_back()
    {
        foreach (var name in HostileNames.All.Take(7))
            Assert.Equal(name, System.Net.WebUtility.HtmlDecode(PlotlyText.Encode(name)));
    }

    [Fact]
    public void Numbers_are_rounded_to_a_thousandth_of_the_axis()
    {
        var picture = new Picture("A test", "", Axis.Covering("x", "", [0, 100]), Axis.Covering("y", "", [0, 1]), new Panel(new DotLayer("", Role.Ink, Point.Of([1 / 3.0, 70, 99], [1 / 3.0, 1, 0.5]))));
        Assert.Equal("""{"x":[0.3,70,99],"y":[0.333,1,0.5]}""", Only(Figure(picture)["data"]![0]!, "x", "y"));
    }

    [Fact]
    public void Evenly_spaced_stations_are_a_start_and_a_step()
    {
        var picture = new Picture("A test", "", Axis.Covering("x", "", [0, 100]), Axis.Covering("y", "", [0, 10]), new Panel(new DotLayer("", Role.Ink, Point.Of([10, 35, 60, 85], [1, 2, 3, 4]))));
        Assert.Equal("""{"x0":10,"dx":25,"y":[1,2,3,4]}""", Only(Figure(picture)["data"]![0]!, "x0", "dx", "y"));
    }

    [Fact]
    public void Bars_are_lengths_up_and_down_from_their_dot()
    {
        var dots = new DotLayer("", Role.Ink, Point.Of([1, 2], [5, 5])) { Up = FixedList<Interval>.Copy([new Interval(4, 7), new Interval(3, 6)]) };
        var picture = new Picture("A test", "", Axis.Covering("x", "", [0, 10]), Axis.Covering("y", "", [0, 10]), new Panel(dots));
        Assert.Equal("""{"array":[2,1],"arrayminus":[1,2]}""", Only(Figure(picture)["data"]![0]!["error_y"]!, "array", "arrayminus"));
    }

    [Fact]
    public void Each_panel_has_axes_of_its_own_and_the_key_names_each_mark_once()
    {
        var traces = Figure(SamplePictures.Batch())["data"]!.AsArray();
        Assert.Equal(12, traces.Select(t => (string?)t!["xaxis"] ?? "x").Distinct().Count());
        Assert.Equal(["minimum zone", "stations", "limit"], traces.Where(t => (bool?)t!["showlegend"] == true).Select(t => (string)t!["name"]!));
    }

    private static JsonNode Figure(Picture picture) => JsonNode.Parse(GenericChart.toJson(PlotlyPicture.Draw(picture)))!;

    private static string Only(JsonNode node, params string[] names) => new JsonObject(names.Select(n => KeyValuePair.Create(n, node[n]?.DeepClone()))).ToJsonString();

    private static IEnumerable<string> Texts(JsonNode? node) => node switch
    {
        JsonObject members => members.SelectMany(m => Texts(m.Value)),
        JsonArray items => items.SelectMany(Texts),
        JsonValue value when value.TryGetValue(out string? text) => [text],
        _ => [],
    };
}
