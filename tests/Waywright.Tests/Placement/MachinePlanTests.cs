using System.Text.Json;

namespace Waywright.Tests;

public class MachinePlanTests
{
    private static string Problems(string json) => Assert.Throws<InputException>(() => MachinePlan.Parse(json, "positions.json")).Message;

    [Fact]
    public void A_position_is_read_with_all_that_is_said_of_it()
    {
        var plan = MachinePlan.Parse(
            """
            {
              "machines": 2,
              "positions": [
                { "name": "left", "width_mm": 9, "length_mm": 320, "grade": "gantry", "face": "side", "weight": 2, "pair": "right", "ends": ["front", "back"] },
                { "name": "right", "width_mm": 9, "length_mm": 320, "grade": "gantry", "face": "side" },
                { "name": "lift", "width_mm": 7, "length_mm": 150.5, "grade": "z", "face": "top", "count": 3, "note": "any" }
              ]
            }
            """,
            "positions.json");
        Assert.Equal(2, plan.Machines);
        Assert.Equal(10, plan.RailCount);
        Assert.Equal(["left", "right", "lift"], plan.Positions.Select(p => p.Name));
        Assert.Equal(new MachinePosition("left", 9, 320, "gantry", RailFace.Side, 2, "right", 1, "front", "back") { GradeAt = (4, 65) }, plan.Find("left"));
        Assert.Equal(new MachinePosition("lift", 7, 150.5, "z", RailFace.Top, 1, null, 3, "near end", "far end") { GradeAt = (6, 67) }, plan.Find("lift"));
        Assert.Null(plan.Find("Left"));
    }

    [Fact]
    public void Everything_that_is_wrong_is_listed_where_it_stands()
        => Assert.Equal(
            """
            positions.json:4:50: found '0', expected positions[0].width_mm to be a number from 0.1 to 10000
            positions.json:4:75: found 'bottom', expected positions[0].face to be one of side, top
            positions.json:5:5: found no "length_mm" in positions[1], expected a value for "length_mm"
            positions.json:5:87: found '1.5', expected positions[1].count to be a whole number from 1 to 100
            positions.json:6:99: found "wieght", expected one of name, width_mm, length_mm, grade, face, weight, pair, count, ends, note
            positions.json:7:5: found '7', expected positions[3] to be an object with name, width_mm, length_mm, grade and face
            positions.json:2:15: found '0', expected machines to be a whole number from 1 to 1000
            """.Split('\n').Order(StringComparer.Ordinal),
            Problems(
                """
                {
                  "machines": 0,
                  "positions": [
                    { "name": "a", "length_mm": 320, "width_mm": 0, "grade": "z", "face": "bottom" },
                    { "name": "b", "width_mm": 9, "grade": "z", "face": "top", "ends": null, "count": 1.5 },
                    { "name": "c", "width_mm": 9, "length_mm": 320, "grade": "z", "face": "top",        "wieght": 2 },
                    7
                  ]
                }
                """).Split('\n').Order(StringComparer.Ordinal));

    [Theory]
    [InlineData("""{"positions":[]}""", "positions.json:1:14: found a list, expected positions to be a list of at least one position")]
    [InlineData("""{"positions":5}""", "positions.json:1:14: found '5', expected positions to be a list of at least one position")]
    [InlineData("""{}""", "positions.json:1:1: found no \"positions\", expected a value for \"positions\"")]
    [InlineData("""{"positions":[P,P]}""", "positions.json:1:94: found 'left', expected positions[1].name to be a name that no other position has")]
    [InlineData("""{"positions":[P"pair":"left"}]}""", "positions.json:1:92: found 'left', expected positions[0].pair to be the name of another position")]
    [InlineData("""{"positions":[P"pair":"rihgt"}]}""", "positions.json:1:92: found 'rihgt', expected positions[0].pair to be the name of another position")]
    [InlineData("""{"positions":[P"ends":["front"]}]}""", "positions.json:1:92: found a list, expected positions[0].ends to be two different names, of the near and the far end, such as [\"front\", \"back\"]")]
    [InlineData("not json", "positions.json:1:2: found text that is not JSON, expected a JSON document")]
    public void A_wrong_document_gets_one_clear_message(string json, string message)
    {
        const string position = """{"name":"left","width_mm":9,"length_mm":320,"grade":"z","face":"side",""";
        var text = json.Contains("P,P", StringComparison.Ordinal) ? json.Replace("P", position.TrimEnd(',') + "}", StringComparison.Ordinal) : json.Replace("P", position, StringComparison.Ordinal);
        Assert.Equal(message, Problems(text));
    }

    [Theory]
    [InlineData(",\"length_mm\":300", "positions[0].pair to be a position with the same length_mm, face and count as left")]
    [InlineData(",\"length_mm\":320,\"pair\":\"third\"", "positions[0].pair to be a position that is in no other pair")]
    public void A_pair_is_two_positions_of_one_kind_that_are_in_no_other_pair(string right, string expected)
    {
        var json = $$"""{"positions":[{"name":"left","width_mm":9,"length_mm":320,"grade":"z","face":"side","pair":"right"},{"name":"right","width_mm":9,"grade":"z","face":"side"{{right}}},{"name":"third","width_mm":9,"length_mm":320,"grade":"z","face":"side"}]}""";
        Assert.Contains(expected, Problems(json), StringComparison.Ordinal);
    }

    [Fact]
    public void A_pair_may_be_named_at_both_of_its_positions()
        => Assert.Equal(2, PlacementScene.Plan(PlacementScene.Position("left", "\"pair\":\"right\"") + "," + PlacementScene.Position("right", "\"pair\":\"left\"")).RailCount);

    [Fact]
    public void The_shipped_schema_knows_the_members_that_the_reader_knows()
    {
        var schema = JsonDocument.Parse(File.ReadAllText(Repository.PathOf("docs", "positions.schema.json"))).RootElement;
        var position = schema.GetProperty("properties").GetProperty("positions").GetProperty("items").GetProperty("properties").EnumerateObject().Select(p => p.Name);
        var told = Problems("""{"positions":[{"x":1}]}""").Split('\n').Single(l => l.Contains("\"x\"", StringComparison.Ordinal));
        Assert.Equal(told.Split("one of ")[1].Split(", ").Order(), position.Order());
    }

    [Theory]
    [InlineData("[]", "a list")]
    [InlineData("[{\"name\":\"cross\"}]", "a list")]
    [InlineData("7", "'7'")]
    public void A_document_that_is_no_object_is_refused_in_one_sentence(string json, string found)
    {
        var error = Assert.Throws<InputException>(() => MachinePlan.Parse(json, "positions.json"));
        var problem = Assert.Single(error.Problems);
        Assert.Equal((1, 1), (problem.Line, problem.Column));
        Assert.Equal(found, problem.Found);
        Assert.Equal("the document to be an object with positions, a list of the places that want a rail", problem.Expected);
    }
}
