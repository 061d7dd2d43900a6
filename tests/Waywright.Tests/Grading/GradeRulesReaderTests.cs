using System.Text.Json.Nodes;

namespace Waywright.Tests;

public class GradeRulesReaderTests
{
    private const string Starting = """
        {"return_above_side_um":100,"grades":[
        {"grade":"gantry","limits":[{"feature":"side","limit_um":30},{"feature":"side local","limit_um":15},{"feature":"top mounted","limit_um":10},{"feature":"drag","limit_percent":50}]},
        {"grade":"z","limits":[{"feature":"side","limit_um":60},{"feature":"side local","limit_um":30},{"feature":"top mounted","limit_um":20},{"feature":"drag","limit_percent":100}]}]}
        """;

    [Fact]
    public void The_starting_limits_written_as_a_file_are_the_starting_limits()
    {
        var rules = GradeRules.Parse(Starting, "rules.json");
        Assert.Equal(GradeRules.Starting.ReturnSideUm, rules.ReturnSideUm);
        Assert.Equal((0.95, 0.95), (rules.AcceptLevel, rules.ClaimLevel));
        Assert.Equal(GradeRules.Starting.Grades.Select(g => g.Grade), rules.Grades.Select(g => g.Grade));
        Assert.Equal(GradeRules.Starting.Grades.SelectMany(g => g.Limits), rules.Grades.SelectMany(g => g.Limits));
    }

    [Fact]
    public void The_shipped_schema_names_the_members_and_features_that_are_read()
    {
        var schema = JsonNode.Parse(File.ReadAllText(Repository.PathOf("docs", "rules.schema.json")))!;
        var members = schema["properties"]!.AsObject().Select(p => p.Key).Order(StringComparer.Ordinal);
        Assert.Equal(["$schema", "accept_level", "claim_level", "grades", "note", "return_above_side_um"], members);
        var grade = schema["properties"]!["grades"]!["items"]!["properties"]!;
        Assert.Equal(["grade", "limits", "note"], grade.AsObject().Select(p => p.Key));
        var features = grade["limits"]!["items"]!["properties"]!["feature"]!["enum"]!.AsArray().Select(f => (string)f!);
        Assert.Equal([RailFeature.Side, RailFeature.SideLocal, RailFeature.TopMounted, RailFeature.TopLocal, RailFeature.TopFree, RailFeature.Drag], features);
        Assert.Contains("expected", Assert.Throws<InputException>(() => GradeRules.Parse(Starting.Replace("\"return_above_side_um\":100,", "\"return_above_side_um\":100,\"colour\":1,"), "r.json")).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("\"limit_um\":60", "\"limit_um\":25", "rules.json:3:53: found '25', expected grades[1].limits[0].limit_um to be no less than 30, the limit of gantry: grades are listed best first")]
    [InlineData("\"feature\":\"top mounted\",\"limit_um\":20", "\"feature\":\"bottom\",\"limit_um\":20", "found 'bottom', expected grades[1].limits[2].feature to be")]
    [InlineData("\"feature\":\"top mounted\",\"limit_um\":20", "\"feature\":\"side\",\"limit_um\":60", "found 'side', expected grades[1].limits[2].feature to be a feature that this grade does not limit already")]
    [InlineData("\"grade\":\"z\"", "\"grade\":\"gantry\"", "found 'gantry', expected grades[1].grade to be a name that no other grade has, in capitals or not")]
    [InlineData("\"grade\":\"z\"", "\"grade\":\"return\"", "found 'return', expected grades[1].grade to be a name other than return and measure again")]
    [InlineData("\"return_above_side_um\":100", "\"return_above_side_um\":50", "found '50', expected return_above_side_um to be no less than the lowest grade's limit on the side")]
    [InlineData("\"return_above_side_um\":100", "\"return_above_side_um\":100,\"accept_level\":1", "found '1', expected accept_level to be a number from 0.5 to 0.9999")]
    [InlineData("\"limit_um\":10", "\"limit_um\":0", "found '0', expected grades[0].limits[2].limit_um to be a number from 0.001 to 100000")]
    [InlineData("\"limit_um\":10", "\"limit_um\":\"10\"", "grades[0].limits[2].limit_um")]
    public void A_wrong_value_is_named_with_its_place(string right, string wrong, string said)
        => Assert.Contains(said, Assert.Throws<InputException>(() => GradeRules.Parse(Starting.Replace(right, wrong), "rules.json")).Message, StringComparison.Ordinal);

    [Fact]
    public void All_that_is_wrong_is_listed_at_once()
    {
        var wrong = Starting.Replace("\"limit_um\":60", "\"limit_um\":-1").Replace("\"return_above_side_um\":100", "\"return_above_side_um\":\"far\"").Replace("\"grade\":\"gantry\"", "\"grad\":\"gantry\"");
        Assert.True(Assert.Throws<InputException>(() => GradeRules.Parse(wrong, "rules.json")).Problems.Count >= 4);
        Assert.Single(Assert.Throws<InputException>(() => GradeRules.Parse("{\"return_above_side_um\":100,\"grades\":[]}", "rules.json")).Problems);
    }
}
