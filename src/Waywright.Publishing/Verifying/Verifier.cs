using Waywright.Kernel;

namespace Waywright.Publishing;

/// <summary>What a check of a published build found.</summary>
/// <param name="ChangedData">Data files that are not those that the figures were found from.</param>
/// <param name="ChangedNotebooks">Notebooks with other cells than those that ran.</param>
/// <param name="ChangedFiles">Other files that were changed since.</param>
/// <param name="OtherSoftware">Programs of another version than recorded: no failure by itself.</param>
/// <param name="Differences">Decisions and figures that the rerun did not find again; null when nothing was run.</param>
/// <param name="Failure">Why the rerun did not come to its end; null when it did.</param>
/// <param name="Figures">How many figures are recorded.</param>
public sealed record Verification(
    IReadOnlyList<string> ChangedData,
    IReadOnlyList<string> ChangedNotebooks,
    IReadOnlyList<string> ChangedFiles,
    IReadOnlyList<string> OtherSoftware,
    IReadOnlyList<string>? Differences,
    string? Failure,
    int Figures)
{
    /// <summary>True when every file is as published and every decision and figure was found again.</summary>
    public bool IsSame => ChangedData.Count + ChangedNotebooks.Count + ChangedFiles.Count + (Differences?.Count ?? 0) == 0 && Failure is null;

    /// <summary>One sentence: the answer, and whose change it is.</summary>
    public string Verdict => this switch
    {
        { ChangedData.Count: > 0 } => "Your data changed: the figures were found from other files than these.",
        { ChangedNotebooks.Count: > 0 } => "The notebooks changed: the figures were found by other cells than these.",
        { Failure: { } failure } => $"The rerun did not come to its end: {failure}",
        { Differences.Count: > 0, OtherSoftware.Count: > 0 } => "The kit changed: same data and notebooks, other software, other figures.",
        { Differences.Count: > 0, ChangedFiles.Count: > 0 } => "The record was changed since it was published: same data, notebooks and software give other figures.",
        { Differences.Count: > 0 } => "Same data, notebooks and software give other figures here.",
        { ChangedFiles.Count: > 0 } => "Files of the build were changed since it was published.",
        { Differences: null } => "Every file is as it was published; nothing was rerun.",
        _ => FormattableString.Invariant($"The same: all {Figures} figures and every decision were found again from the same data."),
    };
}

/// <summary>Checks a published build: hashes first, then its notebooks run again on its own inputs in a temporary copy.</summary>
/// <param name="startSession">Starts a session for one notebook.</param>
/// <param name="clock">For durations.</param>
public sealed class Verifier(Func<SessionOptions, CancellationToken, Task<ICellSession>> startSession, TimeProvider clock)
{
    /// <summary>Checks one folder; nothing in it is changed.</summary>
    /// <param name="folder">The published folder.</param>
    /// <param name="rerun">False: hashes only.</param>
    /// <param name="seed">Another seed for every notebook with a parameter <c>seed</c>; figures are then held to a fifth of their standard uncertainty.</param>
    /// <param name="progress">Told before each cell; may be null.</param>
    /// <param name="cancel">Stops the rerun.</param>
    /// <exception cref="InputException">Not a published build, or no notebook has the parameter <c>seed</c>.</exception>
    public async Task<Verification> VerifyAsync(string folder, bool rerun, int? seed, IProgress<PublishProgress>? progress, CancellationToken cancel)
    {
        var build = PublishedBuild.Open(folder);
        var record = build.Record;
        if (seed is not null && !record.Parameters.Any(p => p is { Name: "seed", Type: "int" }))
            throw new InputException(new InputProblem("--reseed", null, null, "notebooks without a parameter 'seed'", "at least one notebook that declares 'int seed = ...' in its parameters cell"));
        var here = Software.List.ToDictionary(s => s.Name, s => s.Version, StringComparer.Ordinal);
        var found = new Verification(
            build.ChangedData(),
            build.ChangedNotebooks(),
            build.ChangedFiles(),
            [.. record.Software.Where(s => here.GetValueOrDefault(s.Name) != s.Version).Select(s => $"{s.Name}: recorded {s.Version}, here {here.GetValueOrDefault(s.Name) ?? "absent"}")],
            null,
            null,
            record.Figures.Count);
        if (!rerun || record.Notebooks.Count == 0)
            return found;
        var copy = Directory.CreateTempSubdirectory("waywright-verify-");
        try
        {
            Copy(build, copy.FullName);
            var set = record.Parameters.Where(p => p.IsSet).DistinctBy(p => p.Name).ToDictionary(p => p.Name, p => p.Value, StringComparer.Ordinal);
            if (seed is { } other)
                set["seed"] = other.ToString(System.Globalization.CultureInfo.InvariantCulture);
            var buildFolder = Path.Combine(copy.FullName, "build");
            var result = await new Publisher(startSession, clock).PublishAsync(new PublishRequest
            {
                Notebooks = NotebookSet.Find([Path.Combine(buildFolder, "notebooks")], buildFolder),
                OutFolder = Path.Combine(copy.FullName, "again"),
                Title = record.Title,
                Licence = record.Licence,
                Date = record.Date,
                Set = set,
            }, progress, cancel).ConfigureAwait(false);
            return result.Record is { } again
                ? found with { Differences = [.. new DecisionComparison(seed is not null).Differences(record.Decisions, again.Decisions), .. new FigureComparison(seed is not null).Differences(record.Figures, again.Figures)] }
                : found with { Failure = result.Failure?.ToString() ?? "stopped" };
        }
        finally
        {
            copy.Delete(recursive: true);
        }
    }

    // Only what the record names: a file that was added later takes no part.
    private static void Copy(PublishedBuild build, string to)
    {
        var pairs = build.Record.Inputs.Select(input => (From: "inputs/" + input.Path, To: input.Path)).Concat(build.Record.Notebooks.Select(notebook => (From: notebook.Path, To: notebook.Path)));
        foreach (var (from, target) in pairs.Where(pair => File.Exists(build.PathOf(pair.From))))
        {
            var path = Path.Combine(to, "build", target);
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.Copy(build.PathOf(from), path);
        }

        Directory.CreateDirectory(Path.Combine(to, "build", "notebooks"));
    }
}
