using System.Globalization;

namespace Waywright.Simulations.Plucks;

/// <summary>Analyses the recorded clips and invented takes of every scene, and writes docs/plucks.md; fails where a wrong partial is called usable in more than one take of a hundred of a modelled scene, or an interval holds too seldom.</summary>
internal static class PluckProgram
{
    private const int Takes = 100;
    private const double LeastHeld = 93;
    private const double MostHeld = 97;

    public static int Run(string[] args, string page)
    {
        var takes = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : Takes;
        var points = new List<PluckPoint>();
        foreach (var (name, isModelled, take) in PluckScenes.All)
        {
            var point = PluckPoint.Of(name, isModelled, take, takes);
            points.Add(point);
            Console.Error.WriteLine(PluckPage.Row(point));
        }

        if (args.Length > 0)
            return 0;
        File.WriteAllText(page, PluckPage.Of(points, ClipOutcome.All()).ReplaceLineEndings("\n"));
        Console.WriteLine(page);
        var modelled = points.Where(p => p.IsModelled).ToArray();
        var held = modelled.Sum(p => p.FitHeld) * 100.0 / modelled.Sum(p => p.FitJudged);
        return held is < LeastHeld or > MostHeld || modelled.Any(p => p.WrongUsed * 100 > p.Outcomes.Count) ? 1 : 0;
    }
}
