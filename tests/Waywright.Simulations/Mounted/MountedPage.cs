using System.Globalization;
using System.Text;

namespace Waywright.Simulations;

/// <summary>docs/coverage-mounted.md.</summary>
internal static class MountedPage
{
    private const int Trials = 1000;

    private static readonly (string Name, ScrewPattern Screws)[] Patterns =
    [
        ("every hole", MountedScene.Every),
        ("every other", MountedScene.Every.EveryOther()),
        ("every other, an end free", MountedScene.Every.InHoles(1, 3, 5, 7, 9, 11)),
        ("every third", MountedScene.Every.InHoles(1, 4, 7, 10, 13)),
        ("four", MountedScene.Every.InHoles(1, 5, 9, 13)),
        ("three", MountedScene.Every.InHoles(1, 7, 13)),
        ("two", MountedScene.Every.InHoles(1, 13)),
    ];

    private const string Head = """
        # How often the interval of the mounted residual holds the truth

        Written by `dotnet run --project tests/Waywright.Simulations -- mounted`. Rails of 320 mm of known, invented shape are swept free at 14 stations midway between their holes (every 25 mm) and near both ends, with errors drawn from fixed seeds: independent ones at the stations, and a bow of the guide. `MountedShape` predicts what is left once they are screwed down, with the base's push between the screws; the true residual is that of the whole shape, every millimetre. 1,000 trials each. Method: [methods.md](methods.md).

        - **noise**: standard deviation of a station's height; the guide's bow has half of it. **base**: rigid, or as stiff as the rail. In every prediction the base pushed somewhere.
        - **interval, lower, upper**: how often the 95 % interval and the one-sided 95 % bounds held the true residual, %.
        - **moved at most**: by how many times what errors alone read through the screws' map they moved the pressed residual on a rigid base, the most of ten draws for each rail. Screws in every and in every other hole leave it well below 1. Elsewhere (screws far apart, or an end that stands free by more than a pitch) grading gives `top mounted` the bounds of such trials too, contact solved anew in each.


        """;

    /// <param name="rails">Of each point.</param>
    /// <param name="least">The lowest share of an interval, %.</param>
    public static string Of(int rails, out double least)
    {
        var rows = new StringBuilder("| screws | rail | noise um | base | true um | interval % | lower % | upper % | mean width um | moved at most |\n| --- | --- | ---: | --- | ---: | ---: | ---: | ---: | ---: | ---: |\n");
        least = 100;
        foreach (var (name, screws) in Patterns)
        {
            foreach (var (noise, yields) in new[] { (0.4, false), (1.5, false), (1.5, true) })
            {
                foreach (var shape in MountedShapeOf.All)
                {
                    var scene = new MountedScene(shape, screws, name, noise, yields);
                    var truth = scene.Truth().ResidualUm;
                    var covered = new Covered(truth);
                    var (width, moved) = (0.0, 0.0);
                    var gate = new Lock();
                    Parallel.For(0, rails, i =>
                    {
                        var figure = scene.Sweep((ulong)i + 1, Trials);
                        var more = Enumerable.Range(0, 10).Max(k => scene.Moved((ulong)((1000 * i) + k)));
                        covered.Add(figure, null);
                        lock (gate)
                        {
                            width += figure.HighUm - figure.LowUm;
                            moved = Math.Max(moved, more);
                        }
                    });
                    least = Math.Min(least, covered.Interval);
                    rows.Append(CultureInfo.InvariantCulture, $"| {name} | {shape.Name} | {noise} | {(yields ? "as stiff" : "rigid")} | {truth:0.00} | {covered.Interval:0.0} | {covered.LowerBound:0.0} | {covered.UpperBound:0.0} | {width / rails:0.0} | {moved:0.00} |\n");
                }

                Console.Error.WriteLine($"{name}, noise {noise}");
            }
        }

        return Head + string.Create(CultureInfo.InvariantCulture, $"{rails} rails for each point: a share of 95 % has a standard deviation of {Math.Sqrt(95.0 * 5 / rails):0.0} %. The lowest share of a 95 % interval is {least:0.0} %.\n\n") + rows;
    }
}
