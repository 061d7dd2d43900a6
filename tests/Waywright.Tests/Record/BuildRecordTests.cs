using System.Globalization;
using System.Text.Json;
using CsCheck;

namespace Waywright.Tests.Record;

public sealed class BuildRecordTests
{
    // SHA-256 of the three bytes "abc": FIPS 180-4's published example.
    private const string Abc = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";

    [Fact]
    public void A_record_read_back_is_equal_to_the_one_written()
    {
        var record = Sample();
        var read = BuildRecord.Parse(record.ToJson(), "record.json");
        Assert.Equal(record, read);
        Assert.Equal(record.ToJson(), read.ToJson());
    }

    [Fact]
    public void Records_of_equal_parts_are_equal_and_of_other_parts_not()
    {
        Assert.Equal(Sample(), Sample());
        Assert.NotEqual(Sample(), Sample(value: 14.200000000000001));
    }

    [Fact]
    public void Every_number_comes_back_bit_by_bit()
        => Gen.Double.Where(value => double.IsFinite(value)).Sample(value =>
        {
            var read = BuildRecord.Parse(Sample(value).ToJson(), "record.json");
            return BitConverter.DoubleToInt64Bits(read.Figures[0].Value!.Value) == BitConverter.DoubleToInt64Bits(value);
        });

    [Fact]
    public void Keys_stand_in_ordinal_order_at_every_depth()
    {
        using var document = JsonDocument.Parse(Sample().ToJson());
        CheckOrder(document.RootElement);

        static void CheckOrder(JsonElement element)
        {
            if (element.ValueKind == JsonValueKind.Array)
            {
                foreach (var item in element.EnumerateArray())
                    CheckOrder(item);
            }
            else if (element.ValueKind == JsonValueKind.Object)
            {
                var names = element.EnumerateObject().Select(member => member.Name).ToList();
                Assert.Equal(names.Order(StringComparer.Ordinal), names);
                foreach (var member in element.EnumerateObject())
                    CheckOrder(member.Value);
            }
        }
    }

    [Fact]
    public void The_order_in_which_files_and_packages_are_given_does_not_matter()
    {
        var inputs = new[] { new InputFile("b.csv", Abc, 3), new InputFile("a.csv", Abc, 3) };
        Assert.Equal(With(inputs).ToJson(), With([inputs[1], inputs[0]]).ToJson());
        Assert.Equal(["a.csv", "b.csv"], With(inputs).Inputs.Select(input => input.Path));
    }

    [Theory]
    [InlineData("de-DE")]
    [InlineData("tr-TR")]
    [InlineData("fa-IR")]
    public void The_text_is_the_same_in_every_culture(string culture)
    {
        var expected = Sample().ToJson();
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = new CultureInfo(culture);
            Assert.Equal(expected, Sample().ToJson());
            Assert.Equal(Sample(), BuildRecord.Parse(expected, "record.json"));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void The_same_figure_twice_is_refused()
    {
        var figure = new Figure("a", "a", 1, null, "1");
        Assert.Throws<ArgumentException>(() => new BuildRecord("t", default, null, "", [], [], [], [], [figure, figure], []));
        Assert.Throws<ArgumentException>(() => new KeptResult("k", "v", "", [figure, figure]));
    }

    [Theory]
    [InlineData("../secret.csv")]
    [InlineData("/etc/passwd")]
    [InlineData("C:/data.csv")]
    [InlineData("rails\\sweeps.csv")]
    [InlineData("rails//sweeps.csv")]
    [InlineData("rails/../../secret.csv")]
    [InlineData("./sweeps.csv")]
    [InlineData("")]
    public void A_path_that_could_leave_the_build_folder_is_no_input(string path)
        => Assert.Throws<ArgumentException>(() => new InputFile(path, Abc, 3));

    [Fact]
    public void What_a_cell_hands_out_has_the_members_that_hosts_agreed_on()
    {
        using var input = JsonDocument.Parse(new InputFile("rails/sweeps.csv", Abc, 3).ToJson());
        Assert.Equal(["bytes", "path", "sha256"], input.RootElement.EnumerateObject().Select(m => m.Name));
        using var kept = JsonDocument.Parse(new KeptResult("belts/left", "Tighten it.", "Tighten it.\n9 N", [new Figure("a", "a", 1, null, "N")]).ToJson());
        Assert.Equal(["figures", "id", "text", "verdict"], kept.RootElement.EnumerateObject().Select(m => m.Name));
        Assert.Equal("belts/left", KeptResult.Parse(kept.RootElement.GetRawText(), "output").Id);
    }

    [Theory]
    [InlineData("\"seed\": 7", "\"seed\": \"7\"", "'7', expected seed to be a whole number from")]
    [InlineData("\"seed\": 7", "\"seed\": 7.5", "'7.5', expected seed to be a whole number from -2147483648 to 2147483647")]
    [InlineData("\"bytes\": 3", "\"bytes\": 3.5", "'3.5', expected inputs[0].bytes to be a whole number from 0")]
    [InlineData("\"seed\": 7", "\"sead\": 7", "\"sead\", expected one of")]
    [InlineData("\"date\": \"2027-03-01\"", "\"date\": \"1.3.2027\"", "'1.3.2027', expected date to be a date such as 2027-03-01")]
    [InlineData("\"unit\": \"um\"", "\"unit\": \"inches\"", "'inches', which is not a UCUM code")]
    [InlineData("waywright build record 1", "waywright build record 2", "expected format to be one of waywright build record 1")]
    [InlineData("\"bytes\": 3", "\"bytes\": -3", "'-3', expected inputs[0].bytes to be a whole number from 0")]
    [InlineData("\"set\": true", "\"set\": 1", "expected parameters[0].set to be true or false")]
    public void A_record_that_was_tampered_with_says_what_was_found_and_what_was_expected(string from, string to, string message)
    {
        var json = Sample().ToJson();
        Assert.Contains(from, json, StringComparison.Ordinal);
        var thrown = Assert.Throws<InputException>(() => BuildRecord.Parse(json.Replace(from, to, StringComparison.Ordinal), "record.json"));
        Assert.StartsWith("record.json", thrown.Message, StringComparison.Ordinal);
        Assert.Contains(message, thrown.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_number_beyond_all_doubles_is_refused_and_not_read_as_infinity()
    {
        var json = Sample().ToJson().Replace("\"value\": 14.2", "\"value\": 1e999", StringComparison.Ordinal);
        Assert.Throws<InputException>(() => BuildRecord.Parse(json, "record.json"));
    }

    private static BuildRecord With(IReadOnlyList<InputFile> inputs) => new("t", default, null, "", [], [], inputs, [], [], []);

    internal static BuildRecord Sample(double value = 14.2) => new(
        "A benchtop gantry for \"pressed\" plants </script>",
        new DateOnly(2027, 3, 1),
        7,
        "CC-BY-4.0",
        [new NotebookParameter("notebooks/rails.ipynb", "limit", "string", "30 um", true)],
        [new RecordedNotebook("notebooks/rails.ipynb", Abc)],
        [new InputFile("rails/sweeps.csv", Abc, 3)],
        [new Decision("rails/grades", "notebooks/rails.ipynb", "Use R03.")],
        [
            new Figure("rails/R03/side-strt", "R03 side STRt", value, null, "um", 2.6, 11.5, 2, 8, 19, "minimum zone", 1e-9, 1e-6),
            new Figure("rails/R03/grade", "R03 grade", null, "gantry", "1"),
        ],
        [new SoftwareVersion("Waywright", "0.1.0")]);
}
