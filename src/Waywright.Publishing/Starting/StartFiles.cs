using System.Globalization;
using System.Text.Json;
using Waywright.Kernel;

namespace Waywright.Publishing;

/// <summary>One file of a new build.</summary>
/// <param name="Path">In the build, forward slashes.</param>
/// <param name="Text">What it holds.</param>
internal sealed record StartFile(string Path, string Text);

/// <summary>The files of a new build: the shipped ones with what is asked about filled in, and the measuring sheets.</summary>
internal static class StartFiles
{
    // Begins the names of the shipped files among the assembly's resources.
    private const string Prefix = "start/";

    // The exploration measures nothing, so it is the demo's own notebook; all but its title serves any build.
    private const string DemoTitle = "A benchtop gantry for pressed-plant sheets";

    public static IEnumerable<StartFile> Of(string title, SheetRails rails)
    {
        var assembly = typeof(StartFiles).Assembly;
        foreach (var resource in assembly.GetManifestResourceNames().Where(name => name.StartsWith(Prefix, StringComparison.Ordinal)).Order(StringComparer.Ordinal))
        {
            var path = resource[Prefix.Length..].Replace('\\', '/');
            using var reader = new StreamReader(assembly.GetManifestResourceStream(resource)!);
            yield return new StartFile(path, Filled(reader.ReadToEnd(), title, rails, path.EndsWith(".ipynb", StringComparison.Ordinal)));
        }

        foreach (var paper in Paper.All)
        {
            yield return new StartFile($"sheets/{paper.Folder}/rail-sweeps.html", SweepSheet.Html(paper, rails));
            yield return new StartFile($"sheets/{paper.Folder}/drag.html", DragSheet.Html(paper, rails));
            yield return new StartFile($"sheets/{paper.Folder}/belts.html", BeltSheet.Html(paper));
        }
    }

    private static string Filled(string text, string title, SheetRails rails, bool isNotebook)
    {
        var rail = rails.Rail;
        return text
            .Replace("@version@", CarriedPackages.Version, StringComparison.Ordinal)
            .Replace(isNotebook ? DemoTitle : "@title@", isNotebook ? JsonEncodedText.Encode(title).ToString() : title, StringComparison.Ordinal)
            .Replace("@length@", Mm(rail.LengthMm), StringComparison.Ordinal)
            .Replace("@pitch@", Mm(rail.PitchMm), StringComparison.Ordinal)
            .Replace("@end@", Mm(rail.EndDistanceMm), StringComparison.Ordinal)
            .Replace("@swept@", Mm(rail.StationsMm[^1] - rail.StationsMm[0]), StringComparison.Ordinal)
            .Replace("@count@", rail.StationsMm.Count.ToString(CultureInfo.InvariantCulture), StringComparison.Ordinal)
            .Replace("@supports@", $"{Mm(rails.SupportsMm.Near)} mm, {Mm(rails.SupportsMm.Far)} mm", StringComparison.Ordinal)
            .Replace("@stations@", string.Join(" ", rail.StationsMm.Select(Mm)), StringComparison.Ordinal);
    }

    private static string Mm(double mm) => SheetHtml.Mm(mm);
}
