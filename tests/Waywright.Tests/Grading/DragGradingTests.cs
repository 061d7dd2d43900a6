using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Waywright.Notebooks;
using Waywright.Tests.Straightness;

namespace Waywright.Tests;

/// <summary>Grades that take in a drag log; rails and runs are invented, their places known.</summary>
public class DragGradingTests
{
    private const string Header = "rail,carriage,direction,position_mm,force_n,note\n";

    private static readonly double[] Stations = [.. Enumerable.Range(0, 14).Select(i => 4 + (24.0 * i))];

    // A straight rail: 1 um of bow at the side, 0 at the top; with 'bow' another side.
    private static GradedRail Grade(DragLog? log, double bow = 1, GradeRules? rules = null)
    {
        var rows = from face in new[] { "side", "top" }
                   from x in Stations
                   select string.Create(CultureInfo.InvariantCulture, $"R,{face},1,forward,{x},{(face == "side" ? 4 * bow * (x - 4) * (316 - x) / (312.0 * 312) : 0)}\n");
        return SweepBatch.Parse("rail,face,pass,direction,position_mm,reading_um\n" + string.Concat(rows), "s.csv").Grade(rules, Holes.Of("R"), drag: log).Rails.Single();
    }

    // 0.8 N with 2 % noise, a wave of so many newtons over 60 mm, and a hump of 1 N.
    private static string Run(string carriage, string direction, double? humpMm = null, double wave = 0, string rail = "R", string note = "")
    {
        var random = new Random(3);
        var text = new StringBuilder();
        foreach (var x in Enumerable.Range(1, 31).Select(i => direction == "forward" ? 10.0 * i : 320 - (10.0 * i)))
        {
            var hump = humpMm is { } at ? Math.Exp(-Math.Pow((x - at) / 8, 2)) : 0;
            text.Append(CultureInfo.InvariantCulture, $"{rail},{carriage},{direction},{x},{0.8 + (0.016 * Sweeps.Gaussian(random)) + (wave * Math.Sin(2 * Math.PI * x / 60)) + hump:0.000},{note}\n");
        }

        return text.ToString();
    }

    private static DragLog Log(params string[] runs) => DragLog.Parse(Header + string.Concat(runs), "drag.csv");

    [Fact]
    public void Without_a_log_the_grade_is_that_of_the_sweeps_and_the_answer_says_that_drag_was_not_measured()
    {
        var rail = Grade(null);
        Assert.Equal("gantry", rail.Grade);
        Assert.DoesNotContain(rail.Features, f => f.Feature == RailFeature.Drag);
        Assert.Null(rail.ValueOf(RailFeature.Drag));
        var rows = string.Concat(Stations.Select(x => string.Create(CultureInfo.InvariantCulture, $"R,side,1,forward,{x},0\n")));
        Assert.EndsWith("Drag was not measured, so no grade says that a rail runs freely.", SweepBatch.Parse("rail,face,pass,direction,position_mm,reading_um\n" + rows, "s.csv").Grade().Basis, StringComparison.Ordinal);
    }

    [Fact]
    public void A_rail_that_runs_freely_keeps_its_grade_and_shows_its_spread_beside_the_limit()
    {
        var rail = Grade(Log(Run("A", "forward"), Run("A", "back"), Run("B", "forward"), Run("B", "back")));
        Assert.Equal("gantry", rail.Grade);
        var drag = rail.Features.Single(f => f.Feature == RailFeature.Drag);
        Assert.Equal(("%", 50.0), (drag.Unit, drag.Limit));
        // P95 - P5 of Gaussian noise is 2 x 1.645 standard deviations: 2 % of the mean make 6.6 %.
        Assert.InRange(drag.Value!.Value, 4, 9);
    }

    [Fact]
    public void A_place_that_stays_with_the_rail_in_both_directions_with_a_second_carriage_sends_it_back()
    {
        var rail = Grade(Log(Run("A", "forward", 150), Run("A", "back", 150), Run("B", "forward", 150), Run("B", "back", 150)));
        Assert.Equal("return", rail.Grade);
        Assert.Matches(@"^It binds at [\d.]+ to [\d.]+ mm: 2\.\d times the usual drag, and the place stays with the rail \(A forward and back, B forward and back\)\.$", rail.Reason);
        Assert.Matches(@"^Wipe rail R at .* and run it again; if it still binds there, send it back\. Keep the log as the proof\.$", rail.Next);
        Assert.All(rail.States, s => Assert.Equal("fails", s.State));
    }

    [Theory]
    [InlineData("A forward;A back", "Run a second carriage over ")]
    [InlineData("A forward;A back;B forward", "Run carriage B over ")]
    public void A_place_that_is_not_proven_to_be_the_rail_s_is_measured_again_with_what_is_missing(string runs, string next)
    {
        var rail = Grade(Log([.. runs.Split(';').Select(r => Run(r.Split(' ')[0], r.Split(' ')[1], 150))]));
        Assert.Equal("measure again", rail.Grade);
        Assert.Matches(@"^At [\d.]+ to [\d.]+ mm a carriage takes 2\.\d times the usual drag \(.*\); whether the rail or the carriage binds is not proven\.$", rail.Reason);
        Assert.StartsWith(next, rail.Next, StringComparison.Ordinal);
        Assert.All(rail.States, s => Assert.Equal("undecided", s.State));
    }

    [Fact]
    public void A_carriage_that_binds_by_itself_does_not_lower_the_rail_and_is_named()
    {
        var rail = Grade(Log(Run("A", "forward", 150), Run("A", "back", 150), Run("B", "forward"), Run("B", "back")));
        Assert.Equal("gantry", rail.Grade);
        Assert.Matches(@"^Keep it for gantry\. Look at carriage A: the place at .* of rail R moves with the carriage\.$", rail.Next);
        Assert.InRange(rail.ValueOf(RailFeature.Drag)!.Value, 4, 9);
    }

    [Fact]
    public void A_place_that_comes_one_way_only_lowers_no_rail_and_points_at_the_pull()
        => Assert.Contains("Look at the pull and at what hangs on the carriage", Grade(Log(Run("A", "forward", 150), Run("A", "back"), Run("B", "forward", 150), Run("B", "back"))).Next, StringComparison.Ordinal);

    // A sine of amplitude a spreads over 2 a sin(0.45 pi) = 1.98 a between P5 and P95 (arcsine law): 0.25 N of 0.8 are 62 %.
    [Fact]
    public void An_uneven_drag_with_two_carriages_fails_a_grade_and_with_one_is_not_proven()
    {
        var both = Grade(Log(Run("A", "forward", wave: 0.25), Run("A", "back", wave: 0.25), Run("B", "forward", wave: 0.27), Run("B", "back", wave: 0.27)));
        Assert.Equal(("z", "drag"), (both.Grade, both.LimitingFeature));
        Assert.Matches(@"^Drag spread 6\d % \(carriage B\) is over 50 %, the limit for gantry\. It is within 100 %, the limit for Z\.$", both.Reason);
        Assert.Equal(["fails", "meets"], both.States.Select(s => s.State));
        var one = Grade(Log(Run("A", "forward", wave: 0.25), Run("A", "back", wave: 0.25)));
        Assert.Equal("z", one.Grade);
        Assert.Equal("Keep it for Z. To try for gantry: run a second carriage along it in both directions: one carriage can't tell the rail from itself.", one.Next);
        Assert.Equal(["undecided", "meets"], one.States.Select(s => s.State));
        var worse = Grade(Log(Run("A", "forward", wave: 0.55), Run("A", "back", wave: 0.55), Run("B", "forward", wave: 0.55), Run("B", "back", wave: 0.55)));
        Assert.Equal("measure again", worse.Grade);
        Assert.EndsWith("is over 100 %, the limit for Z, and no place of it is proven to bind.", worse.Reason, StringComparison.Ordinal);
        Assert.Equal("Clean and grease the rail and its carriages, and run them along it again in both directions.", worse.Next);
    }

    [Fact]
    public void Of_two_carriages_one_within_and_one_beyond_a_limit_prove_nothing_against_the_rail()
    {
        var rail = Grade(Log(Run("A", "forward"), Run("A", "back"), Run("B", "forward", wave: 0.25), Run("B", "back", wave: 0.25)));
        Assert.Equal("z", rail.Grade);
        Assert.Matches(@"To try for gantry: clean and grease carriage B and run it again; with carriage A it is \d %\.$", rail.Next);
    }

    [Fact]
    public void A_side_that_is_proven_bent_is_the_reason_for_a_return_before_the_drag()
        => Assert.StartsWith("Side ", Grade(Log(Run("A", "forward", 150), Run("A", "back", 150), Run("B", "forward", 150), Run("B", "back", 150)), bow: 150).Reason, StringComparison.Ordinal);

    [Fact]
    public void A_note_of_the_hand_stands_beside_the_figures_and_changes_none()
    {
        var log = Log("R,A,forward,150,,gritty <here>\n");
        var rail = Grade(log);
        Assert.Equal(("gantry", null), (rail.Grade, rail.ValueOf(RailFeature.Drag)));
        Assert.Contains("Felt by hand with carriage A, 150 mm, forward: gritty <here>", Views.Text(rail), StringComparison.Ordinal);
        Assert.Contains("gritty &lt;here&gt;", Views.Html(rail), StringComparison.Ordinal);
    }

    [Fact]
    public void Rails_that_only_one_of_both_files_names_are_told()
    {
        var rows = string.Concat(from rail in new[] { "R", "S" } from face in new[] { "side", "top" } from x in Stations select string.Create(CultureInfo.InvariantCulture, $"{rail},{face},1,forward,{x},0\n"));
        var graded = SweepBatch.Parse("rail,face,pass,direction,position_mm,reading_um\n" + rows, "s.csv").Grade(stock: Holes.Of("R", "S"), drag: Log(Run("A", "forward"), Run("A", "back", rail: "T")));
        Assert.EndsWith("Not measured for S. Not among the sweeps, so not graded: T.", graded.Basis, StringComparison.Ordinal);
        Assert.Contains("drag spread %", Views.Text(graded), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("r", "drag.csv: found rail 'r', expected 'R', as the sweeps write it")]
    [InlineData("Q", "drag.csv: found Q, and no rail that was swept, expected one of R")]
    public void A_log_that_calls_its_rails_otherwise_is_refused(string rail, string said)
        => Assert.Equal(said, Assert.Throws<InputException>(() => Grade(Log(Run("A", "forward", rail: rail)))).Message);

    // Truth of the invented log: where each hump was put, with which carriage, and the grade that it leads to.
    [Fact]
    public void The_demo_log_gives_each_rail_the_grade_of_its_truth_and_finds_the_humps()
    {
        var folder = Repository.PathOf("datasets", "demo");
        var rails = Path.Combine(folder, "rails");
        var log = DragLog.Read(Path.Combine(rails, "drag.csv"));
        var graded = SweepBatch.Read(Path.Combine(rails, "sweeps.csv"), SetupBook.Read(Path.Combine(rails, "setups.json"))).Grade(stock: RailStock.Read(Path.Combine(rails, "rails.csv")), drag: log, trials: 1_000);
        var truth = System.Text.Json.Nodes.JsonNode.Parse(File.ReadAllText(Path.Combine(folder, "truth.json")))!["drag"]!["rails"]!.AsArray();
        Assert.Equal(truth.Select(t => (string)t!["rail"]!), log.Carriages.Select(c => c.Rail).Distinct());
        foreach (var rail in truth)
        {
            var name = (string)rail!["rail"]!;
            Assert.Equal((string)rail["grade"]!, graded.Find(name)!.Grade);
            var places = log.Places.Where(p => p.Rail == name).ToArray();
            if ((double)rail["hump_n"]! == 0)
                Assert.Empty(places);
            else
                Assert.InRange((double)rail["hump_mm"]!, Assert.Single(places).FromMm, places[0].ToMm);
        }

        Assert.Contains(log.Carriages, c => c.Rail == "R06" && c.Notes is ["140 mm, forward: hums under the hand"]);
    }

    [Fact]
    public void The_picture_shows_each_run_and_marks_the_place_with_what_it_goes_with()
    {
        var log = Log(Run("A", "forward", 150), Run("A", "back", 150), Run("B", "forward", 150), Run("B", "back", 150));
        foreach (var html in new[] { Views.Html(log), Views.Html(Grade(log)) })
        {
            Assert.Contains("rail binds", html, StringComparison.Ordinal);
            Assert.All(new[] { "forward", "back" }, way => Assert.Equal(2, Regex.Count(html, $">(carriage A|carriage B) {way}<")));
            Assert.InRange(Encoding.UTF8.GetByteCount(Regex.Replace(html, "<!--ww:live-->.*?<!--/ww:live-->", "", RegexOptions.Singleline)), 1_000, 30_000);
        }
    }
}
