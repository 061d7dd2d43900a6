using System.Globalization;

namespace Waywright.Tests.Reference;

/// <summary>A published file in this folder; its source stands in the README beside it.</summary>
internal static class ReferenceFile
{
    private static readonly string Root = Repository();

    private static readonly string Folder = Path.Combine(Root, "tests", "Waywright.Tests", "Reference");

    /// <summary>The folder of what is shipped beside the code: schemas, methods.</summary>
    public static string Docs { get; } = Path.Combine(Root, "docs");

    public static string PathOf(string name) => Path.Combine(Folder, name);

    public static string[] Lines(string name) => File.ReadAllLines(PathOf(name));

    /// <summary>The rows of a comma-separated file below its header; a quoted first field may hold commas.</summary>
    public static IReadOnlyList<string[]> Rows(string name) => [.. Lines(name).Skip(1).Where(line => line.Length > 0).Select(Fields)];

    public static double Number(string text) => double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);

    /// <summary>A file of <c>position_mm,reading_um</c>.</summary>
    public static Profile Profile(string name)
    {
        var rows = Rows(name);
        return new Profile([.. rows.Select(row => Number(row[0]))], [.. rows.Select(row => Number(row[1]))], name);
    }

    private static string[] Fields(string line)
    {
        if (line[0] != '"')
            return line.Split(',');
        var quote = line.IndexOf('"', 1);
        return [line[1..quote], .. line[(quote + 2)..].Split(',')];
    }

    private static string Repository()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "Waywright.slnx")))
                return folder.FullName;
        }

        throw new DirectoryNotFoundException("The tests run from within the repository: no Waywright.slnx was found above them.");
    }
}
