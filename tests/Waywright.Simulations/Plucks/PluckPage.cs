using System.Globalization;
using System.Text;

namespace Waywright.Simulations.Plucks;

/// <summary>docs/plucks.md.</summary>
internal static class PluckPage
{
    public static string Of(IReadOnlyList<PluckPoint> points, IReadOnlyList<ClipOutcome> clips)
    {
        var modelled = points.Where(p => p.IsModelled).ToArray();
        var held = 100.0 * modelled.Sum(p => p.FitHeld) / modelled.Sum(p => p.FitJudged);
        var page = new StringBuilder();
        page.AppendLine("# How well a plucked note is found\n");
        page.AppendLine("Written by `dotnet run -c Release --project tests/Waywright.Simulations -- plucks`. Errors in cents: 1 cent is 0.058 % of the note and 0.116 % of the tension; a wrong octave is a factor 4 in tension.\n");
        page.AppendLine("## Recorded strings of known pitch\n");
        page.AppendLine("36 clips, 41 to 392 Hz, of FluidR3 GM (MIT) and four sets of instrument samples (CC-BY 3.0): `tests/Waywright.Tests/Reference/audio`. They are instruments, not belts: richer in partials, weaker in the first, which is hard on the octave; no openly licensed belt recording was found. Reference: a fit of up to 16 partials that starts from the nominal note. **Median / 95th percentile** of |error|, in brackets the share more than 50 cents off; **inside**: within the clip's acceptance interval; **held**: within 1.96 times the root of both u squared.\n");
        page.AppendLine("| case | clips | median / 95 % | largest | inside | held | usable |\n| --- | ---: | ---: | ---: | ---: | ---: | ---: |");
        foreach (var clip in clips)
            page.AppendLine(clip.Row);
        page.AppendLine("\n## Invented plucks\n");
        page.AppendLine(CultureInfo.InvariantCulture, $"{points[0].Outcomes.Count} takes a scene from fixed seeds, 20 to 400 Hz, 22.05 kHz, 0.3 s of quiet, noise at 30 dB, tau 0.25 to 1 s unless said otherwise; the model is `InventedPluck.cs`. **Usable**: called usable. **Kit**: usable takes. **Fit held**: how often 1.96 times the u of noise and partials alone held the truth, %; over all modelled scenes **{held:0.0} %**, which has to be 95 +/- 2. **All held**: the same of the whole u, which adds 1.5 cents for a real string, a clock and a changing pitch, so that it holds nearly always here. The three others are told where the sound starts; median / 95th percentile of those within 50 cents, the share beyond in brackets, nothing where most are beyond.\n");
        page.AppendLine("| scene | usable | kit | wrong among usable | fit held | all held | mean u | largest peak | autocorrelation | harmonic sum |\n| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: |");
        foreach (var point in points)
            page.AppendLine(Row(point));
        page.AppendLine("\nThe last five scenes are outside the model, and their fit is not expected to hold. A phone that cuts below 250 Hz makes notes under about 35 Hz look five times as high: the sound between the rungs gives that away, and such takes are called not usable.\n");
        page.AppendLine("## Where this differs from the usual way\n");
        page.AppendLine("- All scenes: stiffness is always fitted. Taken for none where few partials stand out, it raised the note by up to 0.8 cents where B is above 0.001, which short belts have.");
        page.AppendLine("- Partials that run into each other (fewer than 20 periods in the sound) are fitted too, seen or not: without them the u of belts with tau under 150 ms held the truth in 88 % only.");
        page.AppendLine("- Where partials lie off their ladder, as on real strings, each is fitted by itself and the ladder goes through them with their scatter (Mandel and Paule); where they don't, one ladder for all is the sharper estimate.");
        page.AppendLine("- A note that falls is fitted with its fall (height and speed), and the note without amplitude is given: 15 cents of fall left 3 to 5 cents of error in every other way.");
        page.AppendLine("- The spectrum of what is noise is taken from what the fit leaves, so that pink noise and hum count where they are.");
        return page.ToString();
    }

    public static string Row(PluckPoint point) => string.Create(CultureInfo.InvariantCulture,
        $"| {point.Name} | {point.Used} | {PluckPoint.Errors(point.Usable.Select(o => o.KitCents))} | {point.WrongUsed} | {Percent(point.FitCoverage)} | {Percent(point.Coverage)} | {point.MeanU:0.0} | {PluckPoint.Errors(point.Outcomes.Select(o => o.PeakCents))} | {PluckPoint.Errors(point.Outcomes.Select(o => o.AutocorrelationCents))} | {PluckPoint.Errors(point.Outcomes.Select(o => o.HarmonicSumCents))} |");

    private static string Percent(double share) => double.IsNaN(share) ? "-" : share.ToString("0.0", CultureInfo.InvariantCulture);
}
