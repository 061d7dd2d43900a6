using System.Globalization;
using System.Text;

namespace Waywright.Simulations;

/// <summary>docs/coverage.md.</summary>
internal static class CoveragePage
{
    public static string Of(IReadOnlyList<Point> points, IReadOnlyList<Point> deciding)
    {
        var page = new StringBuilder();
        page.AppendLine("# How often the intervals of straightness hold the truth\n");
        page.AppendLine(CultureInfo.InvariantCulture, $"Written by `dotnet run --project tests/Waywright.Simulations`. Rails of known, invented shape are swept with errors drawn from fixed seeds, and each sweep is judged by the library (1,000 trials each). The method is in [methods.md](methods.md). Everything scales: a bow of 15 um under noise of 1 um is one of 150 um under 10 um, or of 7.5 um under 0.5 um.\n");
        page.AppendLine("- **rails**: sweeps of the point; a share of 95 % over 1,000 of them has a standard deviation of 0.7 %.");
        page.AppendLine("- **disturbed**: a bow shared by all passes (standard deviation given; the bow between lays as it is left in their mean, or a guide), a dial whose error belongs to its reading (limit given, the face tilted by 60 um).");
        page.AppendLine("- **interval, lower, upper**: how often the 95 % interval and the one-sided 95 % bounds of STRt about the minimum zone held the truth, %. **width**: mean width over that of the guaranteed interval.");
        page.AppendLine("- **guaranteed**: the figure as read -/+ the 95 % point of noise alone. **plain**: plain Monte Carlo around the heights as read. **read, estimate**: how much the figure as read, and the estimate, are too large on average, um.");
        page.AppendLine("- **least**: of all twelve figures the one whose 95 % interval held least often.\n");
        Summary(page, points, deciding);
        page.AppendLine("\n## Points that decide, with more rails\n");
        Table(page, deciding);
        page.AppendLine("\n## All points\n");
        Table(page, points);
        return page.ToString();
    }

    private static void Summary(StringBuilder page, IReadOnlyList<Point> points, IReadOnlyList<Point> deciding)
    {
        var all = points.Where(p => !deciding.Contains(p)).Concat(deciding).ToArray();
        var least = all.MinBy(p => p.Least.Percent)!;
        page.AppendLine("## In short\n");
        page.AppendLine(CultureInfo.InvariantCulture, $"- {points.Count} points, twelve figures each. Lowest share of any 95 % interval: {least.Least.Percent:0.0} % ({least.Least.Name}; {Where(least)}; {least.Zone.Rails} rails). Of STRt about the minimum zone: {all.Min(p => p.Zone.Interval):0.0} %; of its one-sided bounds {all.Min(p => p.Zone.LowerBound):0.0} % and {all.Min(p => p.Zone.UpperBound):0.0} %.");
        page.AppendLine(CultureInfo.InvariantCulture, $"- Mean width of STRt about the minimum zone over the guaranteed one's: {points.Average(p => p.Zone.WidthRatio):0.00} over all points; {points.Where(p => p.Scene.Disturbed == "-").Average(p => p.Zone.WidthRatio):0.00} without, {points.Where(p => p.Scene.Disturbed != "-").Average(p => p.Zone.WidthRatio):0.00} with a shared error. Where one shared shape makes most of the error the guaranteed interval is already exact, and nothing narrower holds.");
        page.AppendLine(CultureInfo.InvariantCulture, $"- About the other lines: {string.Join(", ", Point.Kinds.Where(k => k != (ReferenceLineKind.MinimumZone, StraightnessParameter.STRt)).Select(k => string.Create(CultureInfo.InvariantCulture, $"{k.Parameter} {Point.Name(k.Line)} {points.Average(p => p.Of(k.Line, k.Parameter).WidthRatio):0.00} (least {all.Min(p => p.Of(k.Line, k.Parameter).Interval):0.0} %)")))}.");
        page.AppendLine(CultureInfo.InvariantCulture, $"- Plain Monte Carlo held the truth in {points.Min(p => p.Zone.Plain):0} % at its worst point. The figure as read is too large by up to {points.Max(p => p.Zone.ReadTooLarge):0.0} um, the estimate by {points.Min(p => p.Zone.EstimateTooLarge):0.0} to {points.Max(p => p.Zone.EstimateTooLarge):0.0} um, noise of a reading being 1 um.");
    }

    private static string Where(Point point) => $"{point.Scene.Stations} stations, {point.Scene.Shape.Name}, {point.Scene.Passes} passes, disturbed: {point.Scene.Disturbed}";

    private static void Table(StringBuilder page, IReadOnlyList<Point> points)
    {
        page.AppendLine("| stations | rail | passes | disturbed | rails | interval | lower | upper | width | guaranteed | plain | read | estimate | least |");
        page.AppendLine("| ---: | --- | ---: | --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | --- |");
        foreach (var point in points)
        {
            var (scene, zone, least) = (point.Scene, point.Zone, point.Least);
            page.AppendLine(CultureInfo.InvariantCulture,
                $"| {scene.Stations} | {scene.Shape.Name} | {scene.Passes} | {scene.Disturbed} | {zone.Rails} | {zone.Interval:0.0} | {zone.LowerBound:0.0} | {zone.UpperBound:0.0} | {zone.WidthRatio:0.00} | {zone.Guaranteed:0.0} | {zone.Plain:0.0} | {zone.ReadTooLarge:0.0} | {zone.EstimateTooLarge:0.0} | {least.Percent:0.0} {least.Name} |");
        }
    }
}
