using System.Globalization;
using System.Text;
using Waywright.Tests.Straightness;

namespace Waywright.Tests;

/// <summary>Grades by bounds: sweeps with a set-up.</summary>
public class IntervalGradingTests
{
    private const string Setup = """
        {"setups":[{"id":"bench","guide":"plate","guide_straightness_um":GUIDE,"guide_known_from":"KNOWN","probe":"surface","held":"HELD",
        "instrument":{"name":"lever indicator","division_um":DIVISION,"read_to":"whole"}}]}
        """;

    private static readonly double[] Stations = [.. Enumerable.Range(0, 14).Select(i => 4 + (24.0 * i))];

    private static SetupBook Book(double guide = 1, string known = "certificate", string held = "two supports at 70 mm, 250 mm", double division = 1)
        => SetupBook.Parse(
            Setup.Replace("GUIDE", guide.ToString(CultureInfo.InvariantCulture)).Replace("KNOWN", known).Replace("HELD", held).Replace("DIVISION", division.ToString(CultureInfo.InvariantCulture)), "setups.json");

    // Three passes, the last after laying anew; readings in whole divisions.
    private static GradedRail Grade(double sideBow, SetupBook book, double noise = 0.6, double division = 1, int seed = 1, GradeRules? rules = null)
    {
        var random = new Random(seed);
        var text = new StringBuilder("rail,face,pass,direction,position_mm,reading_um,lay\n");
        foreach (var (face, bow) in new[] { ("side", sideBow), ("top", 6.0) })
        {
            for (var pass = 1; pass <= 3; pass++)
            {
                var tilt = 5 * Sweeps.Gaussian(random);
                foreach (var x in Stations)
                {
                    var u = (x - 4) / 312;
                    var reading = division * Math.Round(((4 * bow * u * (1 - u)) + (tilt * u) + (noise * Sweeps.Gaussian(random))) / division);
                    text.Append(CultureInfo.InvariantCulture, $"R,{face},{pass},forward,{x},{reading},{(pass == 3 ? "B" : "A")}\n");
                }
            }
        }

        return SweepBatch.Parse(text.ToString(), "s.csv", book).Grade(rules, Holes.Of("R"), trials: 4000).Rails.Single();
    }

    [Theory]
    [InlineData(10, "gantry")]
    [InlineData(26, "gantry")]
    [InlineData(34, "z")]
    [InlineData(55, "z")]
    [InlineData(66, "measure again")]
    [InlineData(96, "measure again")]
    [InlineData(106, "return")]
    public void A_rail_well_off_a_limit_gets_the_grade_of_its_true_bow(double bow, string grade)
    {
        var rail = Grade(bow, Book());
        Assert.Equal(grade, rail.Grade);
        var side = rail.Features.Single(f => f.Feature == RailFeature.Side).Figure!;
        Assert.InRange(bow, side.LowUm, side.HighUm);
        Assert.Equal(grade == "measure again", rail.Confidence is null);
        Assert.True(rail.Confidence is null or >= 0.95);
    }

    [Fact]
    public void A_rail_that_reads_just_within_the_limit_is_not_proven_and_gets_the_next_grade_with_what_would_settle_it()
    {
        var rail = Grade(29.2, Book());
        Assert.Equal("z", rail.Grade);
        Assert.Contains("is not proven to be within 30 um, the limit for gantry. It is within 60 um, the limit for Z.", rail.Reason, StringComparison.Ordinal);
        Assert.StartsWith("Keep it for Z. To try for gantry: ", rail.Next, StringComparison.Ordinal);
        var loose = Grade(29.2, Book(), rules: new GradeRules([new GradeRule("gantry", [new FeatureLimit(RailFeature.Side, 33)])], 100));
        Assert.Equal("gantry", loose.Grade);
    }

    [Fact]
    public void Few_rails_beyond_a_limit_are_accepted_and_few_within_are_claimed_to_be_beyond()
    {
        // At the limit itself a level of 95 % lets 5 of 100 pass; 200 rails: 2 standard deviations are 3 of 100.
        var accepted = Enumerable.Range(0, 200).Count(seed => Grade(30, Book(guide: 0.1), seed: seed).Grade == "gantry");
        Assert.InRange(accepted, 0, 16);
        var returned = Enumerable.Range(0, 200).Count(seed => Grade(100, Book(guide: 0.1), seed: seed).Grade == "return");
        Assert.InRange(returned, 0, 16);
    }

    [Fact]
    public void More_noise_turns_a_grade_into_measure_again_with_the_passes_that_it_takes()
    {
        var rail = Grade(54, Book(), noise: 6);
        Assert.Equal("measure again", rail.Grade);
        Assert.Contains("is not proven to be within 60 um, the limit for Z.", rail.Reason, StringComparison.Ordinal);
        Assert.Matches(@"^Take \d+ passes instead of 3, some of them after lifting and re-laying the rail\.$", rail.Next);
    }

    [Fact]
    public void Where_the_guide_alone_takes_the_room_no_number_of_passes_is_promised()
    {
        var rail = Grade(57, Book(guide: 8));
        Assert.Equal("measure again", rail.Grade);
        Assert.Equal("No number of passes settles this; the largest part that stays is the guide bench: reverse the guide.", rail.Next);
    }

    [Fact]
    public void A_limit_under_the_noise_floor_is_refused()
    {
        var rules = new GradeRules([new GradeRule("fine", [new FeatureLimit(RailFeature.Side, 2)])], 100);
        var rail = Grade(0.5, Book(division: 10), noise: 4, division: 10, rules: rules);
        Assert.Equal("measure again", rail.Grade);
        Assert.StartsWith("The limit for fine, 2 um, lies under the noise floor: on a perfectly straight rail this set-up reads up to ", rail.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void A_rail_that_was_clamped_or_an_unknown_guide_gives_no_grade_and_no_return()
    {
        Assert.Equal("measure again", Grade(150, Book(known: "unknown")).Grade);
        var clamped = Grade(150, Book(held: "clamped at 20 mm, 300 mm"));
        Assert.Equal("measure again", clamped.Grade);
        Assert.Equal("Sweep the side again on two supports.", clamped.Next);
    }

    [Theory]
    [InlineData("0,320", "Not judged: side, side local (swept at two positions, which always lie on a line); top mounted (no station between 0 and 320 mm, where holes are 25 mm apart), so the rail is not proven good.",
        "Sweep the side midway between all holes and near both ends. Sweep the top midway between all holes and near both ends.")]
    [InlineData("0,80,160,240,320", "Not judged: side local (fewer than 4 stations within 100 mm); top mounted (no station between 0 and 80 mm, where holes are 25 mm apart), so the rail is not proven good.",
        "Sweep the side again with at least 4 stations in every 100 mm. Sweep the top midway between all holes and near both ends.")]
    [InlineData("70,90,110,130,150,170,190,210,230,250", "Not judged: top mounted (the top is known from 70 to 250 mm only: it must reach the end screws at 10 and 310 mm within a pitch of 25 mm), so the rail is not proven good.",
        "Check the sizes of R in rails.csv, or sweep the top out to its end screws.")]
    public void What_was_not_measured_is_not_proven_good(string positions, string reason, string next)
    {
        foreach (var book in new[] { Book(), null })
        {
            var rows = from face in new[] { "side", "top" } from x in positions.Split(',') select $"R,{face},1,forward,{x},1\n";
            var rail = SweepBatch.Parse("rail,face,pass,direction,position_mm,reading_um\n" + string.Concat(rows), "s.csv", book).Grade(stock: Holes.Of("R")).Rails.Single();
            Assert.Equal(("measure again", reason, next), (rail.Grade, rail.Reason, rail.Next));
        }
    }

    [Fact]
    public void Where_the_holes_are_not_known_the_top_is_not_judged_and_the_answer_says_what_is_missing()
    {
        var rows = string.Concat(from face in new[] { "side", "top" } from x in Stations select string.Create(CultureInfo.InvariantCulture, $"R,{face},1,forward,{x},1\n"));
        var batch = SweepBatch.Parse("rail,face,pass,direction,position_mm,reading_um\n" + rows, "s.csv");
        var unknown = batch.Grade().Rails.Single();
        Assert.Equal(("measure again", "Not judged: top mounted (where its screws will be is not known), so the rail is not proven good."), (unknown.Grade, unknown.Reason));
        Assert.Equal("Give rails.csv with length, pitch and end distance of each rail; nothing has to be swept again for that.", unknown.Next);
        Assert.Null(unknown.ValueOf(RailFeature.TopMounted));
        Assert.Equal(0, unknown.ValueOf(RailFeature.TopFree)!.Value, 1e-12);
        Assert.Equal("Add R to rails.csv with length, pitch and end distance; nothing has to be swept again for that.", batch.Grade(stock: Holes.Of("Q")).Rails.Single().Next);
        Assert.Equal("gantry", batch.Grade(stock: Holes.Of("R")).Rails.Single().Grade);
        // Rules that don't ask for it are not held up by it; the better grade that does is not given.
        var side = new GradeRules([new GradeRule("fine", [new FeatureLimit(RailFeature.TopMounted, 5), new FeatureLimit(RailFeature.Side, 30)]), new GradeRule("plain", [new FeatureLimit(RailFeature.Side, 30)])], 100);
        var plain = batch.Grade(side).Rails.Single();
        Assert.Equal(("plain", "Not judged: top mounted (where its screws will be is not known): fine limits it."), (plain.Grade, plain.Reason));
    }

    [Fact]
    public void Fewer_screws_leave_more_of_a_wave_and_the_grade_is_for_the_screws_chosen()
    {
        var rows = string.Concat(from face in new[] { "side", "top" } from x in Stations select string.Create(CultureInfo.InvariantCulture, $"R,{face},1,forward,{x},{(face == "top" ? 12 * Math.Sin(2 * Math.PI * x / 110) : 1)}\n"));
        var batch = SweepBatch.Parse("rail,face,pass,direction,position_mm,reading_um\n" + rows, "s.csv");
        var (every, other) = (batch.Grade(stock: Holes.Of("R")).Rails.Single(), batch.Grade(stock: Holes.Of("R"), screws: r => ScrewPattern.Every(r).EveryOther()).Rails.Single());
        Assert.Equal("gantry", every.Grade);
        Assert.NotEqual("gantry", other.Grade);
        Assert.True(other.ValueOf(RailFeature.TopMounted) > 2 * every.ValueOf(RailFeature.TopMounted));
        Assert.Equal(every.ValueOf(RailFeature.TopFree), other.ValueOf(RailFeature.TopFree));
    }

    [Theory]
    [InlineData(10, "meets", "meets")]
    [InlineData(29.2, "undecided", "meets")]
    [InlineData(45, "fails", "meets")]
    [InlineData(60.3, "fails", "undecided")]
    [InlineData(80, "fails", "fails")]
    public void Each_grade_is_met_failed_or_undecided_with_the_confidence_of_that_answer(double bow, string gantry, string z)
    {
        var states = Grade(bow, Book()).States;
        Assert.Equal([("gantry", gantry), ("z", z)], states.Select(s => (s.Grade, s.State)));
        Assert.All(states, s => Assert.Equal(s.State == "undecided", s.Confidence is null));
        Assert.All(states.Where(s => s.Confidence is not null), s => Assert.InRange(s.Confidence!.Value, 0.95, 1));
        Assert.All(Grade(bow, Book(known: "unknown")).States, s => Assert.Equal("undecided", s.State));
    }

    [Fact]
    public void Levels_outside_their_range_are_refused()
        => Assert.Throws<ArgumentOutOfRangeException>(() => new GradeRules(GradeRules.Starting.Grades, 100, 1));

    [Fact]
    public void Rules_built_in_code_that_contradict_themselves_are_refused_as_those_of_a_file_are()
    {
        static string Refused(double returnUm, params (string Grade, (string Feature, double Limit)[] Limits)[] grades)
            => Assert.Throws<ArgumentException>(() => new GradeRules([.. grades.Select(g => new GradeRule(g.Grade, [.. g.Limits.Select(l => new FeatureLimit(l.Feature, l.Limit))]))], returnUm)).Message;
        (string, double) side30 = (RailFeature.Side, 30), side60 = (RailFeature.Side, 60);
        Assert.Contains("coarse limits side to 30 and the better grade fine to 60: grades are listed best first.", Refused(100, ("fine", [side60]), ("coarse", [side30])));
        Assert.Contains("coarse limits drag and the better grade fine doesn't", Refused(100, ("fine", [side30]), ("coarse", [side60, (RailFeature.Drag, 50)])));
        Assert.Contains("A rail is returned above 50 um at the side, and coarse allows 60.", Refused(50, ("fine", [side30]), ("coarse", [side60])));
        Assert.Contains("The grade fine is there twice.", Refused(100, ("fine", [side30]), ("Fine", [side60])));
        Assert.Contains("fine limits side twice.", Refused(100, ("fine", [side30, side60])));
        Assert.Contains("is NaN: it must be above 0.", Refused(100, ("fine", [(RailFeature.Side, double.NaN)])));
        Assert.Contains("which is none of side,", Refused(100, ("fine", [("bottom", 5)])));
        Assert.Contains("There is no grade", Refused(100));
        var both = Refused(double.NaN, ("return", []));
        Assert.Contains("The limit for a return is NaN um", both);
        Assert.Contains("which is an answer of its own", both);
        Assert.Contains("limits nothing", both);
    }
}
