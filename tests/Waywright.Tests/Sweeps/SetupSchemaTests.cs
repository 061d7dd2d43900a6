using Waywright.Tests.Reference;

namespace Waywright.Tests;

public class SetupSchemaTests
{
    private const string Full = """
        {"setups":[{"id":"bench","guide":"plate","guide_straightness_um":3,"guide_known_from":"certificate","probe":"surface","held":"on a plate",
        "force_n":0.6,"temperature_c":21,"lever_angle_deg":30,"lever_angle_u_deg":2,
        "instrument":{"name":"dial","division_um":10,"read_to":"half","range_mm":10,"turn_mm":1,"small":true,"repeatability_um":1,"retrace_um":2},
        "rail":{"length_mm":320,"bending_stiffness_top_nm2":42.4,"bending_stiffness_side_nm2":81.3,"mass_kg_per_m":0.38,"stiffness_u_percent":5}}]}
        """;

    private static readonly ShippedSchema Schema = new("setups.schema.json");

    // What no schema can tell compares one value with another, or asks a table; null the reader takes as left out, and the schema wants it left out.
    private static readonly (string Right, string Wrong, bool Told)[] Examples =
    [
        ("", "", true),
        ("\"setups\":", "\"note\":\"x\",\"setups\":", true), ("\"setups\":", "\"colour\":1,\"setups\":", true),
        ("\"id\":\"bench\",", "", true), ("\"id\":\"bench\"", "\"id\":5", true), ("\"id\":\"bench\"", "\"id\":\"bench\",\"note\":[1]", true), ("\"id\":\"bench\"", "\"id\":\"bench\",\"wall\":1", true),
        ("\"plate\"", "\"base\"", true), ("\"plate\"", "\"rail:R03\"", true), ("\"plate\"", "\"rail:\"", true), ("\"plate\"", "\"Plate\"", true), ("\"plate\"", "\"the plate\"", true),
        ("\"guide_straightness_um\":3,", "", true), ("\"guide_straightness_um\":3,\"guide_known_from\":\"certificate\"", "\"guide_known_from\":\"unknown\"", true), ("\"certificate\"", "\"reversal\"", true), ("\"certificate\"", "\"hearsay\"", true),
        ("\"guide_straightness_um\":3", "\"guide_straightness_um\":-1", true), ("\"surface\"", "\"carriage\"", true), ("\"surface\"", "\"rail\"", true),
        ("on a plate", "screwed to base", true), ("on a plate", "two supports at 71 mm, 249 mm", true), ("on a plate", "two supports at .5e2mm,+249. mm", true), ("on a plate", "clamped at 20 mm", true), ("on a plate", "clamped at 20 mm, 150 mm, 300 mm", true),
        ("on a plate", "by hand", true), ("on a plate", "On a plate", true), ("on a plate", "two supports at 71 mm", true), ("on a plate", "two supports at 71, 249", true), ("on a plate", "two supports at 71 mm, 249 mm, 300 mm", true), ("on a plate", "two supports at 7,1 mm, 249 mm", true),
        ("on a plate", "clamped at ", true), ("on a plate", "clamped at -1 mm", true), ("on a plate", "clamped at NaN mm", true), ("on a plate", "clamped at . mm", true), ("on a plate", "on a plate ", true),
        ("\"force_n\":0.6", "\"force_n\":100", true), ("\"force_n\":0.6", "\"force_n\":101", true), ("\"force_n\":0.6", "\"force_n\":\"0.6 N\"", true), ("\"temperature_c\":21", "\"temperature_c\":-51", true),
        ("\"lever_angle_deg\":30,", "", true), ("\"lever_angle_deg\":30", "\"lever_angle_deg\":81", true), ("\"lever_angle_u_deg\":2", "\"lever_angle_u_deg\":46", true), ("\"lever_angle_deg\":30,\"lever_angle_u_deg\":2,", "", true),
        ("\"name\":\"dial\"", "\"name\":\" \"", true), ("\"division_um\":10,", "", true), ("\"division_um\":10", "\"division_um\":0", true), ("\"half\"", "\"third\"", true), ("\"range_mm\":10,", "", true), ("\"turn_mm\":1,", "", true),
        ("\"range_mm\":10,\"turn_mm\":1,\"small\":true", "\"permissible_error_um\":4", true), ("\"range_mm\":10,\"turn_mm\":1,\"small\":true", "\"small\":true", true), ("\"small\":true", "\"permissible_error_um\":4", true), ("\"small\":true", "\"small\":\"yes\"", true),
        ("\"retrace_um\":2", "\"retrace_um\":-2", true), ("\"retrace_um\":2", "\"note\":2", true), ("\"retrace_um\":2", "\"hue\":2", true),
        ("\"length_mm\":320", "\"length_mm\":9", true), ("\"mass_kg_per_m\":0.38,", "", true), ("\"mass_kg_per_m\"", "\"mass\"", true), ("\"stiffness_u_percent\":5", "\"stiffness_u_percent\":51", true), (",\"stiffness_u_percent\":5", "", true),
        ("on a plate", "clamped at 400 mm", false), ("on a plate", "two supports at 71 mm, 71.5 mm", false), ("on a plate", "clamped at 20 mm, 20 mm", false), ("\"range_mm\":10", "\"range_mm\":700", false),
    ];

    [Fact]
    public void The_shipped_schema_accepts_and_refuses_what_the_reader_does_by_a_general_validator()
        => Schema.AgreesWith(text => SetupBook.Parse(text, "setups.json"), [.. Examples.Select(e => (e.Right.Length == 0 ? Full : Full.Replace(e.Right, e.Wrong, StringComparison.Ordinal), e.Wrong.Length == 0 ? "without " + e.Right : e.Wrong, e.Told))]);

    [Fact]
    public void A_document_of_another_shape_is_refused_by_both()
        => Schema.AgreesWith(text => SetupBook.Parse(text, "setups.json"), [.. new[] { "{}", "{\"setups\":[]}", "{\"setups\":null}", "{\"setups\":[{}]}", Full.Replace("\"rail\":{", "\"note\":{", StringComparison.Ordinal) }.Select(text => (text, text, true))]);

    [Fact]
    public void The_set_ups_of_the_demo_are_valid()
        => Assert.Equal([true], Schema.Accepts(File.ReadAllText(Repository.PathOf("datasets", "demo", "rails", "setups.json"))));

    [Fact]
    public void The_shipped_schema_names_and_describes_the_members_that_are_read()
    {
        Schema.DescribesEveryMember();
        foreach (var (place, schema) in new[] { ("", Schema.Root["properties"]!["setups"]!["items"]!), ("\"instrument\":{", Schema.Root["$defs"]!["instrument"]!), ("\"rail\":{", Schema.Root["$defs"]!["rail"]!) })
        {
            var wrong = place.Length == 0 ? Full.Replace("{\"id\"", "{\"xx\":1,\"id\"", StringComparison.Ordinal) : Full.Replace(place, place + "\"xx\":1,", StringComparison.Ordinal);
            var told = Assert.Throws<InputException>(() => SetupBook.Parse(wrong, "s")).Problems.Single().Expected;
            Assert.Equal(told.Split("one of ")[1].Split(", ").Order(StringComparer.Ordinal), schema["properties"]!.AsObject().Select(p => p.Key).Order(StringComparer.Ordinal));
        }
    }
}
