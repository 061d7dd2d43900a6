using System.Globalization;

namespace Waywright.Simulations.Plucks;

/// <summary>Analyses invented takes of every scene and writes docs/plucks.md.</summary>
internal static class PluckProgram
{
    private const int Takes = 400;

    public static int Run(string[] args)
    {
        var takes = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : Takes;
        foreach (var (name, isModelled, take) in PluckScenes.All)
        {
            if (args.Length > 1 && !name.Contains(args[1], StringComparison.Ordinal))
                continue;
            var point = PluckPoint.Of(name, isModelled, take, takes);
            Console.Error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{name}: used {point.Used}, kit {PluckPoint.Errors(point.Usable.Select(o => o.KitCents))} wrong used {point.WrongUsed}, fit {point.FitCoverage:0.0}, all {point.Coverage:0.0}, u {point.MeanU:0.00} | peak {PluckPoint.Errors(point.Outcomes.Select(o => o.PeakCents))} acf {PluckPoint.Errors(point.Outcomes.Select(o => o.AutocorrelationCents))} sum {PluckPoint.Errors(point.Outcomes.Select(o => o.HarmonicSumCents))}"));
            foreach (var o in point.Outcomes.Where(o => args.Length > 2 || Math.Abs(o.KitCents) > 50).Take(args.Length > 2 ? 1000 : 4))
                Console.Error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"   {o.TruthHz:0.0000} off {o.KitCents:0.000} fit {o.FitCents:0.000} all {o.AllCents:0.00} {o.IsUsable} {o.Reason}"));
        }

        return 0;
    }
}
