namespace Waywright.Tests;

public class SetupBookTests
{
    public const string OneSetup = """
        { "setups": [ { "id": "bench", "guide": "plate", "guide_straightness_um": 3, "guide_known_from": "certificate", "probe": "surface",
          "held": "two supports at 71 mm, 249 mm", "instrument": { "name": "dial", "division_um": 10, "read_to": "half" }, "force_n": 0.6, "temperature_c": 21 } ] }
        """;

    [Fact]
    public void A_set_up_is_read_and_told_in_one_line()
    {
        var setup = SetupBook.Parse(OneSetup, "setups.json").Setups.Single();
        Assert.True(setup.IsGuideKnown);
        Assert.Equal("bench: dial (10 um a division, read to half divisions) on the surface, guided by plate (straight to 3 um by certificate); held: two supports at 71 mm, 249 mm, 0.6 N, 21 °C", setup.ToString());
    }

    [Fact]
    public void A_sweep_carries_its_set_up()
    {
        var batch = SweepBatch.Parse("rail,face,pass,direction,position_mm,reading_um,setup\nR01,side,1,forward,10,1,bench\nR01,side,1,forward,20,1,bench\n", "s.csv", SetupBook.Parse(OneSetup, "setups.json"));
        Assert.Equal("bench", batch.Sweeps[0].Setup!.Id);
        Assert.Contains("expected a set-up of setups.json: bench", Assert.Throws<InputException>(() =>
            SweepBatch.Parse("rail,face,pass,direction,position_mm,reading_um,setup\nR01,side,1,forward,10,1,shed\nR01,side,1,forward,20,1,shed\n", "s.csv", SetupBook.Parse(OneSetup, "setups.json"))).Message);
    }

    [Theory]
    [InlineData("", "s:1:1: found text that is not JSON, expected a JSON document")]
    [InlineData("{", "s:1:2: found text that is not JSON, expected a JSON document")]
    [InlineData("{}", "s:1:1: found no \"setups\", expected a value for \"setups\"")]
    [InlineData("""{"setups":[]}""", "s:1:11: found a list, expected setups to be a list of at least one set-up")]
    [InlineData("""{"setups":[{"id":"a","id":"b"}]}""", "s:1:22: found \"id\" twice, expected each name once in an object")]
    public void A_wrong_document_is_refused(string json, string expected) => Assert.Equal(expected, Assert.Throws<InputException>(() => SetupBook.Parse(json, "s")).Message);

    [Fact]
    public void Every_wrong_value_is_listed_with_its_place()
    {
        var wrong = OneSetup.Replace("\"plate\"", "\"luck\"").Replace("\"half\"", "\"third\"").Replace("0.6", "-1").Replace("\"probe\"", "\"porbe\"");
        var problems = Assert.Throws<InputException>(() => SetupBook.Parse(wrong, "s")).Problems.Select(p => p.ToString()).ToArray();
        Assert.Contains("s:1:41: found 'luck', expected setups[0].guide to be plate, straightedge, base, or rail:ID", problems);
        Assert.Contains(problems, p => p.Contains("found 'third', expected setups[0].instrument.read_to to be one of whole, half, tenth"));
        Assert.Contains(problems, p => p.Contains("found '-1', expected setups[0].force_n to be a number from 0 to 100"));
        Assert.Contains(problems, p => p.Contains("found \"porbe\", expected one of"));
        Assert.Contains(problems, p => p.Contains("found no \"probe\" in setups[0]"));
    }

    [Fact]
    public void A_dial_of_known_range_and_turn_has_the_limits_of_the_standard()
    {
        var dial = Parsed("\"range_mm\": 10, \"turn_mm\": 1").Indicator;
        // JIS B 7503:2011, 0.01 mm dial of 10 mm range: 5, 9, 10, 15 um, retrace 3, repeatability 3.
        Assert.Equal(new DialLimits(1000, 5, 9, 10, 15, 3, 3), dial.Dial);
        Assert.Equal((3, 5), (dial.Retrace, dial.ReadingStep));
        Assert.Equal(9, Parsed("\"range_mm\": 10, \"turn_mm\": 1, \"small\": true").Indicator.Dial!.TenthTurnUm);
        var stated = Parsed("\"permissible_error_um\": 13, \"repeatability_um\": 2, \"retrace_um\": 4").Indicator;
        Assert.Equal((13, 2, 4), (stated.PermissibleError, stated.Repeatability, stated.Retrace));
    }

    [Theory]
    [InlineData("two supports at 249 mm, 71.5 mm", HoldingKind.TwoSupports, new double[] { 71.5, 249 })]
    [InlineData("on a plate", HoldingKind.Plate, new double[0])]
    [InlineData("screwed to base", HoldingKind.Screwed, new double[0])]
    [InlineData("clamped at 20mm", HoldingKind.Clamped, new double[] { 20 })]
    [InlineData("clamped at 20 mm, 150 mm, 300 mm", HoldingKind.Clamped, new double[] { 20, 150, 300 })]
    internal void How_it_was_held_is_read_as_one_of_four_forms(string text, HoldingKind kind, double[] places)
    {
        var holding = SetupBook.Parse(OneSetup.Replace("two supports at 71 mm, 249 mm", text), "s").Setups[0].Holding!;
        Assert.Equal(kind, holding.Kind);
        Assert.Equal(places, holding.PlacesMm);
    }

    [Theory]
    [InlineData("by hand")]
    [InlineData("two supports")]
    [InlineData("two supports at 71, 249")]
    [InlineData("two supports at 71 mm")]
    [InlineData("two supports at 71 mm, 71 mm")]
    [InlineData("two supports at 71 mm, 249 mm, 300 mm")]
    [InlineData("two supports at -1 mm, 249 mm")]
    [InlineData("two supports at NaN mm, 249 mm")]
    [InlineData("clamped at ")]
    [InlineData("On a plate")]
    public void Any_other_way_of_holding_is_refused_with_the_four_forms(string text)
        => Assert.Equal(
            $"s:2:11: found '{text}', expected setups[0].held to be one of: two supports at 71 mm, 249 mm; on a plate; screwed to base; clamped at 20 mm, 300 mm",
            Assert.Throws<InputException>(() => SetupBook.Parse(OneSetup.Replace("two supports at 71 mm, 249 mm", text), "s")).Message);

    [Fact]
    public void A_rail_section_and_a_lever_are_read()
    {
        var setup = SetupBook.Parse(With("""lever_angle_deg": 30, "rail": { "length_mm": 320, "bending_stiffness_top_nm2": 42.4, "bending_stiffness_side_nm2": 81.3, "mass_kg_per_m": 0.38 }, "note"""), "s").Setups[0];
        Assert.Equal(new RailSection(320, 42.4, 81.3, 0.38, null), setup.Rail);
        Assert.Equal(30, setup.LeverAngleDeg);
        Assert.EndsWith("21 °C, lever at 30°", setup.ToString());
    }

    [Fact]
    public void Every_wrong_value_of_the_newer_fields_is_listed_with_its_place()
    {
        const string wrong = """
            {"setups":[
            {"id":"a","guide":"rail:","guide_known_from":"unknown","probe":"surface","held":"clamped at 400 mm",
             "lever_angle_deg":90,"instrument":{"name":"d","division_um":10,"read_to":"half","range_mm":7000,"turn_mm":1,"small":"yes"},
             "rail":{"length_mm":320,"bending_stiffness_top_nm2":0,"bending_stiffness_side_nm2":81.3,"mass":0.38}},
            {"id":"b","guide":"base","guide_known_from":"unknown","probe":"surface","held":"clamped at 400 mm",
             "instrument":{"name":" ","division_um":10,"read_to":"half","range_mm":10,"permissible_error_um":4},
             "rail":{"length_mm":320,"bending_stiffness_top_nm2":42,"bending_stiffness_side_nm2":81.3,"mass_kg_per_m":0.38}},
            {"id":"a","guide":"base","guide_known_from":"unknown","probe":"surface","held":"two supports at 1 mm, 1.5 mm",
             "instrument":{"name":"d","division_um":10,"read_to":"half","range_mm":200,"turn_mm":1,"retrace_um":-1},"rail":[]}]}
            """;
        Assert.Equal(
            [
                "s:2:19: found 'rail:', expected setups[0].guide to be plate, straightedge, base, or rail:ID",
                "s:3:118: found 'yes', expected setups[0].instrument.small to be true (bezel below 50 mm, or back plunger) or false",
                "s:3:93: found '7000', expected setups[0].instrument.range_mm to be a number from 0.001 to 1000",
                "s:3:20: found '90', expected setups[0].lever_angle_deg to be a number from 0 to 80",
                "s:4:97: found \"mass\", expected one of length_mm, bending_stiffness_top_nm2, bending_stiffness_side_nm2, mass_kg_per_m, stiffness_u_percent, note",
                "s:4:54: found '0', expected setups[0].rail.bending_stiffness_top_nm2 to be a number from 0.001 to 1000000000",
                "s:4:9: found no \"mass_kg_per_m\" in setups[0].rail, expected a value for \"mass_kg_per_m\"",
                "s:6:23: found ' ', expected setups[1].instrument.name to be a name",
                "s:6:15: found no \"turn_mm\" in setups[1].instrument, expected a value for \"turn_mm\"",
                "s:6:98: found '4', expected setups[1].instrument.permissible_error_um to be left out, or range_mm and turn_mm: one of them says what the dial's errors are",
                "s:5:80: found 'clamped at 400 mm', expected setups[1].held to be places within the rail's length of 320 mm",
                "s:9:72: found '200', expected setups[2].instrument.range_mm to be a range that JIS B 7503:2011 lists for such a dial; for others give permissible_error_um instead of range_mm and turn_mm",
                "s:9:101: found '-1', expected setups[2].instrument.retrace_um to be a number from 0 to 10000",
                "s:9:112: found a list, expected setups[2].rail to be an object with length_mm, bending_stiffness_top_nm2, bending_stiffness_side_nm2 and mass_kg_per_m",
                "s:8:80: found 'two supports at 1 mm, 1.5 mm', expected setups[2].held to be two supports at least 1 mm apart",
                "s:8:7: found 'a', expected setups[2].id to be a name that no other set-up has",
            ],
            Assert.Throws<InputException>(() => SetupBook.Parse(wrong, "s")).Problems.Select(p => p.ToString()));
    }

    private static Setup Parsed(string ofInstrument) => SetupBook.Parse(OneSetup.Replace("\"read_to\"", ofInstrument + ", \"read_to\""), "s").Setups[0];

    private static string With(string members) => OneSetup.Replace("\"force_n\"", $"\"{members}\": \"\", \"force_n\"");
}
