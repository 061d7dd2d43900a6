namespace Waywright.Publishing;

/// <summary>What to publish, and how.</summary>
public sealed record PublishRequest
{
    /// <summary>The notebooks and their build folder.</summary>
    public required NotebookSet Notebooks { get; init; }

    /// <summary>The folder that the build is published to; replaced only if absent, empty, or published by us.</summary>
    public required string OutFolder { get; init; }

    /// <summary>The page's title; null: the first notebook's own.</summary>
    public string? Title { get; init; }

    /// <summary>The licence that it is published under; empty when none is stated.</summary>
    public string Licence { get; init; } = "";

    /// <summary>The date that it is published under; null: the clock's, in UTC.</summary>
    public DateOnly? Date { get; init; }

    /// <summary>Parameters to set, by name, as text.</summary>
    public IReadOnlyDictionary<string, string> Set { get; init; } = new Dictionary<string, string>();

    /// <summary>A cell that runs longer is ended.</summary>
    public TimeSpan CellLimit { get; init; } = TimeSpan.FromMinutes(2);

    /// <summary>A session that grows beyond this is ended.</summary>
    public long MemoryLimitBytes { get; init; } = 2L << 30;
}

/// <summary>Where a run is: sent before each cell.</summary>
/// <param name="Notebook">The notebook's path in the build.</param>
/// <param name="NotebookNumber">From 1.</param>
/// <param name="NotebookCount">Of how many.</param>
/// <param name="CellNumber">Code cell, from 1.</param>
/// <param name="CellCount">Code cells of this notebook.</param>
/// <param name="CellsBefore">Code cells of all notebooks that have run.</param>
/// <param name="CellsInAll">Code cells of all notebooks.</param>
public sealed record PublishProgress(string Notebook, int NotebookNumber, int NotebookCount, int CellNumber, int CellCount, int CellsBefore, int CellsInAll);

/// <summary>How a run ended.</summary>
public enum PublishStatus
{
    /// <summary>Every cell ran; the build stands in the out folder.</summary>
    Published,

    /// <summary>A cell failed; the out folder is as it was.</summary>
    Failed,

    /// <summary>The caller cancelled; the out folder is as it was.</summary>
    Stopped,
}

/// <summary>Why a run did not publish.</summary>
/// <param name="Notebook">The notebook's path in the build.</param>
/// <param name="CellNumber">Code cell, from 1; 0 when the session did not start.</param>
/// <param name="CellId">Its id; empty when the session did not start.</param>
/// <param name="Why">One sentence.</param>
public sealed record PublishFailure(string Notebook, int CellNumber, string CellId, string Why)
{
    /// <summary><c>notebooks/rails.ipynb, cell 3 ('grade'): the cell threw ...</c>.</summary>
    public override string ToString()
        => CellNumber == 0 ? $"{Notebook}: {Why}" : FormattableString.Invariant($"{Notebook}, code cell {CellNumber} ('{CellId}'): {Why}");
}

/// <summary>What a run gave.</summary>
/// <param name="Status">How it ended.</param>
/// <param name="Folder">The published folder; when not published, the folder beside it that keeps what there is.</param>
/// <param name="Page">The path of its index.html.</param>
/// <param name="Kept">What the cells kept, in order, with the texts to print.</param>
/// <param name="Record">The record; null when not published.</param>
/// <param name="Failure">Why not; null when published.</param>
public sealed record PublishResult(PublishStatus Status, string Folder, string Page, IReadOnlyList<KeptResult> Kept, BuildRecord? Record, PublishFailure? Failure);
