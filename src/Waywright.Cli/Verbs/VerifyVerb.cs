using System.CommandLine;
using System.Text.Json.Nodes;
using Waywright.Kernel;
using Waywright.Publishing;

namespace Waywright.Cli;

/// <summary><c>waywright verify DIR</c>: are the files of a published build as they were, and does a rerun find the same figures?</summary>
internal static class VerifyVerb
{
    public static Command Create()
    {
        var folder = new Argument<string>("DIR") { Description = "A build that 'waywright publish' wrote." };
        var checkOnly = new Option<bool>("--check-only") { Description = "Compare hashes only; run nothing." };
        var reseed = NumberOption.Whole("--reseed", "Run again with other random numbers (another seed): decisions stay, and figures agree within a fifth of their standard uncertainty.");
        var json = CommonOptions.Json();
        var command = new Command("verify", "Check a published build: hashes, then its notebooks again on its own inputs. Runs the code of its notebooks: verify only builds that you trust. Exit 1 when something differs.") { folder, checkOnly, reseed, json };
        command.Validators.Add(result =>
        {
            if (result.GetValue(checkOnly) && result.GetResult(reseed) is not null)
                result.AddError("--check-only runs nothing, so --reseed has no meaning with it.");
        });
        command.SetAction(async (parsed, cancel) =>
        {
            var verifier = new Verifier(ChildSession.StartAsync, TimeProvider.System);
            Verification found;
            using (var progress = ProgressLine.Start())
                found = await verifier.VerifyAsync(parsed.GetRequiredValue(folder), !parsed.GetValue(checkOnly), parsed.GetValue(reseed), progress, cancel).ConfigureAwait(false);
            if (parsed.GetValue(json))
                JsonOutput.Print(Answer(found));
            else
                Print(found);
            return found.IsSame ? CommandLine.Done : CommandLine.Refused;
        });
        return command;
    }

    private static void Print(Verification found)
    {
        Console.Out.WriteLine(found.Verdict);
        foreach (var line in found.ChangedData.Concat(found.ChangedNotebooks).Concat(found.ChangedFiles).Concat(found.Differences ?? []))
            Console.Out.WriteLine("  " + line);
        foreach (var line in found.OtherSoftware)
            Console.Out.WriteLine("  other software: " + line);
    }

    private static JsonObject Answer(Verification found) => new()
    {
        ["same"] = found.IsSame,
        ["verdict"] = found.Verdict,
        ["figures"] = found.Figures,
        ["changed_data"] = List(found.ChangedData),
        ["changed_notebooks"] = List(found.ChangedNotebooks),
        ["changed_files"] = List(found.ChangedFiles),
        ["other_software"] = List(found.OtherSoftware),
        ["rerun"] = found.Differences is not null,
        ["differences"] = List(found.Differences ?? []),
        ["failure"] = found.Failure,
    };

    private static JsonArray List(IEnumerable<string> lines) => [.. lines.Select(line => JsonValue.Create(line))];
}
