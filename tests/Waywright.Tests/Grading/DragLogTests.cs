using System.Globalization;
using System.Text;
using UnitsNet;
using Waywright.Notebooks;
using Waywright.Tests.Straightness;

namespace Waywright.Tests;

/// <summary>Invented drag logs, simulated with places that are known.</summary>
public abstract class DragLogTests
{
    private const string Header = "rail,carriage,direction,position_mm,force_n\n";

    public sealed class Invariant : DragLogTests;

    [UnderCulture("de-DE")]
    public sealed class German : DragLogTests;

    [UnderCulture("tr-TR")]
    public sealed class Turkish : DragLogTests;

    // A run over 10 to 310 mm: 0.8 N with 4 % noise, a break-away peak at its start, and a hump of 1 N where the rail or the carriage has one.
    private static string Run(Random random, string carriage, string direction, double? humpMm, double startUp = 1.6, string rail = "R1")
    {
        var text = new StringBuilder();
        var stations = Enumerable.Range(1, 31).Select(i => 10.0 * i);
        var first = true;
        foreach (var x in direction == "forward" ? stations : stations.Reverse())
        {
            var hump = humpMm is { } at ? Math.Exp(-Math.Pow((x - at) / 8, 2)) : 0;
            var force = first ? startUp : 0.8 + (0.032 * Sweeps.Gaussian(random)) + hump;
            text.Append(CultureInfo.InvariantCulture, $"{rail},{carriage},{direction},{x},{force:0.000}\n");
            first = false;
        }

        return text.ToString();
    }

    private static DragLog Log(params (string Carriage, string Direction, double? HumpMm)[] runs)
    {
        var random = new Random(7);
        return DragLog.Parse(Header + string.Concat(runs.Select(r => Run(random, r.Carriage, r.Direction, r.HumpMm))), "drag.csv");
    }

    [Fact]
    public void A_place_that_stays_with_the_rail_in_both_directions_and_with_two_carriages_binds()
    {
        var log = Log(("A", "forward", 150), ("A", "back", 152), ("B", "forward", 149), ("B", "back", 151));
        var place = Assert.Single(log.Places);
        Assert.Equal((DragCause.Rail, "A forward and back, B forward and back"), (place.Cause, place.Seen));
        Assert.InRange(150, place.FromMm, place.ToMm);
        Assert.True(place.ToMm - place.FromMm <= 40);
        Assert.InRange(place.PeakRatio, 2, 2.5);
        Assert.StartsWith("Wipe rail R1 at ", Views.Text(log), StringComparison.Ordinal);
        Assert.Contains("if it still binds there, send it back (the place stays with the rail: A forward and back, B forward and back).", Views.Text(log), StringComparison.Ordinal);
    }

    [Fact]
    public void A_place_that_one_carriage_has_and_another_runs_through_moves_with_the_carriage()
    {
        var place = Assert.Single(Log(("A", "forward", 150), ("A", "back", 150), ("B", "forward", null), ("B", "back", null)).Places);
        Assert.Equal(DragCause.Carriage, place.Cause);
        Assert.Matches(@"^Look at carriage A: the place at [\d.]+ to [\d.]+ mm of rail R1 moves with the carriage\.$", place.Next);
    }

    [Fact]
    public void Carriages_that_bind_at_places_of_their_own_condemn_no_rail()
    {
        var log = Log(("A", "forward", 90), ("A", "back", 90), ("B", "forward", 230), ("B", "back", 230));
        Assert.Equal([DragCause.Carriage, DragCause.Carriage], log.Places.Select(p => p.Cause));
        Assert.Equal(["A forward and back", "B forward and back"], log.Places.Select(p => p.Seen));
    }

    [Fact]
    public void A_place_that_comes_in_one_direction_only_points_at_the_pull()
    {
        var place = Assert.Single(Log(("A", "forward", 150), ("A", "back", null), ("B", "forward", 150), ("B", "back", null)).Places);
        Assert.Equal((DragCause.Direction, "A forward, B forward"), (place.Cause, place.Seen));
    }

    [Fact]
    public void One_carriage_alone_can_not_condemn_a_rail()
    {
        var place = Assert.Single(Log(("A", "forward", 150), ("A", "back", 150)).Places);
        Assert.Equal(DragCause.Undecided, place.Cause);
        Assert.Matches(@"^Run a second carriage over .* in both directions: one carriage can't tell the rail from itself\.$", place.Next);
    }

    [Fact]
    public void A_direction_that_was_not_run_is_asked_for()
    {
        var place = Assert.Single(Log(("A", "forward", 150), ("A", "back", 150), ("B", "forward", 150)).Places);
        Assert.Equal(DragCause.Undecided, place.Cause);
        Assert.Matches(@"^Run carriage B over .* back as well, starting well away from it\.$", place.Next);
    }

    [Fact]
    public void A_place_in_one_of_three_runs_is_not_repeated_and_the_rails_go_on()
    {
        var log = Log(("A", "forward", 150), ("A", "forward", null), ("A", "forward", null), ("A", "back", null));
        Assert.Equal(DragCause.NotRepeated, Assert.Single(log.Places).Cause);
        Assert.StartsWith("Go on with these rails: no place binds, and the drag of carriage A on rail R1 spreads over ", Views.Text(log), StringComparison.Ordinal);
    }

    [Fact]
    public void Even_rails_have_no_place_in_nearly_all_logs()
    {
        // Four runs of 30 readings at 4 % noise: 25 % over the median is 6 standard deviations.
        var random = new Random(11);
        for (var i = 0; i < 50; i++)
            Assert.Empty(DragLog.Parse(Header + Run(random, "A", "forward", null) + Run(random, "A", "back", null) + Run(random, "B", "forward", null) + Run(random, "B", "back", null), "drag.csv").Places);
    }

    [Fact]
    public void The_start_up_stands_apart_with_its_falling_readings()
    {
        // After 2.0 and 1.5 the readings by hand: 1.0, 1.1, 0.9, 1.0, 1.1, 0.9; mean 1.0; P5 and P95 at places -0.2 and 5.2 are the ends: spread 20 %.
        var text = Header;
        double[] forces = [2.0, 1.5, 1.0, 1.1, 0.9, 1.0, 1.1, 0.9];
        for (var i = 0; i < forces.Length; i++)
            text += string.Create(CultureInfo.InvariantCulture, $"R1,A,forward,{20 * i},{forces[i]}\n");
        var drag = DragLog.Parse(text, "drag.csv").Find("R1", "A")!;
        Assert.Equal((1, 6, 2.0), (drag.Runs, drag.Readings, drag.StartUpN));
        Assert.Equal(1.0, drag.MeanN!.Value, 1e-12);
        Assert.Equal(1.0, drag.ForwardMeanN!.Value, 1e-12);
        Assert.Null(drag.BackMeanN);
        Assert.Equal(20, drag.SpreadPercent!.Value, 1e-9);
        Assert.Equal("gantry", drag.SteadyFor);
    }

    [Fact]
    public void Limits_on_the_spread_are_those_of_the_rules_given_in_the_figure_and_in_the_view()
    {
        var rules = GradeRules.Parse("""{"return_above_side_um":100,"grades":[{"grade":"camera","limits":[{"feature":"drag","limit_percent":10}]},{"grade":"lift","limits":[{"feature":"drag","limit_percent":12.5}]},{"grade":"shelf","limits":[{"feature":"drag","limit_percent":90}]}]}""", "rules.json");
        var text = Header + string.Concat(new[] { 2.0, 1.5, 1.0, 1.1, 0.9, 1.0, 1.1, 0.9 }.Select((f, i) => string.Create(CultureInfo.InvariantCulture, $"R1,A,forward,{20 * i},{f}\n")));
        var log = DragLog.Parse(text, "drag.csv", rules);
        Assert.Equal("shelf", log.Find("R1", "A")!.SteadyFor);
        Assert.StartsWith("Use rail R1 for shelf, or clean and grease it and run it again: the drag of carriage A on rail R1 spreads over 20 % of its mean, over the 10 % for camera;", Views.Text(log), StringComparison.Ordinal);
        Assert.Contains("Limits on the spread: camera 10 %, lift 12.5 %, shelf 90 %.", Views.Html(log));
        Assert.Contains("Limits on the spread: gantry 50 %, Z 100 % (common practice, no source).", Views.Html(DragLog.Parse(text, "drag.csv")));
        // A graded rail goes by the rules that it was graded with, whatever the log was read with.
        var sweeps = SweepBatch.Parse("rail,face,pass,direction,position_mm,reading_um\n" + string.Concat(from face in new[] { "side", "top" } from x in Enumerable.Range(0, 12) select $"R1,{face},1,forward,{25 * x},0\n"), "s.csv");
        Assert.Equal("shelf", sweeps.Grade(rules, drag: DragLog.Parse(text, "drag.csv")).Rails.Single().Drag.Single().SteadyFor);
        Assert.Equal("gantry", sweeps.Grade(drag: log).Rails.Single().Drag.Single().SteadyFor);
    }

    [Fact]
    public void Percentiles_between_readings_are_those_of_numpy()
    {
        // numpy.percentile([...], [5, 95], method='hazen') of 1, 1.1 ... 2.9 N: 1.05 and 2.85 (place p n - 1/2); 1.8 / 1.95 of the mean.
        var text = Header + "R1,A,forward,0,3\n";
        for (var i = 0; i < 20; i++)
            text += string.Create(CultureInfo.InvariantCulture, $"R1,A,forward,{10 + i},{1 + (0.1 * ((i * 7) % 20)):0.0}\n");
        var drag = DragLog.Parse(text, "drag.csv").Find("R1", "A")!;
        Assert.Equal(20, drag.Readings);
        Assert.Equal(100 * 1.8 / 1.95, drag.SpreadPercent!.Value, 1e-9);
        Assert.Equal("z", drag.SteadyFor);
    }

    [Fact]
    public void A_note_of_the_hand_stands_beside_and_changes_no_figure()
    {
        var random = new Random(3);
        var rows = Run(random, "A", "forward", null);
        var plain = DragLog.Parse(Header + rows, "drag.csv").Carriages.Single();
        var noted = DragLog.Parse("rail,carriage,direction,position_mm,force_n,note\n" + rows.Replace("\n", ",\n") + "R1,A,forward,150,,\"rough, like 9 N\"\n", "drag.csv");
        Assert.Equal(["150 mm, forward: rough, like 9 N"], noted.Carriages.Single().Notes);
        Assert.Equal(plain, noted.Carriages.Single() with { Notes = plain.Notes });
        Assert.Contains("R1, carriage A, 150 mm, forward: rough, like 9 N", Views.Text(noted), StringComparison.Ordinal);
        var only = DragLog.Parse("rail,carriage,direction,position_mm,force_n,note\nR1,A,forward,150,,<b>gritty</b>\n", "drag.csv");
        Assert.Equal(0, only.Carriages.Single().Readings);
        Assert.Null(only.Carriages.Single().MeanN);
        Assert.StartsWith("Pull the carriages with a gauge", Views.Text(only), StringComparison.Ordinal);
        Assert.DoesNotContain("<b>", Views.Html(only), StringComparison.Ordinal);
    }

    [Fact]
    public void All_wrong_values_are_listed_with_their_places()
    {
        var wrong = Assert.Throws<InputException>(() => DragLog.Parse(Header + ",A,forward,10,0.8\nR1,A,up,20,0.8\nR1,A,forward,-5,0.8\nR1,A,forward,30,strong\nR1,A,forward,40,\n", "drag.csv"));
        Assert.Equal(
        [
            "drag.csv:2:1: found nothing, expected a rail's name of 1 to 64 printable characters",
            "drag.csv:3:6: found 'up', expected the direction: forward or back",
            "drag.csv:4:14: found '-5', expected position_mm from 0 to 100000",
            $"drag.csv:5:17: found 'strong', expected force_n to be {Number.Expected}",
            $"drag.csv:6:17: found nothing, expected force_n to be {Number.Expected}",
        ], wrong.Problems.Select(p => p.ToString()));
    }

    [Theory]
    [InlineData("rail,carriage,position_mm\nR1,A,1\n", "drag.csv:1: found no column direction, expected the columns rail,carriage,direction,position_mm,force_n")]
    [InlineData(Header, "drag.csv:1: found a header and no rows, expected a row for each reading")]
    [InlineData(Header + "R1,A,forward,0,1\nR1,A,forward,10,1\n", "drag.csv:2: found a run of 2 readings, expected 5 readings or more to a run, positions rising forward and falling back")]
    [InlineData(Header + "R1,A,back,0,1\nR1,A,back,10,1\n", "drag.csv:3: found a run of 1 reading, expected 5 readings or more to a run, positions rising forward and falling back")]
    [InlineData(Header + "R1,A,forward,0,1\nR1,A,forward,1,0\nR1,A,forward,2,0\nR1,A,forward,3,0\nR1,A,forward,4,0\n", "drag.csv:2: found a run that shows no force in half of its readings, expected a gauge that shows the drag")]
    public void What_can_not_be_judged_is_refused_with_its_line(string text, string said)
        => Assert.Contains(said, Assert.Throws<InputException>(() => DragLog.Parse(text, "drag.csv")).Problems.Select(p => p.ToString()));

    [Fact]
    public void A_tilt_gives_the_force_with_its_uncertainty()
    {
        // By hand, sin 10 degrees = 0.1736482 from a table: 0.5 kg x 9.80665 m/s2 x 0.1736482 = 0.851453 N; relative u: mass 0.005/0.5, g 0.03/sqrt 3/9.80665, angle cot(10 deg) x 0.2 deg, in quadrature (JCGM 100:2008, 5.1.2).
        var force = DragLog.ForceFromTilt(Quantity.Read<Mass>("500 g u 5 g", "mass"), Quantity.Read<Angle>("10 deg u 0.2 deg", "tilt"));
        Assert.Equal(0.851453, force.Si.Value, 1e-6);
        var relative = Math.Sqrt(Math.Pow(0.01, 2) + Math.Pow(0.03 / Math.Sqrt(3) / 9.80665, 2) + Math.Pow(0.2 * Math.PI / 180 / Math.Tan(10 * Math.PI / 180), 2));
        Assert.Equal(force.Si.Value * relative, force.Si.StandardUncertainty, 1e-9);
        Assert.Equal("tilt", force.Si.Contributions[0].Input);
        Assert.Throws<ArgumentOutOfRangeException>(() => DragLog.ForceFromTilt(Quantity.Read<Mass>("500 g", "mass"), Quantity.Read<Angle>("90 deg", "tilt")));
        Assert.Throws<ArgumentOutOfRangeException>(() => DragLog.ForceFromTilt(Quantity.Read<Mass>("0 g", "mass"), Quantity.Read<Angle>("10 deg", "tilt")));
    }
}
