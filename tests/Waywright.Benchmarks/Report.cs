using System.Globalization;
using System.Text;

namespace Waywright.Benchmarks;

/// <summary>Findings as a Markdown page.</summary>
internal static class Report
{
    public static string Page(string title, Findings findings, IReadOnlyList<string> machine)
    {
        var page = new StringBuilder();
        page.Append(Line($"# {title}\n\n"));
        foreach (var paragraph in findings.About)
            page.Append(Line($"{paragraph}\n\n"));
        page.Append("| ratio | median | middle half of the rounds | wanted |\n| --- | ---: | ---: | --- |\n");
        foreach (var ratio in findings.Ratios)
        {
            var values = Interleaved.Ratios(Named(findings, ratio.Slower), Named(findings, ratio.Faster));
            page.Append(Line($"| {ratio.Slower} / {ratio.Faster} | {Digits(Interleaved.Quantile(values, 0.5))} | {Digits(Interleaved.Quantile(values, 0.25))} to {Digits(Interleaved.Quantile(values, 0.75))} | {ratio.Wanted} |\n"));
        }

        page.Append("\n| contender | one run, median | middle half of the rounds | runs per second |\n| --- | ---: | ---: | ---: |\n");
        foreach (var timing in findings.Timings)
            page.Append(Line($"| {timing.Contender.Name} | {Time(timing.Median)} | {Time(Interleaved.Quantile(timing.Seconds, 0.25))} to {Time(Interleaved.Quantile(timing.Seconds, 0.75))} | {Digits(1 / timing.Median)} |\n"));
        page.Append("\n## What is in each time\n\n");
        foreach (var timing in findings.Timings)
            page.Append(Line($"- {timing.Contender.Name}: {timing.Contender.Timed}\n"));
        page.Append("\n## Measured on\n\n");
        foreach (var fact in machine.Concat(findings.Versions))
            page.Append(Line($"- {fact}\n"));
        return page.ToString();
    }

    private static Timing Named(Findings findings, string name) => findings.Timings.Single(t => t.Contender.Name == name);

    private static string Time(double seconds) => seconds switch
    {
        < 1e-6 => Line($"{Digits(seconds * 1e9)} ns"),
        < 1e-3 => Line($"{Digits(seconds * 1e6)} us"),
        < 1 => Line($"{Digits(seconds * 1e3)} ms"),
        _ => Line($"{Digits(seconds)} s"),
    };

    private static string Digits(double value) => value switch
    {
        >= 100 => Line($"{value:#,0}"),
        >= 10 => Line($"{value:0.0}"),
        _ => Line($"{value:0.00}"),
    };

    private static string Line(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
