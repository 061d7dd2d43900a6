using System.Diagnostics;
using System.Globalization;
using System.Text.Json.Nodes;

namespace Waywright.EndToEnd.Commands;

/// <summary>The analysis as a plain C# file, run as a reader would run it, in a language with a decimal comma.</summary>
public sealed class AnalysisFileTests
{
    private static readonly string Program = Path.Combine(Command.Repository, "docs", "analysis.cs");

    [Fact]
    public async Task The_plain_file_prints_the_figures_that_the_notebooks_record()
    {
        using var folder = new TemporaryFolder();
        var published = await Command.RunAsync("publish", "--out", Path.Combine(folder.Path, "page"), "--date", "2026-03-01");
        Assert.True(published.ExitCode == 0, published.Error);
        var record = JsonNode.Parse(await File.ReadAllTextAsync(Path.Combine(folder.Path, "page", "record.json"), TestContext.Current.CancellationToken))!["figures"]!.AsArray();

        var (exit, printed, errors) = await RunAsync();
        Assert.True(exit == 0, errors);
        var lines = printed.Trim().Split('\n').Select(line => line.Split(" = ")).ToDictionary(parts => parts[0], parts => parts[1].Trim());
        Assert.All(lines, line =>
        {
            var figure = record.Single(figure => (string)figure!["id"]! == line.Key)!;
            if ((string?)figure["text"] is { } text)
            {
                Assert.Equal(text, line.Value);
                return;
            }

            var value = (double)figure["value"]!;
            Assert.Equal((string)figure["unit"]!, line.Value.Split(' ')[1]);
            Assert.InRange(double.Parse(line.Value.Split(' ')[0], CultureInfo.InvariantCulture), value - (1e-9 * Math.Abs(value)), value + (1e-9 * Math.Abs(value)));
        });
        // Every rail and every belt, not a choice of them.
        Assert.All(
            record.Select(figure => (string)figure!["id"]!).Where(id => id.StartsWith("rails/", StringComparison.Ordinal) || id.StartsWith("belts/", StringComparison.Ordinal) || id.StartsWith("close-look/", StringComparison.Ordinal)),
            id => Assert.Contains(id, lines.Keys));
    }

    [Fact]
    public async Task A_folder_without_data_is_one_line_and_exit_2()
    {
        using var folder = new TemporaryFolder();
        var (exit, printed, errors) = await RunAsync("--", folder.Path);
        Assert.Equal((2, ""), (exit, printed));
        Assert.Contains("setups.json", errors);
        Assert.Single(errors.Trim().Split('\n'));
    }

    private static async Task<(int Exit, string Printed, string Errors)> RunAsync(params string[] arguments)
    {
        var start = new ProcessStartInfo("dotnet", ["run", Program, .. arguments]) { RedirectStandardOutput = true, RedirectStandardError = true };
        start.Environment["LC_ALL"] = "de_DE.UTF-8";
        start.Environment["DOTNET_NOLOGO"] = "1";
        using var process = Process.Start(start)!;
        var (printed, errors) = (process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken), process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken));
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        return (process.ExitCode, await printed, await errors);
    }
}
