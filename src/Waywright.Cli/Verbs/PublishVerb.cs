using System.CommandLine;
using Waywright.Kernel;
using Waywright.Publishing;

namespace Waywright.Cli;

/// <summary><c>waywright publish</c>: runs notebooks and publishes what they found as one page.</summary>
internal static class PublishVerb
{
    private const int Interrupted = 130;

    public static Command Create()
    {
        var notebooks = new Argument<string[]>("NOTEBOOK|FOLDER") { Description = "What to run; without it, the folder notebooks/ found upwards from here.", Arity = ArgumentArity.ZeroOrMore };
        var outFolder = new Option<string?>("--out") { Description = "Where the page goes; default artifacts/published beside the notebooks' folder." };
        var set = new Option<string[]>("--set") { Description = "NAME=VALUE for a parameter of the notebooks." };
        var date = new Option<string?>("--date") { Description = "YYYY-MM-DD that stands in the record; default SOURCE_DATE_EPOCH, else today." };
        var cellLimit = NumberOption.AboveZero("--cell-limit", "Seconds after which a cell is ended.", 120);
        var memoryLimit = NumberOption.AboveZero("--memory-limit", "Memory in GB after which a session is ended.", 4);
        var command = new Command("publish", "Run notebooks without a front end and publish what they found as a page that opens offline.") { notebooks, outFolder, set, date, cellLimit, memoryLimit };
        command.SetAction((parsed, cancel) =>
        {
            var found = NotebookSet.Find(parsed.GetValue(notebooks) ?? [], Directory.GetCurrentDirectory());
            var request = new PublishRequest
            {
                Notebooks = found,
                OutFolder = parsed.GetValue(outFolder) ?? Path.Combine(found.BuildFolder, "artifacts", "published"),
                Set = ReadSet(parsed.GetValue(set) ?? []),
                Date = PublishDate.Choose(parsed.GetValue(date), Environment.GetEnvironmentVariable("SOURCE_DATE_EPOCH")),
                CellLimit = TimeSpan.FromSeconds(parsed.GetValue(cellLimit)),
                MemoryLimitBytes = (long)(parsed.GetValue(memoryLimit) * 1e9),
            };
            return RunAsync(request, cancel);
        });
        return command;
    }

    private static async Task<int> RunAsync(PublishRequest request, CancellationToken cancel)
    {
        var publisher = new Publisher(ChildSession.StartAsync, TimeProvider.System);
        PublishResult result;
        using (var progress = ProgressLine.Start())
            result = await publisher.PublishAsync(request, progress, cancel).ConfigureAwait(false);
        foreach (var kept in result.Kept)
        {
            Console.Out.WriteLine(kept.Text);
            Console.Out.WriteLine();
        }

        if (result.Failure is { } failure)
            Console.Error.WriteLine($"{failure} What ran so far is in {result.Folder}; an earlier page is untouched.");
        Console.Out.WriteLine(result.Page);
        return result.Status switch
        {
            PublishStatus.Published => CommandLine.Done,
            PublishStatus.Stopped => Interrupted,
            _ => CommandLine.Refused,
        };
    }

    private static Dictionary<string, string> ReadSet(string[] given)
    {
        var set = new Dictionary<string, string>(StringComparer.Ordinal);
        var problems = new List<InputProblem>();
        foreach (var pair in given)
        {
            var at = pair.IndexOf('=', StringComparison.Ordinal);
            if (at <= 0)
                problems.Add(new InputProblem("--set", null, null, $"'{pair}'", "NAME=VALUE"));
            else if (!set.TryAdd(pair[..at], pair[(at + 1)..]))
                problems.Add(new InputProblem("--set", null, null, $"'{pair[..at]}' twice", "each parameter once"));
        }

        return problems.Count == 0 ? set : throw new InputException(problems);
    }
}
