using System.Globalization;
using System.Text;

namespace Waywright.Publishing;

/// <summary>What a run has to hand over: its record, its notebooks, its page.</summary>
internal sealed class Build
{
    public const string PageFile = "index.html";

    // The parameter that a notebook's random numbers start from, by agreement.
    private const string SeedName = "seed";

    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);

    private readonly IReadOnlyList<NotebookRun> _runs;
    private readonly Findings _findings;
    private readonly string _buildFolder;

    public Build(PublishRequest request, IReadOnlyList<NotebookRun> runs, Findings findings, DateOnly date)
    {
        (_runs, _findings, _buildFolder) = (runs, findings, request.Notebooks.BuildFolder);
        Record = new BuildRecord(
            request.Title ?? runs.Select(run => run.Document.BuildTitle).FirstOrDefault(title => title is not null) ?? PageMarkdown.TitleOf(runs[0].Document) ?? "Build analysis",
            date,
            Seed(runs),
            request.Licence,
            runs.SelectMany(run => run.Parameters.Select(p => new NotebookParameter(run.Path, p.Name, p.Type, p.Value, p.IsSet))),
            runs.Select(run => new RecordedNotebook(run.Path, run.SourceSha256)),
            findings.Inputs,
            findings.Kept.Select(kept => new Decision(kept.Result.Id, kept.Notebook, kept.Result.Verdict)),
            findings.Kept.SelectMany(kept => kept.Result.Figures),
            Software.List);
    }

    public BuildRecord Record { get; }

    /// <summary>A record that names a folder of this machine would differ on every other: that is a failure of the notebook that wrote it.</summary>
    public PublishFailure? MachinePath(string newFolder)
    {
        foreach (var (notebook, result) in _findings.Kept)
        {
            var texts = result.Figures.SelectMany(f => (string?[])[f.Id, f.Name, f.Text, f.Method]).Append(result.Id).Append(result.Verdict);
            if (texts.OfType<string>().FirstOrDefault(text => text.Contains(_buildFolder, StringComparison.Ordinal) || text.Contains(newFolder, StringComparison.Ordinal)) is { } text)
                return new PublishFailure(notebook, 0, "", $"the result '{result.Id}' names a folder of this machine ('{text}'), so that no other machine can find the same: name files relative to the build folder");
        }

        return null;
    }

    /// <summary>Writes everything but run.json. Without a result there is no record.</summary>
    public void Write(string folder, PublishStatus status, PublishFailure? failure)
    {
        foreach (var run in _runs)
        {
            var file = Path.Combine(folder, run.Path);
            Directory.CreateDirectory(Path.GetDirectoryName(file)!);
            File.WriteAllText(file, run.Document.ToText(), Utf8);
        }

        var page = new PageContent(Record.Title, Record.Date, Record.Licence, failure, status == PublishStatus.Stopped, _runs, _findings);
        File.WriteAllText(Path.Combine(folder, PageFile), PageWriter.Write(page), Utf8);
        if (status != PublishStatus.Published)
            return;
        File.WriteAllText(Path.Combine(folder, Ownership.RecordFile), Record.ToJson(), Utf8);
        RoCrate.Write(folder, Record);
    }

    // One seed for the build, or none: with two, the parameters say which notebook had which.
    private static int? Seed(IReadOnlyList<NotebookRun> runs)
    {
        var seeds = runs.SelectMany(run => run.Parameters).Where(p => p is { Name: SeedName, Type: "int" }).Select(p => p.Value).Distinct().ToList();
        return seeds.Count == 1 ? int.Parse(seeds[0], CultureInfo.InvariantCulture) : null;
    }
}
