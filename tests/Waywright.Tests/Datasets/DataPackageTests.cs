using System.Text.Json.Nodes;

namespace Waywright.Tests.Datasets;

/// <summary>Checked against the field names of the Frictionless Data Package, version 1 (specs.frictionlessdata.io), and the files themselves.</summary>
public sealed class DataPackageTests
{
    public static TheoryData<string> Folders => [.. Directory.GetDirectories(DataFolder.Root).Select(folder => Path.GetFileName(folder))];

    [Fact]
    public void The_data_folders_are_the_demo_the_instrument_checks_and_the_published_tables()
        => Assert.Equal(["demo", "instruments", "published"], Folders.Select(row => row.Data).Order(StringComparer.Ordinal));

    [Theory]
    [MemberData(nameof(Folders))]
    public void A_package_says_its_name_licence_sources_and_whether_it_is_invented(string name)
    {
        var package = DataFolder.Named(name).Package;
        Assert.Matches("^[-a-z0-9._/]+$", Text(package, "name"));
        Assert.NotEmpty(Text(package, "title"));
        Assert.NotNull(package["invented"]!.GetValue<bool?>());
        Assert.All(package["sources"]!.AsArray(), source => Assert.NotEmpty(Text(source!.AsObject(), "title")));
        Assert.NotEmpty(package["sources"]!.AsArray());
        if (package["licenses"] is JsonArray licences)
            Assert.All(licences, licence => Assert.NotEmpty(Text(licence!.AsObject(), "name")));
        else
            Assert.NotEmpty(Text(package, "licence_statement"));
    }

    [Theory]
    [MemberData(nameof(Folders))]
    public void A_package_lists_every_file_of_its_folder_once_and_no_other(string name)
    {
        var folder = DataFolder.Named(name);
        var files = Directory.GetFiles(folder.Path, "*", SearchOption.AllDirectories)
            .Select(file => Path.GetRelativePath(folder.Path, file).Replace('\\', '/'))
            .Where(file => file is not ("datapackage.json" or ".gitattributes"));
        Assert.Equal(files.Order(StringComparer.Ordinal), folder.Resources.Select(resource => Text(resource, "path")).Order(StringComparer.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Folders))]
    public void The_fields_of_a_table_are_its_header_in_order(string name)
    {
        var folder = DataFolder.Named(name);
        var tables = folder.Resources.Where(resource => Text(resource, "path").EndsWith(".csv", StringComparison.Ordinal)).ToArray();
        Assert.NotEmpty(tables);
        foreach (var table in tables)
        {
            var fields = Fields(table);
            Assert.Equal(folder.Table(Text(table, "path")).Header, fields.Select(field => Text(field, "name")));
            Assert.All(fields, field => Assert.NotEmpty(Text(field, "description")));
            Assert.All(fields, field => Assert.Contains(Text(field, "type"), new[] { "string", "number", "integer" }));
        }
    }

    [Theory]
    [MemberData(nameof(Folders))]
    public void A_number_has_a_unit_and_the_unit_is_the_one_in_its_name(string name)
    {
        string[] lengths = ["um", "mm"];
        var numbers = DataFolder.Named(name).Resources.SelectMany(Fields).Where(field => Text(field, "type") != "string").ToArray();
        Assert.NotEmpty(numbers);
        foreach (var number in numbers)
        {
            var suffix = Text(number, "name").Split('_')[^1];
            if (Text(number, "name") == "force_n")
                Assert.Equal("N", Text(number, "unit"));
            else if (suffix == "g" || lengths.Contains(suffix))
                Assert.Equal(suffix, Text(number, "unit"));
            else
                Assert.Equal("1", Text(number, "unit"));
        }
    }

    [Fact]
    public void Every_file_of_an_invented_package_says_so_itself()
    {
        var folder = DataFolder.Named("demo");
        Assert.True(folder.Package["invented"]!.GetValue<bool>());
        foreach (var resource in folder.Resources)
        {
            var text = File.ReadAllText(folder.PathOf(Text(resource, "path")));
            Assert.Contains("invented", text[..Math.Min(250, text.Length)], StringComparison.OrdinalIgnoreCase);
            Assert.True(resource["invented"]!.GetValue<bool>());
        }
    }

    static JsonObject[] Fields(JsonObject resource)
        => resource["schema"] is { } schema ? [.. schema["fields"]!.AsArray().Select(field => field!.AsObject())] : [];

    static string Text(JsonObject node, string member) => node[member]!.GetValue<string>();
}
