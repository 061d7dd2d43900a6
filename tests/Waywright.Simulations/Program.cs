using System.Globalization;
using Waywright;
using Waywright.Simulations;

CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
var rails = int.Parse(args[0], CultureInfo.InvariantCulture);
Shape[] shapes = [Shape.Straight, Shape.Bow(2), Shape.Bow(5), Shape.Bow(15), Shape.Bow(40), Shape.Bow(100), Shape.Wave(3), Shape.Wave(12), Shape.Bump(8)];
foreach (var n in new[] { 8, 18, 35, 101, 351 })
{
    foreach (var (bow, dial) in new[] { (0.0, 0.0), (2, 0), (0, 2.5), (2, 2.5) })
    {
        foreach (var noise in new[] { 0.5, 2, 10 })
        {
            var line = $"| {n} | {bow}/{dial} | {noise} |";
            var (all, inside) = (0.0, 100.0);
            foreach (var shape in shapes)
            {
                var covered = new Covered(StraightnessFigures.Of(new Profile(new Scene(n, shape, noise).Positions, new Scene(n, shape, noise).Truth)).MinimumZone.Line.STRtUm);
                Parallel.For(0, rails, r =>
                {
                    var scene = new Scene(n, shape, noise, (r % 3) switch { 0 => 1, 1 => 3, _ => 5 }, bow, dial);
                    var (profile, errors) = scene.Sweep((ulong)r + 1);
                    covered.Add(StraightnessUncertainty.Grading(profile, errors, 1, 1000, (ulong)r, default).Whole);
                });
                line += $" {covered.WidthRatio:0.00} {100 * covered.Interval:0} |";
                all += covered.WidthRatio / shapes.Length;
                inside = Math.Min(inside, 100 * covered.Interval);
            }

            Console.WriteLine($"{line} {all:0.000} | {inside:0.0}");
        }
    }
}
