using System.Globalization;
using System.Text;
using Waywright.EndToEnd.Commands;

namespace Waywright.EndToEnd.Faults;

/// <summary>Not part of the tests: many faults of each kind, and docs/faults.md.</summary>
public sealed class FaultTable
{
    private const string Run = "dotnet run --project tests/Waywright.EndToEnd -- -explicit only -class Waywright.EndToEnd.Faults.FaultTable";

    [Fact(Explicit = true)]
    public async Task Writes_docs_faults()
    {
        Fault[] faults =
        [
            await Kills.RunAsync(200, seed: 1),
            await Folders.FullDiskAsync(10),
            await Folders.ReadOnlyAsync(3),
            await Meanwhile.ChangedInputAsync(10),
            await Meanwhile.TwoAtOnceAsync(10),
        ];
        var text = new StringBuilder("# What a fault does to a publish\n\n")
            .Append("`waywright publish` makes the new page beside the old one and exchanges the two in one step, so that a run that dies costs nothing. This was tried, not only meant: two small notebooks with invented data, published again and again, each run with another parameter so that no two pages are equal. The page is whole when every file has the hash that its `run.json` lists and there is no other file. One kill in three waits until the new page is being written. After each kill the next run's first step, which takes the folder and cleans up, is done by itself; a whole next run follows every tenth kill and the last, and every other fault.\n\n")
            .Append(CultureInfo.InvariantCulture, $"Made by `{Run}` on {System.Runtime.InteropServices.RuntimeInformation.OSDescription}, {Environment.ProcessorCount} processors, .NET {Environment.Version}; an hour on a busy machine; root, for the small disk that it mounts.\n\n")
            .Append("| fault | times | what was seen | page whole | next run clean | exit code | message |\n| --- | --- | --- | --- | --- | --- | --- |\n");
        foreach (var f in faults)
            text.Append(CultureInfo.InvariantCulture, $"| {f.Case} | {f.Times} | {f.Seen} | {f.Whole} of {f.Times} | {f.Clean} of {f.Looked} | {string.Join(", ", f.ExitCodes)} | {(f.Message.Length > 0 ? $"`{f.Message}`" : "none: a killed process says nothing")} |\n");
        await File.WriteAllTextAsync(Path.Combine(Command.Repository, "docs", "faults.md"), text.ToString(), TestContext.Current.CancellationToken);
        Assert.All(faults, f => Assert.Equal((f.Times, f.Looked), (f.Whole, f.Clean)));
    }
}
