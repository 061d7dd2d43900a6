using System.Text.Json.Nodes;
using Waywright.Notebooks;

namespace Waywright.Tests.Notebooks;

/// <summary>Intervals and budgets as pictures.</summary>
public class UncertaintyPictureTests
{
    private static readonly double[] X = [.. Enumerable.Range(0, 13).Select(i => 25.0 * i)];

    public static TheoryData<string> Hostile => [.. HostileNames.All];

    [Fact]
    public void A_row_has_its_estimate_with_interval_its_reading_its_noise_floor_and_its_limit()
    {
        var figure = Bowed(20);
        var picture = IntervalPicture.Of("Rails", "rail", [new("R01", figure, 25)]);
        var layers = picture.Panels[0].Layers;
        var dot = layers.OfType<DotLayer>().Single();
        Assert.Equal((new Point(figure.EstimateUm, 1), new Interval(figure.LowUm, figure.HighUm)), (dot.Points[0], dot.Across![0]));
        Assert.Equal(new Point(figure.ObservedUm, 1), layers.OfType<MarkerLayer>().Single().Points[0]);
        Assert.Equal([0, figure.NoiseFloorUm], layers.OfType<BandLayer>().Single().X);
        Assert.All(layers.OfType<LineLayer>().Single().Points, p => Assert.Equal(25, p.X));
        Assert.Equal(["noise floor", "limit", "read as", "estimate with 95 % interval"], picture.Key.Select(l => l.Name));
        Assert.Equal("straightness STRt, µm", picture.X.Label);
        Assert.Equal(0, picture.X.Low);
    }

    [Fact]
    public void Rows_stand_in_the_order_given_the_first_on_top_under_their_names()
    {
        var picture = IntervalPicture.Of("Rails", "rail", [new("R02", Bowed(20)), new("R01", Bowed(10)), new("R03", Bowed(15))]);
        Assert.Equal(["R02", "R01", "R03"], picture.Y.TickLabels);
        Assert.Equal([3, 2, 1], picture.Y.Ticks);
        Assert.Equal([3, 2, 1], picture.Panels[0].Layers.OfType<DotLayer>().Single().Points.Select(p => p.Y));
        Assert.Throws<ArgumentException>(() => Axis.OfRows("rail", []));
    }

    [Fact]
    public void A_rail_far_worse_than_the_others_does_not_press_them_together_and_its_size_is_written()
    {
        IntervalRow[] rows = [new("R01", Bowed(10)), new("R02", Bowed(12)), new("R03", Bowed(400))];
        var picture = IntervalPicture.Of("Rails", "rail", rows);
        Assert.InRange(picture.X.High, rows[1].Figure.HighUm, 4 * rows[1].Figure.HighUm);
        Assert.Equal(2, picture.Panels[0].Layers.OfType<DotLayer>().Single().Points.Count);
        Assert.Contains(picture.Panels[0].Layers.OfType<TextLayer>(), t => t.Words.EndsWith('▶') && t.Words.StartsWith(UncertaintyText.Short(rows[2].Figure), StringComparison.Ordinal));
    }

    [Fact]
    public void The_caption_says_which_rails_are_within_beyond_or_across_their_limit_and_which_may_be_noise()
    {
        var caption = IntervalPicture.Caption([new("R01", Bowed(10), 15), new("R02", Bowed(40), 15), new("R03", Bowed(15), 15), new("R04", Bowed(0), 15)]);
        Assert.StartsWith("Within its limit: R01, R04; beyond it: R02; interval across the limit, so undecided: R03.", caption, StringComparison.Ordinal);
        Assert.EndsWith("Not above it, so perhaps noise alone: R04.", caption, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Hostile))]
    public void Names_of_rows_stay_names_in_both_drawings(string name)
    {
        IntervalRow[] rows = [new(name, Bowed(20), 30)];
        var picture = IntervalPicture.Of("Rails", "rail", rows);
        var budget = BudgetPicture.Of("STRt", [new UncertaintyComponent(name, 1, 5, AveragesOut.Repeating, "do it again")]);
        foreach (var drawn in new[] { picture, budget })
        {
            var svg = System.Xml.Linq.XDocument.Parse(SvgPicture.Draw(drawn));
            Assert.DoesNotContain(svg.Descendants(), e => e.Name.LocalName is "a" or "b" or "script");
            var figure = JsonNode.Parse(FigureHtml.Json(drawn))!;
            foreach (var text in Texts(figure["data"]!).Concat(Texts(figure["layout"]!)))
            {
                var rest = System.Text.RegularExpressions.Regex.Replace(text, "<br>|<extra></extra>|%{(x|y|hovertext)}", "");
                Assert.DoesNotContain(rest, c => c is '<' or '>' or '%' or '$' or < ' ');
            }
        }
    }

    [Fact]
    public void A_budget_s_bars_are_as_long_as_their_uncertainty_and_the_largest_is_on_top()
    {
        UncertaintyComponent[] budget =
        [
            new("dial", 0.4, double.PositiveInfinity, AveragesOut.Nothing, "check the dial"),
            new("lays", 1.2, 2, AveragesOut.Relaying, "lay the rail again."),
            new("scatter", 0.7, 20, AveragesOut.Repeating, "take more passes"),
        ];
        var picture = BudgetPicture.Of("STRt", budget);
        var bars = picture.Panels[0].Layers.OfType<BandLayer>().ToArray();
        Assert.Equal([1.2, 0.7, 0.4], bars.Select(b => b.X[1]));
        Assert.Equal(bars.OrderByDescending(b => b.Heights[0].Middle), bars);
        Assert.Equal(3, bars.Select(b => (b.Name, b.Role)).Distinct().Count());
        // Colour is not the only sign: the words stand at the bar.
        Assert.All(bars, b => Assert.Contains(picture.Panels[0].Layers.OfType<TextLayer>(), t => t.Words.EndsWith(b.Name, StringComparison.Ordinal)));
        Assert.Equal("Lay the rail again: the largest part is lays.", BudgetPicture.Caption(budget));
        Assert.Equal(["lays", "scatter", "dial"], BudgetPicture.Data("STRt", budget).Rows.Select(r => r[0]));
        Assert.Throws<ArgumentException>(() => BudgetPicture.Of("STRt", []));
    }

    [Fact]
    public void A_face_with_a_set_up_shows_noise_floor_interval_and_shares_of_contacts_and_one_without_does_not()
    {
        var face = Demo("R05 side", withSetup: true);
        var sure = face.Uncertainty()!;
        var zone = sure.Of(ReferenceLineKind.MinimumZone);
        var layers = RailPicture.Of(face, sure: sure).Panels[0].Layers;
        var floor = layers.OfType<BracketLayer>().Single(b => b.Name == "noise floor").Height;
        Assert.Equal(zone.NoiseFloorUm, floor.High - floor.Low, 1e-12);
        var ends = layers.OfType<DotLayer>().Single(d => d.Name == "STRt, 95 % interval").Up!;
        Assert.Equal((zone.HighUm / 2, -zone.HighUm / 2), (ends[0].High, ends[1].Low));
        foreach (var contact in face.Straightness.MinimumZone.Contacts)
            Assert.Contains(layers.OfType<MarkerLayer>(), m => m.Points[0].X == contact.PositionMm && m.Words![0] == $"{Shown.Percent(sure.ContactShares[contact.Station])} %");

        var bare = RailPicture.Of(Demo("R05 side", withSetup: false)).Panels[0].Layers;
        Assert.DoesNotContain(bare, l => l.Name.Contains("noise") || l.Name.Contains('%') || l.Name.Contains("share"));
        Assert.All(bare.OfType<MarkerLayer>(), m => Assert.Null(m.Words));
    }

    [Fact]
    public void Shares_that_would_run_into_each_other_are_left_out()
    {
        var face = Demo("R05 side", withSetup: true);
        var shares = face.Uncertainty()!.ContactShares;
        var level = new LevelProfile(face);
        Assert.All(level.ContactsWith(shares, 1), m => Assert.NotEqual("", m.Words![0]));
        var crowded = level.ContactsWith(shares, 1000).ToArray();
        Assert.Equal(face.Straightness.MinimumZone.Contacts.Count, crowded.Length);
        Assert.Contains(crowded, m => m.Words![0].Length == 0);
    }

    [Fact]
    public void The_public_charts_draw_what_the_pictures_do()
    {
        var sure = Demo("R01 side", withSetup: true).Uncertainty()!;
        Assert.Contains("minimum zone", Plotly.NET.GenericChart.toJson(Charts.Intervals(sure)));
        Assert.Contains("R01, limit", Plotly.NET.GenericChart.toJson(Charts.Intervals(("R01, limit", sure.Of(ReferenceLineKind.MinimumZone), 15.0))));
        Assert.Contains(sure.Budget[0].Name, Plotly.NET.GenericChart.toJson(Charts.Budget(sure)));
        Assert.Contains("reading", Plotly.NET.GenericChart.toJson(Charts.Budget([new UncertaintyComponent("reading", 1, 9, AveragesOut.Repeating, "read again")], "the gap", "mm")));
        Assert.Throws<ArgumentException>(() => Charts.Intervals(Enumerable.Empty<(string, UncertainFigure, double?)>()));
    }

    // A bow of so many um with a ripple no larger than the scatter it is said to have.
    private static UncertainFigure Bowed(double um)
    {
        var profile = new Profile(X, Array.ConvertAll(X, x => (um * x * (300 - x) / 22_500) + (0.4 * Math.Sin(x))), "a rail");
        return StraightnessUncertainty.Of(profile, new ProfileErrors([.. X.Select(_ => 0.6)], 24, []), trials: 2000).Of(ReferenceLineKind.MinimumZone);
    }

    private static PooledSweep Demo(string name, bool withSetup)
    {
        var setups = withSetup ? SetupBook.Read(Repository.PathOf("datasets", "demo", "rails", "setups.json")) : null;
        return SweepBatch.Read(Repository.PathOf("datasets", "demo", "rails", "sweeps.csv"), setups).Sweeps.Single(s => s.Name == name).Pool();
    }

    private static IEnumerable<string> Texts(JsonNode node) => node switch
    {
        JsonObject o => o.Where(p => p.Value is not null).SelectMany(p => Texts(p.Value!)),
        JsonArray a => a.Where(n => n is not null).SelectMany(n => Texts(n!)),
        JsonValue v when v.TryGetValue(out string? text) => [text],
        _ => [],
    };
}

[UnderCulture("de-DE")]
public sealed class UncertaintyPictureTestsInGerman : UncertaintyPictureTests;
