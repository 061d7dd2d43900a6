using Waywright.Kernel;

namespace Waywright.Publishing;

/// <summary>Runs the notebooks of a build, each in a session of its own, and publishes what they found as one folder.</summary>
/// <param name="startSession">Starts a session for one notebook.</param>
/// <param name="clock">The clock for the date, if none is asked for, and for durations.</param>
public sealed class Publisher(Func<SessionOptions, CancellationToken, Task<ICellSession>> startSession, TimeProvider clock)
{
    /// <summary>Publishes a build. The out folder is replaced only at the very end, and only when every cell ran.</summary>
    /// <param name="request">What and how.</param>
    /// <param name="progress">Told before each cell; may be null.</param>
    /// <param name="cancel">Stops the run: what there is is kept beside the out folder.</param>
    /// <exception cref="InputException">
    /// Notebooks, parameters or the out folder can't be used, and no cell has run; or the new build can't be written, or data or notebooks changed while
    /// the cells ran: the out folder is as it was.
    /// </exception>
    public async Task<PublishResult> PublishAsync(PublishRequest request, IProgress<PublishProgress>? progress, CancellationToken cancel)
    {
        var runs = NotebookPlan.Make(request.Notebooks, request.Set);
        using var folder = OutFolder.Take(request.OutFolder);
        try
        {
            return await PublishToAsync(folder, request, runs, progress, cancel).ConfigureAwait(false);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw folder.CannotWrite(e);
        }
    }

    private async Task<PublishResult> PublishToAsync(OutFolder folder, PublishRequest request, IReadOnlyList<NotebookRun> runs, IProgress<PublishProgress>? progress, CancellationToken cancel)
    {
        var started = clock.GetUtcNow();
        var began = clock.GetTimestamp();
        var findings = new Findings(new InputStore(request.Notebooks.BuildFolder, Path.Combine(folder.New, "inputs")));

        await RunAsync(request, runs, findings, progress, cancel).ConfigureAwait(false);

        var stopped = runs.FirstOrDefault(run => run.Failure is not null);
        var build = new Build(request, runs, findings, request.Date ?? DateOnly.FromDateTime(started.UtcDateTime));
        var failure = stopped?.Failure ?? build.MachinePath(folder.New);
        var status = failure is null ? PublishStatus.Published : stopped is { Stopped: true } ? PublishStatus.Stopped : PublishStatus.Failed;
        build.Write(folder.New, status, failure);
        RunLog.Write(folder.New, status, failure, runs, started, clock.GetElapsedTime(began));
        if (status != PublishStatus.Stopped)
            RefuseChanged(runs, findings);
        var kept = status == PublishStatus.Published ? folder.Publish() : folder.KeepFailed();
        return new PublishResult(status, kept, Path.Combine(kept, Build.PageFile), [.. findings.Kept.Select(k => k.Result)], failure is null ? build.Record : null, failure);
    }

    // At the very end: between two cells, nobody looks.
    private static void RefuseChanged(IReadOnlyList<NotebookRun> runs, Findings findings)
    {
        var changed = findings.FindChangedInputs().Concat(NotebookPlan.FindChanged(runs)).ToList();
        if (changed.Count > 0)
            throw new InputException(changed.Select(path => new InputProblem(path, null, null, "a file that changed while the notebooks ran", "one that stays as it is until the page is written: publish again; an earlier page is untouched")));
    }

    private async Task RunAsync(PublishRequest request, IReadOnlyList<NotebookRun> runs, Findings findings, IProgress<PublishProgress>? progress, CancellationToken cancel)
    {
        var options = runs.Select(run => new SessionOptions(Path.GetDirectoryName(run.File)!, request.Notebooks.BuildFolder, request.CellLimit, request.MemoryLimitBytes)).ToList();
        var sessions = new SessionQueue(startSession, options, cancel);
        await using (sessions.ConfigureAwait(false))
        {
            var runner = new NotebookRunner(findings, clock, cancel);
            var (before, all) = (0, runs.Sum(NotebookRunner.CellsOf));
            for (var i = 0; i < runs.Count; i++)
            {
                var (run, number) = (runs[i], i + 1);
                await runner.RunAsync(run, sessions.NextAsync, (cell, cells) => progress?.Report(new PublishProgress(run.Path, number, runs.Count, cell, cells, before++, all))).ConfigureAwait(false);
                if (run.Failure is not null)
                    return;
            }
        }
    }
}
