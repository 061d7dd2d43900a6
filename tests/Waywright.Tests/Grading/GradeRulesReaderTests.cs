using Waywright.Notebooks;
using Waywright.Tests.Reference;

namespace Waywright.Tests;

public class GradeRulesReaderTests
{
    private const string Starting = """
        {"return_above_side_um":100,"grades":[
        {"grade":"gantry","limits":[{"feature":"side","limit_um":30},{"feature":"side local","limit_um":15},{"feature":"top mounted","limit_um":10},{"feature":"drag","limit_percent":50}]},
        {"grade":"z","limits":[{"feature":"side","limit_um":60},{"feature":"side local","limit_um":30},{"feature":"top mounted","limit_um":20},{"feature":"drag","limit_percent":100}]}]}
        """;

    [Fact]
    public void An_empty_file_is_told_from_a_table_without_rows()
    {
        var path = Path.GetTempFileName();
        try
        {
            var thrown = Assert.Throws<InputException>(() => GradeRules.Read(path));
            Assert.Equal($"{path}: found an empty file, expected a JSON document", thrown.Message);
        }
        finally
        {
            File.Delete(path);
        }
    }

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
        var schema = new ShippedSchema("rules.schema.json").Root;
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
    [InlineData("\"grade\":\"z\"", "\"grade\":\"ReTurn\"", "rules.json:3:10: found 'ReTurn', expected grades[1].grade to be a name other than return and measure again")]
    [InlineData("\"grade\":\"z\"", "\"grade\":\"MEASURE again\"", "found 'MEASURE again', expected grades[1].grade to be a name other than return")]
    [InlineData("\"grade\":\"z\"", "\"grade\":\"Gantry\"", "found 'Gantry', expected grades[1].grade to be a name that no other grade has, in capitals or not")]
    [InlineData("\"grade\":\"z\"", "\"grade\":\"z\\u200b\"", "found 'z\uFFFD', expected grades[1].grade to be a name of 1 to 64 printable characters, without blanks at its ends")]
    [InlineData("\"grade\":\"z\"", "\"grade\":\" z\"", "found ' z', expected grades[1].grade to be a name of 1 to 64 printable characters")]
    [InlineData("\"grade\":\"z\"", "\"grade\":\"\"", "found nothing, expected grades[1].grade to be a name of 1 to 64 printable characters")]
    [InlineData("\"grade\":\"z\"", "\"grade\":null", "found 'null', expected grades[1].grade to be a value")]
    [InlineData("\"grade\":\"z\"", "\"grade\":\"\\ud800\"", "found a text with half of a surrogate pair (\\ud800 to \\udfff), expected texts of whole characters")]
    [InlineData("\"limit_um\":10}", "\"limit_um\":null}", "found 'null', expected grades[0].limits[2].limit_um to be a value")]
    [InlineData("\"return_above_side_um\":100", "\"return_above_side_um\":null", "found 'null', expected return_above_side_um to be a value")]
    [InlineData("{\"feature\":\"side local\",\"limit_um\":15},", "", "rules.json:3:68: found 'side local', expected grades[1].limits[1].feature to be one that gantry limits as well: a rail could miss this grade and meet the better one")]
    [InlineData("\"limit_percent\":100", "\"limit_percent\":40", "found '40', expected grades[1].limits[3].limit_percent to be no less than 50, the limit of gantry: grades are listed best first")]
    [InlineData("\"limit_percent\":50", "\"limit_um\":50", "found '50', expected grades[0].limits[3].limit_um to be left out: the limit of drag is limit_percent")]
    [InlineData("\"limit_um\":15", "\"limit_um\":15,\"limit_percent\":15", "found '15', expected grades[0].limits[1].limit_percent to be left out: the limit of side local is limit_um")]
    [InlineData("\"limit_percent\":50", "\"limit_percent\":0", "found '0', expected grades[0].limits[3].limit_percent to be a number from 0.1 to 10000")]
    public void A_wrong_value_is_named_with_its_place(string right, string wrong, string said)
        => Assert.Contains(said, Assert.Throws<InputException>(() => GradeRules.Parse(Starting.Replace(right, wrong), "rules.json")).Message, StringComparison.Ordinal);

    [Theory]
    [InlineData("[]", "rules.json:1:1: found a list, expected the document to be an object with return_above_side_um and grades")]
    [InlineData("5", "rules.json:1:1: found '5', expected the document to be an object with return_above_side_um and grades")]
    [InlineData("{\"return_above_side_um\":100,\"grades\":null}", "rules.json:1:38: found 'null', expected grades to be a value")]
    [InlineData("{\"return_above_side_um\":100,\"grades\":[\"gantry\"]}", "rules.json:1:39: found 'gantry', expected grades[0] to be an object with grade and limits")]
    public void A_document_of_another_shape_is_one_clear_problem(string text, string said)
        => Assert.Equal(said, Assert.Throws<InputException>(() => GradeRules.Parse(text, "rules.json")).Message);

    // Which of the examples a schema can tell: the others compare one grade with another, or one value with its neighbour in a list.
    [Fact]
    public void The_shipped_schema_accepts_and_refuses_what_the_reader_does_by_a_general_validator()
    {
        (string Right, string Wrong, bool Told)[] examples =
        [
            ("", "", true),
            ("\"limit_um\":10}", "\"limit_um\":0}", true), ("\"limit_um\":10}", "\"limit_um\":\"10\"}", true), ("\"limit_um\":10}", "\"limit_um\":null}", true), ("\"limit_um\":10}", "\"note\":[1]}", true),
            ("\"limit_um\":10}", "\"limit_um\":10,\"note\":[1]}", true), ("\"limit_um\":15", "\"limit_um\":15,\"limit_percent\":15", true), ("\"limit_percent\":50", "\"limit_um\":50", true), ("\"limit_percent\":50", "\"limit_percent\":0.05", true),
            ("\"feature\":\"top mounted\",\"limit_um\":20", "\"feature\":\"bottom\",\"limit_um\":20", true), ("\"feature\":\"top mounted\"", "\"feature\":\"top free\"", true),
            ("\"grade\":\"z\"", "\"grade\":\"return\"", true), ("\"grade\":\"z\"", "\"grade\":\"RETURN\"", true), ("\"grade\":\"z\"", "\"grade\":\"Measure Again\"", true), ("\"grade\":\"z\"", "\"grade\":\"returned once\"", true),
            ("\"grade\":\"z\"", "\"grade\":\"\"", true), ("\"grade\":\"z\"", "\"grade\":\" z\"", true), ("\"grade\":\"z\"", "\"grade\":\"z\\u0007\"", true), ("\"grade\":\"z\"", "\"grade\":\"z\\u200b\"", true), ("\"grade\":\"z\"", "\"grade\":\"a\\u2028b\"", true),
            ("\"grade\":\"z\"", "\"grade\":\"H\u00F6he 2\"", true), ("\"grade\":\"z\"", $"\"grade\":\"{new string('z', 64)}\"", true), ("\"grade\":\"z\"", $"\"grade\":\"{new string('z', 65)}\"", true), ("\"grade\":\"z\"", "\"grade\":5", true), ("\"grade\":\"z\"", "\"hue\":5", true),
            ("\"return_above_side_um\":100,", "", true), ("\"return_above_side_um\":100", "\"return_above_side_um\":100,\"accept_level\":1", true), ("\"return_above_side_um\":100", "\"return_above_side_um\":100,\"accept_level\":0.9", true), ("\"return_above_side_um\":100", "\"return_above_side_um\":100,\"colour\":1", true),
            ("\"limit_um\":60", "\"limit_um\":25", false), ("\"grade\":\"z\"", "\"grade\":\"GANTRY\"", false), ("{\"feature\":\"side local\",\"limit_um\":15},", "", false), ("\"return_above_side_um\":100", "\"return_above_side_um\":50", false),
        ];
        new ShippedSchema("rules.schema.json").AgreesWith(
            text => GradeRules.Parse(text, "rules.json"),
            [.. examples.Select(e => (e.Right.Length == 0 ? Starting : Starting.Replace(e.Right, e.Wrong, StringComparison.Ordinal), e.Wrong, e.Told))]);
    }

    [Fact]
    public void All_that_is_wrong_is_listed_at_once()
    {
        var wrong = Starting.Replace("\"limit_um\":60", "\"limit_um\":-1").Replace("\"return_above_side_um\":100", "\"return_above_side_um\":\"far\"").Replace("\"grade\":\"gantry\"", "\"grad\":\"gantry\"");
        Assert.True(Assert.Throws<InputException>(() => GradeRules.Parse(wrong, "rules.json")).Problems.Count >= 4);
        Assert.Single(Assert.Throws<InputException>(() => GradeRules.Parse("{\"return_above_side_um\":100,\"grades\":[]}", "rules.json")).Problems);
    }

    [Fact]
    public void The_builder_s_own_limits_are_not_called_starting_limits()
    {
        Assert.Contains("Starting limits: common practice, no source.", Views.Text(GradeRules.Starting), StringComparison.Ordinal);
        Assert.Contains("Starting limits: common practice, no source.", Views.Text(GradeRules.Parse(Starting, "rules.json")), StringComparison.Ordinal);
        foreach (var own in new[] { GradeRules.Parse(Starting.Replace("\"limit_um\":10}", "\"limit_um\":11}"), "rules.json"), GradeRules.Parse(Starting.Replace("_um\":100", "_um\":120"), "rules.json") })
        {
            Assert.DoesNotContain("Starting", Views.Text(own), StringComparison.Ordinal);
            Assert.Contains("Limits that you set.", Views.Html(own), StringComparison.Ordinal);
        }
    }
}
