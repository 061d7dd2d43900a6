using System.Globalization;
using Waywright;
using Waywright.Simulations;
using Waywright.Simulations.Plucks;
using Waywright.Tests.Reference;

// How often the intervals of straightness hold the truth: writes docs/coverage.md (docs/coverage-mounted.md), and fails where one holds it too seldom.
const double LeastPercent = 94;
const double LeastMountedPercent = 92;
const int DecidingPoints = 8;
const int DecidingRails = 10_000;

if (args is ["takes", var folder])
{
    foreach (var (file, wav) in DemoTakes.All)
        File.WriteAllBytes(Path.Combine(folder, file), wav);
    return 0;
}

if (args is ["plucks", ..])
    return PluckProgram.Run(args[1..], Path.Combine(ReferenceFile.Docs, "plucks.md"));
if (args is not ([] or ["quick"] or ["mounted"] or ["mounted", "quick"]))
{
    Console.Error.WriteLine("usage: dotnet run --project tests/Waywright.Simulations [-- [mounted] [quick] | plucks [TAKES] | takes OUTDIR]   (mounted: rails screwed down; quick: few rails, writes nothing; plucks: docs/plucks.md; takes: the demo's recordings)");
    return 2;
}

var quick = args is [.., "quick"];
if (args is ["mounted", ..])
{
    var mounted = MountedPage.Of(quick ? 20 : 200, out var seldom);
    if (!quick)
        Write("coverage-mounted.md", mounted);
    return seldom < LeastMountedPercent ? 1 : 0;
}

Shape[] shapes = [Shape.Straight, Shape.Bow(2), Shape.Bow(5), Shape.Bow(15), Shape.Bow(100), Shape.Wave(3), Shape.Wave(12), Shape.Bump(8)];
(int Passes, double BowUm, double DialUm)[] conditions = [(1, 0, 0), (5, 0, 0), (3, 2, 0), (3, 0, 2.5), (3, 2, 2.5)];
var points = new List<Point>();
foreach (var stations in new[] { 8, 18, 35, 101, 351 })
{
    foreach (var (passes, bow, dial) in conditions)
    {
        foreach (var shape in shapes)
        {
            var point = new Point(new Scene(stations, shape, 1, passes, bow, dial));
            point.Sweep(quick ? 20 : stations switch { <= 35 => 1000, <= 101 => 400, _ => 200 });
            points.Add(point);
            Console.Error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{points.Count} {stations} {shape.Name} {passes} {point.Scene.Disturbed}: {point.Least.Percent:0.0} {point.Least.Name}, zone {point.Zone.Interval:0.0}, width {point.Zone.WidthRatio:0.00}"));
        }
    }
}

if (quick)
    return 0;
var deciding = points.Where(p => p.Scene.Stations <= 35).OrderBy(p => p.Least.Percent).Take(DecidingPoints).ToArray();
foreach (var point in deciding)
    point.Sweep(DecidingRails - point.Zone.Rails);
Write("coverage.md", CoveragePage.Of(points, deciding));
var tooSeldom = deciding.Where(p => p.Least.Percent < LeastPercent).ToArray();
foreach (var point in tooSeldom)
    Console.Error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{point.Scene.Stations} stations, {point.Scene.Shape.Name}, {point.Scene.Disturbed}: {point.Least.Name} held the truth in {point.Least.Percent:0.0} %"));
return tooSeldom.Length == 0 ? 0 : 1;

static void Write(string page, string text)
{
    var path = Path.Combine(ReferenceFile.Docs, page);
    File.WriteAllText(path, text.ReplaceLineEndings("\n"));
    Console.WriteLine(path);
}
