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
}
