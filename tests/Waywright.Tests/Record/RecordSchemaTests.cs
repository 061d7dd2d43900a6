using System.Text.Json.Nodes;
using Waywright.Tests.Reference;

namespace Waywright.Tests.Record;

public sealed class RecordSchemaTests
{
    private static readonly ShippedSchema Schema = new("record.schema.json");
    private static readonly string Sample = BuildRecordTests.Sample().ToJson();

    // What no schema can tell compares two values, or counts days.
    private static readonly (string Right, string Wrong, bool Told)[] Examples =
    [
        ("", "", true),
        ("\"date\": \"2027-03-01\"", "\"date\": \"1.3.2027\"", true), ("\"date\": \"2027-03-01\"", "\"date\": \"2027-13-01\"", true), ("\"date\": \"2027-03-01\"", "\"date\": 20270301", true), ("\"date\": \"2027-03-01\",", "", true),
        ("waywright build record 1", "waywright build record 2", true), ("\"seed\": 7", "\"sead\": 7", true), ("\"seed\": 7", "\"seed\": \"7\"", true), ("\"seed\": 7", "\"seed\": 7.5", true), ("\"seed\": 7", "\"seed\": 2147483648", true), ("\"seed\": 7,", "", true),
        ("\"licence\": \"CC-BY-4.0\"", "\"licence\": \"\"", true), ("\"licence\": \"CC-BY-4.0\",", "", true),
        ("\"id\": \"rails/grades\"", "\"id\": \"rails grades\"", true), ("\"verdict\": \"Use R03.\"", "\"verdict\": \" \"", true), ("\"verdict\": \"Use R03.\"", "\"sentence\": \"Use R03.\"", true),
        ("\"value\": 14.2", "\"value\": \"14.2\"", true), ("\"value\": 14.2", "\"text\": \"14.2\"", true), ("\"text\": \"gantry\",", "", true), ("\"text\": \"gantry\"", "\"text\": \"gantry\", \"value\": 1", true),
        ("\"high\": 19,", "", true), ("\"low\": 8,", "", true), ("\"high\": 19", "\"high\": 7", false), ("\"standardUncertainty\": 2.6", "\"standardUncertainty\": -2.6", true), ("\"standardUncertainty\": 2.6,", "", true),
        ("\"coverageFactor\": 2", "\"coverageFactor\": 0", true), ("\"degreesOfFreedom\": 11.5", "\"degreesOfFreedom\": 0", true), ("\"relativeTolerance\": 1E-09", "\"relativeTolerance\": -1", true), ("\"absoluteTolerance\": 1E-06,", "", true),
        ("\"method\": \"minimum zone\"", "\"method\": \"\"", true), ("\"name\": \"R03 grade\"", "\"name\": \"\"", true), ("\"name\": \"R03 grade\"", "\"name\": \"R03 grade\", \"colour\": 1", true),
        ("\"unit\": \"um\"", "\"unit\": \"inches\"", true), ("\"unit\": \"um\"", "\"unit\": \"kg.m/s2\"", true), ("\"unit\": \"um\"", "\"unit\": \"/m\"", true), ("\"unit\": \"um\"", "\"unit\": \"1/m\"", true), ("\"unit\": \"um\"", "\"unit\": \"N.m-2\"", true), ("\"unit\": \"um\"", "\"unit\": \"[in_i]\"", true),
        ("\"unit\": \"um\"", "\"unit\": \"m2/s2\"", true), ("\"unit\": \"um\"", "\"unit\": \"Cel\"", true), ("\"unit\": \"um\"", "\"unit\": \"''\"", true), ("\"unit\": \"um\"", "\"unit\": \"'\"", true), ("\"unit\": \"um\"", "\"unit\": \"mm/\"", true), ("\"unit\": \"um\"", "\"unit\": \"\"", true), ("\"unit\": \"um\"", "\"unit\": \"UM\"", true), ("\"unit\": \"um\"", "\"unit\": \"m^2\"", true), ("\"unit\": \"um\"", "\"unit\": \"kmin\"", true), ("\"unit\": \"um\"", "\"unit\": \"dam\"", true), ("\"unit\": \"um\"", "\"unit\": \"2\"", true), ("\"unit\": \"um\"", "\"unit\": \"11\"", true),
        ("\"path\": \"rails/sweeps.csv\"", "\"path\": \"../secret.csv\"", true), ("\"path\": \"rails/sweeps.csv\"", "\"path\": \"/etc/passwd\"", true), ("\"path\": \"rails/sweeps.csv\"", "\"path\": \"C:/data.csv\"", true), ("\"path\": \"rails/sweeps.csv\"", "\"path\": \"rails//sweeps.csv\"", true), ("\"path\": \"rails/sweeps.csv\"", "\"path\": \"rails/../secret.csv\"", true), ("\"path\": \"rails/sweeps.csv\"", "\"path\": \"rails/..sweeps .csv\"", true), ("\"path\": \"rails/sweeps.csv\"", "\"path\": \"rails/..\"", true),
        ("\"path\": \"notebooks/rails.ipynb\"", "\"path\": \"notebooks/../../rails.ipynb\"", true), ("\"notebook\": \"notebooks/rails.ipynb\"", "\"notebook\": \"/rails.ipynb\"", true), ("\"sourceSha256\": \"ba", "\"sourceSha256\": \"", true), ("\"name\": \"limit\"", "\"name\": \"a limit\"", true), ("\"version\": \"0.1.0\"", "\"version\": \"\"", true),
        ("\"bytes\": 3", "\"bytes\": -3", true), ("\"bytes\": 3", "\"bytes\": 3.5", true), ("\"sha256\": \"ba", "\"sha256\": \"BA", true), ("\"sha256\": \"ba", "\"sha256\": \"", true),
        ("\"set\": true", "\"set\": 1", true), ("\"type\": \"string\"", "\"type\": \"float\"", true), ("\"value\": \"30 um\"", "\"value\": 30", true), ("\"version\": \"0.1.0\"", "\"release\": \"0.1.0\"", true), ("\"title\": ", "\"titel\": ", true),
        ("\"date\": \"2027-03-01\"", "\"date\": \"2027-02-30\"", false),
    ];

    [Fact]
    public void The_shipped_schema_accepts_and_refuses_what_the_reader_does_by_a_general_validator()
        => Schema.AgreesWith(text => BuildRecord.Parse(text, "record.json"), [.. Examples.Select(e => (e.Right.Length == 0 ? Sample : Sample.Replace(e.Right, e.Wrong, StringComparison.Ordinal), e.Wrong.Length == 0 ? "without " + e.Right : e.Wrong, e.Told))]);

    [Fact]
    public void Every_member_is_described() => Schema.DescribesEveryMember();

    // Whatever a record holds, the schema has a place for it: the names are collected from the record itself.
    [Fact]
    public void The_shipped_schema_has_the_members_that_are_written_and_no_other()
    {
        var written = JsonNode.Parse(Sample)!.AsObject();
        Assert.Equal(written.Select(m => m.Key), Schema.Root["properties"]!.AsObject().Select(m => m.Key));
        foreach (var (list, kind) in new[] { ("decisions", "decision"), ("figures", "figure"), ("inputs", "input"), ("notebooks", "notebook"), ("parameters", "parameter"), ("software", "software") })
            Assert.Equal(written[list]!.AsArray().SelectMany(item => item!.AsObject().Select(m => m.Key)).Distinct().Order(StringComparer.Ordinal), Schema.Root["$defs"]![kind]!["properties"]!.AsObject().Select(m => m.Key));
    }
}
