namespace Waywright.Publishing;

/// <summary>Everything that the page of a run shows.</summary>
internal sealed record PageContent(string Title, DateOnly Date, string Licence, PublishFailure? Failure, bool Stopped, IReadOnlyList<NotebookRun> Runs, Findings Findings);
