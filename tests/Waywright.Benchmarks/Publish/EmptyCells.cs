using Waywright.Kernel;
using Waywright.Publishing;

namespace Waywright.Benchmarks;

/// <summary>The engine without our work: as many cells as the notebooks have, each empty.</summary>
/// <param name="Sessions">For each session, the number of its code cells.</param>
internal sealed record EmptyCells(IReadOnlyList<int> Sessions)
{
    /// <summary>One session for each notebook, or one for all.</summary>
    public static EmptyCells Like(NotebookSet notebooks)
        => new([.. NotebookPlan.Make(notebooks, new Dictionary<string, string>()).Select(run => run.Document.Cells.Count(cell => cell.IsCode && !string.IsNullOrWhiteSpace(cell.Source)))]);

    public int Count => Sessions.Sum();

    public EmptyCells InOneSession => new([Count]);

    /// <summary>One session after another.</summary>
    public async Task RunAsync(SessionOptions options)
    {
        foreach (var cells in Sessions)
        {
            var session = await ChildSession.StartAsync(options, CancellationToken.None).ConfigureAwait(false);
            await using (session.ConfigureAwait(false))
                await RunCellsAsync(session, cells).ConfigureAwait(false);
        }
    }

    /// <summary>The next session starts while one runs, as publishing does it.</summary>
    public async Task RunAheadAsync(SessionOptions options)
    {
        var sessions = new SessionQueue(ChildSession.StartAsync, [.. Sessions.Select(_ => options)], CancellationToken.None);
        await using (sessions.ConfigureAwait(false))
        {
            foreach (var cells in Sessions)
            {
                var session = await sessions.NextAsync().ConfigureAwait(false);
                await using (session.ConfigureAwait(false))
                    await RunCellsAsync(session, cells).ConfigureAwait(false);
            }
        }
    }

    private static async Task RunCellsAsync(ICellSession session, int cells)
    {
        for (var i = 1; i <= cells; i++)
        {
            var run = await session.RunAsync($"cell-{i}", "", onOutput: null, CancellationToken.None).ConfigureAwait(false);
            if (run.Outcome != CellOutcome.Done)
                throw new InvalidOperationException($"An empty cell did not run, so its time means nothing: {run.Why}");
        }
    }
}
