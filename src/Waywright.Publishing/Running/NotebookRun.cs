namespace Waywright.Publishing;

/// <summary>One notebook on its way through a run: what it is, what it is set to, and how it went.</summary>
internal sealed class NotebookRun(string file, string path, NotebookDocument document, IReadOnlyList<Parameter> parameters)
{
    /// <summary>Full path of the file that was read.</summary>
    public string File { get; } = file;

    /// <summary>Path in the published folder.</summary>
    public string Path { get; } = path;

    public NotebookDocument Document { get; } = document;

    public IReadOnlyList<Parameter> Parameters { get; } = parameters;

    public string SourceSha256 { get; } = document.SourceSha256();

    public TimeSpan Duration { get; set; }

    /// <summary>True once its session was asked for.</summary>
    public bool Started { get; set; }

    public PublishFailure? Failure { get; private set; }

    /// <summary>True when <see cref="Failure"/> is the caller's own wish.</summary>
    public bool Stopped { get; private set; }

    public void Fail(int cellNumber, string cellId, string why, bool stopped)
        => (Failure, Stopped) = (new PublishFailure(Path, cellNumber, cellId, why), stopped);
}
