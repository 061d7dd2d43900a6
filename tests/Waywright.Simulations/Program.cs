using System.Globalization;
using Waywright;
using Waywright.Simulations;

CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
var rails = int.Parse(args[0], CultureInfo.InvariantCulture);
int[] counts = [.. args[1].Split(',').Select(int.Parse)];
foreach (var n in counts)
{
    foreach (var (passes, bow, dial) in new[] { (1, 0.0, 0.0), (3, 0, 0), (3, 2.0, 0), (3, 0, 2.5) })
    {
        foreach (var shape in new[] { Shape.Straight, Shape.Bow(2), Shape.Bow(5), Shape.Bow(15), Shape.Bow(100), Shape.Wave(3), Shape.Wave(12), Shape.Bump(8) })
        {
            var scene = new Scene(n, shape, 1, passes, bow, dial);
            var figures = StraightnessFigures.Of(new Profile(scene.Positions, scene.Truth));
            (ReferenceLineKind, StraightnessParameter)[] kinds = [(ReferenceLineKind.MinimumZone, StraightnessParameter.STRt), (ReferenceLineKind.LeastSquares, StraightnessParameter.STRt), (ReferenceLineKind.LeastSquares, StraightnessParameter.STRp), (ReferenceLineKind.LeastSquares, StraightnessParameter.STRq), (ReferenceLineKind.EndPoints, StraightnessParameter.STRt), (ReferenceLineKind.MinimumZone, StraightnessParameter.STRq)];
            var covered = kinds.Select(k => new Covered(Truth(figures, k))).ToArray();
            Parallel.For(0, rails, r =>
            {
                var (profile, errors) = scene.Sweep((ulong)r + 1);
                var sure = StraightnessUncertainty.Of(profile, errors, 1000, (ulong)r);
                for (var k = 0; k < kinds.Length; k++)
                    covered[k].Add(sure.Of(kinds[k].Item1, kinds[k].Item2));
            });
            for (var k = 0; k < kinds.Length; k++)
            {
                var c = covered[k];
                Console.WriteLine($"| {n} | {shape.Name} | {passes} | {scene.Disturbed} | {kinds[k].Item2} {kinds[k].Item1} | {100 * c.Interval:0.0} | {100 * c.LowerBound:0.0} | {100 * c.UpperBound:0.0} | {c.WidthRatio:0.00} | {100 * c.Guaranteed:0.0} | {c.Naive:0.0} | {c.Estimate:0.0} | {100 * c.EstimateHigh:0} |");
            }
        }
    }
}

static double Truth(StraightnessFigures figures, (ReferenceLineKind Line, StraightnessParameter Parameter) kind)
{
    var line = kind.Line switch
    {
        ReferenceLineKind.EndPoints => figures.EndPoints,
        ReferenceLineKind.LeastSquares => figures.LeastSquares,
        _ => figures.MinimumZone.Line,
    };
    return kind.Parameter switch
    {
        StraightnessParameter.STRt => line.STRtUm,
        StraightnessParameter.STRp => line.STRpUm,
        StraightnessParameter.STRv => line.STRvUm,
        _ => line.STRqUm,
    };
}
