using System.Globalization;

namespace Waywright.Tests;

/// <summary>Reads the published files in Reference/uncertainty and Reference/nist; where each comes from stands in the README beside the former.</summary>
internal static class UncertaintyFile
{
    /// <summary>The cells below the header; a quoted first cell may hold commas.</summary>
    public static IReadOnlyList<string[]> Rows(string name) => [.. Lines("uncertainty", name).Skip(1).Where(l => l.Length > 0).Select(Cells)];

    public static IReadOnlyList<double> Column(string name, int column) => [.. Rows(name).Select(r => Number(r[column]))];

    public static string[] Lines(string folder, string name) => File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "Reference", folder, name));

    public static double Number(string text) => double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);

    /// <summary>One unit of the last digit of a printed number.</summary>
    public static double LastDigit(string printed)
    {
        var point = printed.IndexOf('.', StringComparison.Ordinal);
        return point < 0 ? 1 : Math.Pow(10, -(printed.Length - point - 1));
    }

    private static string[] Cells(string line)
    {
        if (line[0] != '"')
            return line.Split(',');
        var quote = line.IndexOf('"', 1);
        return [line[1..quote], .. line[(quote + 2)..].Split(',')];
    }
}
