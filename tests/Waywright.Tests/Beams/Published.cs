using System.Globalization;
using System.Text.Json;

namespace Waywright.Tests.Beams;

/// <summary>The support points kept in <c>Reference/beams</c>; their source stands in the README there.</summary>
static class Published
{
    static readonly string Folder = Path.Combine(AppContext.BaseDirectory, "Reference", "beams");

    /// <summary>Name, then spacing, overhang, centre sag, end sag, peak to valley and end slope.</summary>
    public static IReadOnlyList<(string Name, double[] Figures)> Spacings { get; } =
        [.. File.ReadLines(Path.Combine(Folder, "support_points_uniform_beam.csv")).Skip(1).Select(line => line.Split(',')).Select(row => (row[0], row[1..7].Select(Number).ToArray()))];

    public static double Spacing(string name)
    {
        using var points = JsonDocument.Parse(File.ReadAllText(Path.Combine(Folder, "support_points_full_precision.json")));
        return points.RootElement.GetProperty(name).GetDouble();
    }

    public static double ExactSpacing(string name)
        => Number(File.ReadLines(Path.Combine(Folder, "support_points_exact.csv")).Select(line => line.Split(',')).Single(row => row[0] == name)[1]);

    static double Number(string text) => double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);
}
