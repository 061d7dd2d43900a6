namespace Waywright.Publishing;

/// <summary>Everything that can be found wrong before a cell runs.</summary>
internal static class NotebookPlan
{
    /// <summary>Reads the notebooks, without their old outputs, and sets their parameters.</summary>
    /// <exception cref="InputException">Lists every notebook that can't be run and every parameter that can't be set.</exception>
    public static IReadOnlyList<NotebookRun> Make(NotebookSet set, IReadOnlyDictionary<string, string> values)
    {
        var problems = new List<InputProblem>();
        var read = new List<(string File, string Path, NotebookDocument Document, IReadOnlyList<Parameter> Declared)>();
        foreach (var file in set.Files)
        {
            var path = set.PathInBuild(file);
            if (read.Exists(other => other.Path == path))
                problems.Add(new InputProblem(path, null, null, "two notebooks that would be published under this name", "another name for one of them"));
            try
            {
                var document = NotebookDocument.Parse(ReadText(file, path), path);
                document.Strip();
                read.Add((file, path, document, ParametersCell.Declared(document, path)));
            }
            catch (InputException e)
            {
                problems.AddRange(e.Problems);
            }
        }

        if (problems.Count > 0)
            throw new InputException(problems);
        read = [.. read.OrderBy(r => r.Document.Order)];
        var applied = ParametersCell.Apply([.. read.Select(r => r.Declared)], values);
        var runs = read.Zip(applied, (r, parameters) => new NotebookRun(r.File, r.Path, r.Document, parameters)).ToList();
        foreach (var run in runs)
            ParametersCell.Inject(run.Document, run.Parameters);
        return runs;
    }

    /// <summary>Notebooks whose cells are not any more what ran.</summary>
    public static IEnumerable<string> FindChanged(IEnumerable<NotebookRun> runs) => runs.Where(run => !IsSame(run)).Select(run => run.Path);

    private static bool IsSame(NotebookRun run)
    {
        try
        {
            var now = NotebookDocument.Parse(ReadText(run.File, run.Path), run.Path);
            now.Strip();
            return now.SourceSha256() == run.SourceSha256;
        }
        catch (InputException)
        {
            return false;
        }
    }

    private static string ReadText(string file, string path)
    {
        try
        {
            return new System.Text.UTF8Encoding(false, throwOnInvalidBytes: true).GetString(File.ReadAllBytes(file)).TrimStart('\uFEFF');
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new InputException(new InputProblem(path, null, null, "a file that can't be read", "a notebook (.ipynb)"));
        }
        catch (ArgumentException)
        {
            throw new InputException(new InputProblem(path, null, null, "bytes that are not UTF-8", "a notebook (.ipynb), which is UTF-8 text"));
        }
    }
}
